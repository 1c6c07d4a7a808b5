package part

import "slipfit/core/unit"

// Board is a main board.
type Board struct {
	Article
	Form       BoardForm                 `json:"form" doc:"Form factor."`
	Depth      unit.Figure[unit.Length]  `json:"depth_mm,omitzero" range:"150..340" doc:"From the rear edge to the front edge; the label does not say it."`
	Socket     string                    `json:"socket" doc:"Processor socket."`
	Chipset    string                    `json:"chipset" doc:"Chipset; processors list the chipsets they run on."`
	Firmware   unit.Figure[unit.Release] `json:"firmware,omitzero" range:"0..99" doc:"Firmware version it is delivered with."`
	FlashAlone unit.Figure[bool]         `json:"flashes_without_processor,omitzero" doc:"Whether its firmware can be renewed with no processor fitted."`
	Sustained  unit.Figure[unit.Power]   `json:"processor_power_w,omitzero" range:"30..500" doc:"Processor power its converters hold without end."`
	Own        unit.Figure[unit.Power]   `json:"own_power_w,omitzero" range:"5..80" doc:"What board, chipset and fixed controllers draw."`
	SocketAt   SocketPlace               `json:"socket_place" doc:"Where the socket lies, for coolers."`

	Memory   MemoryType                     `json:"memory" doc:"Memory generation."`
	Module   string                         `json:"module_form" pattern:"^(udimm|so-dimm|rdimm)$" doc:"Module form its slots take: udimm, so-dimm, rdimm."`
	ECC      unit.Figure[bool]              `json:"ecc,omitzero" doc:"Whether it runs error-correcting memory."`
	Slots    unit.Figure[unit.Whole]        `json:"memory_slots,omitzero" range:"1..8" doc:"Memory slots."`
	ModuleTo unit.Figure[unit.Memory]       `json:"module_limit_gib,omitzero" range:"4..256" doc:"Largest module."`
	MemoryTo unit.Figure[unit.Memory]       `json:"memory_limit_gib,omitzero" range:"8..1024" doc:"Most memory in all."`
	Speed    unit.Figure[unit.TransferRate] `json:"memory_speed_mt_s,omitzero" range:"1600..10000" doc:"Fastest memory, one module a channel."`
	SpeedTwo unit.Figure[unit.TransferRate] `json:"memory_speed_two_mt_s,omitzero" range:"1600..10000" doc:"Fastest memory, two modules a channel; left out on boards with one slot a channel."`

	Cards      []Slot                  `json:"slots,omitempty" doc:"Card slots, nearest the processor first."`
	M2         []M2Slot                `json:"m2,omitempty" doc:"Module sockets for storage."`
	SATA       unit.Figure[unit.Whole] `json:"sata,omitzero" range:"0..12" doc:"SATA ports, named sata1, sata2 ..."`
	Headers    []Header                `json:"headers,omitempty" doc:"Pin headers."`
	PowerPlugs []Socket                `json:"power_sockets" min:"1" doc:"Sockets the supply must feed."`
	Rear       []RearPort              `json:"rear,omitempty" doc:"Rear sockets other than display outputs."`
	Outputs    []Output                `json:"outputs,omitempty" doc:"Display outputs, live only with a processor that has graphics."`
	Network    []Network               `json:"network,omitempty" doc:"Wired and wireless network."`
}

// SocketPlace is where the processor socket lies on the board and what stands near it. Distances run from the socket's
// centre.
type SocketPlace struct {
	Memory   unit.Figure[unit.Length] `json:"memory_mm,omitzero" range:"30..120" doc:"To the centre line of the nearest memory slot."`
	Pitch    unit.Figure[unit.Length] `json:"memory_pitch_mm,omitzero" range:"6..12" doc:"Between memory slots."`
	FirstIn  unit.Figure[unit.Whole]  `json:"memory_first_used,omitzero" range:"1..2" doc:"Which slot, counted from the socket, a pair of modules uses first."`
	Card     unit.Figure[unit.Length] `json:"first_slot_mm,omitzero" range:"30..150" doc:"To the centre line of the first card slot."`
	TopEdge  unit.Figure[unit.Length] `json:"top_edge_mm,omitzero" range:"20..150" doc:"To the board edge away from the card slots."`
	SinkAt   unit.Figure[unit.Length] `json:"heat_sink_mm,omitzero" range:"15..120" doc:"To the nearest heat-sink on the board."`
	SinkHigh unit.Figure[unit.Length] `json:"heat_sink_height_mm,omitzero" range:"0..80" doc:"Height of that heat-sink above the board."`
}

// Slot is a card slot.
type Slot struct {
	ID     string                    `json:"id" pattern:"^[a-z0-9]+$" doc:"Name of the slot on this board: slot1, slot2 ..."`
	Place  unit.Figure[unit.Whole]   `json:"place,omitzero" range:"1..7" doc:"Bracket position, 1 nearest the processor."`
	Size   unit.Figure[unit.Whole]   `json:"size_lanes,omitzero" range:"1..16" doc:"Length of the slot in lanes: 1, 4, 8, 16."`
	Lanes  unit.Figure[unit.Whole]   `json:"lanes,omitzero" range:"1..16" doc:"Lanes wired."`
	PCIe   unit.Figure[unit.Release] `json:"pcie,omitzero" range:"1..7" doc:"PCIe generation."`
	Shares []Sharing                 `json:"shares,omitempty" doc:"What happens to others when this slot is used."`
}

// M2Slot is a socket for a storage module.
type M2Slot struct {
	ID       string                    `json:"id" pattern:"^[a-z0-9]+$" doc:"Name of the socket on this board: m2a, m2b ..."`
	Lengths  []unit.Whole              `json:"lengths" min:"1" range:"30..110" doc:"Module lengths it has a post for: 30, 42, 60, 80, 110."`
	Lanes    unit.Figure[unit.Whole]   `json:"lanes,omitzero" range:"0..4" doc:"PCIe lanes wired; 0 where it is SATA only."`
	PCIe     unit.Figure[unit.Release] `json:"pcie,omitzero" range:"1..7" doc:"PCIe generation."`
	SATA     unit.Figure[bool]         `json:"sata,omitzero" doc:"Whether it takes a SATA module."`
	Height   unit.Figure[unit.Length]  `json:"module_height_mm,omitzero" range:"1..40" doc:"Room above the module board, under the heat-sink or up to what covers it."`
	TwoSided unit.Figure[bool]         `json:"two_sided,omitzero" doc:"Whether a module with chips on both sides seats."`
	Sink     unit.Figure[bool]         `json:"heat_sink,omitzero" doc:"Whether the board brings a heat-sink for it."`
	Back     bool                      `json:"back,omitzero" doc:"Whether it lies on the back of the board."`
	Shares   []Sharing                 `json:"shares,omitempty" doc:"What happens to others when this socket is used."`
}

// Sharing is what using one socket does to another.
type Sharing struct {
	With  string     `json:"with" pattern:"^[a-z0-9]+$" doc:"The other slot, socket or port: slot1, m2b, sata3 ..."`
	Lanes unit.Whole `json:"leaves_lanes" range:"0..16" doc:"Lanes the other keeps; 0 switches it off."`
	Only  BusKind    `json:"only,omitempty" doc:"Only when this socket is used by that kind of module."`
}

// BusKind is the bus of a storage module.
type BusKind string

// Buses of storage.
const (
	BusPCIe BusKind = "pcie"
	BusSATA BusKind = "sata"
)

// Values lists the accepted words.
func (BusKind) Values() []string { return []string{"pcie", "sata"} }

// Header is one or more equal pin headers.
type Header struct {
	Kind    HeaderKind                `json:"kind" doc:"Kind of header."`
	Count   unit.Figure[unit.Whole]   `json:"count,omitzero" range:"1..10" doc:"How many."`
	Current unit.Figure[unit.Current] `json:"current_a,omitzero" range:"0.1..10" doc:"Current each may give."`
}

// SocketKind is a kind of power socket on a board or card.
type SocketKind string

// Power sockets.
const (
	SocketMain24     SocketKind = "main-24"
	SocketProcessor8 SocketKind = "processor-8"
	SocketProcessor4 SocketKind = "processor-4"
	SocketCard8      SocketKind = "card-8"
	SocketCard6      SocketKind = "card-6"
	SocketCard12     SocketKind = "card-12"
)

// Values lists the accepted words.
func (SocketKind) Values() []string {
	return []string{"main-24", "processor-8", "processor-4", "card-8", "card-6", "card-12"}
}

// Socket is one or more equal power sockets.
type Socket struct {
	Kind     SocketKind              `json:"kind" doc:"Kind of socket."`
	Count    unit.Figure[unit.Whole] `json:"count,omitzero" range:"1..6" doc:"How many."`
	Optional bool                    `json:"optional,omitzero" doc:"Whether the machine runs with it unfed at ordinary load."`
}

// PortKind is a kind of rear port.
type PortKind string

// Rear ports.
const (
	PortUSB2     PortKind = "usb-a-2"
	PortUSBA5    PortKind = "usb-a-5"
	PortUSBA10   PortKind = "usb-a-10"
	PortUSBC10   PortKind = "usb-c-10"
	PortUSBC20   PortKind = "usb-c-20"
	PortUSBC40   PortKind = "usb-c-40"
	PortAudio    PortKind = "audio-3.5"
	PortOptical  PortKind = "audio-optical"
	PortEthernet PortKind = "ethernet"
)

// Values lists the accepted words.
func (PortKind) Values() []string {
	return []string{"usb-a-2", "usb-a-5", "usb-a-10", "usb-c-10", "usb-c-20", "usb-c-40", "audio-3.5", "audio-optical", "ethernet"}
}

// RearPort is one or more equal rear ports.
type RearPort struct {
	Kind  PortKind                `json:"kind" doc:"Kind of port."`
	Count unit.Figure[unit.Whole] `json:"count,omitzero" range:"1..12" doc:"How many."`
}

// LinkKind is a display link at its fastest rate.
type LinkKind string

// Display links: DisplayPort by its lane rate, HDMI by its version's fastest mode.
const (
	DPHBR2    LinkKind = "dp-hbr2"
	DPHBR3    LinkKind = "dp-hbr3"
	DPUHBR10  LinkKind = "dp-uhbr10"
	DPUHBR135 LinkKind = "dp-uhbr13.5"
	DPUHBR20  LinkKind = "dp-uhbr20"
	HDMI14    LinkKind = "hdmi-1.4"
	HDMI20    LinkKind = "hdmi-2.0"
	HDMI21F40 LinkKind = "hdmi-2.1-frl40"
	HDMI21F48 LinkKind = "hdmi-2.1-frl48"
)

// Values lists the accepted words.
func (LinkKind) Values() []string {
	return []string{"dp-hbr2", "dp-hbr3", "dp-uhbr10", "dp-uhbr13.5", "dp-uhbr20", "hdmi-1.4", "hdmi-2.0", "hdmi-2.1-frl40", "hdmi-2.1-frl48"}
}

// Family is the plug of the link: "dp" or "hdmi".
func (l LinkKind) Family() string {
	if len(l) > 2 && l[:2] == "dp" {
		return "dp"
	}
	return "hdmi"
}

// Output is one or more equal display outputs, each with four lanes.
type Output struct {
	Link        LinkKind                `json:"link" doc:"Fastest link it speaks."`
	Connector   string                  `json:"connector,omitempty" pattern:"^(dp|hdmi|usb-c)$" doc:"dp, hdmi or usb-c; left out where the link says it."`
	Count       unit.Figure[unit.Whole] `json:"count,omitzero" range:"1..8" doc:"How many."`
	Compression unit.Figure[bool]       `json:"compression,omitzero" doc:"Whether it can send display stream compression."`
}

// Network is one wired or wireless interface.
type Network struct {
	Wireless bool                       `json:"wireless,omitzero" doc:"Radio, not cable."`
	Rate     unit.Figure[unit.LinkRate] `json:"rate_mbit_s,omitzero" range:"10..100000" doc:"Link rate."`
}
