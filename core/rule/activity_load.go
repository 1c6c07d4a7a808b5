package rule

import (
	"fmt"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/unit"
)

// ActivityLoad is the planned share of the supply's rating against what the parts draw in each activity.
var ActivityLoad = Rule{
	ID:    "activity-load",
	Group: Feed,
	Title: "What the machine draws in each activity",
	Doc: `For each activity of the brief: have = 90 % of the supply's rating, W; need = sum over the parts of draw at rest + the
	activity's share × (draw at work − draw at rest), W
Memory at rest is taken to draw 30 % of its draw at work; fans, pump, board, cards and USB devices are taken at their most. It
	is never over what the rule supply-steady finds, and tells the customer what to expect on a wattmeter (see supply-efficiency).`,
	Source: "common practice",
	Reads:  loadSeats,
	Early:  []Early{{Seats: []build.Seat{build.Board, build.Processor, build.Supply}}, {Seats: []build.Seat{build.Board, build.Processor, build.Graphics, build.Supply}}},
	Suffices: func(n *brief.Needs) []Sum {
		var list []Sum
		for i := range n.Loads {
			list = append(list, activitySum(&n.Loads[i]))
		}
		return list
	},
	Check: func(v *View) []Margin {
		if !v.both(build.Supply, build.Board, build.Processor) {
			return nil
		}
		for i := range v.Needs.Loads {
			l := &v.Needs.Loads[i]
			have := planned(v)
			need := activityLoad(v, l)
			name := l.Activity
			v.find(name, have.Q(), need.Q(), func() string {
				return fmt.Sprintf("%s draws %s from the supply", name, unit.Power(need).Q())
			})
		}
		return v.margins
	},
}

// activitySum is one activity as a sum, mW.
func activitySum(l *brief.Load) Sum {
	return Sum{Kind: unit.Watt, Term: func(v *View, s build.Seat) (gives, takes int64) {
		if s == build.Supply && v.Supply != nil {
			return int64(planned(v)), 0
		}
		return 0, int64(activityDraw(v, l, s))
	}}
}
