package link

// televisionModes are the CTA-861 timings in use on HDMI for television modes. Each also serves the rate set by
// 1000/1001, whose clock is 0.1 % lower.
//
// Source: clocks, CTA-861 (VIC 16, 63, 95, 97, 118, 196, 199, 201) and VESA DMT 0x55; totals from memory, checked by
// htotal · vtotal · rate = clock.
var televisionModes = [...]struct {
	width, height, refreshHz int64
	timing                   Timing
}{
	{1280, 720, 60, Timing{74_250, 1650, 750}},
	{1920, 1080, 60, Timing{148_500, 2200, 1125}},
	{1920, 1080, 120, Timing{297_000, 2200, 1125}},
	{3840, 2160, 30, Timing{297_000, 4400, 2250}},
	{3840, 2160, 60, Timing{594_000, 4400, 2250}},
	{3840, 2160, 120, Timing{1_188_000, 4400, 2250}},
	{7680, 4320, 30, Timing{1_188_000, 9000, 4400}},
	{7680, 4320, 60, Timing{2_376_000, 9000, 4400}},
	{7680, 4320, 120, Timing{4_752_000, 9000, 4400}},
}

// TelevisionTiming is the CTA-861 timing an HDMI source normally uses for a television mode. A rate set by 1000/1001 gets
// the timing of the whole rate, whose need is the greater. ok is false for a mode that is not a television mode.
func TelevisionTiming(width, height, refreshMilliHz int64) (timing Timing, ok bool) {
	for _, m := range televisionModes {
		exact := m.refreshHz * 1000
		if m.width == width && m.height == height && (refreshMilliHz == exact || isVideoRate(refreshMilliHz, exact)) {
			return m.timing, true
		}
	}
	return Timing{}, false
}

// isVideoRate says whether a rate is the whole rate times 1000/1001, to the mHz or rounded to 10 mHz (59.94).
func isVideoRate(milliHz, wholeMilliHz int64) bool {
	down := wholeMilliHz * 1000 / 1001
	return milliHz == down || milliHz == down+1 || milliHz == (down+5)/10*10
}
