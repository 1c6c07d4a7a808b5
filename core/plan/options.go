package plan

import (
	"cmp"
	"slices"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
)

// column is one open seat of a problem: the ways to fill it, in tie order, which is by liking, id, number, layout, plate
// and face with the empty seat first. An option is known by its place in the list.
type column struct {
	seat    build.Seat
	options []build.Option
	price   []int64 // minor units, nought where owned
	worth   []int64 // value points of the rules that read this seat alone
	live    set     // options that the tables leave standing
	offered int     // options before any rule looked at them

	sorted map[string]*classes // by what was looked at
}

// columns lists the open seats with their options, and fills into base what is settled to the last detail.
func columns(stock *part.Stock, ask *Ask, base *build.Build) []*column {
	var list []*column
	for s := range build.Seat(build.Seats) {
		kept := slices.DeleteFunc(slices.Clone(ask.Keep), func(c Choice) bool { return c.Seat != s })
		if !s.Single() && len(kept) > 0 {
			settle(stock, base, kept)
			continue
		}
		if s == build.Services {
			labour(stock, base)
			continue
		}
		c := &column{seat: s, sorted: map[string]*classes{}}
		for _, o := range offer(stock, ask.Needs, s, kept) {
			switch {
			case len(kept) == 1 && !kept[0].admits(o):
			case len(kept) == 0 && ask.refuses(o):
			default:
				c.options = append(c.options, o)
			}
		}
		owned := len(kept) == 1 && kept[0].Owned
		if owned {
			base.Owned |= build.SetOf(s)
		}
		if len(c.options) == 1 {
			base.Set(c.options[0])
			continue
		}
		slices.SortStableFunc(c.options, ask.before)
		c.offered = len(c.options)
		c.price = make([]int64, c.offered)
		c.worth = make([]int64, c.offered)
		c.live = full(c.offered)
		for i, o := range c.options {
			if !owned {
				c.price[i] = int64(o.Price())
			}
		}
		list = append(list, c)
	}
	return list
}

// before is the tie order of options within a seat: parts of makers the customer likes first, then by id and how they are used.
func (a *Ask) before(x, y build.Option) int {
	return cmp.Or(cmp.Compare(a.unliked(x), a.unliked(y)), cmp.Compare(x.ID(), y.ID()), cmp.Compare(x.Count, y.Count),
		cmp.Compare(layout(x), layout(y)), cmp.Compare(x.Plate, y.Plate), cmp.Compare(x.Face, y.Face))
}

// unliked is 0 for a part of a maker the customer likes, else 1.
func (a *Ask) unliked(o build.Option) int {
	if o.Part != nil && slices.Contains(a.Needs.Wish.Prefer, o.Part.Common().Maker) {
		return 0
	}
	return 1
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

// offer lists every way to fill a seat that a workshop would think of, whatever the rules say of it.
func offer(stock *part.Stock, needs *brief.Needs, s build.Seat, kept []Choice) []build.Option {
	empty := []build.Option{{Seat: s}}
	counts := func(to int) []int {
		if len(kept) == 1 && kept[0].Count > 0 {
			return []int{kept[0].Count}
		}
		list := make([]int, to)
		for i := range list {
			list[i] = i + 1
		}
		return list
	}
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
		return several(s, stock.Memory, counts(2))
	case build.Graphics:
		return append(empty, singly(s, stock.Graphics)...)
	case build.Supply:
		return singly(s, stock.Supplies)
	case build.Boot:
		return several(s, stock.Drives, counts(1))
	case build.Cache, build.Archive:
		return append(empty, several(s, stock.Drives, counts(2))...)
	case build.Cards:
		for _, c := range stock.Cards {
			if helps(c, needs) {
				empty = append(empty, build.Option{Seat: s, Part: c, Count: 1})
			}
		}
	case build.Screens:
		bought := 0
		for _, screen := range needs.Screens {
			if !screen.Owned {
				bought += screen.Count
			}
		}
		if bought > 0 {
			return several(s, stock.Monitors, []int{bought})
		}
	case build.UPS:
		if minutes, _ := needs.Wish.UPS.Get(); minutes > 0 {
			return singly(s, stock.UPS)
		}
		if len(kept) > 0 {
			return append(empty, singly(s, stock.UPS)...)
		}
	}
	return empty
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
	for _, p := range parts {
		for _, n := range counts {
			list = append(list, build.Option{Seat: s, Part: p, Count: n})
		}
	}
	return list
}

// housings are the cases in every layout with the board plate on every step.
func housings(cases []*part.Case) []build.Option {
	var list []build.Option
	for _, c := range cases {
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
	for _, c := range stock.Coolers {
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
