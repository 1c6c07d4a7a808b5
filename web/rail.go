package web

import "github.com/maxence-charriere/go-app/v9/pkg/app"

// rail is the controls above the sheet.
func (p *Page) rail() app.UI {
	d := p.desk
	other := backSide
	if p.side == backSide {
		other = frontSide
	}
	return app.Header().Class("rail").Body(
		app.P().Class("name").Text("slipfit"),
		app.Nav().Aria("label", "Sheet").Body(
			app.A().ID("turn").Href("#"+other).Text("Turn the sheet over"),
			app.Button().Type("button").ID("undo").Text("Take back").Disabled(len(d.past) == 0).OnClick(d.onUndo),
			app.Button().Type("button").ID("redo").Text("Make again").Disabled(len(d.future) == 0).OnClick(d.onRedo),
			app.Button().ID("print").Type("button").Text("Print the drawing").OnClick(p.onPrintFront),
			app.Button().ID("print-papers").Type("button").Text("Print the papers").Disabled(d.paper == nil).OnClick(p.onPrintBack),
		),
		app.Details().ID("files").Class("files").Body(
			app.Summary().Text("Files"),
			app.Div().Class("files-list").Body(
				app.Button().ID("open-file").Type("button").Text("Open a brief, build or job").OnClick(p.onOpen),
				app.Button().ID("save-brief").Type("button").Text("Save the brief").OnClick(p.onSaveBrief),
				app.Button().ID("save-build").Type("button").Text("Save the build").Disabled(len(d.job.Build) == 0).OnClick(p.onSaveBuild),
				app.Button().ID("save-job").Type("button").Text("Save the job").OnClick(p.onSaveJob),
				app.Button().ID("share").Type("button").Text("Make an address that carries the job").OnClick(p.onShare),
				app.Button().ID("afresh").Type("button").Text("Begin a blank sheet").OnClick(p.onAfresh),
			).OnClick(p.onFiled),
		),
		app.Div().Class("said-by-page").Body(
			app.P().ID("news").Role("status").Text(d.news),
			app.P().ID("trouble").Role("alert").Text(d.trouble),
			app.If(d.windows != "", app.P().ID("windows").Text(d.windows)),
			app.If(d.unkept != "", app.P().ID("unkept").Text(d.unkept)),
			app.If(d.link != "", app.P().Class("link").Body(
				app.Label().For("link").Text("This address opens the job. It is selected: copy it."),
				app.Input().ID("link").Type("text").ReadOnly(true).Value(d.link))),
			p.offered(),
			app.P().Class("edition").Role("status").Body(
				app.If(p.newEdition,
					app.Button().Type("button").Text("A newer edition of this page is here: change over").OnClick(p.onChangeOver)),
			),
		),
	)
}

// offered asks before work in hand is replaced by a job that came with the address.
func (p *Page) offered() app.UI {
	if p.desk.offer == nil {
		return app.Div().Hidden(true)
	}
	return app.Div().Class("offer").Role("group").Aria("label", "A job came with the address").Body(
		app.P().Text("The address carries another job than the one in hand. Lay it on the sheet instead?"),
		app.Button().ID("take-offer").Type("button").Class("main").Text("Lay it on the sheet").OnClick(p.onTakeOffer),
		app.Button().ID("leave-offer").Type("button").Text("Keep the job in hand").OnClick(p.onLeaveOffer),
	)
}

func (p *Page) onTakeOffer(app.Context, app.Event) {
	j := p.desk.offer
	p.desk.offer = nil
	p.desk.replace(*j)
	p.desk.news = "The job that came with the address is on the sheet. The other can be taken back."
}

func (p *Page) onLeaveOffer(app.Context, app.Event) { p.desk.offer = nil }

// onFiled folds the files away once one of their controls is worked.
func (p *Page) onFiled(app.Context, app.Event) { closeFold("files") }

func (p *Page) onOpen(app.Context, app.Event)      { p.desk.openFile() }
func (p *Page) onSaveBrief(app.Context, app.Event) { p.desk.saveBrief() }
func (p *Page) onSaveBuild(app.Context, app.Event) { p.desk.saveBuild() }
func (p *Page) onSaveJob(app.Context, app.Event)   { p.desk.saveJob() }
func (p *Page) onShare(app.Context, app.Event)     { p.desk.makeLink() }
func (p *Page) onAfresh(app.Context, app.Event)    { p.desk.startAfresh() }

func (p *Page) onPrintFront(ctx app.Context, _ app.Event) { p.printSide(ctx, frontSide) }
func (p *Page) onPrintBack(ctx app.Context, _ app.Event)  { p.printSide(ctx, backSide) }

// printSide turns the face up that is wanted, and prints it.
func (p *Page) printSide(ctx app.Context, side string) {
	p.printing = true
	if side != p.side {
		ctx.Navigate("#" + side)
		return
	}
	p.lay(ctx)
}

func (p *Page) onChangeOver(ctx app.Context, _ app.Event) { ctx.Async(changeOver) }
