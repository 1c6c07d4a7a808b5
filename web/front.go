package web

import "github.com/maxence-charriere/go-app/v9/pkg/app"

// front lays out the drawing side in two columns: what was said and what it comes to on the left, the machine and its proof
// on the right. The first so many areas are filled in, counted as they are laid; the others show their heading.
func (d *Desk) front(laid int) []app.UI {
	area := func(place int, name, title string, body func() []app.UI) app.UI {
		if place >= laid {
			return region(name, title)
		}
		return region(name, title, body()...)
	}
	one := func(ui func() app.UI) func() []app.UI { return func() []app.UI { return []app.UI{ui()} } }
	return []app.UI{
		app.Div().Class("column column-said").Body(
			area(0, "brief", "What the customer said", one(func() app.UI { return &Conversation{Desk: d, Turn: d.heard} })),
			area(3, "needs", "What that asks for", one(func() app.UI { return &NeedsList{Needs: d.needs} })),
			area(5, "money", "The money", one(d.money)),
			area(7, "key", "Key", one(key)),
			area(8, "notes", "Notes", one(d.notes)),
		),
		app.Div().Class("column column-drawn").Body(
			area(1, "views", "The machine", func() []app.UI { return append([]app.UI{d.planner(), d.stairs()}, d.views()...) }),
			area(2, "parts", "List of parts", one(func() app.UI {
				return &PartsList{Desk: d, Proof: d.proof, Drawing: d.drawing, Trial: d.trial, Ways: d.ways, Equals: d.equals,
					Choices: d.choices, Steps: d.steps, Looking: d.looking != 0, Reasons: len(d.reasons), Open: d.open, Pins: d.job.Pins}
			})),
			area(4, "outcomes", "What the work will be like", one(func() app.UI { return &Outcomes{Desk: d, Outcome: d.outcome, Balance: d.balance} })),
			area(6, "margins", "Schedule of margins", one(func() app.UI {
				return &Schedule{Desk: d, Proof: d.schedule, Rules: len(d.rules), Prediction: d.prediction}
			})),
		),
	}
}

// areas is how many areas the front has.
const areas = 9

func (d *Desk) notes() app.UI {
	return app.Ol().Class("notes").Body(
		app.Li().Text("Dimensions in millimetres unless said otherwise."),
		app.Li().Text("Figures are those of the data sheets. Where one is missing the margin is unknown, and says which."),
		app.Li().Text("Nothing on this sheet leaves this device unless you save, share or print it."),
	)
}
