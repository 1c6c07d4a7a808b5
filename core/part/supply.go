package part

import "slipfit/core/unit"

// Supply is a power supply.
type Supply struct {
	Article
	Form     SupplyForm                `json:"form" doc:"Form factor."`
	Length   unit.Figure[unit.Length]  `json:"length_mm,omitzero" range:"60..300" doc:"Depth of the body."`
	PlugBend unit.Figure[unit.Length]  `json:"plug_bend_mm,omitzero" range:"0..80" doc:"Room its plugs and the first bend need behind it; 0 where its cables are fixed and leave flat."`
	Rating   unit.Figure[unit.Power]   `json:"rating_w,omitzero" range:"100..3000" doc:"Continuous rating."`
	Guide    Guide                     `json:"design_guide" doc:"Revision of the design guide its excursions follow: 2.x, 3.0, 3.1."`
	Level    Level                     `json:"efficiency_level" doc:"Efficiency level of the 80 PLUS programme."`
	Curve    []LoadPoint               `json:"efficiency,omitempty" doc:"Its own load points, where the sheet states them; they rule over the level's."`
	Rail12   unit.Figure[unit.Current] `json:"rail_12v_a,omitzero" range:"5..300" doc:"Current of all 12 V rails."`
	Rail5    unit.Figure[unit.Current] `json:"rail_5v_a,omitzero" range:"1..60" doc:"Current of the 5 V rail."`
	Rail33   unit.Figure[unit.Current] `json:"rail_3v3_a,omitzero" range:"1..60" doc:"Current of the 3.3 V rail."`
	Minor    unit.Figure[unit.Power]   `json:"minor_rails_w,omitzero" range:"10..400" doc:"Power of 5 V and 3.3 V together."`
	Cables   []Cable                   `json:"cables" min:"1" doc:"Cables that come with it."`
	Fan      FanFigures                `json:"fan" doc:"Its own fan."`
	ZeroTo   unit.Figure[unit.Power]   `json:"fan_stopped_below_w,omitzero" range:"0..1500" doc:"Load below which its fan stands still; 0 where it never does."`
	HoldUp   unit.Figure[unit.Whole]   `json:"hold_up_ms,omitzero" range:"5..50" doc:"Hold-up at full load, milliseconds."`
}

// Guide is a revision of the supply design guide.
type Guide string

// Revisions: 2.x says nothing of excursions, 3.0 and 3.1 do.
const (
	Guide2  Guide = "2.x"
	Guide30 Guide = "3.0"
	Guide31 Guide = "3.1"
)

// Values lists the accepted words.
func (Guide) Values() []string { return []string{"2.x", "3.0", "3.1"} }

// Level is an efficiency level of the 80 PLUS programme.
type Level string

// Efficiency levels.
const (
	White    Level = "white"
	Bronze   Level = "bronze"
	Silver   Level = "silver"
	Gold     Level = "gold"
	Platinum Level = "platinum"
	Titanium Level = "titanium"
)

// Values lists the accepted words.
func (Level) Values() []string {
	return []string{"white", "bronze", "silver", "gold", "platinum", "titanium"}
}

// LoadPoint is an efficiency at a load.
type LoadPoint struct {
	Load       unit.Share `json:"load_percent" range:"1..100" doc:"Load as a share of the rating."`
	Efficiency unit.Share `json:"efficiency_percent" range:"50..99" doc:"Efficiency at that load."`
}

// Cable is one or more equal cables.
type Cable struct {
	Count  unit.Figure[unit.Whole]  `json:"count,omitzero" range:"1..12" doc:"How many of these cables."`
	Length unit.Figure[unit.Length] `json:"length_mm,omitzero" range:"100..1500" doc:"To its first plug."`
	Plugs  []PlugKind               `json:"plugs" min:"1" doc:"Plugs along it, nearest first."`
	Rated  unit.Figure[unit.Power]  `json:"rated_w,omitzero" range:"50..700" doc:"For a 12-contact plug: the power its sense pins announce."`
}
