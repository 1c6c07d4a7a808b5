package rule

import (
	"cmp"
	"slices"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/unit"
)

// Proof is every margin of a build, tightest first.
type Proof struct {
	Margins []Margin
	Worst   Verdict
	Worth   int64 // value points served in all
}

// Stands reports a build in which nothing clashes, is short or is unknown.
func (p *Proof) Stands() bool { return p.Worst.Passes() }

// Prove checks every rule on a build under needs; nil needs ask nothing but that the parts go together.
func Prove(b *build.Build, n *brief.Needs) Proof {
	var p Proof
	v := NewView(b, n)
	for i := range All {
		for _, m := range v.Run(All[i]) {
			p.Margins = append(p.Margins, m)
			p.Worth += m.Worth
			if !m.Advice && m.Verdict > p.Worst {
				p.Worst = m.Verdict
			}
		}
	}
	slices.SortStableFunc(p.Margins, tighter)
	return p
}

// tighter orders margins: what fails first, then what is nearest to failing, by its slack as a share of the need.
func tighter(a, b Margin) int {
	if a.Passes() != b.Passes() {
		if b.Passes() {
			return -1
		}
		return 1
	}
	if !a.Passes() {
		if c := cmp.Compare(b.Verdict, a.Verdict); c != 0 {
			return c
		}
	}
	if onlyTells(a) != onlyTells(b) {
		if onlyTells(b) {
			return -1
		}
		return 1
	}
	if bare(a) != bare(b) {
		if bare(b) {
			return -1
		}
		return 1
	}
	return cmp.Compare(slack(a), slack(b))
}

// onlyTells reports a margin that only tells a person something, such as the usual cautions; it stands after what is measured.
func onlyTells(m Margin) bool { return m.Advice && m.Rule.Group == Care }

// bare reports a margin that is only yes or no, which has no slack to compare.
func bare(m Margin) bool { return m.Have.Kind == unit.Yes }

// slack is have − need in thousandths of the need.
func slack(m Margin) int64 {
	return m.Diff().N * 1000 / max(m.Need.N, 1)
}
