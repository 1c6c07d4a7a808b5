package plan

import (
	"math/rand/v2"
	"slices"
	"testing"

	"slipfit/catalog"
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/rule"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

func generic(t testing.TB) *part.Stock {
	t.Helper()
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	return stock
}

// sample takes n parts at random, in random order.
func sample[P any](r *rand.Rand, parts []P, n int) []P {
	list := make([]P, 0, n)
	for _, i := range r.Perm(len(parts))[:min(n, len(parts))] {
		list = append(list, parts[i])
	}
	return list
}

// anchors are builds that stand, each with another need: the cores of small stocks.
func anchors(t *testing.T, all *part.Stock) []*build.Build {
	t.Helper()
	var list []*build.Build
	for i := range 12 {
		n := &brief.Needs{}
		ask := func(r brief.Resource, floor int64) {
			n.By[r] = brief.Need{Resource: r, Floor: floor, Enough: floor, Weight: 1, Reason: "the test asks it"}
		}
		ask(brief.AllWork, int64(4000+2000*i))
		ask(brief.MemorySize, int64(unit.GiB)*int64(8+4*i))
		if i%3 > 0 {
			ask(brief.DrawWork, int64(400+200*i))
		}
		if i%2 > 0 {
			ask(brief.CacheSize, 500_000)
			ask(brief.BootSize, 400_000)
		}
		p, err := New(all, Ask{Needs: n})
		require.NoError(t, err)
		if a := p.Least(t.Context()); a.Build != nil {
			list = append(list, a.Build)
		}
	}
	require.NotEmpty(t, list)
	return list
}

// with puts a part into a list unless it is nil or there already.
func with[P comparable](parts []P, p P) []P {
	var none P
	if p == none || slices.Contains(parts, p) {
		return parts
	}
	return append(parts, p)
}

// smallStock draws a small stock round a build that stands, now and then without one of its parts.
func smallStock(r *rand.Rand, all *part.Stock, b *build.Build) *part.Stock {
	s := &part.Stock{
		Shop: all.Shop, Services: all.Services,
		Boards: sample(r, all.Boards, r.IntN(4)), Processors: sample(r, all.Processors, r.IntN(4)),
		Memory: sample(r, all.Memory, r.IntN(4)), Coolers: sample(r, all.Coolers, r.IntN(3)),
		Graphics: sample(r, all.Graphics, r.IntN(4)), Supplies: sample(r, all.Supplies, r.IntN(4)),
		Drives: sample(r, all.Drives, r.IntN(3)), Monitors: sample(r, all.Monitors, 1), Cards: sample(r, all.Cards, r.IntN(2)), Fans: sample(r, all.Fans, r.IntN(2)),
	}
	s.Cases = sample(r, slices.DeleteFunc(slices.Clone(all.Cases), func(c *part.Case) bool { return len(build.CaseOptions(c)) > 7 }), r.IntN(2))
	gap := r.IntN(24)
	if gap != 0 {
		s.Cases = with(s.Cases, b.Case)
	}
	if gap != 1 {
		s.Boards = with(s.Boards, b.Board)
	}
	if gap != 2 {
		s.Processors = with(s.Processors, b.Processor)
	}
	if gap != 3 {
		s.Coolers = with(s.Coolers, b.Cooler)
	}
	if gap != 4 {
		s.Supplies = with(s.Supplies, b.Supply)
	}
	s.Memory = with(s.Memory, b.Memory)
	s.Graphics = with(s.Graphics, b.Graphics)
	s.Drives = with(s.Drives, b.Boot.Drive)
	return s
}

// someNeeds makes needs from figures that parts of the stock have, so that some parts serve them and some do not.
func someNeeds(r *rand.Rand, s *part.Stock) *brief.Needs {
	n := &brief.Needs{}
	ask := func(res brief.Resource, floor, enough int64) {
		if r.IntN(3) == 0 {
			n.By[res] = brief.Need{Resource: res, Floor: max(floor, 1), Enough: max(floor, 1, enough), Weight: r.IntN(100), Reason: "the test asks it"}
		}
	}
	pick := &part.Processor{}
	if len(s.Processors) > 0 {
		pick = s.Processors[r.IntN(len(s.Processors))]
	}
	single, all, threads := int64(pick.Single.Or(1)), int64(pick.All.Or(1)), int64(pick.Threads.Or(1))
	ask(brief.SingleWork, single*9/10, single*(9+r.Int64N(4))/10)
	ask(brief.AllWork, all/2, all*(5+r.Int64N(10))/10)
	ask(brief.Threads, threads/2, threads*2)
	ask(brief.MemorySize, int64(unit.GiB)<<(3+r.IntN(4)), int64(unit.GiB)<<(4+r.IntN(4)))
	ask(brief.MemoryRate, 20_000+r.Int64N(40_000), 60_000+r.Int64N(40_000))
	ask(brief.DrawWork, r.Int64N(800), 500+r.Int64N(4000))
	ask(brief.GraphicsMemory, int64(unit.GiB)*r.Int64N(10), int64(unit.GiB)*(2+r.Int64N(20)))
	ask(brief.BootSize, 100_000+r.Int64N(900_000), 500_000+r.Int64N(1_000_000))
	ask(brief.BootRead, r.Int64N(5000), 5000)
	ask(brief.CacheSize, r.Int64N(1_000_000), 1_000_000)
	ask(brief.ArchiveSize, r.Int64N(4_000_000), r.Int64N(8_000_000))
	ask(brief.ArchiveWrite, r.Int64N(300), r.Int64N(600))
	ask(brief.Wired, 1000, 2500)
	ask(brief.Wireless, 1, 1000)
	ask(brief.FastPorts, r.Int64N(6), r.Int64N(12))
	n.Copies = r.IntN(4) == 0
	if r.IntN(2) == 0 {
		n.Screens = []brief.Screen{{Width: 2560, Height: 1440, Refresh: 60, Bits: 8, Count: 1 + r.IntN(2), Owned: r.IntN(3) > 0}}
	}
	n.Loads = []brief.Load{{Activity: "work", Processor: 100_000, Graphics: 100_000, Memory: 100_000, Drives: 100_000, Hours: 1000}}
	if r.IntN(2) == 0 {
		n.Budget = unit.Money(60_000 + r.Int64N(300_000))
	}
	return n
}

// brute tries every way of filling the seats, with each rule asked as soon as the seats it reads are filled, and keeps
// the best under better, of equals the first in tie order.
func brute(t testing.TB, stock *part.Stock, ask Ask, better func(a, b *leaf) bool) (*leaf, []*column) {
	t.Helper()
	var best *leaf
	cols := all(t, stock, ask, func(l *leaf, cols []*column) {
		if best == nil || better(l, best) || !better(best, l) && earlier(l, best, cols) {
			best = l
		}
	})
	return best, cols
}

// all calls see for every build that stands.
func all(t testing.TB, stock *part.Stock, ask Ask, see func(l *leaf, cols []*column)) []*column {
	t.Helper()
	base := build.Build{}
	cols := NewIndex(stock).columns(&ask, &base)
	b := base
	v := rule.NewView(&b, ask.Needs)
	var due [build.Seats + 1][]*rule.Rule
	for _, r := range rule.All {
		last := -1
		for _, s := range r.Reads {
			for i, c := range cols {
				if c.seat == s {
					last = max(last, i)
				}
			}
		}
		due[last+1] = append(due[last+1], r)
	}
	stands := func(depth int) (worth int64, ok bool) {
		for _, r := range due[depth] {
			for _, m := range v.Run(r) {
				if !m.Advice && !m.Passes() {
					return 0, false
				}
				worth += m.Worth
			}
		}
		return worth, true
	}
	pick := make([]int, len(cols))
	var walk func(i int, worth, price int64)
	walk = func(i int, worth, price int64) {
		w, ok := stands(i)
		if !ok {
			return
		}
		worth += w
		if i == len(cols) {
			see(&leaf{pick: append([]int(nil), pick...), price: price, worth: worth}, cols)
			return
		}
		for o := cols[i].live.next(0); o >= 0; o = cols[i].live.next(o + 1) {
			b.Set(cols[i].options[o])
			pick[i] = o
			walk(i+1, worth, price+cols[i].price[o])
		}
		b.Clear(cols[i].seat)
	}
	price := int64(0)
	for _, l := range base.Lines() {
		price += int64(l.Price())
	}
	walk(0, 0, price)
	return cols
}

// earlier is the tie order: by the parts in the seats as the planner decides them, then by how they are used.
func earlier(a, b *leaf, cols []*column) bool {
	for _, s := range sequence {
		for i, c := range cols {
			if c.seat == s && a.pick[i] != b.pick[i] {
				return a.pick[i] < b.pick[i]
			}
		}
	}
	return false
}

func cheaper(a, b *leaf) bool { return a.price < b.price }

func worthier(a, b *leaf) bool {
	return a.worth > b.worth || a.worth == b.worth && a.price < b.price
}
