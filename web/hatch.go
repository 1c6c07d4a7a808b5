package web

import "github.com/maxence-charriere/go-app/v9/pkg/app"

// hatches holds the fill of each verdict. It stands once in the page; shapes refer to it by address. Each
// differs from the others in direction, spacing and break of its lines, so none depends on colour.
const hatches = `<svg xmlns="http://www.w3.org/2000/svg" data-part="hatches" width="0" height="0" aria-hidden="true" focusable="false"><defs>
<pattern id="hatch-clash" patternUnits="userSpaceOnUse" width="5" height="5" patternTransform="rotate(45)"><path d="M0 0H5M0 0V5" fill="none" stroke="currentColor" stroke-width="2.2"/></pattern>
<pattern id="hatch-short" patternUnits="userSpaceOnUse" width="9" height="9" patternTransform="rotate(-45)"><path d="M0 4.5H5.5" fill="none" stroke="currentColor" stroke-width="1.2"/></pattern>
<pattern id="hatch-snug" patternUnits="userSpaceOnUse" width="4" height="4" patternTransform="rotate(45)"><path d="M0 2H4" fill="none" stroke="currentColor" stroke-width="0.9"/></pattern>
<pattern id="hatch-loose" patternUnits="userSpaceOnUse" width="7" height="7" patternTransform="rotate(45)"><circle cx="3.5" cy="3.5" r="0.9" fill="currentColor"/></pattern>
<pattern id="hatch-unknown" patternUnits="userSpaceOnUse" width="12" height="12"><path d="M6 3.5V8.5M3.5 6H8.5" fill="none" stroke="currentColor" stroke-width="0.8"/></pattern>
</defs></svg>`

// Hatches puts the fills of the verdicts into the page, once, for rulers and swatches to refer to.
func Hatches() app.UI { return app.Raw(hatches) }

// verdicts lists the words that have a fill, worst first, each with what it says.
var verdicts = [...]struct{ word, meaning string }{
	{"clash", "cannot go together"},
	{"short", "under what the work needs"},
	{"snug", "right"},
	{"loose", "past enough: money that buys nothing"},
	{"unknown", "a figure is missing: never taken as a fit"},
}

// fill refers to the fill of a verdict. A word without one is drawn as unknown, not as a fit.
func fill(verdict string) string {
	for _, v := range verdicts {
		if v.word == verdict {
			return "url(#hatch-" + verdict + ")"
		}
	}
	return "url(#hatch-unknown)"
}

// outline returns the dashes around a fill: whole where the parts meet or fit, broken where something is missing.
func outline(verdict string) string {
	switch verdict {
	case "clash", "snug", "loose":
		return "none"
	case "short":
		return "5 3"
	}
	return "1.5 3"
}

// swatch draws a verdict's fill as a small sample.
func swatch(verdict string) app.UI {
	return svg("svg", "data-part", "swatch", "width", "34", "height", "16", "aria-hidden", "true", "focusable", "false").Body(
		svg("rect", "x", "1", "y", "1", "width", "32", "height", "14", "fill", fill(verdict),
			"stroke", "currentColor", "stroke-dasharray", outline(verdict)),
	).UI()
}

// key explains the fills, as a drawing explains its lines.
func key() app.UI {
	return app.Dl().Class("key").Body(
		app.Range(verdicts[:]).Slice(func(i int) app.UI {
			v := verdicts[i]
			return app.Div().Body(
				app.Dt().Body(swatch(v.word), app.Span().Text(v.word)),
				app.Dd().Text(v.meaning),
			)
		}),
	)
}
