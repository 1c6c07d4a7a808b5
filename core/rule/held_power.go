package rule

import (
	"fmt"

	"slipfit/core/build"
	"slipfit/core/predict"
	"slipfit/core/unit"
)

// keptSpeed is the share of speed that heat must leave a part, in thousandths of a per cent. Common practice.
const keptSpeed unit.Share = 97_000

// HeldPower is the speed that heat leaves processor and graphics card.
var HeldPower = Rule{
	ID:    "held-power",
	Group: Cool,
	Title: "Heat takes no speed away",
	Doc: `For each activity and processor or graphics card, in the brief's room on its hottest day: have = share of its speed that it keeps for
	ever, %; need = 97 %
have = (held ÷ asked power)^(1/3): near its sustained power a part's voltage follows its frequency, so power goes as its cube
Held power is what is left when every fan that serves the part is at full speed and its temperature is at its limit.
	With no brief: everything at work at 22 °C. A build with seats still open is judged by its parts in air as cool as the room: in a case
	they hold less. When short: a larger cooler, more air, a part that asks less.`,
	Source: "dynamic power ∝ frequency × voltage²: textbook; allowed loss: common practice",
	Reads:  loadSeats,
	Early: []Early{
		{Seats: []build.Seat{build.Processor, build.Cooler}},
		{Seats: []build.Seat{build.Graphics}},
		{Seats: coreSeats, Fails: (*View).heldBack, AnySupply: true, Warms: predict.Warming},
		{Seats: loadSeats, Fails: (*View).heldBack, AnySupply: true, Warmer: predict.Warming},
	},
	Holds: (*View).cool,
	Check: func(v *View) []Margin {
		if v.forecast() == nil {
			return v.keptInOpen()
		}
		return v.asked(func(_ *predict.Forecast, r *predict.Run) {
			for i := range r.Parts {
				v.kept(r, &r.Parts[i])
			}
		})
	},
}

// heldBack reports a part that loses too much speed, whatever memory, drives and cards come besides.
func (v *View) heldBack() bool {
	return v.warm(everyWarmth, func(w *predict.Warmth, load int) bool { return w.HeldBack(load, float64(keptSpeed)/100_000) })
}

// keptInOpen judges a build that is not whole by what its parts hold in the open.
func (v *View) keptInOpen() []Margin {
	for _, l := range predict.Asked(v.Needs) {
		o := v.predictor().Open(v.Build, v.Needs, l, predict.Hottest)
		for i := range o.Parts {
			p := &o.Parts[i]
			v.unsolved = o.Err
			v.find(l.Activity+", "+p.Seat.String(), unit.Quantity{N: down(100 * p.Kept.Expected), Kind: unit.Percent}, keptSpeed.Q(), func() string {
				return fmt.Sprintf("%s: %s holds %s of the %s asked of it even in the open, and keeps %s of its speed", l.Activity, p.Name,
					wattage(p.HeldW.Expected), wattage(p.AskedW), perCent(p.Kept.Expected))
			})
		}
	}
	return v.margins
}

func (v *View) kept(r *predict.Run, p *predict.Part) {
	have := unit.Quantity{N: down(100 * p.Kept.Expected), Kind: unit.Percent}
	v.predicted(v.find, r.Load.Activity+", "+p.Seat.String(), r, p.Missing, have, keptSpeed.Q(), func() Band {
		r.Spread()
		return Band{
			Low: unit.Quantity{N: down(100 * p.Kept.Low), Kind: unit.Percent}, Expected: have,
			High: unit.Quantity{N: min(100_000, down(100*p.Kept.High)), Kind: unit.Percent},
		}
	}, func() string {
		if p.Kept.Expected >= 1 {
			return fmt.Sprintf("%s: %s holds the %s asked of it for ever", r.Load.Activity, p.Name, wattage(p.AskedW))
		}
		return fmt.Sprintf("%s: %s holds %s of the %s asked of it in a room of %s, and keeps %s of its speed", r.Load.Activity, p.Name,
			wattage(p.HeldW.Expected), wattage(p.AskedW), degrees(r.RoomC), perCent(p.Kept.Expected))
	})
}
