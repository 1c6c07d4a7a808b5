package plan

import (
	"cmp"
	"slices"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
)

// column is one seat of a problem with the ways to fill it.
type column struct {
	*shelf
	price   []int64 // minor units, nought where owned
	worth   []int64 // value points of the rules that read this seat alone
	shared  bool    // whether a larger problem has the same, so that they must not be changed
	live    set     // options that the ask admits and no rule has failed on their own
	offered int     // options that the ask admits
}

// columns lists the seats that can be filled in several ways, with their options, and fills into base what the others hold.
func (x *Index) columns(ask *Ask, base *build.Build) []*column {
	var list []*column
	for s := range build.Seat(build.Seats) {
		kept := slices.DeleteFunc(slices.Clone(ask.Keep), func(c Choice) bool { return c.Seat != s })
		if !s.Single() && len(kept) > 0 && !(len(kept) == 1 && kept[0].loose()) {
			settle(x.stock, base, kept)
			continue
		}
		if s == build.Services {
			labour(x.stock, base)
			continue
		}
		c := &column{shelf: x.shelf(s, counts(s, ask.Needs, kept), ask.Needs.Wish.Prefer)}
		c.price = c.shelf.price
		c.worth = make([]int64, len(c.options))
		c.live = every(len(c.options))
		if admits := ask.admitting(s, kept); admits != nil {
			for i, o := range c.options {
				if !admits(o) {
					c.live.drop(i)
				}
			}
		}
		c.offered = c.live.count()
		owned := len(kept) == 1 && kept[0].Owned
		if owned {
			base.Owned |= build.SetOf(s)
			c.price = make([]int64, len(c.options))
		}
		if len(c.options) == 1 && c.options[0].Part == nil && c.offered == 1 {
			continue // nothing can fill it
		}
		list = append(list, c)
	}
	return list
}

// admitting says which options of a seat an ask admits beside what it keeps there; nil where that is all of them.
func (a *Ask) admitting(s build.Seat, kept []Choice) func(o build.Option) bool {
	if len(kept) == 1 {
		return kept[0].admits
	}
	asked := wanted(s, a.Needs)
	if !a.picky() {
		return asked
	}
	return func(o build.Option) bool { return !a.refuses(o) && (asked == nil || asked(o)) }
}

// before is the tie order of options within a seat: those of makers that are liked first.
func before(likes []string) func(a, b build.Option) int {
	liked := func(o build.Option) int {
		if o.Part != nil && slices.Contains(likes, o.Part.Common().Maker) {
			return 0
		}
		return 1
	}
	return func(a, b build.Option) int {
		if len(likes) > 0 {
			if c := cmp.Compare(liked(a), liked(b)); c != 0 {
				return c
			}
		}
		if a.Part != b.Part {
			return cmp.Compare(a.ID(), b.ID())
		}
		return cmp.Or(cmp.Compare(a.Count, b.Count), cmp.Compare(layout(a), layout(b)), cmp.Compare(a.Plate, b.Plate), cmp.Compare(a.Face, b.Face))
	}
}

func layout(o build.Option) string {
	if o.Layout == nil {
		return ""
	}
	return o.Layout.ID
}

// articles is how many pieces of its article an option takes off the shelf.
func articles(o build.Option) int {
	if f, ok := o.Part.(*part.Fan); ok {
		return build.FanSet{Fan: f, Count: o.Count}.Packs()
	}
	return max(o.Count, 1)
}

// counts lists how many pieces of an article are thought of in a seat.
func counts(s build.Seat, needs *brief.Needs, kept []Choice) []int {
	if len(kept) == 1 && kept[0].Count > 0 {
		return []int{kept[0].Count}
	}
	switch s {
	case build.Memory, build.Cache, build.Archive:
		return []int{1, 2}
	case build.Screens:
		bought := 0
		for _, screen := range needs.Screens {
			if !screen.Owned {
				bought += screen.Count
			}
		}
		return []int{bought}
	}
	return []int{1}
}

// offer lists every way to fill a seat that a workshop would think of, whatever the rules say of it, by id of the part.
func offer(stock *part.Stock, s build.Seat, counts []int) []build.Option {
	empty := []build.Option{{Seat: s}}
	switch s {
	case build.Case:
		return housings(stock.Cases)
	case build.Board:
		return singly(s, stock.Boards)
	case build.Processor:
		return singly(s, stock.Processors)
	case build.Cooler:
		return coolers(stock)
	case build.Memory:
		return several(s, stock.Memory, counts)
	case build.Graphics:
		return append(empty, singly(s, stock.Graphics)...)
	case build.Supply:
		return singly(s, stock.Supplies)
	case build.Boot:
		return several(s, stock.Drives, counts)
	case build.Cache, build.Archive:
		return append(empty, several(s, stock.Drives, counts)...)
	case build.Cards:
		return append(empty, several(s, stock.Cards, counts)...)
	case build.Screens:
		if counts[0] > 0 {
			return several(s, stock.Monitors, counts)
		}
	case build.Fans:
		return append(empty, fans(stock)...)
	case build.UPS:
		return append(empty, singly(s, stock.UPS)...)
	}
	return empty
}

// wanted says which options of a seat some rule can ask for under these needs: an add-in card that helps, a store of power where
// one is asked for and only then; nil where that is all of them.
func wanted(s build.Seat, needs *brief.Needs) func(o build.Option) bool {
	switch s {
	case build.Cards:
		return func(o build.Option) bool {
			c, ok := o.Part.(*part.Card)
			return !ok || helps(c, needs)
		}
	case build.UPS:
		minutes, _ := needs.Wish.UPS.Get()
		return func(o build.Option) bool { return (o.Part != nil) == (minutes > 0) }
	}
	return nil
}

// helps reports an add-in card that some rule can ask for under these needs.
func helps(c *part.Card, needs *brief.Needs) bool {
	asks := func(list ...brief.Resource) bool {
		return slices.ContainsFunc(list, func(r brief.Resource) bool {
			_, asked := needs.Get(r)
			return asked
		})
	}
	switch c.Use {
	case part.UseNetwork, part.UseWireless:
		return asks(brief.Wired, brief.Wireless)
	case part.UseUSB:
		return asks(brief.FastPorts)
	case part.UseDisplay:
		return len(needs.Screens) > 0
	case part.UseHub, part.UseStorage:
		return true
	}
	return false
}

func singly[P interface{ Common() *part.Article }](s build.Seat, parts []P) []build.Option {
	return several(s, parts, []int{1})
}

func several[P interface{ Common() *part.Article }](s build.Seat, parts []P, counts []int) []build.Option {
	var list []build.Option
	for _, p := range byID(parts) {
		for _, n := range counts {
			list = append(list, build.Option{Seat: s, Part: p, Count: n})
		}
	}
	return list
}

// byID sorts parts by their ids, which is quicker than to sort the many options made of them.
func byID[P interface{ Common() *part.Article }](parts []P) []P {
	return slices.SortedFunc(slices.Values(parts), func(a, b P) int { return cmp.Compare(a.Common().ID, b.Common().ID) })
}

// housings are the cases in every layout with the board plate on every step.
func housings(cases []*part.Case) []build.Option {
	var list []build.Option
	for _, c := range byID(cases) {
		list = append(list, build.CaseOptions(c)...)
	}
	return list
}

// coolers are the air coolers, and the liquid ones on every face where some layout takes a radiator.
func coolers(stock *part.Stock) []build.Option {
	var list []build.Option
	var faces []part.Face
	for _, c := range stock.Cases {
		for i := range c.Layouts {
			for j := range c.Layouts[i].Radiators {
				if f := c.Layouts[i].Radiators[j].Face; !slices.Contains(faces, f) {
					faces = append(faces, f)
				}
			}
		}
	}
	for _, c := range byID(stock.Coolers) {
		if c.Liquid == nil {
			list = append(list, build.Option{Seat: build.Cooler, Part: c, Count: 1})
			continue
		}
		for _, f := range faces {
			list = append(list, build.Option{Seat: build.Cooler, Part: c, Count: 1, Face: f})
		}
	}
	return list
}

// fans are the case fans, of one article on one face, as many as there is room for in some layout or fewer.
func fans(stock *part.Stock) []build.Option {
	var places []part.FanPlace // none twice, whatever is thick enough
	for _, c := range stock.Cases {
		for i := range c.Layouts {
			for _, p := range c.Layouts[i].FanPlaces {
				if !slices.ContainsFunc(places, func(q part.FanPlace) bool {
					return p.Face == q.Face && p.Fans == q.Fans && slices.Equal(p.FanSizes, q.FanSizes)
				}) {
					places = append(places, p)
				}
			}
		}
	}
	var list []build.Option
	for _, f := range byID(stock.Fans) {
		first := len(list)
		for _, o := range build.FanOptions(f, places) {
			if !slices.Contains(list[first:], o) {
				list = append(list, o)
			}
		}
	}
	return list
}

// labour puts the services and sundries into a build that every build of the shop carries.
func labour(stock *part.Stock, b *build.Build) {
	for _, id := range stock.Shop.Labour {
		if s, ok := part.Find(stock.Services, id); ok {
			b.Services = append(b.Services, build.ServiceSet{Service: s, Count: 1})
		}
	}
}

// settle fills a seat that takes several articles with those kept.
func settle(stock *part.Stock, b *build.Build, kept []Choice) {
	for _, c := range kept {
		if c.Owned {
			b.Owned |= build.SetOf(c.Seat)
		}
		n := max(c.Count, 1)
		switch c.Seat {
		case build.Fans:
			if p, ok := part.Find(stock.Fans, c.Part); ok {
				b.Fans = append(b.Fans, build.FanSet{Fan: p, Count: n, Face: c.Face})
			}
		case build.Cards:
			if p, ok := part.Find(stock.Cards, c.Part); ok {
				b.Cards = append(b.Cards, build.CardSet{Card: p, Count: n})
			}
		case build.Screens:
			if p, ok := part.Find(stock.Monitors, c.Part); ok {
				b.Screens = append(b.Screens, build.ScreenSet{Monitor: p, Count: n})
			}
		case build.Services:
			if p, ok := part.Find(stock.Services, c.Part); ok {
				b.Services = append(b.Services, build.ServiceSet{Service: p, Count: n})
			}
		}
	}
}
