package sheet

import (
	"strings"
	"unicode/utf8"
)

// Text prints the paper for a terminal or a plain-text file, at most width columns wide where words allow.
func (p *Paper) Text(width int) string {
	var b strings.Builder
	line := strings.Repeat("═", width)
	b.WriteString(line + "\n" + pad(strings.ToUpper(p.Title)+"  "+p.Job, width-utf8.RuneCountInString(p.Shop), false) + p.Shop + "\n")
	b.WriteString(p.stamp() + "\n")
	if p.For != "" {
		b.WriteString("For " + p.For + "\n")
	}
	b.WriteString(line + "\n")
	for _, block := range p.Blocks {
		b.WriteString("\n" + block.Heading + "\n" + strings.Repeat("─", utf8.RuneCountInString(block.Heading)) + "\n")
		if block.Text != "" {
			for _, l := range Wrap(block.Text, width) {
				b.WriteString(l + "\n")
			}
		}
		if block.Table != nil {
			b.WriteString(block.Table.Text(width))
		}
		for _, n := range block.Notes {
			for i, l := range Wrap(n, width-2) {
				b.WriteString([2]string{"• ", "  "}[min(i, 1)] + l + "\n")
			}
		}
		if block.Drawing != "" {
			b.WriteString("(drawn on the printed paper)\n")
		}
		for _, s := range block.Sign {
			b.WriteString("\n" + pad(s, 14, false) + strings.Repeat("_", 36) + "\n")
		}
	}
	return b.String()
}

func (p *Paper) stamp() string {
	blank := func(s string) string {
		if s == "" {
			return "________"
		}
		return s
	}
	return "Job " + blank(p.Number) + "   Revision " + blank(p.Revision) + "   Date " + blank(p.Date)
}

// Text prints the table with aligned columns; the widest text column gives way where the page is too narrow.
func (t *Table) Text(width int) string {
	widths := make([]int, len(t.Columns))
	for i, c := range t.Columns {
		widths[i] = utf8.RuneCountInString(c.Name)
		for _, r := range t.Rows {
			widths[i] = max(widths[i], utf8.RuneCountInString(r.Cells[i]))
		}
	}
	total := 2 * (len(widths) - 1)
	for _, w := range widths {
		total += w
	}
	for total > width {
		widest := -1
		for i, c := range t.Columns {
			if !c.Right && (widest < 0 || widths[i] > widths[widest]) {
				widest = i
			}
		}
		if widest < 0 || widths[widest] <= 12 {
			break
		}
		widths[widest]--
		total--
	}
	var b strings.Builder
	names := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		names[i] = c.Name
	}
	if strings.Join(names, "") != "" {
		t.row(&b, names, widths)
	}
	for _, r := range t.Rows {
		if r.Strong {
			rule := make([]string, len(widths))
			for i, w := range widths {
				rule[i] = strings.Repeat("─", w)
			}
			t.row(&b, rule, widths)
		}
		t.row(&b, r.Cells, widths)
	}
	return b.String()
}

func (t *Table) row(b *strings.Builder, cells []string, widths []int) {
	wrapped, lines := make([][]string, len(cells)), 1
	for i, c := range cells {
		wrapped[i] = Wrap(c, widths[i])
		lines = max(lines, len(wrapped[i]))
	}
	for l := range lines {
		var line strings.Builder
		for i := range cells {
			cell := ""
			if l < len(wrapped[i]) {
				cell = wrapped[i][l]
			}
			if i > 0 {
				line.WriteString("  ")
			}
			line.WriteString(pad(cell, widths[i], t.Columns[i].Right))
		}
		b.WriteString(strings.TrimRight(line.String(), " ") + "\n")
	}
}

func pad(s string, width int, right bool) string {
	space := strings.Repeat(" ", max(width-utf8.RuneCountInString(s), 0))
	if right {
		return space + s
	}
	return s + space
}

// Wrap breaks a text into lines of at most width runes, between words where it can, but not inside a figure: its thousands are
// parted by a space that does not break. An empty text is one empty line.
func Wrap(text string, width int) []string {
	var lines []string
	line := ""
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '\n' }) {
		switch {
		case line == "":
			line = word
		case utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) <= width:
			line += " " + word
		default:
			lines = append(lines, line)
			line = word
		}
	}
	return append(lines, line)
}
