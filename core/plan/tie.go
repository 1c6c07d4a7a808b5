package plan

import "context"

// first replaces a choice by the first one in tie order that costs and serves the same: seat by seat it asks whether an
// earlier option leads to an equal build.
func (p *Problem) first(ctx context.Context, b *bound, best *leaf, limit int64, perPoint int64) (nodes int64) {
	margin := b.marginals(p)
	only := make([]set, len(p.cols))
	for c, col := range p.cols {
		only[c] = make(set, len(col.live))
		for o := range col.options {
			if col.live.has(o) && margin[c][o] <= limit {
				only[c].add(o)
			}
		}
	}
	for c := range p.cols {
		for {
			earlier := make(set, len(only[c]))
			for o := only[c].next(0); o >= 0 && o < best.pick[c]; o = only[c].next(o + 1) {
				earlier.add(o)
			}
			if earlier.next(0) < 0 {
				break
			}
			s := p.newSearch(ctx, b, limit)
			s.perPoint = perPoint
			for q := range p.cols {
				copy(s.levels[0].domain[q], only[q])
			}
			copy(s.levels[0].domain[c], earlier)
			s.found = func(s *search) {
				if l := s.leaf(); l.price == best.price && l.worth == best.worth {
					*best = l
					s.stop = true
				}
			}
			before := best.pick[c]
			s.run()
			nodes += s.nodes
			if best.pick[c] == before {
				break
			}
		}
		only[c] = make(set, len(only[c]))
		only[c].add(best.pick[c])
	}
	return nodes
}

// marginals is, by column and option, the bound with that option decided and everything else open.
func (b *bound) marginals(p *Problem) [][]int64 {
	m := make([][]int64, len(b.order))
	root := b.root()
	for _, c := range b.order {
		m[c] = make([]int64, len(b.reach[c]))
		q := b.parent[c]
		if q < 0 {
			for o, r := range b.reach[c] {
				m[c][o] = min(never, root-b.least(c)+r)
			}
			continue
		}
		// what the rest costs with an option of the parent decided, without what hangs on this column
		rest := make([]int64, len(m[q]))
		t := p.tables.get(q, c)
		for o, r := range m[q] {
			rest[o] = never
			if r < never {
				rest[o] = r - b.cheapest(c, t.row(o))
			}
		}
		back := p.tables.get(c, q)
		for o, r := range b.reach[c] {
			least := int64(never)
			for _, x := range b.ranked[q] {
				if back.row(o).has(int(x)) {
					least = min(least, rest[x])
				}
			}
			m[c][o] = min(never, least+r)
		}
	}
	return m
}
