// Package part holds the articles a shop stocks, one file a kind, with the figures a careful data sheet states and a
// rule reads. Lengths, masses and powers are typed (package unit). A figure the sheet does not state is missing, not
// nought: every verdict that needs it is then unknown.
//
// The struct tags are the format: json names the field with its unit, range gives the accepted values in that unit, doc
// is the sentence the JSON Schema carries. Package format reads parts by them and writes the schemas from them.
package part

import "slipfit/core/unit"

// Article is what every part has in common: who makes it, what it costs, where it lies.
type Article struct {
	ID       string                  `json:"id" pattern:"^[a-z0-9]+(-[a-z0-9]+)*$" doc:"Stable name of the part in this catalog, lower case, words joined by hyphens."`
	Maker    string                  `json:"maker" doc:"Who makes it."`
	Name     string                  `json:"name" doc:"What the maker calls it."`
	Price    unit.Money              `json:"price_minor" range:"0..10000000" doc:"Price before tax, in minor units of the catalog's currency."`
	Stock    unit.Whole              `json:"stock" range:"0..10000" doc:"Pieces on the shelf."`
	Lead     unit.Figure[unit.Whole] `json:"lead_days,omitzero" range:"0..365" doc:"Working days until more arrive."`
	Shelf    string                  `json:"shelf" doc:"Where it lies in the store room."`
	Supplier string                  `json:"supplier" doc:"Who the shop buys it from."`
	Warranty unit.Figure[unit.Whole] `json:"warranty_years,omitzero" range:"0..20" doc:"Maker's warranty in years."`
	Mass     unit.Figure[unit.Mass]  `json:"mass_kg,omitzero" range:"0.001..60" doc:"Mass without packing."`
	Lighting unit.Figure[bool]       `json:"lighting,omitzero" doc:"Whether it carries decorative lighting."`
}

// Title is the maker and the name, as printed on sheets.
func (a *Article) Title() string { return a.Maker + " " + a.Name }

// Common returns the article itself; every kind of part embeds one.
func (a *Article) Common() *Article { return a }

// Face is a side of a case, named as one stands before its front.
type Face string

// The faces of a case.
const (
	Front  Face = "front"
	Rear   Face = "rear"
	Top    Face = "top"
	Bottom Face = "bottom"
	Side   Face = "side"
)

// Values lists the accepted words.
func (Face) Values() []string { return []string{"front", "rear", "top", "bottom", "side"} }

// BoardForm is a board form factor.
type BoardForm string

// Board form factors, after the microATX specification 1.2 and the Mini-ITX addendum 1.1.
const (
	ATX      BoardForm = "atx"
	MicroATX BoardForm = "micro-atx"
	MiniITX  BoardForm = "mini-itx"
)

// Values lists the accepted words.
func (BoardForm) Values() []string { return []string{"atx", "micro-atx", "mini-itx"} }

// SupplyForm is a power-supply form factor.
type SupplyForm string

// Power-supply form factors of the design guide; sfx-l is common practice.
const (
	SupplyATX  SupplyForm = "atx"
	SupplySFX  SupplyForm = "sfx"
	SupplySFXL SupplyForm = "sfx-l"
)

// Values lists the accepted words.
func (SupplyForm) Values() []string { return []string{"atx", "sfx", "sfx-l"} }

// MemoryType is a memory generation.
type MemoryType string

// Memory generations of JEDEC.
const (
	DDR4 MemoryType = "ddr4"
	DDR5 MemoryType = "ddr5"
)

// Values lists the accepted words.
func (MemoryType) Values() []string { return []string{"ddr4", "ddr5"} }

// PlugKind is a kind of supply plug.
type PlugKind string

// Supply plugs of the design guide: main 24-pin; processor 2×4, split 4+4 and 2×2; card 2×3, 2×4, split 6+2 and the
// 12-contact one with sense pins; SATA and 4-pin peripheral.
const (
	PlugMain24      PlugKind = "main-24"
	PlugProcessor44 PlugKind = "processor-4+4"
	PlugProcessor8  PlugKind = "processor-8"
	PlugProcessor4  PlugKind = "processor-4"
	PlugCard62      PlugKind = "card-6+2"
	PlugCard8       PlugKind = "card-8"
	PlugCard6       PlugKind = "card-6"
	PlugCard12      PlugKind = "card-12"
	PlugSATA        PlugKind = "sata"
	PlugPeripheral  PlugKind = "peripheral-4"
)

// Values lists the accepted words.
func (PlugKind) Values() []string {
	return []string{"main-24", "processor-4+4", "processor-8", "processor-4", "card-6+2", "card-8", "card-6", "card-12", "sata", "peripheral-4"}
}

// Size is a box: width across the front, height, depth from front to rear.
type Size struct {
	Width  unit.Figure[unit.Length] `json:"width_mm,omitzero" range:"10..1500" doc:"Across the front."`
	Height unit.Figure[unit.Length] `json:"height_mm,omitzero" range:"5..1500" doc:"Bottom to top, feet included."`
	Depth  unit.Figure[unit.Length] `json:"depth_mm,omitzero" range:"10..1500" doc:"Front to rear, protrusions included."`
}

// FanFigures is what a sheet states of one fan at full speed.
type FanFigures struct {
	Size      unit.Figure[unit.Length]   `json:"size_mm,omitzero" range:"40..220" doc:"Frame size: 80, 92, 120, 140 ..."`
	Thickness unit.Figure[unit.Length]   `json:"thickness_mm,omitzero" range:"8..60" doc:"Frame thickness."`
	Speed     unit.Figure[unit.Speed]    `json:"speed_rpm,omitzero" range:"200..6000" doc:"Full speed."`
	Lowest    unit.Figure[unit.Speed]    `json:"lowest_rpm,omitzero" range:"0..3000" doc:"Lowest speed it turns at under control; 0 where it can stop."`
	Flow      unit.Figure[unit.Flow]     `json:"flow_m3_h,omitzero" range:"1..500" doc:"Free flow at full speed."`
	Pressure  unit.Figure[unit.Pressure] `json:"pressure_pa,omitzero" range:"1..120" doc:"Shut-off pressure at full speed."`
	Sound     unit.Figure[unit.Sound]    `json:"sound_dba,omitzero" range:"5..60" doc:"Sound pressure at 1 m, full speed."`
	Current   unit.Figure[unit.Current]  `json:"current_a,omitzero" range:"0.01..3" doc:"Steady current at 12 V, full speed."`
}
