package predict

import (
	"slipfit/core/air"
	"slipfit/core/feed"
	"slipfit/core/part"
	"slipfit/core/sound"
)

// supply is the power supply: where its loss goes and how its fan turns.
type supply struct {
	path, duct int // index of its path out of the case or of its consumer with a duct of its own; −1 for the other
	form       part.SupplyForm
	rating     int64
	curve      []feed.CurvePoint
	level      feed.Level
	zeroToW    float64
	fan        air.Fan
	low        float64
	source     sound.Source
	any        bool    // one of several, at its best
	lossW      float64 // of one of several
	closed     bool    // no air comes through
}

// supplied reads a supply's figures.
func (m *model) supplied(p *part.Supply) supply {
	at := &p.Article
	s := supply{
		form: p.Form, level: feed.LevelNamed(string(p.Level)), rating: int64(read(&m.sheet, p.Rating, at, "rating_w")),
		zeroToW: thousandth(&m.sheet, p.ZeroTo, at, "fan_stopped_below_w"),
		fan:     m.fan(&p.Fan, at, "fan."), low: m.lowest(&p.Fan, at, "fan."),
		source: m.heard(&p.Fan, at, "fan.", "supply", 1),
	}
	for _, point := range p.Curve {
		s.curve = append(s.curve, feed.CurvePoint{LoadShare: int64(point.Load), Efficiency: int64(point.Efficiency)})
	}
	s.fan.RatedPowerW = 0 // what its fan draws is in its loss
	return s
}

// feed adds the supply. With a grille of its own it breathes room air; else its fan takes air of the board's chamber out of
// the case, and its loss with it.
func (m *model) feed(s supply) {
	s.path, s.duct = -1, -1
	fans := air.Fans{Count: 1, Fan: s.fan}
	if read(&m.sheet, m.b.Layout.Supply.OwnAir, &m.b.Case.Article, "supply.own_air") {
		s.duct = len(m.air.Consumers)
		m.air.Consumers = append(m.air.Consumers, air.Consumer{Name: "supply", Medium: air.ToOwnDuct, Fans: fans})
	} else {
		s.path = len(m.air.Paths)
		m.air.Paths = append(m.air.Paths, air.Path{
			Name: "supply", Zone: boardZone, Direction: air.Exhaust, Fans: fans, EachImpedance: packImpedance * s.fan.Impedance(),
		})
	}
	m.supply = s
}

// rpm is how fast the supply's fan turns: not at all under the load its sheet names, at its lowest up to a fifth of the
// rating, and from there in a straight line to full speed at all of it.
func (s *supply) rpm(loadW float64) float64 {
	if loadW < s.zeroToW || s.rating == 0 {
		return 0
	}
	share := min(1, max(0, (loadW*1000/float64(s.rating)-0.2)/0.8))
	low := max(s.low, leastTurning*s.fan.RatedRPM)
	return low + float64(share*(s.fan.RatedRPM-low))
}

// run sets the supply's loss and speed.
func (m *model) run(lossW, loadW float64) {
	rpm := m.supply.rpm(loadW)
	if k := m.supply.duct; k >= 0 {
		m.air.Consumers[k].PowerW, m.air.Consumers[k].Fans.Speed.FixedRPM = lossW, rpm
		return
	}
	p := &m.air.Paths[m.supply.path]
	p.HeatW, p.Fans.Speed.FixedRPM = lossW, rpm
}

// efficiency is what the supply makes of wall power at a load, as a share, with its standard uncertainty: its own load
// points where the sheet states them, else half way between its level's floor and the next level's. Past the rating it is
// what it is at the rating.
func (s *supply) efficiency(loadW float64, line feed.Line) (share, u float64) {
	load := min(int64(loadW*1000), s.rating)
	if load <= 0 {
		return 1, 0
	}
	if len(s.curve) > 0 {
		ppm, err := feed.CurvePPM(s.curve, load, s.rating)
		if err == nil && ppm > 0 {
			return float64(ppm) / 1e6, efficiencyU
		}
	}
	w, ok := feed.WallPower(s.level, line, load, s.rating)
	if !ok {
		return 0, 0
	}
	low, high := float64(load)/float64(w.HighMW), float64(load)/float64(w.LowMW)
	return float64(load) / float64(w.ExpectedMW), (high - low) / 4
}
