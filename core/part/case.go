package part

import (
	"slices"

	"slipfit/core/unit"
)

// Case is an enclosure with one or more layouts.
type Case struct {
	Article
	Volume     unit.Figure[unit.Millilitre] `json:"volume_l,omitzero" range:"2..120" doc:"Outer volume without feet, litres."`
	Outer      Size                         `json:"outer" doc:"Outer size."`
	Glazed     []Face                       `json:"glazed,omitempty" doc:"Faces with a glass or clear panel."`
	GlazedSide string                       `json:"glazed_side,omitempty" pattern:"^(left|right|both)$" doc:"Where a side is glazed: left, right or both, as one stands before the front."`
	FrontPorts []FrontPort                  `json:"front_ports,omitempty" doc:"Sockets on the front panel, each with a lead to a board header."`
	Lights     []Lead                       `json:"lighting_leads,omitempty" doc:"Lighting leads of the case itself."`
	Fans       []CaseFan                    `json:"fans,omitempty" doc:"Fans that come with the case, where they are fitted."`
	Openings   []Opening                    `json:"openings,omitempty" doc:"Grilles and filters through which air passes."`
	Layouts    []Layout                     `json:"layouts" min:"1" doc:"Arrangements the case can be built in."`
}

// FrontPort is one or more front-panel sockets of a kind.
type FrontPort struct {
	Kind  HeaderKind              `json:"kind" doc:"Header its lead plugs into."`
	Leads unit.Figure[unit.Whole] `json:"leads,omitzero" range:"1..4" doc:"Leads of this kind, one header each."`
	Ports unit.Figure[unit.Whole] `json:"ports,omitzero" range:"1..8" doc:"Sockets these leads serve."`
}

// HeaderKind is a kind of board header.
type HeaderKind string

// Board headers for front panels, fans, pumps and lighting.
const (
	HeaderUSB2     HeaderKind = "usb-2"        // 2×5, two ports
	HeaderUSB19    HeaderKind = "usb-19"       // 19-pin, two 5 Gbit/s ports
	HeaderUSBC     HeaderKind = "usb-c"        // shielded 20-pin, one port up to 20 Gbit/s
	HeaderAudio    HeaderKind = "audio"        // front audio
	HeaderSwitches HeaderKind = "switches"     // power, reset, lamps
	HeaderFan      HeaderKind = "fan"          // 4-pin, about 1 A
	HeaderPump     HeaderKind = "pump"         // 4-pin, 2 to 3 A
	HeaderARGB     HeaderKind = "lighting-5v"  // 3-pin addressable
	HeaderRGB      HeaderKind = "lighting-12v" // 4-pin
)

// Values lists the accepted words.
func (HeaderKind) Values() []string {
	return []string{"usb-2", "usb-19", "usb-c", "audio", "switches", "fan", "pump", "lighting-5v", "lighting-12v"}
}

// Lead is a lighting lead with the current it draws.
type Lead struct {
	Kind    HeaderKind                `json:"kind" doc:"lighting-5v or lighting-12v."`
	Current unit.Figure[unit.Current] `json:"current_a,omitzero" range:"0..5" doc:"Most current it draws."`
}

// CaseFan is a group of equal fans that come fitted.
type CaseFan struct {
	Face  Face                    `json:"face" doc:"Where they are fitted."`
	Count unit.Figure[unit.Whole] `json:"count,omitzero" range:"1..6" doc:"How many."`
	FanFigures
}

// Opening is a place where air passes the shell.
type Opening struct {
	Face     Face                    `json:"face" doc:"Which side."`
	Free     unit.Figure[unit.Whole] `json:"free_cm2,omitzero" range:"1..3000" doc:"Free area after grille and filter, square centimetres."`
	Filtered unit.Figure[bool]       `json:"filtered,omitzero" doc:"Whether a dust filter lies in it."`
}

// Layout is one arrangement of a case: where the board plate sits, which way the card hangs, which mounts are free.
type Layout struct {
	ID        string                   `json:"id" pattern:"^[a-z0-9]+(-[a-z0-9]+)*$" doc:"Name of the layout within the case."`
	Name      string                   `json:"name" doc:"What the sheet calls it."`
	Boards    []BoardForm              `json:"boards" min:"1" doc:"Board forms the plate takes."`
	Standoffs []string                 `json:"standoffs" min:"4" doc:"Letters of the standoff places present, after the microATX specification, figure 2."`
	Lies      bool                     `json:"plate_lies,omitzero" doc:"Whether the board plate lies flat, as in a cube or a desktop; otherwise it stands."`
	Left      string                   `json:"left_shows,omitempty" pattern:"^(board|card|back)$" doc:"What stands behind the left side panel, as one stands before the front: the board's face, the card alone, or the back of the plate."`
	Right     string                   `json:"right_shows,omitempty" pattern:"^(board|card|back)$" doc:"What stands behind the right side panel."`
	Plate     *Plate                   `json:"plate,omitzero" doc:"A board plate that moves in steps."`
	Card      CardSpace                `json:"card" doc:"Room for the graphics card."`
	Cooler    unit.Figure[unit.Length] `json:"cooler_height_mm,omitzero" range:"20..250" doc:"Room above the board for the processor cooler, plate at position 0."`
	Supply    SupplySpace              `json:"supply" doc:"Room for the power supply."`
	Radiators []RadiatorMount          `json:"radiators,omitempty" doc:"Places that take a radiator."`
	FanPlaces []FanPlace               `json:"fan_places,omitempty" doc:"Places that take fans."`
	Bays      []Bay                    `json:"bays,omitempty" doc:"Places that take 2.5 and 3.5 inch drives."`
	Routes    Routes                   `json:"routes" doc:"How far cables must run in this layout."`
	Chambers  bool                     `json:"chambers,omitzero" doc:"Whether the card hangs in a chamber of its own behind the plate."`
}

// Plate is a board plate that moves: each step gives the card's side that much and takes it from the cooler's side.
type Plate struct {
	Step  unit.Length `json:"step_mm" range:"1..30" doc:"How far one step moves the plate."`
	Steps unit.Whole  `json:"steps" range:"1..10" doc:"Steps beyond position 0."`
}

// CardMount is how the graphics card hangs.
type CardMount string

// Card mounts.
const (
	InSlot CardMount = "slot"   // in the board's own slot, standing away from the board
	Behind CardMount = "behind" // on a riser, parallel to the plate, on its other side
	Facing CardMount = "facing" // on a riser, its fans facing the side panel
)

// Values lists the accepted words.
func (CardMount) Values() []string { return []string{"slot", "behind", "facing"} }

// CardSpace is the room for the graphics card. Length runs from the bracket plane, thickness from the back of the card
// to the nearest thing before its fans, height from the card's slot edge to the panel above its plug.
type CardSpace struct {
	Mount     CardMount                 `json:"mount" doc:"How the card hangs."`
	Length    unit.Figure[unit.Length]  `json:"length_mm,omitzero" range:"50..600" doc:"Longest card, no radiator fitted."`
	Thickness unit.Figure[unit.Length]  `json:"thickness_mm,omitzero" range:"10..200" doc:"Thickest card, plate at position 0, no radiator fitted."`
	Height    unit.Figure[unit.Length]  `json:"height_mm,omitzero" range:"50..300" doc:"From the slot edge of the card to the panel above its plug."`
	Brackets  unit.Figure[unit.Whole]   `json:"brackets,omitzero" range:"0..9" doc:"Bracket openings in the rear wall."`
	Riser     unit.Figure[unit.Release] `json:"riser_pcie,omitzero" range:"1..7" doc:"PCIe generation of the riser that comes with the case; for mounts behind and facing."`
	Breathing unit.Figure[unit.Length]  `json:"breathing_mm,omitzero" range:"0..60" doc:"Gap this place needs between card and panel; 0 where the panel is a grille."`
}

// SupplySpace is the room for the power supply.
type SupplySpace struct {
	Forms  []SupplyForm             `json:"forms" min:"1" doc:"Forms the bay or its bracket takes."`
	At     Face                     `json:"at,omitempty" doc:"Face it lies against."`
	OwnAir unit.Figure[bool]        `json:"own_air,omitzero" doc:"Whether its fan draws from outside the case."`
	Length unit.Figure[unit.Length] `json:"length_mm,omitzero" range:"80..400" doc:"Room for body, plugs and their first bend."`
}

// RadiatorMount is a place that takes a radiator with its fans on the inside.
type RadiatorMount struct {
	Face      Face                     `json:"face" doc:"Which side."`
	FanSizes  []unit.Length            `json:"fan_sizes_mm" min:"1" range:"80..220" doc:"Fan sizes whose hole pattern it carries."`
	Fans      unit.Figure[unit.Whole]  `json:"fans,omitzero" range:"1..4" doc:"Fans side by side."`
	Length    unit.Figure[unit.Length] `json:"length_mm,omitzero" range:"100..600" doc:"Longest radiator, tanks included."`
	Thickness unit.Figure[unit.Length] `json:"thickness_mm,omitzero" range:"20..150" doc:"Thickest radiator with its fans, nothing else in the way."`
	Card      unit.Figure[unit.Length] `json:"card_free_mm,omitzero" range:"0..300" doc:"Thickness it may have before it takes room from the card; the card's length for a front mount, its thickness for a bottom or side mount. Left out where it never meets the card."`
	Board     unit.Figure[unit.Length] `json:"board_free_mm,omitzero" range:"0..300" doc:"For a top mount: thickness it may have before it hangs over the board. Left out where it never does."`
	Above     unit.Figure[unit.Length] `json:"board_above_mm,omitzero" range:"0..150" doc:"For a top mount over the board: height above the board that stays free under it."`
	Bays      []string                 `json:"takes_bays,omitempty" doc:"Bays lost when it is used."`
	Tube      unit.Figure[unit.Length] `json:"tube_mm,omitzero" range:"50..900" doc:"Routed path from the processor socket."`
	TankHigh  unit.Figure[bool]        `json:"tank_high,omitzero" doc:"Whether the radiator's highest point lies above the pump."`
}

// FanPlace is a place that takes fans.
type FanPlace struct {
	Face      Face                     `json:"face" doc:"Which side."`
	FanSizes  []unit.Length            `json:"fan_sizes_mm" min:"1" range:"40..220" doc:"Fan sizes whose hole pattern it carries."`
	Fans      unit.Figure[unit.Whole]  `json:"fans,omitzero" range:"1..8" doc:"Fans it takes, of its largest size."`
	Thickness unit.Figure[unit.Length] `json:"thickness_mm,omitzero" range:"8..80" doc:"Thickest fan."`
}

// Takes reports a place that has holes so far apart.
func (p *FanPlace) Takes(pitch unit.Length) bool {
	return slices.ContainsFunc(p.FanSizes, func(size unit.Length) bool { return HolePitch(size) == pitch })
}

// BayForm is a drive form factor with a bay.
type BayForm string

// Bay forms, SFF-8301 and SFF-8201.
const (
	Bay35 BayForm = "3.5"
	Bay25 BayForm = "2.5"
)

// Values lists the accepted words.
func (BayForm) Values() []string { return []string{"3.5", "2.5"} }

// Bay is a group of equal drive places.
type Bay struct {
	ID    string                   `json:"id" pattern:"^[a-z0-9]+(-[a-z0-9]+)*$" doc:"Name of the bay within the layout."`
	Forms []BayForm                `json:"forms" min:"1" doc:"Drive forms it takes."`
	Count unit.Figure[unit.Whole]  `json:"count,omitzero" range:"1..12" doc:"Drives it takes."`
	Card  unit.Figure[unit.Length] `json:"card_up_to_mm,omitzero" range:"50..600" doc:"Longest card beside which the bay stays; left out where no card reaches it."`
}

// Routes is how far cables run from the supply in this layout.
type Routes struct {
	Main      unit.Figure[unit.Length] `json:"main_mm,omitzero" range:"50..1500" doc:"To the board's 24-pin socket."`
	Processor unit.Figure[unit.Length] `json:"processor_mm,omitzero" range:"50..1500" doc:"To the processor's sockets."`
	Card      unit.Figure[unit.Length] `json:"card_mm,omitzero" range:"50..1500" doc:"To the graphics card's sockets."`
	Drive     unit.Figure[unit.Length] `json:"drive_mm,omitzero" range:"50..1500" doc:"To the farthest drive bay."`
}
