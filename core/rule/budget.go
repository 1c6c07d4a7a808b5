package rule

import (
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/unit"
)

// Budget keeps the price of the build within what the customer can spend.
var Budget = Rule{
	ID:    "budget",
	Group: Money,
	Title: "The price is within the budget",
	Doc: `have = budget for parts and labour before tax
need = sum of the prices of everything bought: parts, screens, sundries and labour, before tax; nought for what the customer owns
The customer names a sum that includes tax; the brief has it taken off, so that prices before tax are compared. When short:
	cheaper parts past what is enough first, then a smaller need, then more money.`,
	Source: "arithmetic",
	Reads:  everySeat,
	Purse:  func(n *brief.Needs) (most unit.Money, limited bool) { return n.Budget, n.Budget != 0 },
	Check: func(v *View) []Margin {
		if v.Needs.Budget == 0 || !v.Filled(build.Case) {
			return nil
		}
		var sum unit.Money
		for s := range build.Seat(build.Seats) {
			sum += v.price(s)
		}
		most := v.Needs.Budget
		v.find("", most.Q(), sum.Q(), say("parts and labour cost %s of %s before tax", sum, most))
		return v.margins
	},
}
