package plan

import (
	"iter"
	"math"
	"slices"

	"slipfit/core/build"
	"slipfit/core/predict"
	"slipfit/core/rule"
	"slipfit/core/sound"
)

// din is how loud parts of builds in one chamber are, pW, as far as that was found out. Of a case with processor and card it is a sum over
// supply, cooler and disks, so that a search need not try each of them beside all others.
type din struct {
	*rule.Din
	*learnt
	asks    *query // of a core
	loads   []int
	allowed float64
	fed     *fedByAir
	disks   [build.Seats][]float64 // by seat and option; one where that is settled
}

// heardPick is a core at a load.
type heardPick struct {
	load                                       int
	housing, fans, processor, graphics, supply int32
}

// choir is what a core comes to with each of some supplies, and at least with any; nothing is said where it has none.
type choir struct {
	*predict.Choir
	least predict.Heard
}

// coolerPick is coolers on a processor at a load, in some air.
type coolerPick struct {
	load      int
	processor int32
	inlet     predict.Inlet
}

// tiers are the seats that may hold disks.
var tiers = [...]build.Seat{build.Boot, build.Cache, build.Archive}

// listening is a search that looks at how loud its cores are.
type listening struct {
	*din
	core   *factor              // reads what is decided of a core
	tiers  [build.Seats]*factor // and for disks; nil where none is known
	drives []offered            // archives open
	cooled []cooled             // coolers open, in some air
	heard  []predict.Heard
}

// cooled is coolers open to a processor at a load in some air.
type cooled struct {
	coolerPick
	list []offered
}

// offered is an option open to a column: how much more it costs than the column is known to, and its sound power, pW. Less than nought without
// end stands for one of which nothing is known.
type offered struct {
	option int
	more   int64
	pw     float64
}

// listen has a search look at how loud its cores are, where a rule tells.
func (s *search) listen() {
	p := s.p
	at := slices.IndexFunc(p.many, func(f *factor) bool { return f.early != nil && f.fed == nil && f.early.Din != nil })
	if at < 0 || p.colOf[build.Supply] < 0 || p.colOf[build.Cooler] < 0 {
		return
	}
	f, posed := p.many[at], p.posed()
	if posed.din == nil {
		posed.din = posed.newDin(f)
	}
	if len(posed.din.loads) == 0 {
		return
	}
	s.din = &listening{din: posed.din, core: f}
	for _, seat := range tiers {
		c := p.colOf[seat]
		for _, g := range p.many {
			least := s.din.tiers[seat]
			if c >= 0 && g.rule == f.rule && g.early != nil && g.fed == nil && g.columns>>c&1 != 0 && g.seats.Has(build.Cooler) && (least == nil || len(g.open) < len(least.open)) {
				s.din.tiers[seat] = g
			}
		}
	}
}

func (p *Problem) newDin(f *factor) *din {
	x := &din{Din: f.early.Din, asks: p.soon(f.rule, f.nth, nil), fed: p.cols[p.colOf[build.Supply]].fedByAir()}
	x.asks.besides = p.besides(x.asks)
	x.learnt = p.index.learnt(p, x.asks)
	p.view.Build = &p.base
	x.loads, x.allowed = x.Loads(p.view), x.Allowed(p.view)
	pw := func(mdB int64) float64 {
		if mdB == 0 {
			return 0
		}
		return sound.Picowatts(float64(mdB) / 1000)
	}
	for _, s := range tiers {
		w := p.warming(s)
		n := len(w.least)
		if c := p.colOf[s]; c < 0 {
			x.disks[s] = []float64{pw(w.least[n-1])}
		} else {
			for all := p.index.brings(p, p.cols[c]); len(all) > 0; all = all[n:] {
				x.disks[s] = append(x.disks[s], pw(all[n-1]))
			}
		}
	}
	return x
}

// pickOf is what is decided of a seat at depth d; of one that is settled the first option of none.
func (s *search) pickOf(seat build.Seat, d int) (option int, decided bool) {
	c := s.p.colOf[seat]
	if c < 0 {
		return 0, true
	}
	return s.pick[c], s.place[c] < d
}

// openings is what a search knows before it decides the next column.
type openings struct {
	d     int
	least int64               // the bound on everything
	told  *[build.Seats]int64 // what the columns are known to cost of that
}

// affordable goes through the options open to an undecided column that may cost so much more.
func (s *search) affordable(x *openings, c int) iter.Seq[offered] {
	return func(yield func(offered) bool) {
		l, rank, known := &s.levels[x.d], s.rank(c), s.decided(s.frame, c, x.d)
		open := set(l.domain[c])
		for _, o := range rank[l.lead[c]:] {
			if !open.has(int(o)) {
				continue
			}
			more := int64(0)
			if known {
				more = max(0, s.reach[c][o]-x.told[c])
			}
			if x.least+more > s.limit || !yield(offered{option: int(o), more: more}) {
				return
			}
		}
	}
}

// quietEnough reports that what is open may leave the core that is decided under the level allowed, within what it may cost.
func (s *search) quietEnough(x openings) bool {
	housing, cased := s.pickOf(build.Case, x.d)
	fans, aired := s.pickOf(build.Fans, x.d)
	processor, worked := s.pickOf(build.Processor, x.d)
	graphics, drawn := s.pickOf(build.Graphics, x.d)
	if _, fed := s.pickOf(build.Supply, x.d); fed || !cased || !aired || !worked || !drawn || s.watch.ended {
		return true
	}
	for _, load := range s.din.loads {
		if !s.quietAt(&x, heardPick{load, int32(housing), int32(fans), int32(processor), int32(graphics), 0}) {
			s.blameDin(x.d)
			return false
		}
	}
	return true
}

// quietAt is quietEnough at a load.
func (s *search) quietAt(x *openings, k heardPick) bool {
	any := s.choir(k, s.din.fed.all, 0)
	if any.Choir == nil {
		return true
	}
	left := s.din.allowed * (1 + roundingShare)
	s.din.cooled, s.din.drives = s.din.cooled[:0], append(s.din.drives[:0], offered{})
	for _, seat := range tiers {
		pw := s.din.disks[seat]
		if o, decided := s.pickOf(seat, x.d); decided {
			left -= pw[o]
		} else if c := s.p.colOf[seat]; seat == build.Archive {
			s.din.drives = s.falling(s.din.drives[:0], x, c, func(o int) float64 { return pw[o] })
		} else {
			left -= s.leastOpen(x.d, c, pw)
		}
	}
	if !s.bears(x, &k, 0, left, any.least) {
		return false
	}
	for feed := range s.affordable(x, s.p.colOf[build.Supply]) {
		bears := func(list []predict.Heard) bool {
			return slices.ContainsFunc(list, func(h predict.Heard) bool { return s.bears(x, &k, feed.more, left, h) })
		}
		s.din.heard = any.With(s.din.heard[:0], feed.option)
		if bears(s.din.heard) && bears(s.ofGroup(k, feed.option)) && bears(s.ofCore(k, feed.option)) {
			return true
		}
	}
	return false
}

// roundingShare is by what share a sum may miss.
const roundingShare = 1e-9

// bears reports a core that some cooler and archive leave under what is left.
func (s *search) bears(x *openings, k *heardPick, more int64, left float64, h predict.Heard) bool {
	coolers, drives := s.coolers(x, coolerPick{k.load, k.processor, predict.InletOf(h.InletC)}), s.din.drives
	left -= h.PW
	if len(coolers) == 0 || len(drives) == 0 || coolers[len(coolers)-1].pw+drives[len(drives)-1].pw > left {
		return false
	}
	for i := range coolers {
		for j := range drives {
			if x.least+more+coolers[i].more+drives[j].more <= s.limit && coolers[i].pw+drives[j].pw <= left {
				return true
			}
		}
	}
	return false
}

// falling lists the options open to a column of which none that costs less is quieter.
func (s *search) falling(list []offered, x *openings, c int, pw func(o int) float64) []offered {
	for o := range s.affordable(x, c) {
		if o.pw = pw(o.option); len(list) == 0 || o.pw < list[len(list)-1].pw {
			list = append(list, o)
		}
	}
	return list
}

// leastOpen is the least of what is open to a column; nought where nothing is.
func (s *search) leastOpen(d, c int, pw []float64) float64 {
	open := set(s.levels[d].domain[c])
	o := open.next(0)
	if o < 0 {
		return 0
	}
	least := pw[o]
	for ; o >= 0 && least > 0; o = open.next(o + 1) {
		least = min(least, pw[o])
	}
	return least
}

// ofCore is what a core with a supply is heard at but for its cooler.
func (s *search) ofCore(k heardPick, supply int) []predict.Heard {
	k.supply = int32(supply)
	din, p := s.din, s.p
	list, known := din.cores[k]
	if !known {
		s.pose(k)
		p.lone.Set(p.cols[p.colOf[build.Supply]].options[supply])
		list = din.Core(p.view, k.load, din.asks.besides)
		if list == nil {
			list = []predict.Heard{{PW: math.Inf(-1)}}
		}
		din.cores[k] = list
	}
	return list
}

// pose lays out a core without its supply, to be asked about.
func (s *search) pose(k heardPick) {
	s.effort += slowEffort
	s.tried += slowTried
	p := s.p
	p.watch.poll(predicting)
	p.lone = *s.din.asks.base
	for i, seat := range [...]build.Seat{build.Case, build.Fans, build.Processor, build.Graphics} {
		if c := p.colOf[seat]; c >= 0 {
			p.lone.Set(p.cols[c].options[[...]int32{k.housing, k.fans, k.processor, k.graphics}[i]])
		}
	}
	p.view.Build = &p.lone
}

// ofGroup is no more than ofCore, as far as all supplies that blow about as much tell it together.
func (s *search) ofGroup(k heardPick, supply int) []predict.Heard {
	fed := s.din.fed
	g := fed.of[supply]
	group := s.choir(k, fed.groups[g], 1+g)
	if group.Choir == nil {
		return []predict.Heard{{PW: math.Inf(-1)}}
	}
	s.din.heard = group.With(s.din.heard[:0], fed.place[supply])
	return s.din.heard
}

// choir is a core with some supplies, by their number: nought for all.
func (s *search) choir(k heardPick, fed *predict.Supplies, nth int) *choir {
	k.supply = int32(nth)
	din := s.din
	x := din.choirs[k]
	if x == nil {
		s.pose(k)
		x = &choir{Choir: din.Feeds(s.p.view, k.load, din.asks.besides.Fed(fed))}
		if x.Choir != nil {
			x.least = x.Least()
		}
		din.choirs[k] = x
	}
	return x
}

// coolers lists the coolers open, or the one decided, on a processor in some air, as falling does.
func (s *search) coolers(x *openings, k coolerPick) []offered {
	for i := range s.din.cooled {
		if at := &s.din.cooled[i]; at.coolerPick == k {
			return at.list
		}
	}
	c := s.p.colOf[build.Cooler]
	known := s.din.coolers[k]
	if known == nil {
		known = slices.Repeat([]float64{math.NaN()}, len(s.p.cols[c].options))
		s.din.coolers[k] = known
		s.din.worked[k.processor] = append(s.din.worked[k.processor], k)
	}
	pw := func(o int) float64 { return s.coolerPW(known, &k, o) }
	var list []offered
	if s.place[c] < x.d {
		list = []offered{{pw: pw(s.pick[c])}}
	} else {
		list = s.falling(nil, x, c, pw)
	}
	s.din.cooled = append(s.din.cooled, cooled{k, list})
	return list
}

// louder reports a cooler no quieter than another in any air in which that was asked about on the processor that is decided: where what is
// open leaves no core quiet enough with the other, it leaves none with this one.
func (s *search) louder(c, o, than int) bool {
	processor, decided := s.pickOf(build.Processor, s.place[c])
	if c != s.p.colOf[build.Cooler] || !decided {
		return false
	}
	for _, k := range s.din.worked[int32(processor)] {
		known := s.din.coolers[k]
		if !math.IsNaN(known[than]) && s.coolerPW(known, &k, o) < known[than] {
			return false
		}
	}
	return true
}

// coolerPW is how loud a cooler is, by what is known of all.
func (s *search) coolerPW(known []float64, k *coolerPick, cooler int) float64 {
	if math.IsNaN(known[cooler]) {
		known[cooler] = s.askCooler(k, cooler)
	}
	return known[cooler]
}

// askCooler asks how loud a cooler is.
func (s *search) askCooler(k *coolerPick, cooler int) float64 {
	p := s.p
	s.tried++
	p.lone = *s.din.asks.base
	if c := p.colOf[build.Processor]; c >= 0 {
		p.lone.Set(p.cols[c].options[k.processor])
	}
	p.lone.Set(p.cols[p.colOf[build.Cooler]].options[cooler])
	p.view.Build = &p.lone
	pw, known := s.din.Cooler(p.view, k.load, k.inlet)
	if !known {
		return math.Inf(-1)
	}
	return pw
}

// blameDin blames what has left no core quiet enough at depth d.
func (s *search) blameDin(d int) {
	s.blame.mark(blamesDin)
	for _, seat := range [...]build.Seat{build.Supply, build.Cooler, build.Boot, build.Cache, build.Archive} {
		c := s.p.colOf[seat]
		switch {
		case c < 0:
		case s.place[c] >= d:
			s.blame.cut(c, s.levels[d].cut[c], len(s.rank(c)))
		case s.din.disks[seat] == nil || s.din.disks[seat][s.pick[c]] == 0:
		case s.din.tiers[seat] == nil:
			s.blame.mark(blamesAll)
		default:
			s.blame.factor(s.din.tiers[seat].id)
		}
	}
}
