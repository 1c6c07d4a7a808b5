package rule

import (
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/feed"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// plannedShare is the share of a supply's rating that a build may load without end: the rest is for age, heat and the next
// card. Common practice.
const plannedShare = 90

// usbAllowance is what keyboard, mouse and sticks on the board's ports are taken to draw. Common practice.
const usbAllowance = 10 * unit.Watts

// restShare is what memory draws with nothing to do, in per cent of its draw at work. Common practice.
const restShare = 30

// loadSeats is the seats whose parts the supply feeds, and the supply.
var loadSeats = []build.Seat{build.Case, build.Board, build.Processor, build.Cooler, build.Memory, build.Graphics, build.Supply, build.Boot,
	build.Cache, build.Archive, build.Fans, build.Cards}

// steadyLoad is what the part in one seat draws without end with everything at work, mW.
func steadyLoad(v *View, s build.Seat) unit.Power {
	switch s {
	case build.Board:
		if v.Board != nil {
			return figure(v, v.Board.Own, &v.Board.Article, "own_power_w") + usbAllowance
		}
	case build.Processor:
		if v.Processor != nil {
			return figure(v, v.Processor.Sustained, &v.Processor.Article, "sustained_w")
		}
	case build.Memory:
		if v.Memory != nil {
			return figure(v, v.Memory.Power, &v.Memory.Article, "module_power_w") * modules(v)
		}
	case build.Graphics:
		if v.Graphics != nil {
			return figure(v, v.Graphics.Power, &v.Graphics.Article, "power_w")
		}
	case build.Boot:
		return driveLoad(v, v.Boot)
	case build.Cache:
		return driveLoad(v, v.Cache)
	case build.Archive:
		return driveLoad(v, v.Archive)
	case build.Case, build.Cooler, build.Fans:
		return airLoad(v, s)
	case build.Cards:
		var sum unit.Power
		for i := range v.Cards {
			c := &v.Cards[i]
			sum += figure(v, c.Card.Power, &c.Card.Article, "power_w") * unit.Power(c.Count)
		}
		return sum
	}
	return 0
}

// modules is the memory modules fitted.
func modules(v *View) unit.Power {
	return unit.Power(figure(v, v.Memory.Modules, &v.Memory.Article, "modules")) * unit.Power(v.Kits)
}

func driveLoad(v *View, s build.Storage) unit.Power {
	if s.Drive == nil {
		return 0
	}
	return figure(v, s.Drive.Power, &s.Drive.Article, "power_w") * unit.Power(s.Count)
}

// airLoad is what fans, pump and lighting of one seat draw.
func airLoad(v *View, s build.Seat) unit.Power {
	var sum unit.Power
	switch s {
	case build.Case:
		if v.Case == nil {
			return 0
		}
		for i := range v.Case.Fans {
			f := &v.Case.Fans[i]
			sum += at12(figure(v, f.Current, &v.Case.Article, "fans.current_a")) * unit.Power(figure(v, f.Count, &v.Case.Article, "fans.count"))
		}
		sum += lightLoad(v, v.Case.Lights, &v.Case.Article)
	case build.Cooler:
		if v.Cooler == nil {
			return 0
		}
		if n := figure(v, v.Cooler.Fans, &v.Cooler.Article, "fans"); n > 0 {
			sum += at12(figure(v, v.Cooler.Fan.Current, &v.Cooler.Article, "fan.current_a")) * unit.Power(n)
		}
		if v.Cooler.Liquid != nil {
			sum += figure(v, v.Cooler.Liquid.PumpPower, &v.Cooler.Article, "liquid.pump_w")
		}
		sum += lightLoad(v, v.Cooler.Lights, &v.Cooler.Article)
	case build.Fans:
		for i := range v.Fans {
			f := &v.Fans[i]
			each := at12(figure(v, f.Fan.Current, &f.Fan.Article, "current_a")) + lightLoad(v, f.Fan.Lights, &f.Fan.Article)
			sum += each * unit.Power(f.Count)
		}
	}
	return sum
}

// lightLoad is what lighting leads draw at their most.
func lightLoad(v *View, leads []part.Lead, owner *part.Article) unit.Power {
	var sum unit.Power
	for i := range leads {
		amperes := figure(v, leads[i].Current, owner, "lighting_leads.current_a")
		if leads[i].Kind == part.HeaderRGB {
			sum += at12(amperes)
		} else {
			sum += unit.Power(amperes) * 5
		}
	}
	return sum
}

// at12 is the power of a current at 12 V: mA × 12 V is mW.
func at12(i unit.Current) unit.Power { return unit.Power(i) * 12 }

// allOut is what all parts draw without end with everything at work.
func allOut(v *View) unit.Power {
	var sum unit.Power
	for _, s := range loadSeats {
		sum += steadyLoad(v, s)
	}
	return sum
}

// planned is what a supply is planned for.
func planned(v *View) unit.Power {
	return figure(v, v.Supply.Rating, &v.Supply.Article, "rating_w") * plannedShare / 100
}

// activityLoad is what all parts draw in one activity.
func activityLoad(v *View, l *brief.Load) unit.Power {
	var sum unit.Power
	for _, s := range loadSeats {
		sum += activityDraw(v, l, s)
	}
	return sum
}

// activityDraw is what the part in one seat draws in one activity: what it draws at rest and the activity's share of the way to its
// sustained power. Fans, cards and the board are taken at their most.
func activityDraw(v *View, l *brief.Load, s build.Seat) unit.Power {
	most := steadyLoad(v, s)
	switch {
	case s == build.Processor && v.Processor != nil:
		return between(figure(v, v.Processor.Idle, &v.Processor.Article, "idle_w"), most, l.Processor)
	case s == build.Graphics && v.Graphics != nil:
		return between(figure(v, v.Graphics.Idle, &v.Graphics.Article, "idle_w"), most, l.Graphics)
	case s == build.Memory:
		return between(most*restShare/100, most, l.Memory)
	case s == build.Boot, s == build.Cache, s == build.Archive:
		if d := v.holds(s); d.Drive != nil {
			return between(figure(v, d.Drive.Idle, &d.Drive.Article, "idle_w")*unit.Power(d.Count), most, l.Drives)
		}
	}
	return most
}

// between is a share of the way from the draw at rest to the draw at work, rounded up.
func between(rest, most unit.Power, share unit.Share) unit.Power {
	if most <= rest {
		return most
	}
	return rest + ((most-rest)*unit.Power(share)+99_999)/100_000
}

// wall is what a supply takes from the mains for a load.
type wall struct {
	load     unit.Power
	watts    unit.Power // taken from the mains, to plan with
	ppm      int64      // efficiency it rests on
	floorPPM int64      // least efficiency its level promises at that load
	known    bool       // false where the load is past the rating or the level has no such line
}

// wallOf is what the supply takes from the mains for a load: by its own load points where its sheet states them, else by the
// least its level promises at 115 V, where most supplies are tested; at 230 V they lose a little less.
func wallOf(v *View, load unit.Power) wall {
	w := wall{load: load}
	rating := int64(figure(v, v.Supply.Rating, &v.Supply.Article, "rating_w"))
	w.floorPPM, w.known = feed.EfficiencyPPM(feed.LevelNamed(string(v.Supply.Level)), feed.Line115, int64(load), rating)
	w.ppm = w.floorPPM
	if n := len(v.Supply.Curve); n > 0 {
		var room [12]feed.CurvePoint
		points := room[:0]
		for _, p := range v.Supply.Curve {
			points = append(points, feed.CurvePoint{LoadShare: int64(p.Load), Efficiency: int64(p.Efficiency)})
		}
		if ppm, err := feed.CurvePPM(points, int64(load), rating); err == nil {
			w.ppm = ppm
		}
	}
	if w.ppm > 0 {
		w.watts = unit.Power((int64(load)*1_000_000 + w.ppm - 1) / w.ppm)
	}
	return w
}

// mains is the voltage of the place, 230 V where the brief does not say.
func mains(n *brief.Needs) int64 { return int64(n.Place.Mains.Or(230)) }
