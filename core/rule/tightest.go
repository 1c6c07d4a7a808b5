package rule

import (
	"slices"

	"slipfit/core/brief"
	"slipfit/core/build"
)

// Tightest is the margin of serving that holds the work back most under needs: the one that is served the smallest part of
// the way from its floor to what is enough, what is short before what is not; among equals the one whose need weighs most.
// ok is false where everything is enough or nothing is asked. With the needs of one activity alone (brief.Alone) it says which
// part holds that activity back and, by its Enough, how far the next step up is worth its money.
func Tightest(b *build.Build, n *brief.Needs) (tightest Margin, ok bool) {
	v := NewView(b, n)
	least, weight := int64(0), 0
	for _, r := range All {
		if r.Group != Serve {
			continue
		}
		for _, m := range v.Run(r) {
			if !m.Capped || m.Verdict == Unknown || m.Have.N >= m.Enough.N {
				continue
			}
			way := wayTo(m)
			heavy := weightOf(n, m)
			if !ok || way < least || way == least && heavy > weight {
				tightest, least, weight, ok = m, way, heavy, true
			}
		}
	}
	tightest.Missing = slices.Clone(tightest.Missing)
	return tightest, ok
}

// wayTo is how far a margin is from its floor to what is enough, in thousandths; negative under the floor.
func wayTo(m Margin) int64 {
	if m.Have.N < m.Need.N {
		return m.Diff().N * 1000 / m.Need.N
	}
	return served(m.Have.N, m.Need.N, m.Enough.N)
}

// weightOf is the weight of the need that a margin of serving is about.
func weightOf(n *brief.Needs, m Margin) int {
	for r := range brief.Resource(brief.Resources) {
		if r.Title() == m.Subject {
			return n.By[r].Weight
		}
	}
	return 0
}
