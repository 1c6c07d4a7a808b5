package verb

import (
	"slices"

	"slipfit/core/format"
	"slipfit/core/part"
)

// StockCheck counts a catalog that was read without error.
type StockCheck struct {
	format.Head
	Shop     string      `json:"shop"`
	Revision string      `json:"revision"`
	Currency string      `json:"currency"`
	Parts    int         `json:"parts"`
	Makers   []string    `json:"makers"`
	Kinds    []KindCount `json:"kinds"`
}

// KindCount is one kind of part in a catalog.
type KindCount struct {
	Kind    string   `json:"kind"`
	Parts   int      `json:"parts"`
	InStock int      `json:"in_stock"`
	Missing []string `json:"missing,omitempty"` // "part: field", figures a sheet may state and this one does not
}

// StockCheck counts the stock by kind and lists the figures its data sheets lack.
func (w *Bench) StockCheck() *StockCheck {
	s := w.Stock
	out := &StockCheck{Head: head("slipfit-stock-check"), Shop: s.Shop.Name, Revision: s.Shop.Revision, Currency: s.Shop.Currency}
	out.Kinds = []KindCount{
		countKind("cases", s.Cases), countKind("boards", s.Boards), countKind("processors", s.Processors),
		countKind("coolers", s.Coolers), countKind("memory", s.Memory), countKind("graphics", s.Graphics),
		countKind("supplies", s.Supplies), countKind("drives", s.Drives), countKind("fans", s.Fans),
		countKind("monitors", s.Monitors), countKind("cards", s.Cards), countKind("ups", s.UPS), countKind("services", s.Services),
	}
	for _, a := range s.Articles() {
		out.Parts++
		if !slices.Contains(out.Makers, a.Maker) {
			out.Makers = append(out.Makers, a.Maker)
		}
	}
	slices.Sort(out.Makers)
	return out
}

func countKind[P interface{ Common() *part.Article }](kind string, parts []P) KindCount {
	k := KindCount{Kind: kind, Parts: len(parts)}
	for _, p := range parts {
		a := p.Common()
		if a.Stock > 0 {
			k.InStock++
		}
		for _, field := range format.Missing(p) {
			k.Missing = append(k.Missing, a.ID+": "+field)
		}
	}
	return k
}
