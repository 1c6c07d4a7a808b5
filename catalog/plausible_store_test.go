package catalog

import (
	"testing"

	"slipfit/core/part"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// laneMBs is what one PCIe lane carries each way before packet overhead: 8, 16, 32 GT/s with 128b/130b coding (base
// specifications 3.0, 4.0, 5.0), in MB/s.
var laneMBs = map[unit.Release]float64{3000: 8e3 * 128 / 130 / 8, 4000: 16e3 * 128 / 130 / 8, 5000: 32e3 * 128 / 130 / 8}

func TestModules(t *testing.T) {
	s := stock(t)
	lengths := map[unit.Whole]int{}
	one, two, sink, bare, serial := 0, 0, 0, 0, 0
	for _, d := range s.Drives {
		if d.Form != part.FormM2 {
			continue
		}
		lengths[known(t, d.Module, d.ID)]++
		above := mm(d.Above)
		switch {
		case d.Sink.Or(false): // a module with its own sink is about 8 to 20 mm tall (common practice)
			sink++
			require.True(t, above >= 8 && above <= 20, "%s: %v mm", d.ID, above)
		default: // component heights S1 to S3, D1 to D5: 1.20, 1.35, 1.50 (PCI-SIG M.2, from memory)
			bare++
			require.Contains(t, []float64{1.2, 1.35, 1.5}, above, d.ID)
		}
		if d.TwoSided.Or(false) {
			two++
			require.NotContains(t, []unit.Whole{30, 42}, d.Module.Or(0), d.ID)
		} else {
			one++
		}
		// key M: nine 3.3 V pins of 0.5 A, 14.85 W; key B, as a SATA module also fits, 8.25 W (pin-out, from memory)
		require.LessOrEqual(t, w(d.Power), 14.85, d.ID)
		if d.Bus == part.BusSATA {
			serial++
			require.LessOrEqual(t, w(d.Power), 8.25, d.ID)
			continue
		}
		bus := laneMBs[d.PCIe.Or(0)] * float64(d.Lanes.Or(0))
		require.LessOrEqual(t, float64(d.Read.Or(0)), bus*0.96, "%s: reads faster than its lanes carry", d.ID)
		require.Greater(t, float64(d.Read.Or(0)), bus*0.5, "%s: needs its generation", d.ID)
	}
	for _, length := range []unit.Whole{30, 42, 80, 110} {
		require.GreaterOrEqual(t, lengths[length], 2, "length %d", length)
	}
	for name, n := range map[string]int{"single-sided": one, "two-sided": two, "with a heat-sink": sink, "without": bare, "sata": serial} {
		require.GreaterOrEqual(t, n, 2, name)
	}
	require.LessOrEqual(t, minSinkAir(s, true), minSinkAir(s, false), "a sink of its own helps")
}

func minSinkAir(s *part.Stock, sink bool) unit.Resistance {
	low := unit.Resistance(1 << 40)
	for _, d := range s.Drives {
		if d.Form == part.FormM2 && d.Sink.Or(false) == sink {
			low = min(low, d.SinkAir.Or(low))
		}
	}
	return low
}

func TestDrives(t *testing.T) {
	disks := 0
	for _, d := range stock(t).Drives {
		require.LessOrEqual(t, d.Write.Or(0), d.Read.Or(0), d.ID)
		require.Less(t, w(d.Idle), w(d.Power), d.ID)
		if d.Bus == part.BusSATA { // 6 Gbit/s, 8b/10b: 600 MB/s
			require.LessOrEqual(t, int64(d.Read.Or(0)), int64(600), d.ID)
		}
		switch d.Form {
		case part.Form25: // SFF-8201 heights, from memory
			require.Contains(t, []float64{5, 7, 9.5, 12.5, 15, 19}, mm(d.Height), d.ID)
		case part.Form35: // SFF-8301: 26.10 at most (or 19.99), from memory
			require.Contains(t, []float64{19.99, 20, 26.1}, mm(d.Height), d.ID)
		}
		if !d.Disk {
			writes := float64(d.Endures.Or(0)) * 1e6 / float64(d.Capacity.Or(1))
			require.True(t, writes >= 200 && writes <= 2000, "%s: %.0f full writes", d.ID, writes)
			require.Zero(t, d.Sound.Or(0), d.ID)
			require.Zero(t, d.SpinUp.Or(0), d.ID)
			continue
		}
		disks++
		require.LessOrEqual(t, int64(d.Read.Or(0)), int64(300), "%s: no disk reads so fast", d.ID)
		if d.Form == part.Form25 { // small disks start on 5 V
			require.Zero(t, d.SpinUp.Or(0), d.ID)
		} else { // about 1.4 to 2.2 A at 12 V (common practice)
			require.True(t, d.SpinUp.Or(0) >= 1400 && d.SpinUp.Or(0) <= 2200, d.ID)
		}
		require.True(t, d.Sound.Or(0) >= 20_000 && d.Sound.Or(0) <= 35_000, d.ID)
		require.LessOrEqual(t, d.Limit.Or(0), unit.Temperature(60_000), "%s: disks run to 60 degrees (common practice)", d.ID)
	}
	require.GreaterOrEqual(t, disks, 10)
}

// TestModulesFindASocket: every m.2 drive seats in some board's socket at full speed.
func TestModulesFindASocket(t *testing.T) {
	s := stock(t)
	for _, d := range s.Drives {
		if d.Form != part.FormM2 {
			continue
		}
		seats := 0
		for _, b := range s.Boards {
			for _, m := range b.M2 {
				long := false
				for _, l := range m.Lengths {
					long = long || l == d.Module.Or(0)
				}
				bus := d.Bus == part.BusSATA && m.SATA.Or(false) || d.Bus == part.BusPCIe && m.PCIe.Or(0) >= d.PCIe.Or(0) && m.Lanes.Or(0) >= d.Lanes.Or(0)
				if long && bus && (m.TwoSided.Or(false) || !d.TwoSided.Or(false)) && d.Above.Or(0) <= m.Height.Or(0) {
					seats++
				}
			}
		}
		require.Positive(t, seats, d.ID)
	}
}

// payload is what a display link carries, Gbit/s, after its coding (VESA DisplayPort and HDMI, as in the trade's tables).
var payload = map[part.LinkKind]float64{
	part.DPHBR2: 17.28, part.DPHBR3: 25.92, part.DPUHBR10: 38.69, part.DPUHBR135: 52.22, part.DPUHBR20: 77.37,
	part.HDMI14: 8.16, part.HDMI20: 14.40, part.HDMI21F40: 35.56, part.HDMI21F48: 42.67,
}

// TestMonitorsHaveAnInputForTheirMode: the best input carries the monitor's own mode, with stream compression to a third
// (VESA DSC, visually lossless at 8 to 12 bits a pixel) where the input accepts it. Blanking is taken as 6 %, about what
// reduced blanking (CVT-RB2) asks at these sizes.
func TestMonitorsHaveAnInputForTheirMode(t *testing.T) {
	compressed := 0
	for _, m := range stock(t).Monitors {
		need := float64(m.Width.Or(0)) * float64(m.Height.Or(0)) * float64(m.Refresh.Or(0)) * 3 * float64(m.Depth.Or(0)) * 1.06 / 1e9
		best, plain := 0.0, 0.0
		for _, in := range m.Inputs {
			carries := payload[in.Link]
			require.Positive(t, carries, in.Link)
			plain = max(plain, carries)
			if in.Compression.Or(false) {
				carries *= 3
			}
			best = max(best, carries)
		}
		require.GreaterOrEqual(t, best, need, "%s needs %.1f Gbit/s", m.ID, need)
		if plain < need {
			compressed++
		}
		// 7 to 12 pixels a millimetre of a big flat screen at the extremes; 3.3 to 9 usual (common practice)
		density := float64(m.Width.Or(0)) * float64(m.Width.Or(0))
		density = (density + float64(m.Height.Or(0))*float64(m.Height.Or(0))) / mm(m.Diagonal) / mm(m.Diagonal)
		require.True(t, density > 3*3 && density < 12*12, m.ID)
	}
	require.GreaterOrEqual(t, compressed, 2, "modes that no input carries without compression")
}

func TestShopCarriesItsLabour(t *testing.T) {
	s := stock(t)
	require.Equal(t, "EUR", s.Shop.Currency)
	require.NotEmpty(t, s.Shop.Labour)
	uses := map[part.ServiceUse]int{}
	for _, v := range s.Services {
		uses[v.Use]++
		if minutes, ok := v.Minutes.Get(); ok { // workshop rates lie between 20 and 90 an hour (common practice)
			rate := float64(v.Price) / 100 / float64(minutes) * 60
			require.True(t, rate >= 20 && rate <= 90, "%s: %.0f an hour", v.ID, rate)
		}
	}
	for _, use := range (part.ServiceUse)("").Values() {
		require.Positive(t, uses[part.ServiceUse(use)], use)
	}
	cards := map[part.CardUse]int{}
	for _, c := range s.Cards {
		cards[c.Use]++
	}
	for _, use := range (part.CardUse)("").Values() {
		require.Positive(t, cards[part.CardUse(use)], use)
	}
}
