package sheet

import (
	"html"
	"strings"
)

// style is the print style of a paper that stands alone: black on white, A4.
const style = `@page{size:A4;margin:16mm 15mm}
body{font:10pt/1.35 ui-serif,Georgia,"Times New Roman",serif;color:#000;background:#fff;margin:0 auto;max-width:180mm}
header{border:.6mm solid #000;display:grid;grid-template-columns:1fr auto;padding:3mm 4mm;gap:1mm 6mm;break-inside:avoid}
header h1{font-size:17pt;margin:0;letter-spacing:.02em}
header p{margin:0}
.stamp{font-variant-numeric:tabular-nums;text-align:right}
h2{font-size:11pt;margin:4.5mm 0 1.2mm;border-bottom:.25mm solid #000;padding-bottom:.5mm;break-after:avoid}
table{border-collapse:collapse;width:100%;font-variant-numeric:tabular-nums}
th{font-weight:600;text-align:left;border-bottom:.25mm solid #000}
th,td{padding:.5mm 2mm .8mm 0;vertical-align:top}
tr{break-inside:avoid}
td+td,th+th{padding-left:3mm}
.right{text-align:right;white-space:nowrap}
.strong td{border-top:.4mm solid #000;font-weight:700}
ul{margin:0;padding-left:5mm}
li{break-inside:avoid}
figure{margin:2mm 0;break-inside:avoid}
figure svg{width:100%;height:auto;max-height:235mm}
.sign{display:flex;gap:8mm;margin-top:12mm}
.sign p{flex:1;border-top:.25mm solid #000;margin:0;padding-top:1mm;break-inside:avoid}
`

// HTML prints the paper as a page that stands alone, for a printer.
func (p *Paper) HTML() string {
	title := html.EscapeString(p.Title + ": " + p.Job)
	return "<!doctype html>\n<html lang=\"en\">\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>" + title +
		"</title>\n<style>\n" + style + "</style>\n<body>\n" + p.Body() + "</body>\n</html>\n"
}

// Body is the paper's own markup, without a page around it.
func (p *Paper) Body() string {
	var b strings.Builder
	e := html.EscapeString
	b.WriteString("<header><h1>" + e(p.Title) + "</h1><p class=\"stamp\">" + e(p.Shop) + "</p><p>" + e(p.Job) + "</p><p class=\"stamp\">" + e(p.stamp()) + "</p>")
	if p.For != "" {
		b.WriteString("<p>For " + e(p.For) + "</p>")
	}
	b.WriteString("</header>\n")
	for _, block := range p.Blocks {
		b.WriteString("<section><h2>" + e(block.Heading) + "</h2>\n")
		if block.Text != "" {
			b.WriteString("<p>" + e(block.Text) + "</p>\n")
		}
		if block.Table != nil {
			block.Table.html(&b)
		}
		if len(block.Notes) > 0 {
			b.WriteString("<ul>\n")
			for _, n := range block.Notes {
				b.WriteString("<li>" + e(n) + "</li>\n")
			}
			b.WriteString("</ul>\n")
		}
		if block.Drawing != "" {
			b.WriteString("<figure>" + block.Drawing + "</figure>\n")
		}
		if len(block.Sign) > 0 {
			b.WriteString("<div class=\"sign\">")
			for _, s := range block.Sign {
				b.WriteString("<p>" + e(s) + "</p>")
			}
			b.WriteString("</div>\n")
		}
		b.WriteString("</section>\n")
	}
	return b.String()
}

func (t *Table) html(b *strings.Builder) {
	class := func(i int) string {
		if t.Columns[i].Right {
			return ` class="right"`
		}
		return ""
	}
	b.WriteString("<table>\n<thead><tr>")
	for i, c := range t.Columns {
		b.WriteString("<th scope=\"col\"" + class(i) + ">" + html.EscapeString(c.Name) + "</th>")
	}
	b.WriteString("</tr></thead>\n<tbody>\n")
	for _, r := range t.Rows {
		if r.Strong {
			b.WriteString("<tr class=\"strong\">")
		} else {
			b.WriteString("<tr>")
		}
		for i, c := range r.Cells {
			b.WriteString("<td" + class(i) + ">" + html.EscapeString(c) + "</td>")
		}
		b.WriteString("</tr>\n")
	}
	b.WriteString("</tbody>\n</table>\n")
}
