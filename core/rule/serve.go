package rule

import (
	"slipfit/core/brief"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// engine is what draws: the card where there is one, else the processor's own graphics; nil where there is neither, or
// where the processor that might bring graphics is not chosen yet.
func (v *View) engine() (*part.Engine, *part.Article) {
	switch {
	case v.Graphics != nil:
		return &v.Graphics.Engine, &v.Graphics.Article
	case v.Processor != nil && v.Processor.Graphics != nil:
		return v.Processor.Graphics, &v.Processor.Article
	}
	return nil, nil
}

// engineField is the path of an engine's field in the data sheet of the part that carries it.
func (v *View) engineField(field string) string {
	if v.Graphics != nil {
		return field
	}
	return "graphics." + field
}

// draws adds the margin of a need that the graphics engine serves, read from its sheet by get. Without any engine it
// has nought.
func (v *View) draws(r brief.Resource, field string, get func(*part.Engine) unit.Figure[unit.Points]) []Margin {
	n, ok := v.Needs.Get(r)
	if !ok || v.Graphics == nil && v.Processor == nil {
		return nil
	}
	e, owner := v.engine()
	if e == nil {
		v.serve(n, 0, say("there is no graphics card and %s has no graphics of its own; %s", v.Processor.Name, n.Reason))
		return v.margins
	}
	have := int64(figure(v, get(e), owner, v.engineField(field)))
	v.serve(n, have, say("%s gives %s; %s", owner.Name, unit.Points(have).Q(), n.Reason))
	return v.margins
}
