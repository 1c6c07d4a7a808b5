package balance

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/outcome"
	"slipfit/core/part"
	"slipfit/core/plan"
	"slipfit/core/rule"
	"slipfit/core/unit"
)

// near is how far an equal's outcomes may be from the part's, in thousandths.
const near = 30

// Equal is another maker's part that does the same in a build.
type Equal struct {
	Option build.Option
	Costs  unit.Money // price of the build with it less the price without
	Apart  int64      // the outcome that changes most, thousandths of it
	What   string     // that outcome, empty where none changes
	Liked  bool       // its maker is one the customer likes
}

// Equals lists the parts of other makers that could sit in a seat, as many and on the same face: every rule comes to the same
// verdicts and no outcome moves by more than three hundredths. Makers the customer likes come first, then the nearest: the one
// whose outcomes move least, then whose price does. Where ctx ends before every part was looked at, complete is false. Told, which
// may be nil, hears which share of them has been, and how many are equals.
func Equals(ctx context.Context, b *build.Build, n *brief.Needs, stock *part.Stock, s build.Seat, told func(plan.Course)) (list []Equal, complete bool, err error) {
	var now *part.Article
	count := 0
	for _, l := range b.Lines() {
		if l.Seat == s {
			if now != nil && now != l.Article {
				return nil, false, fmt.Errorf("seat %s holds several different parts; equals are told of one", s)
			}
			now, count = l.Article, l.Count
		}
	}
	if now == nil {
		return nil, false, fmt.Errorf("seat %s of the build is empty", s)
	}
	if s == build.Fans && len(b.Fans) > 1 {
		return nil, false, fmt.Errorf("seat %s holds fans in %d places; equals are told of one", s, len(b.Fans))
	}
	if n == nil {
		n = &brief.Needs{}
	}
	same := marks(b, n)
	proof := rule.Prove(b, n)
	before := verdictsOf(&proof)
	was := outcome.Figures(b, n, &stock.Calibration)
	seen := map[string]bool{}
	complete = true
	all := likewise(stock, b, s)
	for i, o := range all {
		if ctx.Err() != nil {
			complete = false
			break
		}
		if told != nil {
			told(plan.Course{Done: float64(i) / float64(len(all)), Found: len(list)})
		}
		if o.Part == nil || o.Part.Common().Maker == now.Maker || s.Several() && s != build.Fans && o.Count != count || seen[o.ID()] {
			continue
		}
		other := with(b, o)
		if marks(other, n) != same || !before.unmoved(other, n) {
			continue
		}
		e := Equal{Option: o, Costs: other.Price() - b.Price(), Liked: slices.Contains(n.Wish.Prefer, o.Part.Common().Maker)}
		if e.move(was, outcome.Figures(other, n, &stock.Calibration)) {
			seen[o.ID()] = true
			list = append(list, e)
		}
	}
	slices.SortStableFunc(list, func(x, y Equal) int {
		if x.Liked != y.Liked {
			return map[bool]int{true: -1, false: 1}[x.Liked]
		}
		return cmp.Or(cmp.Compare(x.Apart, y.Apart), cmp.Compare(max(x.Costs, -x.Costs), max(y.Costs, -y.Costs)), cmp.Compare(x.Option.ID(), y.Option.ID()))
	})
	return list, complete, nil
}

// likewise lists the ways to fill a seat of a build as it is filled now: fans and cards as many and on the same face, the others
// as options lists them.
func likewise(stock *part.Stock, b *build.Build, s build.Seat) []build.Option {
	var list []build.Option
	switch {
	case s == build.Fans && len(b.Fans) > 0:
		for _, f := range stock.Fans {
			list = append(list, build.Option{Seat: s, Part: f, Count: b.Fans[0].Count, Face: b.Fans[0].Face})
		}
	case s == build.Cards && len(b.Cards) > 0:
		for _, c := range stock.Cards {
			list = append(list, build.Option{Seat: s, Part: c, Count: b.Cards[0].Count})
		}
	default:
		return options(stock, b, s)
	}
	return list
}

// unmoved reports a build on which no rule comes to another verdict of anything it speaks of on both.
func (before verdicts) unmoved(b *build.Build, n *brief.Needs) bool {
	p := rule.Prove(b, n)
	for key, m := range verdictsOf(&p) {
		if was, known := before[key]; known && was.Verdict != m.Verdict {
			return false
		}
	}
	return true
}

// move notes the outcome that moves most and reports whether all stay near.
func (e *Equal) move(was, is []outcome.Figure) bool {
	if len(was) != len(is) {
		return false
	}
	for i := range was {
		if was[i].Verdict != is[i].Verdict {
			return false
		}
		if d := apart(was[i].Expected, is[i].Expected); d > e.Apart {
			e.Apart, e.What = d, was[i].Activity+": "+was[i].What
		}
	}
	return e.Apart <= near
}

// marks is which verdicts each rule comes to on a build, one bit a verdict; advice is no verdict.
func marks(b *build.Build, n *brief.Needs) string {
	all := make([]byte, len(rule.All))
	at := map[*rule.Rule]int{}
	for i, r := range rule.All {
		at[r] = i
	}
	p := rule.Prove(b, n)
	for _, m := range p.Margins {
		if !m.Advice || m.Verdict == rule.Unknown {
			all[at[m.Rule]] |= 1 << m.Verdict
		}
	}
	return string(all)
}
