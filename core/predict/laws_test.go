package predict_test

import (
	"testing"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/predict"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// at solves everything at work in one room.
func at(t *testing.T, b *build.Build, roomC, altitudeM float64) *predict.Run {
	t.Helper()
	var n brief.Needs
	n.Place.Room.Set(unit.Temperature(roomC * 1000))
	n.Place.Altitude.Set(unit.Whole(altitudeM))
	return solved(t, b, &n)
}

func solved(t *testing.T, b *build.Build, n *brief.Needs) *predict.Run {
	t.Helper()
	var p predict.Predictor
	f := p.Forecast(b, n)
	require.NotNil(t, f)
	r := f.Run(0, predict.Ordinary)
	require.Empty(t, r.Missing)
	require.NoError(t, r.Err)
	return r
}

// What may differ between two solutions that physics calls equal, K.
const hair = 0.005

// A hotter room and thinner air cool no part that steers fans of its own, and a part that is held back holds no more. One
// thing does escape this law: case fans that turn faster for warmer case air draw more through a radiator that takes room air.
func TestHotterAndHigherCoolNothing(t *testing.T) {
	m := newMaker(t, 3)
	for range 400 {
		b := m.build()
		low := at(t, b, 20, 0)
		for name, r := range map[string]*predict.Run{"12 K hotter": at(t, b, 32, 0), "at 2000 m": at(t, b, 20, 2000)} {
			for i := range low.Parts {
				if i == 0 && b.Cooler.Liquid != nil && b.Face != part.Top && b.Face != part.Rear {
					continue
				}
				if i == 1 && b.Graphics.Fans.Or(0) == 0 {
					continue
				}
				require.GreaterOrEqual(t, r.Parts[i].TempC.Expected, low.Parts[i].TempC.Expected-hair, "%s: %s in %s %s", name, low.Parts[i].Name, b.Case.ID, b.Layout.ID)
				require.LessOrEqual(t, r.Parts[i].HeldW.Expected, low.Parts[i].HeldW.Expected+hair, "%s: %s in %s %s", name, low.Parts[i].Name, b.Case.ID, b.Layout.ID)
			}
		}
	}
}

// More work in any part makes no part cooler that steers its own fans, and takes more from the wall.
func TestMoreWorkIsWarmer(t *testing.T) {
	m := newMaker(t, 4)
	for range 300 {
		b := m.build()
		var n brief.Needs
		n.Loads = []brief.Load{{Activity: "half", Processor: 50_000, Graphics: 50_000, Memory: 50_000, Drives: 20_000}}
		n.Place.Hottest = n.Place.Room
		half := solved(t, b, &n)
		more := n
		more.Loads = []brief.Load{{Activity: "more", Processor: 80_000, Graphics: 80_000, Memory: 80_000, Drives: 20_000}}
		r := solved(t, b, &more)
		for i := range half.Parts {
			require.GreaterOrEqual(t, r.Parts[i].TempC.Expected, half.Parts[i].TempC.Expected-hair, "%s in %s", half.Parts[i].Name, b.Case.ID)
		}
		require.Greater(t, r.WallW.Expected, half.WallW.Expected)
	}
}

// A radiator with more sections, each with its fan, all else equal, never warms the processor.
func TestLargerRadiatorNeverWarmsTheProcessor(t *testing.T) {
	m := newMaker(t, 6)
	for n := 0; n < 150; {
		b := m.build()
		if b.Cooler.Liquid == nil || b.Cooler.Liquid.Sections.Or(9) >= b.Mount().Fans.Or(0) {
			continue
		}
		n++
		small := at(t, b, 24, 0)
		cooler, liquid := *b.Cooler, *b.Cooler.Liquid
		liquid.Sections.Set(liquid.Sections.Or(1) + 1)
		cooler.Fans.Set(liquid.Sections.Or(1))
		cooler.Liquid = &liquid
		larger := *b
		larger.Cooler = &cooler
		// the fans that a longer radiator pushes out of their places stay, so that all else is equal
		l := *b.Layout
		l.FanPlaces = nil
		for _, p := range b.Layout.FanPlaces {
			p.Fans.Set(p.Fans.Or(0) + 1)
			l.FanPlaces = append(l.FanPlaces, p)
		}
		larger.Layout = &l
		require.LessOrEqual(t, at(t, &larger, 24, 0).Parts[0].TempC.Expected, small.Parts[0].TempC.Expected+hair, "%s %s on the %s with %s", b.Case.ID, b.Layout.ID, b.Face, b.Cooler.ID)
	}
}

// sandwich is a small case of two chambers with a three-slot card and, where it is asked for, a radiator of three sections.
func sandwich(t *testing.T, radiator part.Face) *build.Build {
	t.Helper()
	s := stock(t)
	find := func(list []*part.Case, id string) *part.Case {
		c, ok := part.Find(list, id)
		require.True(t, ok)
		return c
	}
	c := *find(s.Cases, "orrelund-sill-16")
	l := c.Layouts[0]
	mount := part.RadiatorMount{FanSizes: []unit.Length{120 * unit.Millimetre}, Fans: unit.Known(unit.Whole(3))}
	l.Radiators = nil
	for _, f := range []part.Face{part.Top, part.Front, part.Side, part.Bottom} {
		mount.Face = f
		l.Radiators = append(l.Radiators, mount)
	}
	l.FanPlaces, c.Fans = nil, nil
	c.Layouts = []part.Layout{l}
	b := &build.Build{Case: &c, Layout: &c.Layouts[0], Kits: 1, Face: radiator}
	b.Board, _ = part.Find(s.Boards, "mistrand-loom-it80")
	b.Processor = keep(s.Processors, func(p *part.Processor) bool { return p.Socket == b.Board.Socket && p.Sustained.Or(0) >= 200_000 })[0]
	want := 0
	if radiator != "" {
		want = 3
	}
	b.Cooler = keep(s.Coolers, func(k *part.Cooler) bool {
		if want == 0 {
			return k.Air != nil && k.Rated.Or(0) >= 130_000 && k.Air.Height.Or(0) <= 76*unit.Millimetre
		}
		return k.Liquid != nil && int(k.Liquid.Sections.Or(0)) == want && k.Liquid.FanSize.Or(0) == 120*unit.Millimetre
	})[0]
	if want == 0 {
		b.Processor = keep(s.Processors, func(p *part.Processor) bool { return p.Socket == b.Board.Socket && p.Sustained.Or(0) == 125_000 })[0]
	}
	b.Memory = s.Memory[0]
	b.Graphics = keep(s.Graphics, func(g *part.Graphics) bool { return g.Slots.Or(0) == 3 && g.Power.Or(0) >= 300_000 })[0]
	b.Supply = keep(s.Supplies, func(p *part.Supply) bool { return p.Form == part.SupplySFX && p.Rating.Or(0) >= 850_000 })[0]
	b.Boot = build.Storage{Drive: s.Drives[0], Count: 1}
	return b
}

// The radiator of a small sandwich case takes room air by the front, bottom or side and case air by the top: with room air
// the processor is cooler and the air of its chamber warmer.
func TestRadiatorInRoomAirOrCaseAir(t *testing.T) {
	exhaust := at(t, sandwich(t, part.Top), 24, 0)
	require.Len(t, exhaust.Zones, 2)
	for _, f := range []part.Face{part.Front, part.Bottom, part.Side} {
		intake := at(t, sandwich(t, f), 24, 0)
		require.Less(t, intake.CoolantC.Expected, exhaust.CoolantC.Expected-0.3, "%s", f)
		require.Greater(t, intake.Zones[0].AirC.Expected, exhaust.Zones[0].AirC.Expected+1, "%s", f)
	}
}

// When the plate moves towards the cooler's side, the card's chamber takes more of the faces that span both: the card's
// chamber is cooler, the board's warmer.
func TestPlateMoves(t *testing.T) {
	for _, radiator := range []part.Face{"", part.Top} {
		b := sandwich(t, radiator)
		near := at(t, b, 24, 0)
		b.Plate = 5
		far := at(t, b, 24, 0)
		require.Less(t, far.Zones[1].AirC.Expected, near.Zones[1].AirC.Expected)
		if radiator == "" { // a radiator over both chambers turns faster as it takes more of the card's air
			require.Greater(t, far.Zones[0].AirC.Expected, near.Zones[0].AirC.Expected)
			require.Less(t, far.Parts[1].TempC.Expected, near.Parts[1].TempC.Expected)
		}
	}
}

// With the sides closed the card breathes the air of its chamber: it is hotter, or is held back.
func TestClosedSide(t *testing.T) {
	for _, radiator := range []part.Face{"", part.Top, part.Front} {
		b := sandwich(t, radiator)
		open := at(t, b, 24, 0)
		c := *b.Case
		c.Openings = nil
		for _, o := range b.Case.Openings {
			if o.Face != part.Side {
				c.Openings = append(c.Openings, o)
			}
		}
		b.Case = &c
		closed := at(t, b, 24, 0)
		require.Greater(t, closed.Zones[1].AirC.Expected, open.Zones[1].AirC.Expected+2)
		require.Greater(t, closed.Parts[1].TempC.Expected, open.Parts[1].TempC.Expected+2)
		require.LessOrEqual(t, closed.Parts[1].HeldW.Expected, open.Parts[1].HeldW.Expected)
	}
}

// At 2000 m the air carries 0.78 of what it carries at sea level (U.S. Standard Atmosphere 1976), at any speed of the fans:
// everything is hotter.
func TestThinAir(t *testing.T) {
	for _, radiator := range []part.Face{"", part.Top, part.Front} {
		b := sandwich(t, radiator)
		low, high := at(t, b, 24, 0), at(t, b, 24, 2000)
		require.Greater(t, high.Parts[0].TempC.Expected, low.Parts[0].TempC.Expected+0.3)
		require.Greater(t, high.Parts[1].TempC.Expected, low.Parts[1].TempC.Expected+1)
		require.GreaterOrEqual(t, high.ChairDBA.Expected, low.ChairDBA.Expected)
	}
}

// A case with neither fans nor openings and a card without fans comes to rest: heat leaves by seams and walls.
func TestClosedAndFanless(t *testing.T) {
	s := stock(t)
	b := sandwich(t, "")
	c := *b.Case
	c.Openings = nil
	b.Case = &c
	b.Graphics = keep(s.Graphics, func(g *part.Graphics) bool { return g.Fans.Or(1) == 0 })[0]
	cooler := *b.Cooler
	cooler.Fans.Set(0)
	b.Cooler = &cooler
	r := at(t, b, 24, 0)
	require.InEpsilon(t, r.HeatInW, r.CarriedW+r.WallsW+r.DuctW, 1e-6)
	require.Less(t, r.Parts[0].Kept.Expected, 0.9)
}
