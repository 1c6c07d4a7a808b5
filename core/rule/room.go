package rule

import (
	"fmt"

	"slipfit/core/air"
	"slipfit/core/predict"
	"slipfit/core/unit"
)

// An ordinary room: 35 m³, half an air change an hour, 40 W/K through its walls; and the rise nobody minds. Common practice.
const (
	roomVolumeM3 = 35
	roomChanges  = 0.5
	roomWallWK   = 40
	roomRiseK    = 5
)

// Room tells what heat a machine puts into the room.
var Room = Rule{
	ID:    "room",
	Group: Cool,
	Title: "Room carries the heat away",
	Doc: `For each activity on an ordinary day: have = heat an ordinary room gives off at a rise of 5 K, W; need = wall power, W: all of it warms
	the room
have = 5 K × (40 W/K of walls + ρ·cp × 35 m³ × 0.5 air changes an hour), 230 W at sea level
Advice: it never fails a build. When negative: the room gets warm over a working day with door and window shut, and a warm room
	warms the machine; air the room, or ask for the hottest day as it then is.`,
	Source: "energy balance of a room: ASHRAE Handbook, Fundamentals; room and rise: common practice",
	Reads:  loadSeats,
	Check: func(v *View) []Margin {
		f := v.forecast()
		if f == nil {
			return nil
		}
		for i := range f.Asked() {
			r := f.Run(i, predict.Ordinary)
			density := air.DensityKgPerM3(r.RoomC, air.PressurePa(r.AltitudeM))
			perK := 1 / air.RoomRiseK(1, roomWallWK, roomVolumeM3, roomChanges, density)
			have := unit.Quantity{N: down(roomRiseK * perK), Kind: unit.Watt}
			v.under(v.advise, r.Load.Activity, r, nil, have, func() predict.Band { return r.WallW }, func() string {
				return fmt.Sprintf("%s: %s from the mains, and all of it warms the room: an ordinary one kept shut grows %s warmer", r.Load.Activity,
					wattage(r.WallW.Expected), kelvin(r.WallW.Expected/perK))
			})
		}
		return v.margins
	},
}

func kelvin(x float64) string { return fmt.Sprintf("%.1f K", x) }
