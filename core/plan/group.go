package plan

// groupLook is the toil an option is given in its group before that is split.
const groupLook = 220000

// group settles some options of one column of a problem, with so much toil for each where there is a cap. Those that a bound on
// them alone leaves it looks at one by one for a while, then splits them by what a rule can tell apart, and begins again with each
// lot: where a rule of three columns sees but one kind of option in the first, it says what goes with what in the other two.
func (w *opening) group(p *Problem, c int, options []int, cap int64) {
	b, options := w.narrowed(p, c, options)
	if len(options) == 0 || w.watch.ended {
		return
	}
	lots := b.p.lots(c, options)
	if len(lots) == 1 {
		w.each(b, c, cap)
		return
	}
	w.each(b, c, groupLook)
	for _, lot := range lots {
		if lot = w.unsettled(c, lot); len(lot) > 0 {
			w.group(b.p, c, lot, cap)
		}
	}
}

// narrowed makes a bound on a problem with some options of one column and no others, and of the other columns with what a choice of
// use may have. It settles those that the bound leaves no use, and lists the others.
func (w *opening) narrowed(p *Problem, c int, options []int) (*bound, []int) {
	live := p.alive()
	for {
		clear(live[c])
		for _, o := range options {
			live[c].add(o)
		}
		narrow := p.within(live)
		if narrow == nil {
			for _, o := range options {
				w.settled[c][o] = true
			}
			return nil, nil
		}
		limit := int64(0)
		for _, o := range options {
			limit = max(limit, w.limit(c, o))
		}
		b := narrow.frameFor(weights{perMinor: 1}, narrow.usual(c), limit)
		for _, o := range options {
			w.settled[c][o] = b.starting(c, o) > w.limit(c, o)
		}
		options = w.unsettled(c, options)
		if len(options) == 0 || w.watch.ended || narrow.count()*10 >= p.count()*9 {
			return b, options
		}
		p, live = narrow, b.useful(limit)
	}
}

// lots sorts options of a column by what the rule of three columns or more sees of them that tells the fewest apart.
func (p *Problem) lots(c int, options []int) [][]int {
	best := [][]int{options}
	for _, f := range p.many {
		if f.columns>>c&1 == 0 || len(f.open) < 3 {
			continue
		}
		k := f.look(p).by[f.at[c]]
		at := make([]int, k.count) // by class: its place among the lots, and one
		var lots [][]int
		for _, o := range options {
			i := &at[k.of[o]]
			if *i == 0 {
				lots = append(lots, nil)
				*i = len(lots)
			}
			lots[*i-1] = append(lots[*i-1], o)
		}
		if len(lots) > 1 && (len(best) == 1 || len(lots) < len(best)) {
			best = lots
		}
	}
	return best
}
