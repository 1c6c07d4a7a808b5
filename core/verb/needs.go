package verb

import (
	"slipfit/core/brief"
	"slipfit/core/format"
	"slipfit/core/outcome"
	"slipfit/core/unit"
)

// Needs is what a brief asks of a machine, resource by resource.
type Needs struct {
	format.Head
	Title   string           `json:"title"`
	Needs   []Need           `json:"needs"`
	Screens []brief.Screen   `json:"screens,omitempty"`
	Codecs  []Codec          `json:"codecs,omitempty"`
	Storage *outcome.Storage `json:"storage"`
	Assumed []string         `json:"assumed,omitempty"`
	Budget  unit.Quantity    `json:"budget"`
}

// Need is one need of a brief.
type Need struct {
	Resource string        `json:"resource"`
	Title    string        `json:"title"`
	Floor    unit.Quantity `json:"floor"`
	Enough   unit.Quantity `json:"enough"`
	Weight   int           `json:"weight"`
	Reason   string        `json:"reason"`
	Source   string        `json:"source"`
	From     string        `json:"from"`
}

// Codec is a video format a brief asks for in hardware.
type Codec struct {
	Codec  string `json:"codec"`
	Use    string `json:"use"`
	Reason string `json:"reason"`
}

// Needs reads a brief and tells what it asks for.
func (w *Bench) Needs(file Document) (*Needs, error) {
	said, err := brief.Read(file.Name, file.Data)
	if err != nil {
		return nil, err
	}
	n := said.Needs(w.Stock)
	out := &Needs{Head: head("slipfit-needs"), Title: said.Title, Screens: n.Screens, Storage: outcome.StorageOf(n, nil), Assumed: n.Assumed, Budget: n.Budget.Q()}
	for r := range brief.Resource(brief.Resources) {
		need, asked := n.Get(r)
		if !asked {
			continue
		}
		out.Needs = append(out.Needs, Need{r.String(), r.Title(), need.FloorQ(), need.EnoughQ(), need.Weight, need.Reason, need.Source, need.From})
	}
	for _, c := range n.Decode {
		out.Codecs = append(out.Codecs, Codec{string(c.Codec), "decode", c.Reason})
	}
	for _, c := range n.Encode {
		out.Codecs = append(out.Codecs, Codec{string(c.Codec), "encode", c.Reason})
	}
	return out, nil
}
