package web

import (
	"html"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// counted is a number of things: "1 price", "18 prices".
func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// figures is a table of figures under their headings: the first column says what, the others are aligned right.
type figures struct {
	head []string
	rows [][]string
}

// UI puts the table into the page as one text, for the same reason as a drawing.
func (f *figures) UI() app.UI {
	var b strings.Builder
	b.WriteString(`<table class="figures"><thead><tr>`)
	for _, h := range f.head {
		b.WriteString(`<th scope="col">` + html.EscapeString(h) + `</th>`)
	}
	b.WriteString(`</tr></thead><tbody>`)
	for _, row := range f.rows {
		b.WriteString(`<tr>`)
		for _, cell := range row {
			b.WriteString(`<td>` + html.EscapeString(cell) + `</td>`)
		}
		b.WriteString(`</tr>`)
	}
	b.WriteString(`</tbody></table>`)
	return app.Raw(b.String())
}
