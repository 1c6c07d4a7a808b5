package web

import "github.com/maxence-charriere/go-app/v9/pkg/app"

// papers lists what the back of the sheet holds, in the order they are used, each with what it is for.
var papers = [...]struct{ name, purpose string }{
	{"Quote", "what the customer pays, part by part, and what each part is for"},
	{"Pull list", "what comes off the shelves, and from where"},
	{"Assembly", "the order that works, and the cautions with it"},
	{"Cable plan", "every plug, from which cable to which socket"},
	{"Acceptance", "what to measure on the bench, and within which limits"},
	{"Hand-over", "what the customer keeps with the machine"},
}

// back lays out the papers side.
func (p *Page) back() []app.UI {
	return []app.UI{
		region("papers", "Index of papers",
			app.Table().Class("papers").Body(
				app.THead().Body(app.Tr().Body(
					app.Th().Scope("col").Text("No."), app.Th().Scope("col").Text("Paper"),
					app.Th().Scope("col").Text("For"), app.Th().Scope("col").Text("State"))),
				app.TBody().Body(app.Range(papers[:]).Slice(func(i int) app.UI {
					return app.Tr().Body(
						app.Td().Text(i+1), app.Th().Scope("row").Text(papers[i].name),
						app.Td().Text(papers[i].purpose), app.Td().Text("not drawn"))
				})),
			),
			blank("The papers are drawn from the front of this sheet. There is no machine on it yet.")),
	}
}
