package rule

import (
	"fmt"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/feed"
	"slipfit/core/unit"
)

// UPS is the uninterruptible supply against what machine and screens take and how long they must run.
var UPS = Rule{
	ID:    "ups",
	Group: Feed,
	Title: "The uninterruptible supply carries machine and screens",
	Doc: `power: have = 80 % of its rating in W; need = wall power with everything at work + screens bought, W
apparent power: have = its rating in VA; need = the same ÷ power factor, VA
minutes, where the brief asks: have = its runtime at the heaviest activity of the brief (with everything at work where there is none) and the
	screens, min; need = what the brief asks. Between the loads of its sheet the drain of the battery is on a straight line
transfer: have = hold-up of the supply, ms; need = its transfer time, ms
sine: have = 1 where it gives a sine wave, an advice with supplies that correct their power factor, as all with an efficiency level do
Both ratings bind. Batteries fade: plan their change in three to five years. When short: a larger one. It carries a dangerous voltage
	also when unplugged; its outlets, its place and its batteries are for its manual, local codes and licensed practice.`,
	Source: "80 % of the W rating, sine wave and battery life: common practice; hold-up: ATX 3.0 guide, table 4-9, ATX 3.1 guide, table 4-10",
	Reads: []build.Seat{build.Case, build.Board, build.Processor, build.Cooler, build.Memory, build.Graphics, build.Supply, build.Boot,
		build.Cache, build.Archive, build.Fans, build.Cards, build.Screens, build.UPS},
	Suffices: func(*brief.Needs) []Sum { return noUPS[:] },
	Check: func(v *View) []Margin {
		if !v.both(build.UPS, build.Supply, build.Board, build.Processor) {
			return nil
		}
		ups := v.UPS
		if w := wallOf(v, allOut(v)); !w.known && len(v.missing) == 0 {
			return nil // past the rating, which the rule supply-steady tells
		}
		take := wallOf(v, allOut(v)).watts + screenLoad(v)
		real := int64(figure(v, ups.Real, &ups.Article, "rating_w"))
		planned := watts(feed.UPS{RatedMW: real}.FreeMW(0))
		v.find("power", planned.Q(), take.Q(), func() string {
			return fmt.Sprintf("%s is planned for %s, and machine and screens take up to %s", ups.Name, planned.Q(), take.Q())
		})
		take = wallOf(v, allOut(v)).watts + screenLoad(v)
		asks := unit.Quantity{N: apparent(v, take), Kind: unit.VoltAmpere}
		rated := unit.Quantity{N: int64(figure(v, ups.Apparent, &ups.Article, "rating_va")), Kind: unit.VoltAmpere}
		v.find("apparent power", rated, asks, func() string {
			return fmt.Sprintf("%s is rated for %s, and machine and screens take up to %s", ups.Name, rated, asks)
		})
		upsMinutes(v)
		holds := figure(v, v.Supply.HoldUp, &v.Supply.Article, "hold_up_ms")
		transfer := figure(v, ups.Transfer, &ups.Article, "transfer_ms")
		v.find("transfer", holds.Q(), transfer.Q(), func() string {
			return fmt.Sprintf("the power supply holds for %d ms while %s takes %d ms to step in", holds, ups.Name, transfer)
		})
		sine := figure(v, ups.Sine, &ups.Article, "sine")
		v.advise("sine wave", unit.Met(sine), unit.Met(true), func() string {
			if sine {
				return ups.Name + " gives a sine wave on battery"
			}
			return ups.Name + " gives no sine wave on battery, on which some power supplies hum or drop out: try it before hand-over"
		})
		return v.margins
	},
}

// noUPS is negative where there is a UPS.
var noUPS = [...]Sum{{Kind: unit.Number, Term: func(v *View, s build.Seat) (gives, takes int64) {
	if s == build.UPS && v.Filled(s) {
		return 0, 1
	}
	return 0, 0
}}}

// upsMinutes finds the margin of the runtime, where the brief asks for one.
func upsMinutes(v *View) {
	asks, said := v.Needs.Wish.UPS.Get()
	if !said {
		return
	}
	var heaviest unit.Power
	for i := range v.Needs.Loads {
		heaviest = max(heaviest, activityLoad(v, &v.Needs.Loads[i]))
	}
	if heaviest == 0 {
		heaviest = allOut(v)
	}
	take := wallOf(v, heaviest).watts + screenLoad(v)
	ups := v.UPS
	if len(ups.Runtime) == 0 {
		v.missing = append(v.missing, ups.ID+": runtime")
	}
	var room [12]feed.RuntimePoint
	table := room[:0]
	for _, r := range ups.Runtime {
		table = append(table, feed.RuntimePoint{LoadMW: int64(r.Load), RuntimeS: int64(r.Minutes) * 60})
	}
	seconds, err := feed.UPSRuntimeS(table, int64(take))
	runs := unit.Duration(seconds / 60)
	v.find("minutes", runs.Q(), asks.Q(), func() string {
		if err != nil {
			return fmt.Sprintf("%s promises no time at %s: %v", ups.Name, take.Q(), err)
		}
		return fmt.Sprintf("%s runs %s at %s", ups.Name, runs.Q(), take.Q())
	})
}
