package plan

import (
	"math"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/predict"
)

// feeds is the supplies of a column in groups: what fails whichever of a group feeds a build need not be asked of each.
type feeds struct {
	all    *predict.Supplies
	groups []*predict.Supplies
	of     []int // by option: its group
	sets   []set // by group: its options
}

// fedBy sorts the supplies of a shelf into about as many groups as each has members.
func (c *shelf) fedBy() *feeds {
	if c.feeds == nil {
		list := c.supplies()
		x := &feeds{all: predict.NewSupplies(list)}
		x.groups, x.of, _ = predict.GroupSupplies(list, int(math.Sqrt(float64(len(list)))))
		for range x.groups {
			x.sets = append(x.sets, make(set, words(len(list))))
		}
		for o, g := range x.of {
			x.sets[g].add(o)
		}
		c.feeds = x
	}
	return c.feeds
}

// fedByAir is the supplies of a shelf, all of them and in groups that blow about as much.
type fedByAir struct {
	all       *predict.Supplies
	groups    []*predict.Supplies
	of, place []int // by option: its group, and its place in that
}

func (c *shelf) fedByAir() *fedByAir {
	if c.byAir == nil {
		list := c.supplies()
		x := &fedByAir{all: c.fedBy().all}
		x.groups, x.of, x.place = predict.GroupByAir(list, int(math.Sqrt(float64(len(list)))))
		c.byAir = x
	}
	return c.byAir
}

// anyFans is the fans of a shelf.
func (c *shelf) anyFans() *predict.AnyFans {
	if c.fans == nil {
		var list []*part.Fan
		for o, option := range c.options {
			if fan, ok := option.Part.(*part.Fan); ok && c.first[o] == o {
				list = append(list, fan)
			}
		}
		c.fans = predict.NewAnyFans(list)
	}
	return c.fans
}

// supplies lists the part of every option; nil for none.
func (c *shelf) supplies() []*part.Supply {
	list := make([]*part.Supply, len(c.options))
	for o, option := range c.options {
		var b build.Build
		b.Set(option)
		list[o] = b.Supply
	}
	return list
}

// fedBy is the supplies of a problem in groups.
func (p *Problem) fedBy() *feeds { return p.cols[p.colOf[build.Supply]].fedBy() }

// twins is an early query over a supply and others, asked of the others alone: with whichever supply, and after that with those of a
// group; nil where it was not.
type twins struct{ list []*factor }

// failAlike lists supplies that fail with all else decided, as one does by a factor; nil where that is not known.
func (s *search) failAlike(f *due, o int) set {
	x := s.p.fedBy()
	if f.twins.list == nil {
		f.twins.list = make([]*factor, 1+len(x.groups))
	}
	if s.failsWith(f, 0, x.all) {
		return s.p.cols[s.p.colOf[build.Supply]].live
	}
	if g := x.of[o]; s.failsWith(f, 1+g, x.groups[g]) {
		return x.sets[g]
	}
	return nil
}

// failsWith reports that a factor fails whichever of some supplies is there.
func (s *search) failsWith(f *due, at int, fed *predict.Supplies) bool {
	t := f.twins.list[at]
	if t == nil {
		t = s.p.newFactor(s.p.soon(f.rule, f.nth, fed))
		f.twins.list[at] = t
	}
	s.watch.poll(asking)
	before := s.p.index.checks
	fails := t.ask(s.p, s.choice(t)) == failed
	s.weigh(before)
	return fails
}
