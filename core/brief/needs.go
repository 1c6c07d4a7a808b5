package brief

import (
	"slipfit/core/part"
	"slipfit/core/unit"
)

// Resource is something a brief asks a machine for.
type Resource uint8

// The resources, in the order the schedule of margins lists them.
const (
	SingleWork     Resource = iota // work points of one thread
	AllWork                        // work points of all threads
	Threads                        // threads
	MemorySize                     // memory
	MemoryRate                     // memory bandwidth
	Channels                       // memory channels in use
	DrawWork                       // graphics points, pictures
	ComputeWork                    // graphics points, computing
	GraphicsMemory                 // memory on the graphics card
	GraphicsRate                   // bandwidth of that memory
	BootSize                       // storage for system and programs
	BootRead                       // its reading speed
	CacheSize                      // storage for work in hand
	CacheWrite                     // its writing speed, held
	ArchiveSize                    // storage for what is kept
	ArchiveWrite                   // its writing speed, held
	Endurance                      // years until the most written drive is spent
	Wired                          // wired network
	Wireless                       // wireless network
	FastPorts                      // USB ports of 5 Gbit/s and more

	Resources = int(FastPorts) + 1
)

var resourceNames = [Resources]string{
	"single-work", "all-work", "threads", "memory-size", "memory-rate", "memory-channels", "draw-work", "compute-work", "graphics-memory", "graphics-rate",
	"boot-size", "boot-read", "cache-size", "cache-write", "archive-size", "archive-write", "endurance",
	"wired", "wireless", "fast-ports",
}

var resourceTitles = [Resources]string{
	"one-thread work", "all-thread work", "threads", "memory", "memory bandwidth", "memory channels", "graphics work", "graphics computing", "graphics memory", "graphics memory bandwidth",
	"boot storage", "boot reading", "cache storage", "cache writing", "archive storage", "archive writing", "drive life",
	"wired network", "wireless network", "fast USB ports",
}

var resourceKinds = [Resources]unit.Kind{
	unit.Work, unit.Work, unit.Number, unit.MemoryByte, unit.ByteRate, unit.Number, unit.Work, unit.Work, unit.MemoryByte, unit.ByteRate,
	unit.StorageByte, unit.ByteRate, unit.StorageByte, unit.ByteRate, unit.StorageByte, unit.ByteRate, unit.Year,
	unit.BitRate, unit.BitRate, unit.Number,
}

// String is the resource's word in files and on the command line.
func (r Resource) String() string { return resourceNames[r] }

// Title is what a person calls it.
func (r Resource) Title() string { return resourceTitles[r] }

// Kind is the kind of quantity it is counted in.
func (r Resource) Kind() unit.Kind { return resourceKinds[r] }

// Need is a quantity that the brief asks for. Under the floor the work suffers; past enough, more buys nothing.
type Need struct {
	Resource Resource
	Floor    int64  // in the base of the resource's kind; 0 asks nothing
	Enough   int64  // at least Floor
	Weight   int    // how much a step from floor to enough is worth against the other needs, 0 to 100
	Reason   string // one sentence with the arithmetic shown
	Source   string // standard, handbook or common practice
	From     string // the activity, wish or rule of the brief that asks most
}

// FloorQ and EnoughQ give the two figures with their unit.
func (n Need) FloorQ() unit.Quantity  { return unit.Quantity{N: n.Floor, Kind: n.Resource.Kind()} }
func (n Need) EnoughQ() unit.Quantity { return unit.Quantity{N: n.Enough, Kind: n.Resource.Kind()} }

// Needs is everything a brief asks of a build. The zero Needs asks nothing but that the parts go together.
type Needs struct {
	By      [Resources]Need // by resource; a zero Need asks nothing
	Screens []Screen        // pictures to be shown at once
	Decode  []CodecNeed     // video formats to be read in hardware
	Encode  []CodecNeed     // video formats to be written in hardware
	Loads   []Load          // what each activity asks of the parts at once, for power and heat
	Aims    []Aim           // what the customer will notice of each activity
	Written Written         // what the work writes to the drives
	Writes  []Writes        // and which activity writes it
	ECC     bool            // error-correcting memory asked for
	Copies  bool            // work that is kept must lie on two drives of the machine
	Place   Place
	Wish    Wish
	Budget  unit.Money // for parts and labour before tax; 0 where none was named
	Named   unit.Money // the budget as it was named, tax included; 0 where none was
	Assumed []string   // what the customer did not say and what was taken instead, one sentence each
}

// Written is what the work writes to each tier in a year, in decimal megabytes.
type Written struct {
	Boot    unit.Storage
	Cache   unit.Storage
	Archive unit.Storage
}

// Writes is what one activity writes.
type Writes struct {
	Activity string
	Written
}

// Get returns the need for a resource and whether the brief asks for it.
func (n *Needs) Get(r Resource) (Need, bool) { return n.By[r], n.By[r].Floor > 0 || n.By[r].Enough > 0 }

// Screen is pictures of one mode.
type Screen struct {
	Width   int    `json:"width_px" range:"640..16384" doc:"Picture width."`
	Height  int    `json:"height_px" range:"480..8640" doc:"Picture height."`
	Refresh int    `json:"refresh_hz" range:"24..600" doc:"Pictures a second."`
	Bits    int    `json:"bits_per_colour" range:"6..12" doc:"Bits a colour: 8 for ordinary work, 10 for graded colour."`
	Count   int    `json:"count" range:"1..8" doc:"Screens of this mode."`
	Owned   bool   `json:"owned,omitempty" doc:"Whether the customer has it already; otherwise it is bought with the machine."`
	Input   string `json:"input,omitempty" pattern:"^(dp|hdmi|usb-c)$" doc:"Input the owned screen has, where only one will do."`
}

// CodecNeed is a video format with the activity that needs it.
type CodecNeed struct {
	Codec  part.Codec
	Reason string
}

// Load is what one activity asks of the parts at the same time, as shares of what each can draw between idle and its
// sustained power.
type Load struct {
	Activity  string
	Processor unit.Share
	Graphics  unit.Share
	Memory    unit.Share
	Drives    unit.Share
	Hours     int // a year
}

// Place is where the machine stands and what the room and the mains are like.
type Place struct {
	Room     unit.Figure[unit.Temperature] `json:"room_c,omitzero" range:"5..45" doc:"Room temperature on an ordinary day; 22 where not said."`
	Hottest  unit.Figure[unit.Temperature] `json:"hottest_c,omitzero" range:"5..50" doc:"Room temperature on the hottest day; 30 where not said."`
	Altitude unit.Figure[unit.Whole]       `json:"altitude_m,omitzero" range:"-500..5000" doc:"Above the sea, in metres; 0 where not said."`
	Chair    unit.Figure[unit.Length]      `json:"chair_mm,omitzero" range:"200..10000" doc:"From the machine to the ear; 700 where not said."`
	Noise    unit.Figure[unit.Sound]       `json:"noise_dba,omitzero" range:"10..70" doc:"Loudest wished for at the chair while working."`
	Width    unit.Figure[unit.Length]      `json:"width_mm,omitzero" range:"50..3000" doc:"Free width for the machine."`
	Height   unit.Figure[unit.Length]      `json:"height_mm,omitzero" range:"50..3000" doc:"Free height for the machine."`
	Depth    unit.Figure[unit.Length]      `json:"depth_mm,omitzero" range:"50..3000" doc:"Free depth for the machine, cables included."`
	Mains    unit.Figure[unit.Whole]       `json:"mains_v,omitzero" range:"100..240" doc:"Mains voltage; 230 where not said."`
	Circuit  unit.Figure[unit.Current]     `json:"circuit_a,omitzero" range:"3..32" doc:"Fuse or breaker of the outlet's circuit; 10 where not said."`
	Energy   unit.Figure[unit.Money]       `json:"kwh_minor,omitzero" range:"0..1000" doc:"Price of a kilowatt-hour in minor units; 30 where not said."`
	Stands   string                        `json:"stands,omitempty" pattern:"^(desk-left|desk-right|floor-left|floor-right|shelf)$" doc:"Where the machine stands, seen from the chair."`
}

// Wish is what the customer would like or will not have.
type Wish struct {
	Volume   unit.Figure[unit.Millilitre] `json:"volume_l,omitzero" range:"2..120" doc:"Largest case wished for, litres."`
	Glass    unit.Figure[bool]            `json:"glass,omitzero" doc:"A glazed side: true wants one, false will not have one."`
	Lighting unit.Figure[bool]            `json:"lighting,omitzero" doc:"Decorative lighting: false will not have any."`
	Prefer   []string                     `json:"prefer_makers,omitempty" doc:"Makers the customer likes."`
	Avoid    []string                     `json:"avoid_makers,omitempty" doc:"Makers the customer will not have."`
	Growth   unit.Figure[unit.Whole]      `json:"upgrade_years,omitzero" range:"0..15" doc:"Years until an upgrade is thought of."`
	UPS      unit.Figure[unit.Duration]   `json:"ups_min,omitzero" range:"1..120" doc:"Minutes the machine must run through a power cut."`
	InStock  bool                         `json:"in_stock,omitempty" doc:"Only parts that lie on the shelf."`
}
