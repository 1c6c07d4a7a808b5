package rule

import (
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// everySeat is all seats, in order.
var everySeat = func() []build.Seat {
	list := make([]build.Seat, build.Seats)
	for i := range list {
		list[i] = build.Seat(i)
	}
	return list
}()

// bought calls do with every article in a seat and how many are bought: packs of fans, kits of memory. A seat filled with what
// the customer owns buys nothing.
func (v *View) bought(s build.Seat, do func(a *part.Article, n int)) {
	if v.Owned.Has(s) {
		return
	}
	v.lying(s, do)
}

// lying is bought for what the customer owns too.
func (v *View) lying(s build.Seat, do func(a *part.Article, n int)) {
	if !v.Filled(s) {
		return
	}
	switch s {
	case build.Case:
		do(&v.Case.Article, 1)
	case build.Board:
		do(&v.Board.Article, 1)
	case build.Processor:
		do(&v.Processor.Article, 1)
	case build.Cooler:
		do(&v.Cooler.Article, 1)
	case build.Memory:
		do(&v.Memory.Article, v.Kits)
	case build.Graphics:
		do(&v.Graphics.Article, 1)
	case build.Supply:
		do(&v.Supply.Article, 1)
	case build.Boot, build.Cache, build.Archive:
		d := v.holds(s)
		do(&d.Drive.Article, d.Count)
	case build.Fans:
		for _, f := range v.Fans {
			do(&f.Fan.Article, f.Packs())
		}
	case build.Cards:
		for _, c := range v.Cards {
			do(&c.Card.Article, c.Count)
		}
	case build.Screens:
		for _, m := range v.Screens {
			do(&m.Monitor.Article, m.Count)
		}
	case build.UPS:
		do(&v.UPS.Article, 1)
	case build.Services:
		for _, x := range v.Services {
			do(&x.Service.Article, x.Count)
		}
	}
}

// price is what the articles bought for a seat cost before tax.
func (v *View) price(s build.Seat) unit.Money {
	var sum unit.Money
	v.bought(s, func(a *part.Article, n int) { sum += a.Price * unit.Money(n) })
	return sum
}
