// Package outcome tells what each activity of a brief will be like on a build, in the customer's own terms and with a band:
// pictures a second, minutes for a model, hours of footage the archive holds. The models are a roofline (the least of
// several resources), Amdahl's law for work that is waited for, and the reading of every weight for language models; what
// they reckon with comes from the brief's aims, whose coefficients lie in the catalog's calibration block, and what the build
// gives comes from the rules of serving. Fit turns measurements into coefficients.
//
// Sources: Amdahl 1967, as written in Gustafson, CACM 31(5), 1988; Williams, Waterman, Patterson, Roofline, CACM 52(4), 2009.
package outcome

import (
	"slices"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/rule"
)

// Have is what a build gives of every resource, in the resource's base. Of a storage tier it is what the other tiers on the
// same drives leave for it.
type Have struct {
	By      [brief.Resources]int64
	Missing [brief.Resources][]string // "part: field" the sheets lack, so that By is not known
	Without [brief.Resources]bool     // the build has no part that could give it
	Reads   []part.Codec              // video formats an engine of the build reads
	Writes  []part.Codec              // and writes
	heat    map[brief.Load]*warmth    // what heat takes while a work goes on; none where it takes nothing
}

// Of is what a build gives under needs: every figure is the one the rules of serving find.
func Of(b *build.Build, n *brief.Needs) *Have {
	if n == nil {
		n = &brief.Needs{}
	}
	asked := *n
	for r := range brief.Resource(brief.Resources) {
		asked.By[r] = brief.Need{Resource: r, Floor: 1, Enough: 1}
	}
	h := &Have{}
	for r := range h.Without {
		h.Without[r] = true
	}
	v := rule.NewView(b, &asked)
	for _, r := range rule.All {
		if r.Group != rule.Serve && r != &rule.Network && r != &rule.RearPorts {
			continue
		}
		for _, m := range v.Run(r) {
			if m.Capped {
				h.take(&m)
			}
		}
	}
	for _, t := range rule.Tiers(b, n) {
		if t.Drive != nil {
			h.By[t.Size], h.Missing[t.Size], h.Without[t.Size] = int64(t.Left), t.Missing, false
		}
	}
	if b.Graphics != nil {
		h.engine(&b.Graphics.Engine)
	}
	if b.Processor != nil && b.Processor.Graphics != nil {
		h.engine(b.Processor.Graphics)
	}
	return h
}

// take notes a margin of serving by the resource it is about.
func (h *Have) take(m *rule.Margin) {
	for r := range brief.Resource(brief.Resources) {
		if r.Title() == m.Subject {
			h.By[r], h.Without[r] = m.Have.N, false
			if m.Verdict == rule.Unknown {
				h.Missing[r] = slices.Clone(m.Missing)
			}
		}
	}
}

// engine notes the formats that an engine reads and writes.
func (h *Have) engine(e *part.Engine) {
	h.Reads, h.Writes = append(h.Reads, e.Decode...), append(h.Writes, e.Encode...)
}

// has reports that an engine of the build does what is reckoned with.
func (h *Have) has(e *brief.Engine) bool {
	if e.Writes {
		return slices.Contains(h.Writes, e.Codec)
	}
	return slices.Contains(h.Reads, e.Codec)
}

// takes is what work costs that an engine eases: cost with it, more without; nil eases nothing.
func (h *Have) takes(cost int64, e *brief.Engine) int64 {
	if e == nil || h.has(e) {
		return cost
	}
	return e.Without
}
