package rule

import (
	"fmt"
	"slices"
	"strings"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// figure reads a figure of a data sheet. Where the sheet lacks it, the next margin found is unknown and names it.
func figure[T ~int64 | ~bool](v *View, f unit.Figure[T], owner *part.Article, field string) T {
	x, ok := f.Get()
	if !ok {
		if lacks := owner.ID + ": " + field; !slices.Contains(v.missing, lacks) {
			v.missing = append(v.missing, lacks)
		}
	}
	return x
}

// find adds a margin of the running rule: have against need. A missing figure read since the last margin makes it
// unknown; a negative one is a clash in the groups Fit and Mate, short in the others.
func (v *View) find(subject string, have, need unit.Quantity, why func() string) *Margin {
	m := Margin{Rule: v.rule, Subject: subject, Have: have, Need: need, why: why}
	switch {
	case len(v.missing) > 0:
		m.Verdict = Unknown
		m.Missing = append([]string(nil), v.missing...)
		missing := m.Missing
		m.why = func() string { return "the data sheet does not state " + strings.Join(missing, ", ") }
		v.missing = v.missing[:0]
	case v.unsolved != nil:
		m.Verdict = Unknown
		m.why = say("the prediction is no answer: %v", v.unsolved)
	case have.N >= need.N:
		m.Verdict = Snug
	case v.rule.Group == Fit || v.rule.Group == Mate:
		m.Verdict = Clash
	default:
		m.Verdict = Short
	}
	v.unsolved = nil
	v.margins = append(v.margins, m)
	return &v.margins[len(v.margins)-1]
}

// advise adds a margin that only advises: a negative one leaves the build standing and its sentence says what to do.
// An advice that rests on a missing figure says so and leaves the build standing too.
func (v *View) advise(subject string, have, need unit.Quantity, why func() string) *Margin {
	m := v.find(subject, have, need, why)
	m.Advice = true
	if m.Verdict != Unknown {
		m.Verdict = Snug
	}
	return m
}

// met adds a margin of the kind yes or no.
func (v *View) met(subject string, ok bool, why func() string) *Margin {
	return v.find(subject, unit.Met(ok), unit.Met(true), why)
}

// serve adds the margin of a need of the brief: have against its floor, loose past enough, worth what is served of the
// way between them.
func (v *View) serve(n brief.Need, have int64, why func() string) *Margin {
	m := v.find(n.Resource.Title(), unit.Quantity{N: have, Kind: n.Resource.Kind()}, n.FloorQ(), why)
	m.Enough, m.Capped = n.EnoughQ(), true
	switch {
	case m.Verdict == Unknown:
		return m
	case have < n.Floor:
		m.Verdict = Short // a need unmet, in whatever group it is found
	case have > n.Enough:
		m.Verdict = Loose
	}
	m.Worth = int64(n.Weight) * served(have, n.Floor, n.Enough)
	return m
}

// served is how much of the way from floor to enough is reached, in thousandths, 1000 at enough and past it, 0 at the
// floor and under it.
func served(have, floor, enough int64) int64 {
	switch {
	case have >= enough:
		return 1000
	case have <= floor:
		return 0
	}
	return (have - floor) * 1000 / (enough - floor)
}

// sum adds the margin of a rule declared as a sum over the seats it reads.
func (v *View) sum(subject string, why func(gives, takes int64) string) *Margin {
	var gives, takes int64
	for _, s := range v.rule.Reads {
		g, t := v.rule.Sum.Term(v, s)
		gives, takes = gives+g, takes+t
	}
	k := v.rule.Sum.Kind
	return v.find(subject, unit.Quantity{N: gives, Kind: k}, unit.Quantity{N: takes, Kind: k}, func() string { return why(gives, takes) })
}

// say is fmt.Sprintf put off until somebody reads it.
func say(format string, args ...any) func() string {
	return func() string { return fmt.Sprintf(format, args...) }
}

// both reports whether every one of the seats is filled.
func (v *View) both(seats ...build.Seat) bool {
	for _, s := range seats {
		if !v.Filled(s) {
			return false
		}
	}
	return true
}
