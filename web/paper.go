package web

import (
	"html"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// Paper is one printed paper, with its markup as the core wrote it.
type Paper struct {
	Paper struct{ Title string }
	HTML  string
}

// The papers, as the core names them and as they are chosen.
var papers = [...]struct{ name, title string }{{"quote", "Quote"}, {"forecast", "Forecast"}}

// under puts the headings of a paper under the heading of the face.
var under = strings.NewReplacer("<h2>", "<h3>", "</h2>", "</h3>", "<h1>", "<h2>", "</h1>", "</h2>")

// view puts the paper into the page as one text.
func (p *Paper) view() app.UI {
	return app.Raw(`<article class="leaf" aria-label="` + html.EscapeString(p.Paper.Title) + `">` + under.Replace(p.HTML) + `</article>`)
}

// fetchPaper asks for the paper that is chosen.
func (d *Desk) fetchPaper() {
	if len(d.job.Build) == 0 || d.worker == nil {
		return
	}
	turn, name := d.turn, papers[d.leaf].name
	a := d.about()
	a.Stamp = &stamp{d.job.Number, d.job.Revision, d.job.Date}
	ask(d, name, a, func(p *Paper) {
		if turn == d.turn && name == papers[d.leaf].name {
			d.paper = p
		}
	}, d.grieve)
}

// choosePaper lays another paper up.
func (d *Desk) choosePaper(leaf int) app.EventHandler {
	return func(app.Context, app.Event) {
		if leaf != d.leaf {
			d.leaf, d.paper = leaf, nil
			d.fetchPaper()
		}
	}
}
