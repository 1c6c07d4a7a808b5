// Package link holds the models of what data links carry: display timings against display links, buses, memory. It knows
// no part and no rule. Clocks are in kHz, refresh rates in millihertz (mHz), rates in bit/s or byte/s; figures that decide
// a verdict are exact integers.
package link

import "fmt"

// Timing is a display timing: the pixel clock and the totals that include blanking.
type Timing struct {
	ClockKHz int64
	HTotal   int64 // pixels
	VTotal   int64 // lines
}

// RefreshMicroHz is the refresh rate the timing achieves, in µHz rounded down: clock ÷ (htotal · vtotal). It is not
// always the rate asked for.
func (t Timing) RefreshMicroHz() int64 {
	total := t.HTotal * t.VTotal
	if total == 0 {
		return 0
	}
	return t.ClockKHz * 1_000_000_000 / total
}

// Blanking is a way of the VESA Coordinated Video Timings standard to set the blanking.
type Blanking int

// Kinds of blanking.
const (
	BlankingCVT Blanking = iota // normal
	BlankingRB1                 // reduced blanking, CVT 1.1
	BlankingRB2                 // reduced blanking version 2, CVT 1.2
	// BlankingRB2Video is RB2 with the clock set by 1000/1001 (59.94 Hz for 60 Hz asked).
	BlankingRB2Video
)

// Limits of ComputeTiming; all intermediate products stay within int64.
const (
	maxPixels     = 32_768
	maxRefreshMHz = 1_000_000 // 1000 Hz in mHz
)

// ComputeTiming is the timing VESA CVT gives for square pixels, progressive scan and no margins.
//
// Formulae, with f the rate asked for and hp the estimated line time in µs:
//
//	CVT  hp = (10⁶/f − 550) / (V + 3); vtotal = V + 3 + max(⌊550/hp⌋ + 1, vsync + 7)
//	     duty = max(20, 30 − 0.3·hp) %; hblank = ⌊H·duty/(100 − duty)/16⌋·16; clock = ⌊htotal/hp⌋ to 0.25 MHz
//	RB   hp = (10⁶/f − 460) / V; vtotal = V + max(⌊460/hp⌋ + 1, least blanking)
//	     htotal = H + 160 (RB1) or H + 80 (RB2); clock = ⌊f·htotal·vtotal⌋ to 0.25 MHz (RB1) or 1 kHz (RB2)
//
// They are evaluated in exact integers: floating point lands 1 kHz low for some RB2 modes. Where readings of the standard
// differ on the least back porch (6 or 7 lines; it matters only at low line rates) 7 is taken, the one that asks more.
// RB1 clocks follow the final line count, as the RB1 rows of VESA DMT do.
//
// Range: 1 to 32768 pixels either way, 1 mHz to 1000 Hz; beyond it an error.
//
// Source: VESA CVT 1.1 and 1.2.
func ComputeTiming(width, height, refreshMilliHz int64, blanking Blanking) (Timing, error) {
	if width < 1 || height < 1 || width > maxPixels || height > maxPixels {
		return Timing{}, fmt.Errorf("display mode %d × %d: expected 1 to %d pixels either way", width, height, maxPixels)
	}
	if refreshMilliHz < 1 || refreshMilliHz > maxRefreshMHz {
		return Timing{}, fmt.Errorf("refresh rate %d mHz: expected 1 to %d", refreshMilliHz, maxRefreshMHz)
	}
	switch blanking {
	case BlankingCVT:
		return normalTiming(width, height, refreshMilliHz), nil
	case BlankingRB1, BlankingRB2, BlankingRB2Video:
		return reducedTiming(width, height, refreshMilliHz, blanking), nil
	}
	return Timing{}, fmt.Errorf("blanking %d: expected one of the four kinds", int(blanking))
}

func normalTiming(h, v, f int64) Timing {
	// hp = a/b µs.
	a := 1_000_000_000 - 550*f
	b := f * (v + 3)
	vtotal := v + 3 + max(550*b/a+1, vsyncLines(h, v)+7)
	var hblank int64
	if 3*a > 100*b { // duty under 20 %
		hblank = h / 64 * 16
	} else {
		hblank = h * (300*b - 3*a) / (16 * (700*b + 3*a)) * 16
	}
	htotal := h + hblank
	return Timing{ClockKHz: 4 * htotal * b / a * 250, HTotal: htotal, VTotal: vtotal}
}

func reducedTiming(h, v, f int64, blanking Blanking) Timing {
	htotal, least := h+160, 3+vsyncLines(h, v)+7
	if blanking != BlankingRB1 {
		htotal, least = h+80, 1+8+6
	}
	vtotal := v + max(460*f*v/(1_000_000_000-460*f)+1, least)
	product := f * htotal * vtotal // mHz
	var clock int64
	switch blanking {
	case BlankingRB1:
		clock = product / 250_000_000 * 250
	case BlankingRB2:
		clock = product / 1_000_000
	case BlankingRB2Video:
		clock = product / 1_001_000
	}
	return Timing{ClockKHz: clock, HTotal: htotal, VTotal: vtotal}
}

// vsyncLines is the vertical sync width by aspect ratio.
func vsyncLines(h, v int64) int64 {
	switch {
	case 3*h == 4*v:
		return 4
	case 9*h == 16*v:
		return 5
	case 10*h == 16*v:
		return 6
	case 4*h == 5*v, 9*h == 15*v:
		return 7
	}
	return 10
}
