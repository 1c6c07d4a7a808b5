package link

import "fmt"

// Sampling is how colour is sampled.
type Sampling int

// Kinds of colour sampling.
const (
	Sampling444 Sampling = iota // RGB or 4:4:4
	Sampling422
	Sampling420
)

// BitsPerPixel is the pixel size on a link: 3, 2 or 1.5 samples of bitsPerColour bits. Colour depths are 6, 8, 10, 12 or
// 16 bits, so the result is whole; other depths are an error.
func BitsPerPixel(sampling Sampling, bitsPerColour int64) (int64, error) {
	switch bitsPerColour {
	case 6, 8, 10, 12, 16:
	default:
		return 0, fmt.Errorf("colour depth %d bits: expected 6, 8, 10, 12 or 16", bitsPerColour)
	}
	switch sampling {
	case Sampling444:
		return 3 * bitsPerColour, nil
	case Sampling422:
		return 2 * bitsPerColour, nil
	case Sampling420:
		return 3 * bitsPerColour / 2, nil
	}
	return 0, fmt.Errorf("colour sampling %d: expected 4:4:4, 4:2:2 or 4:2:0", int(sampling))
}

// CompressedBitsPerPixel is the least target of display stream compression: 8 bits for RGB and 4:4:4, 6 for 4:2:0. For
// 4:2:2 the 4:4:4 figure is taken.
//
// Source: VESA DP 2.0, Table 2-157, as quoted in a public display driver.
func CompressedBitsPerPixel(sampling Sampling) int64 {
	if sampling == Sampling420 {
		return 6
	}
	return 8
}
