package balance

import (
	"slices"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/rule"
)

// options lists the ways to fill one seat of a build from a stock, the empty seat among them where a build may do without:
// every article, as often as a workshop would fit it there (kits of memory and drives of a tier once and twice, one drive to boot from)
// or as often as it is fitted now, in every mounting its case and layout offer. A seat that takes several
// different articles is tried empty and, for screens, with as many of one kind as it holds now.
func options(stock *part.Stock, b *build.Build, s build.Seat) []build.Option {
	var list []build.Option
	switch s {
	case build.Case:
		for _, c := range stock.Cases {
			list = append(list, build.CaseOptions(c)...)
		}
	case build.Board:
		list = each(list, s, stock.Boards, 1)
	case build.Processor:
		list = each(list, s, stock.Processors, 1)
	case build.Cooler:
		for _, c := range stock.Coolers {
			list = append(list, build.CoolerOptions(c, b.Layout)...)
		}
	case build.Memory:
		for n := range max(2, b.Kits) {
			list = each(list, s, stock.Memory, n+1)
		}
	case build.Graphics:
		list = each(append(list, build.Option{Seat: s}), s, stock.Graphics, 1)
	case build.Supply:
		list = each(list, s, stock.Supplies, 1)
	case build.Boot, build.Cache, build.Archive:
		now, usual := b.Boot.Count, 1
		switch s {
		case build.Cache:
			now, usual = b.Cache.Count, 2
		case build.Archive:
			now, usual = b.Archive.Count, 2
		}
		if s != build.Boot {
			list = append(list, build.Option{Seat: s})
		}
		for n := range max(usual, now) {
			list = each(list, s, stock.Drives, n+1)
		}
	case build.Screens:
		count := 0
		for _, m := range b.Screens {
			count += m.Count
		}
		list = each(append(list, build.Option{Seat: s}), s, stock.Monitors, max(count, 1))
	case build.UPS:
		list = each(append(list, build.Option{Seat: s}), s, stock.UPS, 1)
	case build.Fans, build.Cards:
		list = append(list, build.Option{Seat: s})
	}
	return list
}

func each[P interface{ Common() *part.Article }](list []build.Option, s build.Seat, parts []P, count int) []build.Option {
	for _, p := range parts {
		list = append(list, build.Option{Seat: s, Part: p, Count: count})
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
func (before verdicts) swap(b *build.Build, n *brief.Needs, rules []*rule.Rule) (worth int64, ok bool) {
	v := rule.NewView(b, n)
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
