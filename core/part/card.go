package part

import "slipfit/core/unit"

// Card is an add-in card other than graphics, or an adapter or hub that hangs on a header, a port or a cable.
type Card struct {
	Article
	Use      CardUse                   `json:"use" doc:"What it is for."`
	Slot     unit.Figure[unit.Whole]   `json:"slot_lanes,omitzero" range:"0..16" doc:"Slot length it needs in lanes; 0 where it takes no slot."`
	PCIe     unit.Figure[unit.Release] `json:"pcie,omitzero" range:"1..7" doc:"PCIe generation."`
	Brackets unit.Figure[unit.Whole]   `json:"brackets,omitzero" range:"0..3" doc:"Bracket openings it takes."`
	Length   unit.Figure[unit.Length]  `json:"length_mm,omitzero" range:"0..330" doc:"Length from the bracket plane."`
	Power    unit.Figure[unit.Power]   `json:"power_w,omitzero" range:"0..75" doc:"Draw at work."`
	Network  *Network                  `json:"network,omitzero" doc:"Network it adds."`
	Rear     []RearPort                `json:"rear,omitempty" doc:"Ports it adds."`
	Gives    []Header                  `json:"gives_headers,omitempty" doc:"Headers it adds."`
	Takes    []Header                  `json:"takes_headers,omitempty" doc:"Board headers it hangs on."`
	Fed      []PlugKind                `json:"supply_plugs,omitempty" doc:"Supply plugs it must be fed by; a hub without one draws from the header it hangs on."`
	From     LinkKind                  `json:"from_link,omitempty" doc:"For a display adapter: the output it plugs into."`
	To       LinkKind                  `json:"to_link,omitempty" doc:"For a display adapter: the input it serves."`
	Holds    unit.Figure[unit.Mass]    `json:"holds_kg,omitzero" range:"0.1..10" doc:"For a card holder: mass it supports."`
}

// CardUse is what an add-in card or adapter is for.
type CardUse string

// Uses of cards and adapters.
const (
	UseNetwork  CardUse = "network"
	UseWireless CardUse = "wireless"
	UseUSB      CardUse = "usb"
	UseSound    CardUse = "sound"
	UseCapture  CardUse = "capture"
	UseStorage  CardUse = "storage"
	UseHub      CardUse = "hub"
	UseDisplay  CardUse = "display-adapter"
	UseHolder   CardUse = "card-holder"
)

// Values lists the accepted words.
func (CardUse) Values() []string {
	return []string{"network", "wireless", "usb", "sound", "capture", "storage", "hub", "display-adapter", "card-holder"}
}
