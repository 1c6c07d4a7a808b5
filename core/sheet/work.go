package sheet

import (
	"context"
	"fmt"
	"strings"

	"slipfit/core/balance"
	"slipfit/core/build"
	"slipfit/core/outcome"
	"slipfit/core/rule"
)

// work is the blocks of a quote that tell what the machine will be like to work with, where files lie, what money buys
// nothing, and what was not said; none where there is no brief.
func (j *Job) work() []Block {
	if j.Needs == nil {
		return nil
	}
	var list []Block
	if figures := outcome.Figures(j.Build, j.Needs, &j.Stock.Calibration); len(figures) > 0 {
		list = append(list, Block{Heading: "What it will be like", Table: figuresTable(figures)})
	}
	list = append(list,
		Block{Heading: "What lies where", Notes: lies(outcome.StorageOf(j.Needs, j.Build))},
		Block{Heading: "Money that buys nothing", Notes: wasted(balance.Parts(context.Background(), j.Build, j.Needs, j.Stock))})
	if len(j.Needs.Assumed) > 0 {
		list = append(list, Block{Heading: "What we took, since it was not said", Notes: j.Needs.Assumed})
	}
	return list
}

func figuresTable(figures []outcome.Figure) *Table {
	t := &Table{Columns: []Column{{"", false}, {"We expect", true}, {"Between", true}, {"You asked", true}}}
	for i := range figures {
		f := &figures[i]
		say := func(milli int64) string { return outcome.Say(milli, f.Unit) }
		expected, between, asked := say(f.Expected), both(say(f.Low), say(f.High)), ""
		switch {
		case f.Verdict == rule.Unknown:
			expected, between = "not known", ""
		case f.Low == f.High:
			between = ""
		}
		if f.Want > 0 {
			asked = say(f.Want)
		}
		t.Rows = append(t.Rows, Row{Cells: []string{f.Activity + ": " + f.What, expected, between, asked}})
	}
	return t
}

// both names two figures, and their unit once where they share it.
func both(low, high string) string {
	figure, unit, _ := strings.Cut(low, " ")
	if _, other, _ := strings.Cut(high, " "); unit == other && !strings.ContainsAny(unit, "0123456789") {
		return figure + " and " + high
	}
	return low + " and " + high
}

// lies says what belongs on which drive, how full it is and how long it lasts, and the usual advice on copies.
func lies(s *outcome.Storage) []string {
	var notes []string
	for _, t := range s.Tiers {
		note := fmt.Sprintf("%s: %s, %s (%s).", t.Tier, t.Holds, t.Floor, t.Binary)
		if d := t.Drive; d != nil {
			note += fmt.Sprintf(" On the %s, %s, which a system shows as %s; %s of its place is filled on the first day", d.On, d.Capacity, d.Binary, d.Fill)
			if d.Years != nil {
				note += fmt.Sprintf(", and its rated writing lasts %s", d.Years)
			}
			note += "."
		}
		notes = append(notes, note)
	}
	return append(notes, s.Copies...)
}

// wasted says what single parts cost over the cheapest that would keep every verdict.
func wasted(i *balance.Idle) []string {
	if len(i.Parts) == 0 {
		return []string{"Each part was held against every cheaper one of our catalog in its place: none of them would do what you asked."}
	}
	notes := make([]string, 0, len(i.Parts)+1)
	for k := range i.Parts {
		w := &i.Parts[k]
		instead, dearer := "doing without", "it"
		if w.Instead.Part != nil {
			instead, dearer = called(w.Instead)+" instead of", "the dearer one"
		}
		note := fmt.Sprintf("%s: %s %s would do what you asked for %s less", w.Seat.Title(), instead, w.Part, w.Saves)
		switch {
		case w.Nothing():
			note += "; the difference buys nothing."
		case len(w.Changes) > 0:
			c := &w.Changes[0]
			note += fmt.Sprintf("; %s buys %s: %s in place of %s.", dearer, c.Before.What, outcome.Say(c.Before.Expected, c.Before.Unit), outcome.Say(c.After.Expected, c.After.Unit))
		default:
			note += "; " + dearer + " goes further past what you asked."
		}
		notes = append(notes, note)
	}
	if len(i.Parts) > 1 {
		notes = append(notes, fmt.Sprintf("All of that together, as far as it goes together: %s.", i.Together))
	}
	return notes
}

// called is what an option fills a seat with.
func called(o build.Option) string {
	if o.Count > 1 {
		return fmt.Sprintf("%d × %s", o.Count, o.Part.Common().Title())
	}
	return o.Part.Common().Title()
}
