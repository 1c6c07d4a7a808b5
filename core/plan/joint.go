package plan

import "slices"

// joints is, for every two columns of a problem that some rule quick to ask joins, which options stand together.
type joints struct {
	n  int
	at [][]set // at[a*n+b] is, by option of a, the options of b that stand with it; nil where nothing joins them
}

func (j *joints) get(a, b int) []set { return j.at[a*j.n+b] }

// joints asks the quick rules that hang on two columns of every two options.
func (p *Problem) joints() joints {
	n := len(p.cols)
	j := joints{n, make([][]set, n*n)}
	for a, ca := range p.cols {
		for b, cb := range p.cols[:a] {
			quick := slices.DeleteFunc(slices.Clone(p.joining(a, b)), func(f *factor) bool { return f.cost > 0 })
			if len(quick) == 0 {
				continue
			}
			ab, ba := blank(ca, cb), blank(cb, ca)
			for o := ca.live.next(0); o >= 0 && !p.watch.ended; o = ca.live.next(o + 1) {
				p.watch.poll(len(cb.options))
				for i := cb.live.next(0); i >= 0; i = cb.live.next(i + 1) {
					if !slices.ContainsFunc(quick, func(f *factor) bool { return f.two(p, a, o, b, i) == failed }) {
						ab[o].add(i)
						ba[i].add(o)
					}
				}
			}
			j.at[a*n+b], j.at[b*n+a] = ab, ba
		}
	}
	p.scratch = p.base
	return j
}

// blank is a set of options of b, none in it, for every option of a.
func blank(a, b *column) []set {
	list := make([]set, len(a.options))
	for i := range list {
		list[i] = make(set, words(len(b.options)))
	}
	return list
}

// close lists the options that some option of every joined column can stand with, of those that can themselves.
func (j *joints) close(p *Problem) []set {
	live := make([]set, j.n)
	for c, col := range p.cols {
		live[c] = slices.Clone(col.live)
	}
	for changed := true; changed; {
		changed = false
		for a := range live {
			for b := range live {
				rows := j.get(a, b)
				for o := live[a].next(0); rows != nil && o >= 0; o = live[a].next(o + 1) {
					if !rows[o].meets(live[b]) {
						live[a].drop(o)
						changed = true
					}
				}
			}
		}
	}
	return live
}

// together reports that some option of one set stands with one of the other.
func (j *joints) together(a, b int, of, with set) bool {
	rows := j.get(a, b)
	if rows == nil {
		return true
	}
	for o := of.next(0); o >= 0; o = of.next(o + 1) {
		if rows[o].meets(with) {
			return true
		}
	}
	return false
}
