package verb

import (
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/format"
	"slipfit/core/rule"
	"slipfit/core/sheet"
)

// Stamp is what the caller knows of a paper and core does not: its number, revision and date.
type Stamp struct{ Number, Revision, Date string }

// Paper is a paper of a job.
type Paper struct {
	format.Head
	Stands bool         `json:"stands"`
	Paper  *sheet.Paper `json:"paper"`
	HTML   string       `json:"html"`
}

// Quote makes the priced offer of a build, with what the customer said where there is a brief.
func (w *Bench) Quote(file Document, asked *Document, stamp Stamp) (*Paper, error) {
	b, err := build.Read(file.Name, file.Data, w.Stock)
	if err != nil {
		return nil, err
	}
	j := &sheet.Job{Stock: w.Stock, Build: b, Number: stamp.Number, Revision: stamp.Revision, Date: stamp.Date}
	if asked != nil {
		said, err := brief.Read(asked.Name, asked.Data)
		if err != nil {
			return nil, err
		}
		j.Needs, j.Said = said.Needs(w.Stock), said.Said
		j.Budget, _ = said.Budget.Get()
	}
	p := sheet.Quote(j)
	proof := rule.Prove(b, j.Needs)
	return &Paper{head("slipfit-paper"), proof.Stands(), p, p.Body()}, nil
}
