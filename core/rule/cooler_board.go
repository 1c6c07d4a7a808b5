package rule

import "slipfit/core/build"

// CoolerBoard keeps the cooler clear of the heat-sinks that stand on the board.
var CoolerBoard = Rule{
	ID:    "cooler-board",
	Group: Fit,
	Title: "The cooler clears the board's heat-sinks",
	Doc: `base: have = socket centre to the nearest heat-sink on the board, mm; need = reach of the cooler's base and mounting frame, or of cold plate and pump, mm
fins: where the cooler reaches past that heat-sink, have = free height all round its base, mm; need = height of the heat-sink, mm
The sheet does not say on which side the heat-sink stands, so the cooler's longest reach is taken. When short: a cooler with a
	slimmer base, or higher fins. On small boards this is what decides.`,
	Source: "makers' sheets; common practice",
	Reads:  []build.Seat{build.Board, build.Cooler},
	Check: func(v *View) []Margin {
		if !v.both(build.Board, build.Cooler) {
			return nil
		}
		at := figure(v, v.Board.SocketAt.SinkAt, &v.Board.Article, "socket_place.heat_sink_mm")
		if l := v.Cooler.Liquid; l != nil {
			reach := figure(v, l.PumpReach, &v.Cooler.Article, "liquid.pump_reach_mm")
			v.find("base", at.Q(), reach.Q(), say("%s to the board's heat-sink, cold plate and pump reach %s", at.Q(), reach.Q()))
			return v.margins
		}
		a := v.Cooler.Air
		if a == nil {
			return nil // cooler-height says so
		}
		base := figure(v, a.BaseReach, &v.Cooler.Article, "air.base_reach_mm")
		v.find("base", at.Q(), base.Q(), say("%s to the board's heat-sink, the cooler's base reaches %s", at.Q(), base.Q()))
		longest := max(figure(v, a.ToMemory, &v.Cooler.Article, "air.reach_memory_mm"),
			figure(v, a.ToCard, &v.Cooler.Article, "air.reach_card_mm"), figure(v, a.ToTop, &v.Cooler.Article, "air.reach_top_mm"))
		if len(v.missing) == 0 && longest <= at {
			return v.margins
		}
		clear := figure(v, a.BaseClear, &v.Cooler.Article, "air.base_clear_mm")
		high := figure(v, v.Board.SocketAt.SinkHigh, &v.Board.Article, "socket_place.heat_sink_height_mm")
		v.find("fins", clear.Q(), high.Q(), say("%s free round the cooler's base, the board's heat-sink stands %s", clear.Q(), high.Q()))
		return v.margins
	},
}
