package catalog

import (
	"math"
	"testing"

	"slipfit/core/part"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// TestFans checks case fans, and the fans of cases, coolers and supplies, against the 4-Wire PWM fan specification and the fan
// laws.
func TestFans(t *testing.T) {
	s := stock(t)
	all := map[string]part.FanFigures{}
	for _, f := range s.Fans {
		all[f.ID] = f.FanFigures
		// hole pitch by frame (CAD model; 80 and 92 mm by industry pattern); one 140 mm frame carries the 120 mm pattern
		pitch := map[float64]float64{80: 71.5, 92: 82.5, 120: 105, 140: 124.5, 180: 153, 200: 154}[mm(f.Size)]
		if mm(f.Holes) != pitch {
			require.Equal(t, 140.0, mm(f.Size), f.ID)
			require.Equal(t, 105.0, mm(f.Holes), f.ID)
		}
		require.Less(t, mm(f.Holes), mm(f.Size), f.ID)
	}
	for _, c := range s.Cases {
		for _, f := range c.Fans {
			all[c.ID+" "+string(f.Face)] = f.FanFigures
		}
	}
	for _, c := range s.Coolers {
		all[c.ID] = c.Fan
	}
	var size, speed, flow, sound, tip []float64
	for id, f := range all {
		require.Contains(t, []float64{15, 25, 30, 38}, mm(f.Thickness), "%s: slim, standard, thick (common practice)", id)
		amps := float64(f.Current.Or(0)) / 1000
		require.LessOrEqual(t, amps, 1.5, "%s: steady current, section 2.1.2", id)
		rpm, low := float64(f.Speed.Or(0)), float64(f.Lowest.Or(0))
		require.LessOrEqual(t, low, 0.3*rpm+1, "%s: lowest speed, section 3", id)
		// aerodynamic work at half the free flow and half the shut-off pressure stays under the electrical power
		cube := float64(f.Flow.Or(0)) / 1000 / 3600
		pascal := float64(f.Pressure.Or(0)) / 1000
		require.Less(t, cube/2*pascal/2, 0.5*amps*12, "%s: fan efficiency", id)
		size, speed = append(size, mm(f.Size)), append(speed, rpm)
		flow, sound = append(flow, cube), append(sound, float64(f.Sound.Or(0)))
		tip = append(tip, math.Log(rpm)*50+math.Log(mm(f.Size))*60)
	}
	require.Greater(t, len(all), 90)
	require.GreaterOrEqual(t, spearman(tip, sound), 0.9, "sound rises with speed and size, fan law")
	var swept []float64
	for i := range size {
		swept = append(swept, size[i]*size[i]*size[i]*speed[i])
	}
	require.GreaterOrEqual(t, spearman(swept, flow), 0.85, "flow rises as speed times the cube of the size, fan law")
}

// TestAirCoolers: sink to air 0.08 to 0.25 K/W for towers; flat coolers reach 0.45 (common practice).
func TestAirCoolers(t *testing.T) {
	s := stock(t)
	air := keep(s.Coolers, func(c *part.Cooler) bool { return c.Air != nil })
	require.GreaterOrEqual(t, len(air), 25)
	low, high := 1e9, 0.0
	for _, c := range air {
		h, r := mm(c.Air.Height), float64(c.Air.Sink.Or(0))/1000
		low, high = min(low, h), max(high, h)
		switch {
		case h > 100:
			require.True(t, r >= 0.08 && r <= 0.31, "%s: %v K/W", c.ID, r)
		default:
			require.True(t, r >= 0.18 && r <= 0.5, "%s: %v K/W", c.ID, r)
		}
		rise := w(c.Rated) * r
		require.True(t, rise >= 20 && rise <= 36, "%s: rated for a rise of %.0f K", c.ID, rise)
		require.LessOrEqual(t, mm(c.Air.FanTop), h, "%s: the fan in its lowest place is not above the cooler", c.ID)
		require.LessOrEqual(t, mm(c.Air.UnderFan), h, c.ID)
		require.Equal(t, h <= 100, c.Air.Raise.Or(0) == 0, "%s: only a tower's fan moves up", c.ID)
		for _, reach := range []unit.Figure[unit.Length]{c.Air.ToMemory, c.Air.ToCard, c.Air.ToTop} {
			require.True(t, mm(reach) >= 30 && mm(reach) <= 80, c.ID)
		}
		require.Less(t, mm(c.Air.BaseReach), 60.0, c.ID)
	}
	require.Equal(t, 37.0, low)
	require.Equal(t, 168.0, high)
	correlate(t, "sink resistance falls with mass", air, -0.85, mass, func(c *part.Cooler) float64 { return float64(c.Air.Sink.Or(0)) })
}

// TestLiquidCoolers: nominal length is fans times fan size, tanks add 20 to 55 mm (common practice); UA of a 120 mm section 10 to
// 15 W/K, more by area for 140 mm; plate 0.03 to 0.08 K/W; coolant 0.5 to 2 l/min.
func TestLiquidCoolers(t *testing.T) {
	s := stock(t)
	sizes := map[float64]int{}
	for _, c := range s.Coolers {
		l := c.Liquid
		if l == nil {
			continue
		}
		fan, n := mm(l.FanSize), float64(l.Sections.Or(0))
		sizes[fan*n]++
		require.Equal(t, fan, mm(c.Fan.Size), "%s: its fans fit its radiator", c.ID)
		require.EqualValues(t, l.Sections.Or(0), c.Fans.Or(0), c.ID)
		require.True(t, mm(l.Length) >= fan*n+20 && mm(l.Length) <= fan*n+55, "%s: %v mm", c.ID, mm(l.Length))
		require.Equal(t, fan, mm(l.Width), c.ID)
		require.True(t, mm(l.Thickness) >= 20 && mm(l.Thickness) <= 45, c.ID)
		ua := float64(l.Conductance.Or(0)) / 1000
		area := fan * fan / 120 / 120
		require.True(t, ua >= 10*area && ua <= 15*area, "%s: %v W/K a section", c.ID, ua)
		plate := float64(l.Plate.Or(0)) / 1000
		require.True(t, plate >= 0.03 && plate <= 0.08, c.ID)
		litres := float64(l.CoolantFlow.Or(0)) / 60
		require.True(t, litres >= 0.5 && litres <= 2, "%s: %v l/min", c.ID, litres)
		require.InDelta(t, w(l.PumpPower), float64(l.PumpCurrent.Or(0))/1000*12, 0.1, "%s: pump watts at 12 V", c.ID)
		require.True(t, mm(l.Tube) >= 300 && mm(l.Tube) <= 500, c.ID)
		// what it is rated for leaves the coolant 10 to 16 K over the air, plate drop included at most 30 K
		rise := w(c.Rated) / (ua * n)
		require.True(t, rise >= 6 && rise <= 16, "%s: coolant %.1f K over air at its rating", c.ID, rise)
	}
	for _, nominal := range []float64{120, 240, 280, 360, 420} {
		require.Positive(t, sizes[nominal], "no %v mm radiator", nominal)
	}
}

// TestRadiatorsFindAMount: every radiator fits somewhere, and every mount takes one.
func TestRadiatorsFindAMount(t *testing.T) {
	s := stock(t)
	takes := func(m part.RadiatorMount, c *part.Cooler) bool {
		fits := false
		for _, size := range m.FanSizes {
			fits = fits || size == c.Liquid.FanSize.Or(0)
		}
		return fits && c.Liquid.Length.Or(0) <= m.Length.Or(0) && c.Liquid.Thickness.Or(0)+c.Fan.Thickness.Or(0) <= m.Thickness.Or(0)
	}
	liquid := keep(s.Coolers, func(c *part.Cooler) bool { return c.Liquid != nil })
	homes := map[string]int{}
	for _, c := range s.Cases {
		for _, l := range c.Layouts {
			for _, m := range l.Radiators {
				guests := 0
				for _, k := range liquid {
					if takes(m, k) {
						guests++
						homes[k.ID]++
					}
				}
				require.Positive(t, guests, "%s %s %s", c.ID, l.ID, m.Face)
			}
		}
	}
	for _, k := range liquid {
		require.Positive(t, homes[k.ID], "%s has no home", k.ID)
	}
}
