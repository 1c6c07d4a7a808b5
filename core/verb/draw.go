package verb

import (
	"slipfit/core/format"
	"slipfit/core/rule"
	"slipfit/core/scene"
	"slipfit/core/unit"
)

// Drawing is a build drawn to scale in two views, with the numbers its parts carry there.
type Drawing struct {
	format.Head
	SVG      string    `json:"svg"`
	Balloons []Balloon `json:"balloons"`
	Undrawn  []string  `json:"undrawn,omitempty"` // boxes left out because a sheet lacks their figures
}

// Balloon is the number of a part in the drawing.
type Balloon struct {
	Number int    `json:"number"`
	Seat   string `json:"seat"`
	ID     string `json:"part"`
}

// dimensioned is how many clearances a drawing carries beside those that do not hold: more would crowd it.
const dimensioned = 5

// Draw draws a build: every clearance that does not hold and the tightest of the others are dimensioned.
func (w *Bench) Draw(file Document, asked *Document) (*Drawing, error) {
	b, n, _, err := w.read(file, asked)
	if err != nil {
		return nil, err
	}
	s := scene.Of(b)
	proof := rule.Prove(b, n)
	out := &Drawing{Head: head("slipfit-drawing"), Undrawn: s.Unknown}
	out.SVG = string(scene.Draw(s, scene.Drawing{Title: b.Title, Dimensions: clearances(&s, proof.Margins)}))
	for i, l := range s.Parts {
		out.Balloons = append(out.Balloons, Balloon{i + 1, l.Seat.String(), l.Article.ID})
	}
	return out, nil
}

// clearances picks the margins to dimension: those of length that two boxes of the scene stand for, in the order of the proof.
func clearances(s *scene.Scene, margins []rule.Margin) []scene.Dimension {
	var list []scene.Dimension
	holding := 0
	for i := range margins {
		m := &margins[i]
		if m.Advice || m.Have.Kind != unit.Metre || !met(s, m) {
			continue
		}
		if m.Passes() {
			if holding == dimensioned {
				continue
			}
			holding++
		}
		list = append(list, scene.Dimension{Rule: m.Rule.ID, Subject: m.Subject})
	}
	return list
}

// met reports a margin that two boxes of the scene stand for.
func met(s *scene.Scene, m *rule.Margin) bool {
	for _, meeting := range s.Meetings {
		if meeting.Rule == m.Rule.ID && meeting.Subject == m.Subject {
			return true
		}
	}
	return false
}
