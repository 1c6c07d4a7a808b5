package outcome

import (
	"fmt"
	"math"
	"strings"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/rule"
	"slipfit/core/unit"
)

// Figure is one aim on one build. The three figures are thousandths of the unit, rounded on the safe side: what is given
// down, what is waited for up. Low and high are how far it may be off: by the tolerance of what it rests on, and by what the
// customer did not say.
type Figure struct {
	Activity            string
	What                string
	Unit                brief.Unit
	Want                int64 // what the brief asks; 0 where it asks nothing
	Low, Expected, High int64
	By                  string       // what sets it: a resource's title, or the encoding engine
	Verdict             rule.Verdict // snug where the expected figure is what is wanted, or better; short; unknown
	Missing             []string     // figures the sheets lack; only where unknown
	Why                 string       // the arithmetic in one sentence
	Band                string       // what the band rests on, in one sentence
	Source              string
}

// Figures tells every aim of needs on a build, and how long its drives last.
func Figures(b *build.Build, n *brief.Needs, cal *part.Calibration) []Figure {
	h := Of(b, n)
	h.warm(b, n)
	var list []Figure
	for i := range n.Aims {
		list = append(list, Tell(&n.Aims[i], h, cal))
	}
	return append(list, lives(b, n)...)
}

// Tell is one aim on what a build gives.
func Tell(m *brief.Aim, h *Have, cal *part.Calibration) Figure {
	f := Figure{Activity: m.Activity, What: m.What, Unit: m.Unit, Want: m.Want, Source: m.Source}
	w := h.held(m)
	now := h.at(w.ordinary)
	usual := work(&m.Usual, m.Unit, now)
	f.By = usual.by
	switch missing := append(usual.missing, w.missing...); {
	case len(missing) > 0:
		f.Verdict, f.Missing, f.Why = rule.Unknown, missing, "not known: "+strings.Join(missing, ", ")
		return f
	case w.err != nil:
		f.Verdict, f.Why = rule.Unknown, "what heat takes is not known: "+w.err.Error()
		return f
	}
	value, tolerance := usual.value, toleranceOf(m.Basis, cal)
	least, top := unsaid(m, value, now)
	wider := least < value || top > value
	low, _ := off(least, tolerance, m.Unit.Time)
	_, top = off(top, tolerance, m.Unit.Time)
	if slowed := apart(value, work(&m.Usual, m.Unit, h.at(w.hottest)).value); m.Unit.Time {
		top *= slowed
	} else {
		low /= slowed
	}
	f.Low, f.Expected, f.High = round(low, m.Unit), round(value, m.Unit), round(top, m.Unit)
	f.Why, f.Band = usual.why+w.said, bandOf(m.Basis, tolerance, wider, w.said != "")
	if m.Unit.Time && f.Expected > m.Want || !m.Unit.Time && f.Expected < m.Want {
		f.Verdict = rule.Short
	}
	return f
}

// toleranceOf is how far a figure of a basis may be off, as a share.
func toleranceOf(b brief.Basis, cal *part.Calibration) float64 {
	switch b {
	case brief.Calibrated:
		return float64(cal.Tolerance) / 100_000
	case brief.Practice:
		return float64(cal.Practice) / 100_000
	}
	return 0
}

// off is a value whose cost is off by a share, either way: a time is its cost, what is given goes against it.
func off(value, share float64, time bool) (low, top float64) {
	if time {
		return float64(value * (1 - share)), float64(value * (1 + share))
	}
	return value / (1 + share), value / (1 - share)
}

// unsaid is from where to where an aim's value may lie for what the customer did not say: what the high answers make of it, and
// what answers as far off the other way in proportion would.
func unsaid(m *brief.Aim, value float64, h *Have) (least, top float64) {
	high := work(&m.High, m.Unit, h).value
	if mirrored, ok := mirror(m.Usual.Limits, m.High.Limits); ok {
		other := roofline(mirrored, m.Unit, h).value
		return min(value, high, other), max(value, high, other)
	}
	factor := apart(value, high)
	return value / factor, value * factor
}

// mirror is a roofline as far from the usual one as the high one is, the other way in proportion; ok is false where the two do not
// have the same roofs.
func mirror(usual, high []brief.Limit) (list []brief.Limit, ok bool) {
	if len(usual) == 0 || len(usual) != len(high) {
		return nil, false
	}
	scaled := func(n int64, factor float64) int64 { return int64(math.Round(float64(n) * factor)) }
	for i, l := range usual {
		g := &high[i]
		if l.Resource != g.Resource {
			return nil, false
		}
		if g.Fixed > 0 {
			l.Fixed = scaled(l.Fixed, float64(l.Fixed)/float64(g.Fixed))
		}
		factor := float64(l.Moving) * float64(g.Per) / (float64(l.Per) * float64(g.Moving)) // what a unit of the figure takes
		if l.Engine != nil {
			engine := *l.Engine
			engine.Without = scaled(engine.Without, factor)
			l.Engine = &engine
		}
		l.Moving = max(scaled(l.Moving, factor), 1)
		list = append(list, l)
	}
	return list, true
}

// apart is how far the high answers move a value, as a factor of at least 1. The answer that was not given may be as far off
// the other way in proportion.
func apart(usual, high float64) float64 {
	if usual <= 0 || high <= 0 || math.IsInf(usual, 0) || math.IsInf(high, 0) {
		return 1
	}
	return max(usual/high, high/usual)
}

func bandOf(b brief.Basis, tolerance float64, unsaid, slowed bool) string {
	var parts []string
	switch percent := unit.Share(math.Round(tolerance * 100_000)).Q(); b {
	case brief.Calibrated:
		parts = append(parts, "the calibration may be off by "+percent.String())
	case brief.Practice:
		parts = append(parts, "figures of common practice may be off by "+percent.String())
	case brief.Arithmetic:
		parts = append(parts, "arithmetic from sizes and rates as stated")
	}
	if unsaid {
		parts = append(parts, "wider for what was not said")
	}
	if slowed {
		parts = append(parts, "and for the hottest day, when heat takes more")
	}
	return strings.Join(parts, "; ")
}

// most is the largest figure told: past it a figure says nothing to a person.
const most = 1e15

// round is a value in thousandths, up for a time, else down. What is a hair's breadth under a whole thousandth by binary
// fractions counts as that thousandth.
func round(v float64, u brief.Unit) int64 {
	const hair = 1e-6
	v = min(v, most)
	if u.Time {
		return int64(math.Ceil(v - hair))
	}
	return int64(math.Floor(v + hair))
}

// lives tells how long each solid-state drive lasts under what is written to it.
func lives(b *build.Build, n *brief.Needs) []Figure {
	need, asked := n.Get(brief.Endurance)
	if !asked {
		return nil
	}
	var list []Figure
	var told build.Set
	tiers := rule.Tiers(b, n)
	for _, t := range tiers {
		if t.Drive == nil || t.Drive.Disk || told.Has(t.On) || t.Yearly == 0 && len(t.Missing) == 0 {
			continue
		}
		told |= build.SetOf(t.On)
		f := Figure{Activity: "system", What: fmt.Sprintf("years until the %s's rated writing is spent", t.On.Title()), Unit: brief.Years, Want: need.Floor,
			Low: t.Years, Expected: t.Years, High: t.Years, By: brief.Endurance.Title(), Source: "JESD218", Band: "a rating its maker promises: most drives outlast it",
			Why: fmt.Sprintf("%d TB it is rated for ÷ %s written a year: %s", t.Rated, t.Yearly.Q(), writers(n, on(t.On, tiers)...))}
		switch {
		case len(t.Missing) > 0:
			f.Verdict, f.Missing, f.Why = rule.Unknown, t.Missing, "not known: "+strings.Join(t.Missing, ", ")
		case t.Years < need.Floor:
			f.Verdict = rule.Short
		}
		list = append(list, f)
	}
	return list
}

// on lists the sizes of the tiers that lie in a seat.
func on(s build.Seat, tiers []rule.Tier) []brief.Resource {
	var list []brief.Resource
	for _, t := range tiers {
		if t.On == s {
			list = append(list, t.Size)
		}
	}
	return list
}

// writers tells which activity writes how much a year to tiers.
func writers(n *brief.Needs, tiers ...brief.Resource) string {
	var list []string
	for _, w := range n.Writes {
		var sum unit.Storage
		for _, r := range tiers {
			sum += written(&w.Written, r)
		}
		if sum > 0 {
			list = append(list, w.Activity+" "+sum.Q().String())
		}
	}
	return strings.Join(list, " + ")
}

// Say prints thousandths of a unit as a person says it: three figures, minutes as hours from two hours on and as seconds
// under two minutes, less than a year in months and less than half a year in weeks.
func Say(milli int64, u brief.Unit) string {
	switch {
	case milli >= most:
		return "any number of " + u.Many
	case u == brief.Minutes && milli >= 120_000:
		whole := (milli + 500) / 1000
		if whole%60 == 0 {
			return fmt.Sprintf("%s h", group(whole/60))
		}
		return fmt.Sprintf("%s h %d min", group(whole/60), whole%60)
	case u == brief.Minutes && milli < 2000:
		milli, u = (milli*60+500)/1000*1000, brief.Unit{One: "second", Many: "seconds"}
	}
	switch {
	case u == brief.Years && milli < 500:
		milli, u = (milli*52+500)/1000*1000, brief.Unit{One: "week", Many: "weeks"}
	case u == brief.Years && milli < 1000:
		milli, u = (milli*12+500)/1000*1000, brief.Unit{One: "month", Many: "months"}
	}
	s := figure(milli)
	if s == "1" {
		return s + " " + u.One
	}
	return s + " " + u.Many
}

// figure prints thousandths with three figures at most.
func figure(milli int64) string {
	switch {
	case milli >= 100_000:
		return group((milli + 500) / 1000)
	case milli >= 10_000:
		return trim(fmt.Sprintf("%.1f", float64(milli)/1000))
	}
	return trim(fmt.Sprintf("%.2f", float64(milli)/1000))
}

func trim(s string) string { return strings.TrimSuffix(strings.TrimRight(s, "0"), ".") }

func group(n int64) string { return unit.Whole(n).Q().String() }
