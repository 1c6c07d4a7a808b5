package rule

import (
	"fmt"
	"strings"

	"slipfit/core/predict"
	"slipfit/core/unit"
)

// FanSpeed tells how fast every fan turns.
var FanSpeed = Rule{
	ID:    "fan-speed",
	Group: Cool,
	Title: "Fans have speed in hand",
	Doc: `For each activity on an ordinary day, and at rest: have = 100 %, need = speed of the fastest fan as a share of its full speed, %
Fans turn as fast as their curves ask, and no faster: case fans at their lowest up to 28 °C of case air, full at 45 °C; a
	radiator's from 28 to 40 °C of coolant; an air cooler's from 45 °C of processor to 8 K under its limit; a card's from 50 °C of
	core to 3 K under its limit, 30 % at least; the supply's by its load. A part at its limit calls all fans that serve it. The
	sentence names every group with its turns a minute and air. It never fails a build: what it costs in noise is the rule noise.`,
	Source: "control curves: common practice; least speed of a turning fan: 4-Wire PWM Controlled Fans Specification",
	Reads:  loadSeats,
	Check: func(v *View) []Margin {
		f := v.forecast()
		if f == nil {
			return nil
		}
		for i := range f.Asked() {
			v.fastest(f.Run(i, predict.Ordinary))
		}
		v.fastest(f.Run(len(f.Loads())-1, predict.Ordinary))
		return v.margins
	},
}

func (v *View) fastest(r *predict.Run) {
	fans := append(append([]predict.Fan(nil), r.Fans...), r.Cooling...)
	var top predict.Fan
	for _, f := range fans {
		if f.FullRPM > 0 && f.RPM.Expected*max(1, top.FullRPM) > top.RPM.Expected*f.FullRPM {
			top = f
		}
	}
	share := func() predict.Band {
		return predict.Band{Low: 100 * top.RPM.Low / max(1, top.FullRPM), Expected: 100 * top.RPM.Expected / max(1, top.FullRPM), High: min(100, 100*top.RPM.High/max(1, top.FullRPM))}
	}
	v.under(v.advise, r.Load.Activity, r, nil, unit.Share(100_000).Q(), share, func() string {
		var list []string
		for _, f := range fans {
			text := fmt.Sprintf("%s %.0f of %.0f turns a minute", f.Name, f.RPM.Expected, f.FullRPM)
			if f.FlowM3H.Expected != 0 {
				text += ", " + airflow(f.FlowM3H.Expected)
			}
			list = append(list, text)
		}
		return strings.Join(list, "; ")
	})
}
