package rule

import (
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
The customer names a sum that includes tax; the brief has it taken off, so that prices before tax are compared. As a sum: the
	case gives the budget and every seat takes its price. When short: cheaper parts past what is enough first, then a smaller
	need, then more money.`,
	Source: "arithmetic",
	Reads:  everySeat,
	Sum:    &Sum{Kind: unit.Minor, Term: budgetTerm},
	Check: func(v *View) []Margin {
		if v.Needs.Budget == 0 || !v.Filled(build.Case) {
			return nil
		}
		v.sum("", func(gives, takes int64) string {
			return say("parts and labour cost %s of %s before tax", unit.Money(takes), unit.Money(gives))()
		})
		return v.margins
	},
}

func budgetTerm(v *View, s build.Seat) (gives, takes int64) {
	if v.Needs.Budget == 0 {
		return 0, 0
	}
	if s == build.Case && v.Filled(s) {
		gives = int64(v.Needs.Budget)
	}
	return gives, int64(v.price(s))
}
