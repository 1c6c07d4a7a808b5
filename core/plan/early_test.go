package plan

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/rule"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// TestEarlySees holds the rules' early questions to what they declare: of seats in Places they see no more than the rule drive-slots
// does, of those in Kinds no more than the kind of part, and where something fails with a part in a seat in Warmer, no build stands with one
// that is no cooler and no quieter.
func TestEarlySees(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 8))
	stock := generic(t)
	alike, kinds, warmer := 0, 0, 0
	for _, tr := range briefed(t, stock) {
		needs := *tr.needs
		p, err := NewIndex(stock).Problem(Ask{Needs: &needs, Lift: predictions()})
		require.NoError(t, err)
		ways := p.Open(context.Background())
		r.Shuffle(len(ways), func(i, j int) { ways[i], ways[j] = ways[j], ways[i] })
		for i := range min(len(ways), 300) {
			b := ways[i].Build()
			if b == nil {
				continue
			}
			level, _ := Heard(b, &needs)
			needs.Place.Noise.Set(level - unit.Sound(r.IntN(400)))
			p, err := NewIndex(stock).Problem(Ask{Needs: &needs})
			require.NoError(t, err)
			for _, q := range p.all() {
				if q.early == nil || len(q.early.Places)+len(q.early.Kinds)+len(q.early.Warmer) == 0 {
					continue
				}
				q.besides = p.besides(q)
				fails := p.fails(q, b)
				seats := slices.Concat(q.early.Places, q.early.Kinds, q.early.Warmer)
				s := seats[r.IntN(len(seats))]
				c := p.colOf[s]
				now := p.filling(c, b)
				if c < 0 || now < 0 {
					continue
				}
				other := r.IntN(len(p.cols[c].options))
				changed := *b
				changed.Set(p.cols[c].options[other])
				if of := p.cols[c].classify(p.stepped(&rule.DriveSlots)).of; slices.Contains(q.early.Places, s) && of[now] == of[other] {
					require.Equal(t, fails, p.fails(q, &changed), "%s of %v: %s", q.rule.ID, q.early.Seats, s)
					alike++
				}
				if of := p.cols[c].byKind().of; slices.Contains(q.early.Kinds, s) && of[now] == of[other] {
					require.Equal(t, fails, p.fails(q, &changed), "%s of %v: %s", q.rule.ID, q.early.Seats, s)
					kinds++
				}
				if fails && slices.Contains(q.early.Warmer, s) && p.newFactor(q).noEasier(p, c, other, now) {
					require.False(t, stands(q.rule, &changed, &needs) && (q.early.Leans == nil || stands(q.early.Leans, &changed, &needs)), "%s of %v: %s %s is no better than %s", q.rule.ID, q.early.Seats, s, p.cols[c].options[other].ID(), p.cols[c].options[now].ID())
					warmer++
				}
			}
		}
	}
	require.Greater(t, alike, 100)
	require.Greater(t, kinds, 20)
	require.Greater(t, warmer, 100)
	t.Logf("%d alike, %d of a kind, %d warmer", alike, kinds, warmer)
}

// all lists everything a problem asks.
func (p *Problem) all() []*query {
	list, _ := p.queries(rule.All)
	return list
}

// filling is the option of a column that a build holds, −1 where none is it.
func (p *Problem) filling(c int, b *build.Build) int {
	if c < 0 {
		return -1
	}
	return slices.IndexFunc(p.cols[c].options, func(o build.Option) bool {
		with := *b
		with.Set(o)
		return with.Boot == b.Boot && with.Cache == b.Cache && with.Archive == b.Archive && with.Memory == b.Memory && with.Kits == b.Kits && slices.Equal(with.Cards, b.Cards)
	})
}

// fails asks an early question of a build.
func (p *Problem) fails(q *query, b *build.Build) bool {
	some := *b
	for s := range build.Seat(build.Seats) {
		if !q.seats.Has(s) {
			some.Clear(s)
		}
	}
	return rule.NewView(&some, p.ask.Needs).FailsEarly(q.rule, *q.early, q.besides)
}

// stands reports a build that a rule lets stand.
func stands(r *rule.Rule, b *build.Build, n *brief.Needs) bool {
	return !slices.ContainsFunc(rule.NewView(b, n).Run(r), func(m rule.Margin) bool { return !m.Advice && !m.Passes() })
}

// predictions are the rules that predict heat and noise.
func predictions() (list []string) {
	for _, r := range rule.All {
		if r.Group == rule.Cool && r != &rule.CoolerRating {
			list = append(list, r.ID)
		}
	}
	return list
}

// A sink with fans is another kind than one without, one of nearly its resistance is not.
func TestKindsOfCooler(t *testing.T) {
	cooler := func(id string, sink unit.Resistance, fans unit.Whole) *part.Cooler {
		return &part.Cooler{Article: part.Article{ID: id}, Air: &part.AirCooler{Sink: unit.Known(sink)}, Fans: unit.Known(fans)}
	}
	stock := &part.Stock{Coolers: []*part.Cooler{
		cooler("a", 210, 1), cooler("b", 230, 2), cooler("c", 230, 0), cooler("d", 260, 1),
	}}
	shelf := NewIndex(stock).shelf(build.Cooler, nil, nil)
	of := map[string]int32{}
	for o, option := range shelf.options {
		of[option.ID()] = int32(shelf.byKind().of[o])
	}
	require.Equal(t, of["a"], of["b"])
	require.Len(t, map[int32]bool{of["b"]: true, of["c"]: true, of["d"]: true}, 3)
}
