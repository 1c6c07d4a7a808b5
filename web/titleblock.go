package web

import (
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// TitleBlock is the title block of the sheet, printed as it stands; an empty field is drawn as a blank to write in. Number,
// revision and date are filled in here, title and customer come from the brief. The kinds of field follow the usual title
// block of a technical drawing.
type TitleBlock struct {
	app.Compo

	Desk     *Desk
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
		t.entry("job", "Job no.", t.Job),
		t.entry("revision", "Rev.", t.Revision),
		field("customer", "For", t.Customer),
		t.entry("date", "Date", t.Date),
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

// entry is a field that is filled in on the sheet.
func (t *TitleBlock) entry(name, label, value string) app.UI {
	return app.Div().DataSet("field", name).Body(
		app.Dt().Body(app.Label().For("block-"+name).Text(label)),
		app.Dd().Body(app.Input().ID("block-"+name).Type("text").AutoComplete(false).Value(value).OnChange(t.onEntry(name), name)),
	)
}

func (t *TitleBlock) onEntry(name string) app.EventHandler {
	return func(ctx app.Context, _ app.Event) {
		value, d := strings.TrimSpace(ctx.JSSrc().Get("value").String()), t.Desk
		d.edit(func() {
			switch name {
			case "job":
				d.job.Number = value
			case "revision":
				d.job.Revision = value
			case "date":
				d.job.Date = value
			}
		})
	}
}

// thirdAngle is the symbol of third-angle projection: a cut cone seen from the left, drawn on the left of it.
const thirdAngle = `<svg xmlns="http://www.w3.org/2000/svg" data-part="projection" viewBox="0 0 64 28" width="64" height="28" aria-hidden="true" focusable="false">
<g fill="none" stroke="currentColor"><g stroke-width="1.6"><circle cx="15" cy="14" r="9.5"/><circle cx="15" cy="14" r="5"/><path d="M36 9L58 4.5V23.5L36 19Z"/></g>
<path d="M1 14H29M15 0V28M32 14H62" stroke-width="0.8" stroke-dasharray="7 2 2 2"/></g></svg>`
