package media

// PCMBitPerS is uncompressed audio: sample rate × bits × channels. Sample rates after IEC 60958 and AES3.
func PCMBitPerS(sampleHz, bitsPerSample, channels int64) int64 {
	return sampleHz * bitsPerSample * channels
}

// BufferRoundTripUS is the delay of one buffer in and one out, in µs rounded up: 2 × frames ÷ rate. Converters add to it.
func BufferRoundTripUS(framesPerBuffer, sampleHz int64) int64 {
	return ceilDiv(2*framesPerBuffer*1_000_000, sampleHz)
}

// PreloadBytes is the memory a sample library holds ready: zones × preload, the rest streams from storage.
func PreloadBytes(zones, preloadBytes int64) int64 {
	return zones * preloadBytes
}

// UsualPreloadBytes is 64 KiB a zone. Source: common practice.
const UsualPreloadBytes = 64 * KiB
