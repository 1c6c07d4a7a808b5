package sheet

import (
	"strings"
	"testing"
	"unicode/utf8"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

func TestWrap(t *testing.T) {
	for _, c := range []struct {
		text  string
		width int
		want  []string
	}{
		{"", 10, []string{""}},
		{"one two three", 7, []string{"one two", "three"}},
		{"one  two\nthree", 80, []string{"one two three"}},
		{"about 14\u202f817 GB", 10, []string{"about", "14\u202f817 GB"}},
		{"unbreakable", 4, []string{"unbreakable"}},
		{"grün größe", 4, []string{"grün", "größe"}}, // widths are runes, not bytes
	} {
		require.Equal(t, c.want, Wrap(c.text, c.width))
	}
}

func TestTableGivesWayInItsText(t *testing.T) {
	table := &Table{
		Columns: []Column{{"Part", false}, {"EUR", true}},
		Rows: []Row{
			{Cells: []string{"a part whose name is much too long for the paper", "1.00"}},
			{Cells: []string{"sum", "1.00"}, Strong: true},
		},
	}
	text := table.Text(30)
	for line := range strings.Lines(text) {
		require.LessOrEqual(t, utf8.RuneCountInString(strings.TrimRight(line, "\n")), 30)
	}
	require.Contains(t, text, "Part                       EUR\n")
	require.Contains(t, text, "──  ────\nsum                       1.00\n")
}

// TestTax adds tax once on the net sum and rounds half up to the minor unit.
func TestTax(t *testing.T) {
	for _, c := range []struct {
		price      unit.Money
		tax        unit.Share
		want, full unit.Money
	}{
		{10000, 21_000, 2100, 12100},
		{50, 21_000, 11, 61},  // 10.5 rounds up
		{49, 21_000, 10, 59},  // 10.29
		{333, 7_700, 26, 359}, // 25.641
		{12345, 0, 0, 12345},
	} {
		b := &build.Build{Memory: &part.Memory{Article: part.Article{Price: c.price}}, Kits: 1}
		require.Equal(t, Total{c.price, c.want, c.full}, TotalOf(b, &part.Shop{Tax: c.tax}))
		b.Owned = build.SetOf(build.Memory)
		require.Equal(t, Total{}, TotalOf(b, &part.Shop{Tax: c.tax}), "what the customer owns costs nothing")
	}
}

func TestPaperEscapesWhatPeopleSaid(t *testing.T) {
	p := &Paper{Title: "Quote", Job: `<b>&"`, For: "i<j", Blocks: []Block{{Heading: "a<b", Text: "c<d", Notes: []string{"e<f"}, Sign: []string{"g<h"}}}}
	page := p.HTML()
	for _, raw := range []string{"<b>", "a<b", "c<d", "e<f", "g<h", "i<j"} {
		require.NotContains(t, page, raw)
	}
	require.Contains(t, page, "&lt;b&gt;&amp;")
	require.Contains(t, p.Text(80), "QUOTE  <b>&\"")
}

func TestBothNamesASharedUnitOnce(t *testing.T) {
	require.Equal(t, "57.3 and 118 pages", both("57.3 pages", "118 pages"))
	require.Equal(t, "104 and 139 pictures a second", both("104 pictures a second", "139 pictures a second"))
	require.Equal(t, "2 h 5 min and 3 h 5 min", both("2 h 5 min", "3 h 5 min"))
	require.Equal(t, "1 page and 2 pages", both("1 page", "2 pages"))
	require.Equal(t, "18 weeks and 7 months", both("18 weeks", "7 months"))
}
