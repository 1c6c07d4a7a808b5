package predict

import (
	"math"
	"testing"

	"slipfit/catalog"
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/feed"
	"slipfit/core/part"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// The level at the chair is the energy sum of every group by the fan law, 50·lg of speed, and 6.02 dB more at half the
// distance (ISO 3744, ASHRAE Handbook).
func TestLevelAddsUp(t *testing.T) {
	b := tower(t, "aerlitt-loop-240", part.Top)
	s, err := catalog.Embedded()
	require.NoError(t, err)
	disk, ok := part.Find(s.Drives, "archivane-rack-8-tb")
	require.True(t, ok)
	b.Archive = build.Storage{Drive: disk, Count: 2}
	n := &brief.Needs{}
	n.Place.Chair = unit.Known(unit.Length(1_000_000))
	var p Predictor
	r := p.Forecast(b, n).Run(0, Ordinary)

	group := func(count int, dba, share float64) float64 { // pressure at 1 m
		return math.Max(dba+50*math.Log10(share), math.Min(dba, 20-7.9818)) + 10*math.Log10(float64(count))
	}
	energy := 0.0
	add := func(level float64) { energy += math.Pow(10, level/10) }
	for i, f := range r.Fans {
		figures := []part.FanFigures{b.Case.Fans[0].FanFigures, b.Case.Fans[1].FanFigures, b.Cooler.Fan}
		at := map[string]int{"front fans of the case": 0, "rear fans of the case": 1, "top radiator": 2}[f.Name]
		want := group(f.Count, float64(figures[at].Sound.Or(0))/1000, f.RPM.Expected/f.FullRPM)
		require.InDelta(t, want, f.DBA.Expected, 0.001, "%d %s", i, f.Name)
		add(want)
	}
	require.Len(t, r.Fans, 3)
	require.Len(t, r.Cooling, 2)
	add(group(1, float64(b.Graphics.Sound.Or(0))/1000, r.Cooling[0].RPM.Expected/r.Cooling[0].FullRPM))
	add(group(1, float64(b.Supply.Fan.Sound.Or(0))/1000, r.Cooling[1].RPM.Expected/r.Cooling[1].FullRPM))
	add(float64(b.Cooler.Liquid.PumpSound.Or(0)) / 1000)
	add(float64(disk.Sound.Or(0))/1000 + 10*math.Log10(2))
	require.InDelta(t, 10*math.Log10(energy), r.ChairDBA.Expected, 0.001)

	near := *n
	near.Place.Chair = unit.Known(unit.Length(500_000))
	require.InDelta(t, r.ChairDBA.Expected+20*math.Log10(2), p.Forecast(b, &near).Run(0, Ordinary).ChairDBA.Expected, 1e-9)

	only := &build.Build{Cooler: b.Cooler, Archive: b.Archive}
	open := p.Open(only, n, brief.Load{}, Ordinary)
	require.Empty(t, open.Missing)
	require.Equal(t, 1.0, open.ChairM)
	energy = 0
	add(group(2, float64(b.Cooler.Fan.Sound.Or(0))/1000, float64(b.Cooler.Fan.Lowest.Or(0))/float64(b.Cooler.Fan.Speed.Or(1))))
	add(float64(b.Cooler.Liquid.PumpSound.Or(0)) / 1000)
	add(float64(disk.Sound.Or(0))/1000 + 10*math.Log10(2))
	require.InDelta(t, 10*math.Log10(energy), open.ChairDBA, 0.001)
}

// Efficiency is the sheet's own load points where it has them; else between its level's floor and the next level's, 80 PLUS
// programme at 230 V and 115 V: Bronze 85/88/85 and 82/85/82 %, Silver 87/90/87 and 85/88/85 % at 20, 50 and 100 %.
func TestWallPowerFollowsTheTables(t *testing.T) {
	for _, c := range []struct {
		line       feed.Line
		loadW      float64
		floor, top float64
	}{
		{feed.Line230, 100, 0.85, 0.87}, {feed.Line230, 250, 0.88, 0.90}, {feed.Line230, 500, 0.85, 0.87}, {feed.Line230, 175, 0.865, 0.885},
		{feed.Line115, 100, 0.82, 0.85}, {feed.Line115, 250, 0.85, 0.88}, {feed.Line115, 500, 0.82, 0.85},
	} {
		s := supply{rating: 500_000, level: feed.LevelBronze}
		share, u := s.efficiency(c.loadW, c.line)
		require.InDelta(t, (c.floor+c.top)/2, share, 1e-4, "%v", c)
		require.InDelta(t, (c.top-c.floor)/4, u, 1e-4, "%v", c)
	}
	own := supply{rating: 500_000, level: feed.LevelGold, curve: []feed.CurvePoint{{LoadShare: 20_000, Efficiency: 88_000}, {LoadShare: 50_000, Efficiency: 91_000}, {LoadShare: 100_000, Efficiency: 88_000}}}
	share, _ := own.efficiency(375, feed.Line230)
	require.InDelta(t, 0.895, share, 1e-5)
	share, _ = own.efficiency(600, feed.Line230)
	require.InDelta(t, 0.88, share, 1e-5, "past the rating as at the rating")
}

// A supply's fan stands under its sheet's load, turns at its lowest up to a fifth of the rating and at full speed at all of it.
func TestSupplyFan(t *testing.T) {
	s := supply{rating: 500_000, zeroToW: 150, low: 600}
	s.fan.RatedRPM = 1600
	require.Zero(t, s.rpm(149))
	require.Equal(t, 600+1000*(0.3-0.2)/0.8, s.rpm(150))
	require.Equal(t, 1600.0, s.rpm(500))
	require.Equal(t, 1600.0, s.rpm(700))
	s.low = 0
	require.Equal(t, 480.0, (&supply{rating: 500_000, fan: s.fan}).rpm(50), "30 % of full speed where it may stand still")
}

// A predictor keeps the forecast of a build and needs, and makes a new one for any other; a forecast stays true when the
// build is changed under it.
func TestForecastIsKept(t *testing.T) {
	b, n := tower(t, "norbrusk-post-120", ""), &brief.Needs{}
	var p Predictor
	f := p.Forecast(b, n)
	require.Same(t, f, p.Forecast(b, n))
	require.Same(t, f.Run(0, Ordinary), f.Run(0, Ordinary))
	before := f.Run(1, Ordinary).WallW
	b.Kits = 2
	other := p.Forecast(b, n)
	require.NotSame(t, f, other)
	require.Greater(t, other.Run(0, Ordinary).WallW.Expected, f.Run(0, Ordinary).WallW.Expected)
	require.Equal(t, before, f.Run(1, Ordinary).WallW)
	require.NotSame(t, other, p.Forecast(b, &brief.Needs{}))
	b.Cooler = nil
	require.Nil(t, p.Forecast(b, n), "no cooler, no forecast")
}

// What a sheet does not state is named, and only what rests on it is unknown.
func TestMissingFiguresAreNamed(t *testing.T) {
	b := tower(t, "norbrusk-post-120", "")
	cooler, drive, board := *b.Cooler, *b.Boot.Drive, *b.Board
	cooler.Fan.Sound = unit.Figure[unit.Sound]{}
	drive.SinkAir = unit.Figure[unit.Resistance]{}
	board.Sustained = unit.Figure[unit.Power]{}
	b.Cooler, b.Boot.Drive, b.Board = &cooler, &drive, &board
	var p Predictor
	r := p.Forecast(b, nil).Run(0, Ordinary)
	require.Empty(t, r.Missing)
	require.Equal(t, []string{"norbrusk-post-120: fan.sound_dba"}, r.Unheard)
	require.Equal(t, []string{"tessorin-folio-4-1-tb: sink_k_w"}, r.Drives[0].Missing)
	require.Equal(t, []string{"mistrand-loom-t80: processor_power_w"}, r.Board.Missing)
	cooler.Fan.Speed = unit.Figure[unit.Speed]{}
	b.Kits = 2
	r = p.Forecast(b, nil).Run(0, Ordinary)
	require.Equal(t, []string{"norbrusk-post-120: fan.speed_rpm"}, r.Missing)
	require.Len(t, r.Parts, 2, "the parts are named all the same")
}
