package media

// WeightBytes is the size of a model's weights: parameters × bits ÷ 8, rounded up, with the bits in thousandths (16000 for
// 16 bit; 4500 is the usual effective size of 4-bit weights with a scale per block, common practice).
func WeightBytes(parameters, milliBitsPerWeight int64) int64 {
	return ceilDiv(parameters*milliBitsPerWeight, 8000)
}

// KVCacheBytes is the key and value cache of a transformer: 2 × layers × key-value heads × head size × tokens × batch ×
// bytes per element.
func KVCacheBytes(layers, kvHeads, headSize, tokens, batch, bytesPerElement int64) int64 {
	return 2 * layers * kvHeads * headSize * tokens * batch * bytesPerElement
}

// InferenceBytes is the graphics memory to plan for weights and cache together: 20 % on top and at least 1 GB, rounded up.
//
// Source: common practice (10 to 20 %, at least 1 GB).
func InferenceBytes(weightBytes, cacheBytes int64) int64 {
	base := weightBytes + cacheBytes
	return base + max(ceilDiv(base, 5), GB)
}

// TokenCeilingMilliPerS is the most tokens per second, in thousandths and rounded down, of one stream on a memory
// bandwidth: each token reads the weights once. ok is false for a size not above zero.
func TokenCeilingMilliPerS(bandwidthBytePerS, bytesPerToken int64) (rate int64, ok bool) {
	if bytesPerToken <= 0 {
		return 0, false
	}
	return bandwidthBytePerS * 1000 / bytesPerToken, true
}
