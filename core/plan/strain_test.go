package plan

import (
	"math/rand/v2"
	"strconv"
	"testing"

	"slipfit/core/grow"
	"slipfit/core/part"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// TestStrain holds the options that are no easier than one to what the rule itself says of them.
func TestStrain(t *testing.T) {
	grown, err := grow.Stock(generic(t), 600, 3)
	require.NoError(t, err)
	p, err := New(grown, Ask{Needs: briefed(t, grown)[0].needs})
	require.NoError(t, err)
	r := rand.New(rand.NewPCG(20, 26))
	said := map[string]int{}
	for _, q := range p.all() {
		if len(q.rule.Harder)+len(q.rule.Easier) == 0 {
			continue
		}
		f := p.newFactor(q)
		for range 60_000 {
			var options []int
			for _, c := range q.cols {
				options = append(options, r.IntN(len(p.cols[c].options)))
			}
			i := r.IntN(len(options))
			on := f.strain(p, q.cols[i])
			if on == nil || f.ask(p, options) != failed {
				continue
			}
			than, over := options[i], on.over(options[i])
			require.True(t, over.has(than))
			for o := over.next(0); o >= 0; o = over.next(o + 1) {
				require.True(t, on.noEasier(o, than))
				if options[i] = o; on.seen.of[o] != on.seen.of[than] && r.IntN(8) == 0 {
					require.EqualValues(t, failed, f.ask(p, options), "rule %s: %s is no easier than %s", q.rule.ID, p.cols[q.cols[i]].options[o].ID(), p.cols[q.cols[i]].options[than].ID())
					said[q.rule.ID]++
				}
			}
			for range 20 {
				o := r.IntN(len(p.cols[q.cols[i]].options))
				require.Equal(t, over.has(o), on.noEasier(o, than))
			}
		}
	}
	t.Log(said)
	require.Len(t, said, 4)
	for id, n := range said {
		require.Greater(t, n, 100, "rule %s", id)
	}
}

// TestOpenAmongTwins holds open choices to trying everything where parts differ from others in no more than price and a figure that is
// harder on a rule, or easier.
func TestOpenAmongTwins(t *testing.T) {
	stocks := generic(t)
	cores := anchors(t, stocks)
	possible, impossible := 0, 0
	for seed := range uint64(150) {
		r := rand.New(rand.NewPCG(seed, 30))
		stock := smallStock(r, stocks, cores[r.IntN(len(cores))])
		twin(r, stock)
		can, cannot := openAgrees(t, stock, Ask{Needs: someNeeds(r, stock)})
		if possible, impossible = possible+can, impossible+cannot; t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	}
	require.Greater(t, possible, 200)
	require.Greater(t, impossible, 200)
}

// twin adds to a stock copies of a part of one kind that stand higher or lower, reach farther or less far, or take other numbers of slots.
func twin(r *rand.Rand, s *part.Stock) {
	by := func(f *unit.Figure[unit.Length], most int) {
		if was, known := f.Get(); known {
			f.Set(max(unit.Millimetre, was+unit.Length(r.IntN(2*most)-most/2)*unit.Millimetre))
		}
	}
	another := func(a *part.Article) {
		a.ID += "-twin-" + strconv.Itoa(r.IntN(1_000_000))
		a.Price = max(100, a.Price+unit.Money(r.IntN(4000)-2000))
	}
	kind := r.IntN(4)
	for range 3 {
		switch {
		case kind == 0 && len(s.Graphics) > 0:
			card := *s.Graphics[0]
			another(&card.Article)
			card.Slots.Set(unit.Whole(1 + r.IntN(5)))
			s.Graphics = append(s.Graphics, &card)
		case kind == 1 && len(s.Drives) > 0:
			drive := *s.Drives[0]
			another(&drive.Article)
			by(&drive.Above, 8)
			s.Drives = append(s.Drives, &drive)
		case kind == 2 && len(s.Coolers) > 0 && s.Coolers[0].Air != nil:
			cooler := *s.Coolers[0]
			another(&cooler.Article)
			air := *cooler.Air
			by(&air.ToMemory, 60)
			cooler.Air = &air
			s.Coolers = append(s.Coolers, &cooler)
		default:
			memory := *s.Memory[0]
			another(&memory.Article)
			by(&memory.Height, 60)
			s.Memory = append(s.Memory, &memory)
		}
	}
}
