package balance

import (
	"slices"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/rule"
)

// options lists the ways to fill one seat of a build from a stock, the empty seat among them where a build may do without:
// every article, as often as a workshop would fit it there (kits of memory and drives of a tier once and twice, one drive to boot from)
// or as often as it is fitted now, in every mounting its case and layout offer. A seat that takes several
// different articles is tried empty and, for screens, with as many of one kind as it holds now, for fans on one face, unless there are
// some on several.
func options(stock *part.Stock, b *build.Build, s build.Seat) []build.Option {
	var list []build.Option
	if !slices.Contains(build.Compulsory(), s) {
		list = append(list, build.Option{Seat: s})
	}
	least, most := 1, 1
	switch s {
	case build.Services:
		return nil
	case build.Fans:
		if len(b.Fans) > 1 || b.Layout == nil {
			return list
		}
		for _, f := range stock.Fans {
			list = append(list, build.FanOptions(f, b.Layout.FanPlaces)...)
		}
		return list
	case build.Cards:
		return list
	case build.Memory:
		most = max(2, b.Kits)
	case build.Boot:
		most = max(1, b.Boot.Count)
	case build.Cache:
		most = max(2, b.Cache.Count)
	case build.Archive:
		most = max(2, b.Archive.Count)
	case build.Screens:
		count := 0
		for _, m := range b.Screens {
			count += m.Count
		}
		least, most = max(count, 1), max(count, 1)
	}
	for n := least; n <= most; n++ {
		for _, p := range build.Shelf(stock, s) {
			switch p := p.(type) {
			case *part.Case:
				list = append(list, build.CaseOptions(p)...)
			case *part.Cooler:
				list = append(list, build.CoolerOptions(p, b.Layout)...)
			default:
				list = append(list, build.Option{Seat: s, Part: p, Count: n})
			}
		}
	}
	return list
}

// with is a build with one seat filled otherwise. A case brings another layout, in which a radiator keeps its face.
func with(b *build.Build, o build.Option) *build.Build {
	other := *b
	other.Fans, other.Cards, other.Screens, other.Services = slices.Clone(b.Fans), slices.Clone(b.Cards), slices.Clone(b.Screens), slices.Clone(b.Services)
	other.Set(o)
	other.Owned &^= build.SetOf(o.Seat)
	return &other
}

// verdicts is what a proof comes to, rule by rule and subject by subject, the worst where a rule says several things of one.
type verdicts map[verdictKey]rule.Margin

type verdictKey struct {
	rule    *rule.Rule
	subject string
}

func verdictsOf(p *rule.Proof) verdicts {
	all := verdicts{}
	for _, m := range p.Margins {
		key := verdictKey{m.Rule, m.Subject}
		if was, known := all[key]; !m.Advice && (!known || was.Passes() || was.Verdict < m.Verdict) {
			all[key] = m
		}
	}
	return all
}

// keep reports that a proof fails nowhere that these verdicts passed, and nowhere worse than they failed already.
func (before verdicts) keep(after *rule.Proof) bool {
	return !slices.ContainsFunc(after.Margins, func(m rule.Margin) bool { return !before.bear(&m) })
}

// bear reports a margin that holds, or fails no worse than it did.
func (before verdicts) bear(m *rule.Margin) bool {
	if m.Advice || m.Passes() {
		return true
	}
	was, known := before[verdictKey{m.Rule, m.Subject}]
	return known && !was.Passes() && was.Verdict >= m.Verdict && was.Diff().N <= m.Diff().N
}

// reading lists the rules that look at a seat, those that predict last: the others cost less and turn most parts away.
func reading(s build.Seat) []*rule.Rule {
	var first, last []*rule.Rule
	for _, r := range rule.All {
		switch {
		case !slices.Contains(r.Reads, s):
		case r.Group == rule.Cool:
			last = append(last, r)
		default:
			first = append(first, r)
		}
	}
	return append(first, last...)
}

// swap is what the rules that look at a changed seat make of a build: their worth, and whether every one keeps its verdicts.
// Rules that do not look at it come to what they came to before.
func (before verdicts) swap(v *rule.View, b *build.Build, rules []*rule.Rule) (worth int64, ok bool) {
	v.Build = b
	for _, r := range rules {
		for _, m := range v.Run(r) {
			if !before.bear(&m) {
				return 0, false
			}
			worth += m.Worth
		}
	}
	return worth, true
}
