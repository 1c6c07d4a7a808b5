package rule

import (
	"math/rand/v2"
	"slices"
	"testing"

	"slipfit/catalog"
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/predict"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// TestEarlyIsNeverWrong holds every rule to the seats it says can decide alone: where they fail a build that holds no
// others, the whole build does not stand. The planner turns builds away by it.
func TestEarlyIsNeverWrong(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	needs := []*brief.Needs{
		{Loads: []brief.Load{{Activity: "reading", Processor: 15_000, Memory: 30_000}, {Activity: "work", Processor: 100_000, Graphics: 90_000, Memory: 50_000, Drives: 20_000}}},
		{Loads: []brief.Load{{Activity: "copying", Processor: 20_000, Drives: 100_000}, {Activity: "play", Processor: 40_000, Graphics: 60_000}}},
	}
	needs[1].Place.Noise = unit.Known(unit.Sound(26_000))
	for i := range needs {
		for j, r := range []brief.Resource{brief.BootRead, brief.CacheWrite, brief.ArchiveWrite} {
			needs[i].By[r] = brief.Need{Resource: r, Floor: int64(500 + 2500*i + 500*j), Enough: 7000, Reason: "the test asks it"}
		}
	}
	r := rand.New(rand.NewPCG(7, 11))
	turned, anySupply, held := map[string]int{}, map[string]int{}, map[string]int{}
	kinds, anyFans := 0, 0
	for n := range 4000 {
		b := randomBuild(r, stock)
		for s := range build.Seat(build.Seats) {
			if r.IntN(5) == 0 {
				b.Clear(s)
			}
		}
		whole := NewView(b, needs[n%2])
		for _, rule := range All {
			if len(rule.Early) == 0 && rule.Holds == nil {
				continue
			}
			stands := passes(whole.Run(rule))
			if rule.Holds != nil && whole.both(build.Compulsory()...) && NewView(b, needs[n%2]).Holds(rule, besides(b, Early{}, needs[n%2])) {
				require.True(t, stands, "rule %s holds", rule.ID)
				held[rule.ID]++
			}
			for _, early := range rule.Early {
				seats := early.Seats
				alone := *b
				for s := range build.Seat(build.Seats) {
					if !build.SetOf(seats...).Has(s) {
						alone.Clear(s)
					}
				}
				stands := stands && whole.both(build.Compulsory()...) && !saidBy(whole, rule) && (early.Leans == nil || passes(whole.Run(early.Leans)))
				besides := besides(b, early, needs[n%2])
				if early.AnyFans {
					stands = stands && len(b.Fans) < 2 && passes(whole.Run(&FanPlaces))
					besides = besides.Aired(predict.NewAnyFans(stock.Fans))
				}
				if NewView(&alone, needs[n%2]).FailsEarly(rule, early, besides) {
					require.False(t, stands, "rule %s fails %v alone and passes the whole build", rule.ID, seats)
					turned[rule.ID]++
				}
				if early.Bears != nil && stands {
					warms := *b
					warms.Board = nil
					bears := NewView(&alone, needs[n%2]).BearsEarly(early, besides)
					for i, w := range NewView(&warms, needs[n%2]).Brings() {
						require.True(t, bears == nil || w < bears[i], "rule %s bears %v W and stands with %v", rule.ID, bears, w)
					}
				}
				if early.AnySupply && b.Supply != nil {
					alone.Supply = nil
					fed := predict.NewSupplies([]*part.Supply{stock.Supplies[r.IntN(len(stock.Supplies))], b.Supply, stock.Supplies[r.IntN(len(stock.Supplies))]})
					if NewView(&alone, needs[n%2]).FailsEarly(rule, early, besides.Fed(fed)) {
						require.False(t, stands && passes(whole.Run(&SupplySteady)), "rule %s fails %v with any of several supplies and passes the whole build", rule.ID, seats)
						require.True(t, early.Layouts == nil || early.Layouts(b.Layout), "rule %s fails %v in a case it says nothing of", rule.ID, seats)
						anySupply[rule.ID]++
						if early.AnyFans {
							anyFans++
						}
						kinds += len(early.Kinds)
					}
				}
				require.True(t, build.SetOf(rule.Reads...).Holds(build.SetOf(seats...)), "rule %s", rule.ID)
			}
		}
	}
	require.Greater(t, kinds, 20)
	require.Greater(t, anyFans, 20)
	for _, rule := range All {
		any := slices.ContainsFunc(rule.Early, func(e Early) bool { return e.AnySupply })
		require.True(t, rule.Holds == nil || held[rule.ID] > 0, "rule %s never held", rule.ID)
		require.True(t, !any || anySupply[rule.ID] > 0, "rule %s never decided early with the supply open", rule.ID)
		require.True(t, len(rule.Early) == 0 || turned[rule.ID] > 0, "rule %s never decided early", rule.ID)
	}
}

// besides is what the planner may tell an early question of a build: what seats that warm it bring at least and how loud those are that
// it does not see, and what all of them bring at most.
func besides(b *build.Build, e Early, n *brief.Needs) predict.Besides {
	brings := func(seats []build.Seat, up float64) []int {
		some := *b
		for s := range build.Seat(build.Seats) {
			if !build.SetOf(seats...).Has(s) {
				some.Clear(s)
			}
		}
		var list []int
		for _, w := range NewView(&some, n).Brings() {
			list = append(list, int(w+up))
		}
		return list
	}
	disks := *b
	for s := range build.Seat(build.Seats) {
		if !build.SetOf(e.Warms...).Has(s) || build.SetOf(e.Seats...).Has(s) {
			disks.Clear(s)
		}
	}
	return predict.NewBesides(brings(e.Warms, 0), brings(e.Warms, 1), brings(slices.Concat(e.Warms, predict.Warming), 1)).Heard(NewView(&disks, n).Disks())
}

// saidBy reports that another rule says what a rule found early: a card or a module without a place beside the others is
// told by the rules cards and drive-slots, a radiator that hangs nowhere by radiator-place, and the rules lanes and
// drive-heat then leave it out.
func saidBy(v *View, r *Rule) bool {
	return (r == &Lanes || r == &DriveHeat) && !(passes(v.Run(&Cards)) && passes(v.Run(&DriveSlots)) && passes(v.Run(&RadiatorPlace)))
}

func passes(margins []Margin) bool {
	for i := range margins {
		if !margins[i].Advice && !margins[i].Passes() {
			return false
		}
	}
	return true
}

// TestHardest asks of every activity of which no other asks as much of every part, and of no other.
func TestHardest(t *testing.T) {
	work := brief.Load{Processor: 60_000, Graphics: 50_000, Memory: 40_000, Drives: 30_000}
	less, copying := work, brief.Load{Drives: 31_000}
	less.Memory--
	for _, c := range []struct {
		name  string
		loads []brief.Load
		asked []int
	}{
		{"none named: everything at work", nil, []int{0}},
		{"one", []brief.Load{work}, []int{0}},
		{"one asks less of memory", []brief.Load{less, work}, []int{1}},
		{"alike: the first", []brief.Load{work, work, work}, []int{0}},
		{"each asks more of something", []brief.Load{work, copying}, []int{0, 1}},
		{"at rest", []brief.Load{{}, copying, less, work}, []int{1, 3}},
	} {
		v := NewView(&build.Build{}, &brief.Needs{Loads: c.loads})
		var asked []int
		require.False(t, v.hardest(func(load int) bool { asked = append(asked, load); return false }), c.name)
		require.Equal(t, c.asked, asked, c.name)
		require.True(t, v.hardest(func(load int) bool { return load == c.asked[len(c.asked)-1] }), c.name)
	}
}
