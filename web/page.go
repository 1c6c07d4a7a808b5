package web

import (
	"fmt"
	"time"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
	"github.com/tidwall/gjson"
)

// The faces of the sheet, as the fragment of the address names them.
const (
	frontSide = "front"
	backSide  = "back"
)

// Page is the whole page: one sheet and the few controls above it. The fragment of the address says which
// face is up; one that names neither face leaves the sheet as it lies.
type Page struct {
	app.Compo

	worker     *Worker
	side       string
	turned     bool
	newEdition bool
	today      string
	core       string
}

// OnInit lays the sheet with its front up.
func (p *Page) OnInit() { p.side = frontSide }

// OnMount starts the worker and asks it what it is, and looks for a newer edition of the page.
func (p *Page) OnMount(ctx app.Context) {
	p.today = time.Now().Format(time.DateOnly)
	p.worker = NewWorker(BrowserWorker(ctx.ResolveStaticResource("/web/worker.js")))
	p.worker.Call(ctx, "version", nil, p.onVersion)
	ctx.Async(func() {
		if editionWaiting() {
			ctx.Dispatch(func(app.Context) { p.newEdition = true })
		}
	})
}

// OnDismount ends the worker.
func (p *Page) OnDismount() {
	if p.worker != nil {
		p.worker.Close()
	}
}

// OnAppUpdate tells the user of a newer edition; it is not forced on work in hand.
func (p *Page) OnAppUpdate(app.Context) { p.newEdition = true }

// OnNav turns the sheet to the face that the address names.
func (p *Page) OnNav(ctx app.Context) {
	side := ctx.Page().URL().Fragment
	if side == "" {
		side = frontSide
	}
	if side == p.side || side != frontSide && side != backSide {
		return
	}
	p.side, p.turned = side, true
	ctx.Defer(func(app.Context) { focus("sheet") })
}

// Render draws the controls and the face that is up.
func (p *Page) Render() app.UI {
	face, title, number, other := p.front(), "The drawing", "1 of 2", backSide
	if p.side == backSide {
		face, title, number, other = p.back(), "The papers", "2 of 2", frontSide
	}
	block := &TitleBlock{Title: "Machine to order", Date: p.today, Sheet: number, Core: p.core}
	return app.Div().Class("desk").Body(
		Hatches(),
		app.A().Class("skip").Href("#sheet").Text("Skip to the sheet").OnClick(p.onSkip),
		p.rail(other),
		Sheet(p.side, p.turned,
			app.H1().ID("side-title").Text(title),
			app.Div().Class("face").Body(append(face, block)...),
		),
	)
}

func (p *Page) rail(other string) app.UI {
	return app.Header().Class("rail").Body(
		app.P().Class("name").Text("slipfit"),
		app.P().Class("edition").Role("status").Body(
			app.If(p.newEdition,
				app.Button().Type("button").Text("A newer edition of this page is here: change over").OnClick(p.onChangeOver)),
		),
		app.Nav().Aria("label", "Sheet").Body(
			app.A().ID("turn").Href("#"+other).Text("Turn the sheet over"),
			app.Button().ID("print").Type("button").Text("Print").OnClick(p.onPrint),
		),
	)
}

func (p *Page) onVersion(_ app.Context, a Answer) {
	switch {
	case a.Err != nil:
		p.core = fmt.Sprintf("none: %v", a.Err)
	case a.Done:
		p.core = gjson.GetBytes(a.Result, "go").String()
	}
}

// onSkip moves the focus itself: go-app would scroll to the sheet and leave the focus on the link, and the
// address must keep naming the face that is up.
func (p *Page) onSkip(_ app.Context, e app.Event) {
	e.PreventDefault()
	e.Call("stopPropagation")
	focus("sheet")
}

func (p *Page) onPrint(app.Context, app.Event) { PrintSheet() }

func (p *Page) onChangeOver(ctx app.Context, _ app.Event) { ctx.Async(changeOver) }

// focus moves the keyboard to the element with this ID.
func focus(id string) {
	if e := app.Window().GetElementByID(id); e.Truthy() {
		e.Call("focus")
	}
}
