package web

import (
	"strconv"
	"strings"
	"time"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// The faces of the sheet, as the fragment of the address names them.
const (
	frontSide = "front"
	backSide  = "back"
)

// Page is the whole page: one sheet, the desk it lies on, and the few controls above it. The fragment of the address says
// which face is up, or carries a job; one that does neither leaves the sheet as it lies.
type Page struct {
	app.Compo

	desk       *Desk
	side       string
	turned     bool
	newEdition bool
	restored   bool // what was kept has been looked for
	printing   bool // the face is to be printed once it is laid

	laying // the areas of the face
}

// OnInit lays the sheet with its front up.
func (p *Page) OnInit() {
	NextTask()
	p.side, p.desk = frontSide, newDesk()
	if app.IsServer {
		p.laid = areas
	}
}

// areas is how many areas the face that is up has.
func (p *Page) areas() int {
	if p.side == backSide {
		return 1
	}
	return areas
}

// lay lets the areas of the face in, one a frame.
func (p *Page) lay(ctx app.Context) { p.more(ctx, p.areas, 1, p.onLaid) }

func (p *Page) onLaid(ctx app.Context) {
	if p.printing {
		p.printing = false
		ctx.Defer(func(ctx app.Context) { ctx.Defer(func(app.Context) { PrintSheet() }) })
	}
}

// OnMount starts the worker, looks for the job that was kept, and for a newer edition of the page.
func (p *Page) OnMount(ctx app.Context) {
	NextTask() // building the page has taken its time
	d := p.desk
	d.ctx, d.today = ctx, time.Now().Format(time.DateOnly)
	d.job.Date = d.today
	d.worker = NewWorker(BrowserWorker(ctx.ResolveStaticResource("/web/worker.js")))
	p.lay(ctx)
	d.prepare()
	arrived, last := carried(ctx), ""
	if err := ctx.SessionStorage().Get(drawerOfWindow, &last); err != nil {
		last = "" // nothing of ours: then this window has no drawer yet
	}
	ctx.Async(func() {
		d.restore(last, arrived)
		ctx.Dispatch(func(app.Context) { p.restored = true })
		if editionWaiting() {
			ctx.Dispatch(func(app.Context) { p.newEdition = true })
		}
	})
}

// carried is the fragment of the address where it carries a job.
func carried(ctx app.Context) string {
	if f := ctx.Page().URL().Fragment; strings.HasPrefix(f, linkMark) {
		return f
	}
	return ""
}

// OnDismount ends the worker.
func (p *Page) OnDismount() {
	if p.desk.worker != nil {
		p.desk.worker.Close()
	}
}

// OnAppUpdate tells the user of a newer edition; it is not forced on work in hand.
func (p *Page) OnAppUpdate(app.Context) { p.newEdition = true }

// OnNav turns the sheet to the face that the address names, or takes the job that it carries.
func (p *Page) OnNav(ctx app.Context) {
	if arrived := carried(ctx); arrived != "" {
		if p.restored {
			p.desk.receive(arrived)
		}
		return
	}
	side := ctx.Page().URL().Fragment
	if side == "" {
		side = frontSide
	}
	if side == p.side || side != frontSide && side != backSide {
		return
	}
	p.side, p.turned, p.laid = side, true, 0
	p.lay(ctx)
	ctx.Defer(func(app.Context) { focus("sheet") })
}

// Render draws the controls and the face that is up.
func (p *Page) Render() app.UI {
	d := p.desk
	var face []app.UI
	title, number := "The drawing", "1 of 2"
	if p.side == backSide {
		face, title, number = d.back(), "The papers", "2 of 2"
	} else {
		face = d.front(p.shown(areas, 1))
	}
	block := &TitleBlock{Desk: d, Title: d.brief.Text("title"), Customer: d.brief.Text("who"), Job: d.job.Number,
		Revision: d.job.Revision, Date: d.job.Date, Sheet: number, Core: d.core}
	return app.Div().Class("desk").Body(
		Hatches(),
		app.A().Class("skip").Href("#sheet").Text("Skip to the sheet").OnClick(p.onSkip),
		p.rail(),
		Sheet(p.side, p.turned,
			app.H1().ID("side-title").Text(title),
			app.Div().Class("face").DataSet("laid", strconv.FormatBool(p.laid+1 >= p.areas())).Body(append(face, block)...),
		),
	)
}

// onSkip moves the focus itself: go-app would scroll to the sheet and leave the focus on the link, and the
// address must keep naming the face that is up.
func (p *Page) onSkip(_ app.Context, e app.Event) {
	e.PreventDefault()
	e.Call("stopPropagation")
	focus("sheet")
}

// focus moves the keyboard to the element with this ID.
func focus(id string) {
	if e := app.Window().GetElementByID(id); e.Truthy() {
		e.Call("focus")
	}
}

// closeFold closes a fold-out; the keyboard stays at it if it was in it.
func closeFold(id string) {
	if e := app.Window().GetElementByID(id); e.Truthy() {
		if e.Call("matches", ":focus-within").Bool() {
			e.Call("querySelector", "summary").Call("focus")
		}
		e.Set("open", false)
	}
}

// openFold opens a fold-out and moves the keyboard to it.
func openFold(id string) {
	if e := app.Window().GetElementByID(id); e.Truthy() {
		e.Set("open", true)
		e.Call("querySelector", "summary").Call("focus")
	}
}
