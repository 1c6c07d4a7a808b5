package verb

import (
	"fmt"
	"math"
	"strings"

	"slipfit/core/brief"
	"slipfit/core/plan"
	"slipfit/core/unit"
)

// Progress is told what a long answer has come to, while it searches many times a second: a share from 0 to 1, nought where it
// cannot be told, and a note. A note is what is being done or what is found, how much better it may still be, and how far the
// search has looked, set off by commas. Whoever listens decides how often to show it. It may be nil.
type Progress func(done float64, note string)

func (p Progress) tell(done float64, note string) {
	if p != nil {
		p(done, note)
	}
}

// seeking tells what the planner has found while it searches, and how much better another build may be; nil where nobody listens.
func (p Progress) seeking(what string, n *brief.Needs) func(plan.Course) {
	return p.noting(func(c *plan.Course) []string {
		if c.Found == 0 {
			return []string{"searching"}
		}
		return standing(what, c, full(n))
	})
}

// counting tells a note with how many are found so far, as counted says it; nil where nobody listens.
func (p Progress) counting(note, counted string) func(plan.Course) {
	return p.noting(func(c *plan.Course) []string {
		if c.Found == 0 || counted == "" {
			return []string{note}
		}
		return []string{note, fmt.Sprintf(counted, c.Found)}
	})
}

// noting tells what the planner has come to, and how many builds it has begun to try; nil where nobody listens.
func (p Progress) noting(says func(c *plan.Course) []string) func(plan.Course) {
	if p == nil {
		return nil
	}
	return func(c plan.Course) {
		list := says(&c)
		if c.Nodes > 0 {
			list = append(list, fmt.Sprintf("%d tried", c.Nodes))
		}
		p(c.Done, strings.Join(list, ", "))
	}
}

// standing says what is found, and how much better another build may be where that is known. full is the value of all that is
// asked, served to enough.
func standing(seeking string, c *plan.Course, full int64) []string {
	found, better := "found "+c.Best.Price.String(), "less"
	gap := (c.Best.Price - c.Bound.Price).Q()
	switch seeking {
	case "quiet":
		found = fmt.Sprintf("found %s for %s", c.Best.Noise.Q(), c.Best.Price)
		gap = (c.Best.Noise - c.Bound.Noise).Q()
	case "small":
		found = fmt.Sprintf("found %s for %s", c.Best.Volume.Q(), c.Best.Price)
		gap = (c.Best.Volume - c.Bound.Volume).Q()
	case "best":
		found = fmt.Sprintf("found %s served for %s", share(c.Best.Worth, full).Q(), c.Best.Price)
		gap, better = unit.Share(0).Q(), "more"
		if c.Bound.Worth < math.MaxInt64 {
			gap = share(c.Bound.Worth-c.Best.Worth, full).Q()
		}
	}
	if gap.N <= 0 {
		return []string{found}
	}
	return []string{found, "perhaps " + gap.String() + " " + better}
}

// share is value as a share of all that is asked.
func share(worth, full int64) unit.Share { return unit.Share(worth * 100_000 / max(full, 1)) }
