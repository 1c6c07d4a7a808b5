package feed

import "math"

// CardClass says which excursion rule a graphics card is under.
type CardClass int

// Classes of card.
const (
	// CardOlder is fed by the slot alone or by 2×3 and 2×4 plugs.
	CardOlder CardClass = iota
	// CardTwelve is fed by the 12-contact plug (12VHPWR or 12V-2x6), PCIe CEM 5.x.
	CardTwelve
)

// twelvePercent: 100 µs from a statement of the guide's author in the trade press; 1 ms to 100 ms from memory of PCIe
// CEM 5.0; the 1 s averaging of the sustained figure is in the ATX 3.0 guide, Table 3-5, notes.
//
// olderPercent: before CEM 5.0 the standard allowed a card no excursion at all (ATX 3.0 guide § 3.1), yet cards made them.
// The figures are common practice, from memory of trade measurements: milder than the CEM 5.x allowance because such
// cards limit current faster than the class that may lean on a 3.x supply.
var (
	twelvePercent = [SpanCount]int64{300, 250, 200, 150, 100}
	olderPercent  = [SpanCount]int64{200, 180, 150, 120, 100}
)

// CardPeaks is what a card of a class may draw at each time scale, in mW rounded up, from its sustained power in mW.
// A data sheet's own peaks beat this estimate.
func CardPeaks(sustainedMW int64, class CardClass) Peaks {
	percent := olderPercent
	if class == CardTwelve {
		percent = twelvePercent
	}
	var peaks Peaks
	for s := range peaks {
		peaks[s] = ceilDiv(sustainedMW*percent[s], 100)
	}
	return peaks
}

// CardAllowance is the ratio of peak to sustained power a CardTwelve may reach over durationUS microseconds:
//
//	1 − 0.5 · log10(T / 1 s),  held at 3.0 below 100 µs and at 1.0 above 1 s
//
// The curve passes through the five points of CardPeaks. Source: PCIe CEM 5.0, from memory.
func CardAllowance(durationUS float64) float64 {
	switch {
	case durationUS <= 100:
		return 3
	case durationUS >= 1e6:
		return 1
	}
	return 1 - float64(0.5*math.Log10(durationUS/1e6))
}

// ceilDiv divides non-negative integers and rounds up.
func ceilDiv(a, b int64) int64 {
	return (a + b - 1) / b
}
