// Package feed holds the power models: what a supply, its plugs and the mains can give, what cards and processors take,
// and what it costs at the wall. It knows no part and no rule. Power is in milliwatts (mW), current in milliamperes (mA),
// voltage in millivolts (mV), apparent power in millivolt-amperes (mVA); every figure that decides a verdict is an integer
// rounded on the safe side: a need up, a gift down.
package feed

import (
	"errors"
	"fmt"
	"math"
)

// Span is one time scale of the supply design guide's excursion table.
type Span int

// The five time scales, shortest first.
const (
	Span100us Span = iota
	Span1ms
	Span10ms
	Span100ms
	SpanSteady
)

// SpanCount is the number of time scales.
const SpanCount = 5

// String names the time scale.
func (s Span) String() string {
	switch s {
	case Span100us:
		return "100 µs"
	case Span1ms:
		return "1 ms"
	case Span10ms:
		return "10 ms"
	case Span100ms:
		return "100 ms"
	case SpanSteady:
		return "steady"
	}
	return fmt.Sprintf("span %d", int(s))
}

// Peaks is a power in mW for each Span: what is asked or what is given.
type Peaks [SpanCount]int64

// TotalPeaks adds loads span by span. All loads are taken to peak together, the worst case the design guide also budgets for.
func TotalPeaks(loads ...Peaks) Peaks {
	var total Peaks
	for _, p := range loads {
		for s := range total {
			total[s] += p[s]
		}
	}
	return total
}

// SteadyPeaks is a load that does not peak: the same power at each time scale.
func SteadyPeaks(powerMW int64) Peaks {
	return Peaks{powerMW, powerMW, powerMW, powerMW, powerMW}
}

// Revision is the edition of the supply design guide a supply states. The zero value is a supply that states none.
type Revision int

// Revisions of the design guide.
const (
	RevisionUnknown Revision = iota
	Revision2                // ATX12V 2.x: promises no excursion above the rating
	Revision30               // ATX 3.0
	Revision31               // ATX 3.1
)

// ParseRevision reads "2.x" or any "2." edition, "3.0" and "3.1".
func ParseRevision(text string) (Revision, error) {
	switch {
	case text == "3.0":
		return Revision30, nil
	case text == "3.1":
		return Revision31, nil
	case len(text) >= 3 && text[:2] == "2.":
		return Revision2, nil
	}
	return RevisionUnknown, fmt.Errorf("design guide revision %q: expected 2.x, 3.0 or 3.1", text)
}

// String is the edition as data sheets print it.
func (r Revision) String() string {
	switch r {
	case Revision2:
		return "2.x"
	case Revision30:
		return "3.0"
	case Revision31:
		return "3.1"
	}
	return "unknown"
}

// HoldUpMS is the time in ms for which outputs stay good after the mains fails at full load, the two guide intervals added.
// ATX 3.0: > 16 + > 1 = 17 ms; ATX 3.1: > 11 + > 1 = 12 ms (17 ms only recommended, at 80 % load). ok is false where the
// edition is 2.x or unknown: take the data sheet's figure.
//
// Source: ATX 3.0 guide rev. 2.01, Table 4-9; ATX 3.1 guide rev. 2.1a, Table 4-10.
func HoldUpMS(r Revision) (ms int64, ok bool) {
	switch r {
	case Revision30:
		return 17, true
	case Revision31:
		return 12, true
	}
	return 0, false
}

// LargeSupplyMW is the rating above which a supply with the 12-contact card plug must ride through the higher excursions.
const LargeSupplyMW = 450_000

// smallPercent and largePercent are the two excursion columns in percent of the rating.
//
// Source: ATX12VO guide rev. 2.01, § 3.1.2, Table 3-3; the multi-rail ATX 3.x guide carries the same split (from memory,
// row by row).
var (
	smallPercent = [SpanCount]int64{150, 145, 135, 110, 100}
	largePercent = [SpanCount]int64{200, 180, 160, 120, 100}
)

// SupplyPeaks is what a supply must ride through at each time scale, in mW rounded down.
//
// The higher column binds a supply above 450 W that has the 12-contact card plug (12VHPWR or 12V-2x6); the lower one any
// other ATX 3.x supply. Edition 2.x and an unknown edition promise nothing beyond the rating: the answer is the rating at
// every time scale and promised is false.
func SupplyPeaks(ratingMW int64, revision Revision, hasCardPlug12 bool) (peaks Peaks, promised bool) {
	if revision != Revision30 && revision != Revision31 {
		return SteadyPeaks(ratingMW), false
	}
	percent := smallPercent
	if hasCardPlug12 && ratingMW > LargeSupplyMW {
		percent = largePercent
	}
	for s := range peaks {
		peaks[s] = ratingMW * percent[s] / 100
	}
	return peaks, true
}

// SpanDutyPermille is the greatest share of time, in thousandths, that a supply may be held at the excursion of that span.
//
// Source: ATX12VO guide rev. 2.01, Table 3-3.
func SpanDutyPermille(s Span) int64 {
	switch s {
	case Span100us:
		return 50
	case Span1ms:
		return 80
	case Span10ms:
		return 125
	case Span100ms:
		return 250
	}
	return 1000
}

// DutyLowMW is the level in mW to hold between peaks so that the RMS power equals the rating:
//
//	low = rating · sqrt((1 − D·k²) / (1 − D)),  k = peak ÷ rating, D = duty
//
// Range: 0 ≤ D < 1 and D·k² ≤ 1; beyond it no level keeps the RMS at the rating and an error is returned. Rounded down.
//
// Source: ATX12VO guide rev. 2.01, Table 3-4; the formula gives all four rows to within 0.5 W.
func DutyLowMW(ratingMW, peakPercent, dutyPermille int64) (int64, error) {
	if ratingMW < 0 || peakPercent < 0 || dutyPermille < 0 || dutyPermille >= 1000 {
		return 0, fmt.Errorf("duty cycle: rating %d mW, peak %d %%, duty %d ‰: out of range", ratingMW, peakPercent, dutyPermille)
	}
	// 1 − D·k² over 1 − D with D in thousandths and k in hundredths: both scaled by 10^7.
	above := 10_000_000 - dutyPermille*peakPercent*peakPercent
	if above < 0 {
		return 0, errPeakTooLong
	}
	below := 10_000_000 - dutyPermille*10_000
	return int64(math.Floor(float64(ratingMW) * math.Sqrt(float64(above)/float64(below)))), nil
}

var errPeakTooLong = errors.New("duty cycle: the peaks alone exceed the rating in RMS")
