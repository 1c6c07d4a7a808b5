package part

import "slipfit/core/unit"

// Stock is everything a shop can sell: its parts by kind, in catalog order, and the shop's own figures.
type Stock struct {
	Shop        Shop
	Calibration Calibration // zero where the catalog has none
	Cases       []*Case
	Boards      []*Board
	Processors  []*Processor
	Coolers     []*Cooler
	Memory      []*Memory
	Graphics    []*Graphics
	Supplies    []*Supply
	Drives      []*Drive
	Fans        []*Fan
	Monitors    []*Monitor
	Cards       []*Card
	UPS         []*UPS
	Services    []*Service
}

// Shop is what a shop says of itself: money and the people behind the counter.
type Shop struct {
	Name     string     `json:"name" doc:"Name printed on sheets."`
	Currency string     `json:"currency" pattern:"^[A-Z]{3}$" doc:"Currency of every price, ISO 4217."`
	Tax      unit.Share `json:"tax_percent" range:"0..40" doc:"Sales tax added to the total."`
	Revision string     `json:"revision" doc:"Revision of the catalog."`
	Labour   []string   `json:"labour,omitempty" doc:"Services and sundries that every build carries, by id."`
}

// Find returns the part with the id among parts of one kind.
func Find[P interface{ Common() *Article }](parts []P, id string) (P, bool) {
	for _, p := range parts {
		if p.Common().ID == id {
			return p, true
		}
	}
	var none P
	return none, false
}

// Articles lists the common figures of every part, kind by kind.
func (s *Stock) Articles() []*Article {
	var all []*Article
	all = articles(all, s.Cases)
	all = articles(all, s.Boards)
	all = articles(all, s.Processors)
	all = articles(all, s.Coolers)
	all = articles(all, s.Memory)
	all = articles(all, s.Graphics)
	all = articles(all, s.Supplies)
	all = articles(all, s.Drives)
	all = articles(all, s.Fans)
	all = articles(all, s.Monitors)
	all = articles(all, s.Cards)
	all = articles(all, s.UPS)
	return articles(all, s.Services)
}

func articles[P interface{ Common() *Article }](all []*Article, parts []P) []*Article {
	for _, p := range parts {
		all = append(all, p.Common())
	}
	return all
}
