package verb

import (
	"slipfit/core/format"
	"slipfit/core/grow"
)

// Grown is a large catalog made out of the bench's for measuring.
type Grown struct {
	format.Head
	Seed  uint64      `json:"seed"`
	Parts int         `json:"parts"`
	Kinds []GrownKind `json:"kinds"`
	Files []Document  `json:"-"` // the catalog: boards.json, cases.json ...
}

// GrownKind is how far one kind of part grew.
type GrownKind struct {
	Kind string `json:"kind"`
	From int    `json:"from"`
	To   int    `json:"to"`
}

// Grow makes a catalog of so many parts out of the stock; see package grow. The same stock, size and seed give the same
// bytes.
func (w *Bench) Grow(parts int, seed uint64) (*Grown, error) {
	stock, err := grow.Stock(w.Stock, parts, seed)
	if err != nil {
		return nil, err
	}
	out := &Grown{Head: head("slipfit-stock-growth"), Seed: seed, Parts: parts}
	before := w.StockCheck().Kinds
	for i, kind := range (&Bench{Stock: stock}).StockCheck().Kinds {
		out.Kinds = append(out.Kinds, GrownKind{kind.Kind, before[i].Parts, kind.Parts})
	}
	for _, f := range grow.Files(stock) {
		out.Files = append(out.Files, Document(f))
	}
	return out, nil
}
