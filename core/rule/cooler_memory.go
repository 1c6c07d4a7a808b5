package rule

import (
	"slipfit/core/build"
	"slipfit/core/unit"
)

// What modules take besides what their sheet states. Common practice.
const (
	moduleSeat = 4 * unit.Millimetre // a seated module's top stands that much more than its height above the board: 3 to 4
	moduleHalf = 4 * unit.Millimetre // half the thickness of a module with its heat spreader
)

// CoolerMemory keeps the memory clear of the cooler that hangs over it.
var CoolerMemory = Rule{
	ID:    "cooler-memory",
	Group: Fit,
	Title: "Memory stands clear of the cooler",
	Doc: `Where the cooler does not reach the nearest module used:
beside: have = socket centre to that module's near side (its slot's centre line − 4 mm), mm; need = the cooler's reach, mm
Where it hangs over modules:
under: have = free height under the overhang + how far its fan can be moved up, mm; need = module height + 4 mm seat, mm
A cold plate and pump must pass beside the modules. Slots used follow the board's population order. A fan moved up stands
	higher: cooler-raised. When short: lower modules, or a cooler that leaves the memory free.`,
	Source: "seated height module + 3 to 4 mm, module with spreader 8 mm thick: common practice; figures: makers' sheets",
	Reads:  []build.Seat{build.Board, build.Cooler, build.Memory},
	Harder: []string{"Memory.Height", "AirCooler.ToMemory", "LiquidCooler.PumpReach"},
	Easier: []string{"AirCooler.UnderFan", "AirCooler.Raise", "SocketPlace.Memory"},
	Check: func(v *View) []Margin {
		if !v.both(build.Board, build.Cooler, build.Memory) {
			return nil
		}
		near := nearestModule(v)
		if l := v.Cooler.Liquid; l != nil {
			reach := figure(v, l.PumpReach, &v.Cooler.Article, "liquid.pump_reach_mm")
			v.find("beside", near.Q(), reach.Q(), say("%s to the nearest module, cold plate and pump reach %s", near.Q(), reach.Q()))
			return v.margins
		}
		over, reach := overhang(v, near)
		if !over {
			v.find("beside", near.Q(), reach.Q(), say("%s to the nearest module, the cooler reaches %s", near.Q(), reach.Q()))
			return v.margins
		}
		clear := figure(v, v.Cooler.Air.UnderFan, &v.Cooler.Article, "air.memory_clear_mm")
		raise := figure(v, v.Cooler.Air.Raise, &v.Cooler.Article, "air.fan_raise_mm")
		top := moduleTop(v)
		v.find("under", (clear + raise).Q(), top.Q(), func() string {
			switch {
			case top <= clear:
				return say("modules stand %s, %s are free under the cooler", top.Q(), clear.Q())()
			case top <= clear+raise:
				return say("modules stand %s: move the fan up by %s of the %s it can", top.Q(), (top - clear).Q(), raise.Q())()
			}
			return say("modules stand %s, %s are free under the cooler with its fan moved up all the way", top.Q(), (clear + raise).Q())()
		})
		return v.margins
	},
}

// nearestModule is how far the near side of the first module used is from the socket's centre.
func nearestModule(v *View) unit.Length {
	first := figure(v, v.Board.SocketAt.FirstIn, &v.Board.Article, "socket_place.memory_first_used")
	slots := figure(v, v.Board.Slots, &v.Board.Article, "memory_slots")
	each := figure(v, v.Memory.Modules, &v.Memory.Article, "modules")
	if n := each * unit.Whole(v.Kits); n > 2 || n >= slots {
		first = 1
	}
	at := figure(v, v.Board.SocketAt.Memory, &v.Board.Article, "socket_place.memory_mm") - moduleHalf
	if first > 1 {
		at += figure(v, v.Board.SocketAt.Pitch, &v.Board.Article, "socket_place.memory_pitch_mm") * unit.Length(first-1)
	}
	return at
}

// overhang reports whether an air cooler hangs over a module whose near side is at that distance.
func overhang(v *View, near unit.Length) (over bool, reach unit.Length) {
	if v.Cooler.Air == nil {
		v.lacks(&v.Cooler.Article, "air or liquid")
		return false, 0
	}
	reach = figure(v, v.Cooler.Air.ToMemory, &v.Cooler.Article, "air.reach_memory_mm")
	return len(v.missing) == 0 && reach > near, reach
}

// moduleTop is how high a seated module stands above the board.
func moduleTop(v *View) unit.Length {
	return figure(v, v.Memory.Height, &v.Memory.Article, "height_mm") + moduleSeat
}
