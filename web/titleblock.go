package web

import "github.com/maxence-charriere/go-app/v9/pkg/app"

// TitleBlock holds the fields of the sheet's title block, printed as they stand; an empty field is drawn as a
// blank to write in. The kinds of field follow the usual title block of a technical drawing.
type TitleBlock struct {
	app.Compo

	Title    string // what is drawn
	Customer string
	Job      string // job number
	Revision string
	Date     string // YYYY-MM-DD
	Sheet    string // "1 of 2"
	Core     string // what computed the figures
}

// Render draws the title block.
func (t *TitleBlock) Render() app.UI {
	return app.Dl().Class("title-block").Aria("label", "Title block").Body(
		field("title", "Title", t.Title),
		field("job", "Job no.", t.Job),
		field("revision", "Rev.", t.Revision),
		field("customer", "For", t.Customer),
		field("date", "Date", t.Date),
		field("sheet", "Sheet", t.Sheet),
		field("core", "Figures by", t.Core),
		app.Div().DataSet("field", "projection").Body(
			app.Dt().Text("Projection"),
			app.Dd().Body(app.Raw(thirdAngle), app.Span().Text("third angle, mm")),
		),
	)
}

func field(name, label, value string) app.UI {
	if value == "" {
		value = "–"
	}
	return app.Div().DataSet("field", name).Body(app.Dt().Text(label), app.Dd().Text(value))
}

// thirdAngle is the symbol of third-angle projection: a cut cone seen from the left, drawn on the left of it.
const thirdAngle = `<svg xmlns="http://www.w3.org/2000/svg" data-part="projection" viewBox="0 0 64 28" width="64" height="28" aria-hidden="true" focusable="false">
<g fill="none" stroke="currentColor"><g stroke-width="1.6"><circle cx="15" cy="14" r="9.5"/><circle cx="15" cy="14" r="5"/><path d="M36 9L58 4.5V23.5L36 19Z"/></g>
<path d="M1 14H29M15 0V28M32 14H62" stroke-width="0.8" stroke-dasharray="7 2 2 2"/></g></svg>`
