package media

import "math"

// Human limits. No published figure supports a general refresh-rate threshold for games; none is given here.

// ViewingHeights is the design viewing distance in picture heights, where two adjacent lines are one minute of arc apart:
// 1 / (lines · tan 1').
//
// Source: Rec. ITU-R BT.500 as quoted in an encyclopaedia.
func ViewingHeights(lines int64) float64 {
	return 1 / (float64(lines) * math.Tan(math.Pi/180/60))
}

// PixelPitchMM is the pixel pitch of a display from its diagonal in inches.
func PixelPitchMM(diagonalInch float64, width, height int64) float64 {
	return diagonalInch * 25.4 / math.Sqrt(float64(width*width+height*height))
}

// PixelsPerDegree is how many pixels one degree of sight covers: 2 · distance · tan 0.5° / pitch. 60 is one minute of arc
// a pixel.
//
// Source: geometry.
func PixelsPerDegree(distanceMM, pitchMM float64) float64 {
	return 2 * distanceMM * math.Tan(math.Pi/360) / pitchMM
}

// FrameTimeUS is the time of one frame, in µs rounded to the nearest, at a refresh rate in mHz.
func FrameTimeUS(refreshMilliHz int64) int64 {
	return (1_000_000_000 + refreshMilliHz/2) / refreshMilliHz
}

// Limits of sound against picture, in ms: early is sound before picture.
//
// Source: Rec. ITU-R BT.1359-1.
const (
	SoundEarlyDetectableMS = 45
	SoundLateDetectableMS  = 125
	SoundEarlyAcceptableMS = 90
	SoundLateAcceptableMS  = 185
)

// Limits of response, in ms: felt as instant, train of thought kept, attention kept.
//
// Source: Miller 1968; Card and others 1991, from memory.
const (
	ResponseInstantMS   = 100
	ResponseFlowMS      = 1_000
	ResponseAttentionMS = 10_000
)

// ConversationDelayMS is the preferred greatest one-way delay of a conversation. Source: ITU-T G.114, from memory.
const ConversationDelayMS = 150
