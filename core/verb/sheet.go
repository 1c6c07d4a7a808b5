package verb

import (
	"fmt"
	"strings"

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

// papers are the names of the papers that Sheet makes.
var papers = []string{"quote", "forecast"}

// Sheet makes a paper of a build: the priced offer (quote), with what the customer said where there is a brief, or what the
// machine will do before it exists (forecast).
func (w *Bench) Sheet(name string, file Document, asked *Document, stamp Stamp) (*Paper, error) {
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
		j.Needs, j.For, j.Said = said.Needs(w.Stock), said.Who, said.Said
		j.Budget, _ = said.Budget.Get()
	}
	var p *sheet.Paper
	switch name {
	case "quote":
		p = sheet.Quote(j)
	case "forecast":
		if p, err = sheet.Forecast(j); err != nil {
			return nil, err
		}
	default:
		return nil, fmt.Errorf("no paper %q; there are %s", name, strings.Join(papers, ", "))
	}
	proof := rule.Prove(b, j.Needs)
	return &Paper{head("slipfit-paper"), proof.Stands(), p, p.Body()}, nil
}
