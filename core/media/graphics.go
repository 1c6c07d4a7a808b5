package media

// RasterBytes is a picture in memory: width × height × bytes per pixel (4 for 8-bit RGBA, 8 half float, 16 float).
func RasterBytes(width, height, bytesPerPixel int64) int64 {
	return width * height * bytesPerPixel
}

// FrameCacheBytes is seconds of pictures held in memory: picture × frames.
func FrameCacheBytes(width, height, bytesPerPixel int64, rate FrameRate, seconds int64) int64 {
	return RasterBytes(width, height, bytesPerPixel) * rate.Frames(seconds)
}

// SwapChainBytes is the buffers a display is fed from: picture × buffers.
func SwapChainBytes(width, height, bytesPerPixel, buffers int64) int64 {
	return RasterBytes(width, height, bytesPerPixel) * buffers
}

// RenderTargetBytes is the targets of a deferred renderer: pixels × (targets × bytes + depth bytes).
func RenderTargetBytes(width, height, targets, bytesPerTarget, depthBytes int64) int64 {
	return width * height * (targets*bytesPerTarget + depthBytes)
}

// TextureBytes is a texture with its chain of smaller copies: width × height × bytes × 4/3, rounded up.
func TextureBytes(width, height, bytesPerPixel int64) int64 {
	return ceilDiv(width*height*bytesPerPixel*4, 3)
}

// SceneBytes is a scene in graphics memory for rendering: triangles at 200 B each with their acceleration structure
// (100 to 200 B, the upper end) and textures, with 20 % spare, rounded up. A scene that does not fit renders out of core.
//
// Source: common practice.
func SceneBytes(triangles, textureBytes int64) int64 {
	return ceilDiv((triangles*200+textureBytes)*10, 8)
}
