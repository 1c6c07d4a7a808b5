// Package media holds the models of what media and data ask: frames, bit rates, hours and capacity, throughput and
// endurance of storage, speed-up, and the memory of graphics and language models. It knows no part and no rule. Rates are
// in bit/s or byte/s, sizes in bytes; a need is rounded up, a gift down.
package media

// FrameRate is a frame rate in frames per second, kept exact: Num ÷ Den.
type FrameRate struct {
	Num, Den int64
}

// WholeRate is a whole number of frames per second.
func WholeRate(framesPerS int64) FrameRate { return FrameRate{framesPerS, 1} }

// VideoRate is a nominal rate times 1000/1001: 23.976 for 24, 29.97 for 30, 59.94 for 60.
func VideoRate(nominalPerS int64) FrameRate { return FrameRate{nominalPerS * 1000, 1001} }

// Frames is the number of frames in seconds, rounded up.
func (r FrameRate) Frames(seconds int64) int64 { return ceilDiv(r.Num*seconds, r.Den) }

// PictureBits is an uncompressed picture: width × height × bits per pixel.
func PictureBits(width, height, bitsPerPixel int64) int64 {
	return width * height * bitsPerPixel
}

// Packed422TenBits is a 10-bit 4:2:2 picture packed six pixels to 16 bytes, each line filled up to six.
//
// Source: packing arithmetic (21.333 bits per pixel).
func Packed422TenBits(width, height int64) int64 {
	return ceilDiv(width, 6) * 16 * 8 * height
}

// PackedRGBTenBits is a 10-bit RGB picture with one pixel in each 32-bit word, picture bytes only.
//
// Source: SMPTE ST 268 method A packing, from memory.
func PackedRGBTenBits(width, height int64) int64 {
	return width * height * 32
}

// BitPerS is frames of a size at a rate, in bit/s rounded up.
func (r FrameRate) BitPerS(bitsPerFrame int64) int64 {
	return ceilDiv(bitsPerFrame*r.Num, r.Den)
}

// ceilDiv divides non-negative integers and rounds up.
func ceilDiv(a, b int64) int64 {
	return (a + b - 1) / b
}
