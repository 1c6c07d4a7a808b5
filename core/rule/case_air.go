package rule

import (
	"fmt"

	"slipfit/core/predict"
	"slipfit/core/unit"
)

// poorRise is the rise of case air that the trade calls poor.
var poorRise = unit.Quantity{N: 15_000, Kind: unit.Kelvin}

// CaseAir advises on the rise of the case air and on the balance of its fans.
var CaseAir = Rule{
	ID:    "case-air",
	Group: Cool,
	Title: "Case air stays fresh",
	Doc: `For each activity on an ordinary day and each chamber: have = 15 K, need = rise of the chamber's mixed air over the room, K
rise = heat into the air ÷ (ρ·cp·Q + walls), with the air that comes back in and the draught of openings and seams solved along
And once: have = air the fans drive in, need = air they drive out, m³/h. More out than in draws dust through seams past the filters.
	A rise of 5 to 10 K is good, 15 K poor. Advice: it never fails a build; parts are judged by their own limits.
When negative: another fan, a freer front, a layout with openings.`,
	Source: "energy balance ρ·cp·Q·ΔT = P: ASHRAE Handbook, Fundamentals; ranges: common practice",
	Reads:  loadSeats,
	Check: func(v *View) []Margin {
		f := v.forecast()
		if f == nil {
			return nil
		}
		for i := range f.Asked() {
			r := f.Run(i, predict.Ordinary)
			for z := range r.Zones {
				v.rise(r, &r.Zones[z])
			}
			if len(r.Zones) == 0 {
				v.rise(r, &predict.Zone{Name: "case"})
			}
		}
		v.balance(f.Run(len(f.Loads())-2, predict.Ordinary))
		return v.margins
	},
}

func (v *View) rise(r *predict.Run, z *predict.Zone) {
	v.under(v.advise, r.Load.Activity+", "+z.Name, r, nil, poorRise, func() predict.Band { return z.RiseK }, func() string {
		return fmt.Sprintf("%s: the air of the %s comes to %s in a room of %s, with %s drawn in through all openings", r.Load.Activity, z.Name,
			degrees(z.AirC.Expected), degrees(r.RoomC), airflow(r.InM3H.Expected))
	})
}

func (v *View) balance(r *predict.Run) {
	in := unit.Quantity{N: up(r.FansIn.Expected), Kind: unit.Airflow}
	out := unit.Quantity{N: down(r.FansOut.Expected), Kind: unit.Airflow}
	v.predicted(v.advise, "fans in against out", r, nil, in, out, func() Band {
		r.Spread()
		q := func(x float64) unit.Quantity { return unit.Quantity{N: up(x), Kind: unit.Airflow} }
		return Band{Low: q(r.FansIn.Low), Expected: in, High: q(r.FansIn.High)}
	}, func() string {
		switch {
		case in.N == 0 && out.N == 0:
			return "no fan drives air through the case: it breathes by draught alone"
		case in.N < out.N:
			return fmt.Sprintf("fans drive %s out and %s in: the rest comes through openings and seams, past some filters", airflow(r.FansOut.Expected), airflow(r.FansIn.Expected))
		}
		return fmt.Sprintf("fans drive %s in through their filters and %s out", airflow(r.FansIn.Expected), airflow(r.FansOut.Expected))
	})
}
