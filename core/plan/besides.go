package plan

import (
	"slices"

	"slipfit/core/build"
	"slipfit/core/predict"
	"slipfit/core/sound"
)

// besides is what comes into the air of a build besides what an early query sees: what the seats bring at least and at most
// that it leaves out, and what all seats that warm a build bring at most, whatever fills them.
func (p *Problem) besides(q *query) predict.Besides {
	if q.whichever() && q.fed == nil && p.colOf[build.Supply] >= 0 {
		q.fed = p.fedBy().all
	}
	if q.early == nil && q.rule.Holds == nil || q.early != nil && len(q.early.Warms) == 0 && len(q.early.Warmer) == 0 {
		return predict.Besides{}.Fed(q.fed)
	}
	n := len(predict.Asked(p.ask.Needs))
	least, upTo, most := make([]int64, n), make([]int64, n), make([]int64, n)
	for _, s := range predict.Warming {
		w := p.warming(s)
		for i := range n {
			most[i] += w.most[i]
		}
	}
	var warms, warmer []build.Seat
	if q.early != nil {
		warms, warmer = q.early.Warms, q.early.Warmer
	}
	disks := sound.Silent()
	for _, s := range warms {
		w := p.warming(s)
		for i := range n {
			least[i] += w.least[i]
			upTo[i] += w.most[i]
			if !slices.Contains(predict.Warming, s) {
				most[i] += w.most[i]
			}
		}
		if dBA := w.least[n]; dBA > 0 && !q.seats.Has(s) {
			disks = sound.Sum(disks, float64(dBA)/1000)
		}
	}
	for _, s := range warmer {
		if w := p.warming(s); !slices.Contains(warms, s) {
			for i := range n {
				upTo[i] += w.most[i] - w.least[i]
			}
		}
	}
	whole := func(mW []int64, up int) []int {
		list := make([]int, n)
		for i := range n {
			list[i] = int(mW[i]/1000) + up
		}
		return list
	}
	all := predict.NewBesides(whole(least, 0), whole(upTo, 1), whole(most, 1)).Heard(max(0, disks))
	if q.fed != nil {
		all = all.Fed(q.fed)
	}
	if q.early != nil && q.early.AnyFans {
		all = all.Aired(p.cols[p.colOf[build.Fans]].anyFans())
	}
	return all
}

// warming is what a seat brings into the air in each activity asked, mW.
type warming struct{ least, most []int64 }

func (p *Problem) warming(s build.Seat) *warming {
	if p.warms[s] != nil {
		return p.warms[s]
	}
	w, n := &warming{}, len(predict.Asked(p.ask.Needs))+1
	see := func(these []int64) {
		if w.least == nil {
			w.least, w.most = slices.Clone(these), slices.Clone(these)
		}
		for i, mw := range these {
			w.least[i], w.most[i] = min(w.least[i], mw), max(w.most[i], mw)
		}
	}
	if c := p.colOf[s]; c < 0 {
		alone := p.base
		for other := range build.Seat(build.Seats) {
			if other != s {
				alone.Clear(other)
			}
		}
		see(p.brings(&alone))
	} else {
		col := p.cols[c]
		all := p.index.brings(p, col)
		for o := col.live.next(0); o >= 0; o = col.live.next(o + 1) {
			see(all[o*n : o*n+n])
		}
	}
	if w.least == nil { // nothing is left that could fill it
		w.least, w.most = make([]int64, n), make([]int64, n)
	}
	p.warms[s] = w
	return w
}

// brings lists what every option of a column brings, one option after the other.
func (x *Index) brings(p *Problem, col *column) []int64 {
	memories := x.heard(p.says(nil, &trait{needs: []string{"Needs.Loads"}}, true)).memories
	key := "brings " + col.key
	m := memories[key]
	if m == nil {
		m = &memory{}
		var alone build.Build
		for _, o := range col.options {
			alone.Set(o)
			m.net = append(m.net, p.brings(&alone)...)
		}
		memories[key] = m
	}
	return m.net
}

// brings is the heat that a build brings in each activity asked, mW, and after it how loud its disks are, mdB(A).
func (p *Problem) brings(b *build.Build) []int64 {
	p.view.Build = b
	list := p.view.Brings()
	mw := make([]int64, len(list), len(list)+1)
	for i, w := range list {
		mw[i] = int64(w * 1000)
	}
	return append(mw, int64(p.view.Disks()*1000))
}
