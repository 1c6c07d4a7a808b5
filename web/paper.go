package web

import "github.com/maxence-charriere/go-app/v9/pkg/app"

// paperView lays out one paper as the core wrote it, block by block.
func paperView(p *Paper) app.UI {
	return app.Article().Class("leaf").Aria("label", p.Title).Body(
		app.Div().Class("paper-head").Body(
			app.H2().Text(p.Title), app.P().Class("right").Text(p.Shop),
			app.P().Text(p.Job), app.P().Class("right").Text("Job "+written(p.Number)+"   Revision "+written(p.Revision)+"   Date "+written(p.Date)),
		),
		app.Range(p.Blocks).Slice(func(i int) app.UI { return p.Blocks[i].view() }),
	)
}

// written is a field of the stamp, or a blank to write in.
func written(text string) string {
	if text == "" {
		return "________"
	}
	return text
}

func (b *Block) view() app.UI {
	return app.Section().Class("paper-block").Body(
		app.H3().Text(b.Heading),
		app.If(b.Text != "", app.P().Text(b.Text)),
		app.If(b.Table != nil, b.Table.view()),
		app.If(len(b.Notes) > 0, app.Ul().Body(app.Range(b.Notes).Slice(func(i int) app.UI { return app.Li().Text(b.Notes[i]) }))),
		app.If(len(b.Sign) > 0, app.Div().Class("sign").Body(app.Range(b.Sign).Slice(func(i int) app.UI { return app.P().Text(b.Sign[i]) }))),
	)
}

func (t *Table) view() app.UI {
	if t == nil {
		return app.Div()
	}
	class := func(i int) string {
		if t.Columns[i].Right {
			return "right"
		}
		return ""
	}
	return app.Table().Body(
		app.THead().Body(app.Tr().Body(app.Range(t.Columns).Slice(func(i int) app.UI {
			return app.Th().Scope("col").Class(class(i)).Text(t.Columns[i].Name)
		}))),
		app.TBody().Body(app.Range(t.Rows).Slice(func(r int) app.UI {
			row := t.Rows[r]
			strong := ""
			if row.Strong {
				strong = "strong"
			}
			return app.Tr().Class(strong).Body(app.Range(row.Cells).Slice(func(i int) app.UI {
				return app.Td().Class(class(i)).Text(row.Cells[i])
			}))
		})),
	)
}
