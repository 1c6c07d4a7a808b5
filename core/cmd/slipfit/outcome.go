package main

import (
	"fmt"
	"strings"

	"slipfit/core/outcome"
	"slipfit/core/verb"
)

var outcomeCommand = command{
	name:  "outcome",
	usage: "BUILD -brief BRIEF [-why]",
	short: "what each activity will be like on a build",
	long: `Reads a build and a brief and tells, in the customer's terms, what each activity
will be like: minutes for a model, pictures a second, hours of footage the
archive holds. Every figure has a band: how far the calibration and what was
not said may be off. -why gives the arithmetic. Exit 1 where something the brief
asks for is not reached.`,
	example: "slipfit outcome build.json -brief testdata/briefs/museum-pottery.brief.json -why",
	setup: func(k *call) {
		k.flags.String("brief", "", "the `BRIEF` whose activities are told")
		k.flags.Bool("why", false, "give the arithmetic, the band's reason and the source of every figure")
	},
	run: func(k *call) int {
		w, file, asked, code := k.underBrief()
		if w == nil {
			return code
		}
		o, err := w.Outcome(file, asked)
		if err != nil {
			return k.fail(err)
		}
		if k.json {
			k.printf("%s", verb.JSON(o))
		} else {
			k.printf("%s\n\n", k.strong(titled(o.Title)))
			k.figures(o.Figures, k.text("why") == "true")
			k.printf("\n")
			k.storage(o.Storage)
			k.assumed(o.Assumed)
		}
		for _, f := range o.Figures {
			if f.Verdict != "snug" {
				return failing
			}
		}
		return fine
	},
}

// underBrief reads what a verb needs that takes a build and must have a brief; the bench is nil where that failed.
func (k *call) underBrief() (*verb.Bench, verb.Document, verb.Document, int) {
	if len(k.args) != 1 || k.text("brief") == "" {
		return nil, verb.Document{}, verb.Document{}, k.usage("needs one build and -brief BRIEF")
	}
	w, err := k.bench()
	if err != nil {
		return nil, verb.Document{}, verb.Document{}, k.fail(err)
	}
	file, asked, err := k.buildAndBrief()
	if err != nil {
		return nil, verb.Document{}, verb.Document{}, k.fail(err)
	}
	return w, file, *asked, fine
}

func titled(title string) string {
	if title == "" {
		return "Build"
	}
	return title
}

// figures prints outcomes under their activities: expected, the band, what is wanted.
func (k *call) figures(list []verb.Figure, every bool) {
	activity := ""
	for _, f := range list {
		if f.Activity != activity {
			activity = f.Activity
			k.printf("  %s\n", k.strong(activity))
		}
		line := f.Expected.Text
		if f.Low != f.High {
			line += ", between " + f.Low.Text + " and " + f.High.Text
		}
		if f.Want != nil {
			line += "; wanted " + f.Want.Text
		}
		switch f.Verdict {
		case "short":
			line = k.fails("short: " + line)
		case "unknown":
			line = k.fails("not known")
		}
		k.paragraph("    ", f.What+": "+line)
		if every || f.Verdict == "unknown" {
			k.paragraph("        ", f.Why)
		}
		if every {
			k.paragraph("        ", "band: "+f.Band+". source: "+f.Source)
		}
	}
}

// storage prints what belongs on which tier and, on a build, how full and how long.
func (k *call) storage(s *outcome.Storage) {
	for _, t := range s.Tiers {
		text := fmt.Sprintf("%s (%s): %s. %s; %s kept free, %s written a year; sold as %s.", t.Floor, t.Binary, t.Holds, upper(t.Kind), t.Free, t.Yearly, t.Bought)
		if d := t.Drive; d != nil {
			text += fmt.Sprintf(" Lies on the %s, %d × %s (%s, shown as %s), %s of its place filled on the first day", d.On, d.Count, d.Part, d.Capacity, d.Binary, d.Fill)
			if d.Years != nil {
				text += fmt.Sprintf("; the rated writing lasts %s", d.Years)
			}
			text += "."
		}
		k.paragraph("  "+cell(t.Tier+" tier", 23), text)
	}
	k.paragraph("  "+cell("one drive or several", 23), s.One)
	for i, c := range s.Copies {
		k.paragraph("  "+cell([2]string{"copies", ""}[min(i, 1)], 23), c)
	}
}

// upper begins a sentence.
func upper(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

func (k *call) assumed(list []string) {
	if len(list) == 0 {
		return
	}
	k.printf("\n")
	for _, a := range list {
		k.paragraph("  not said: ", a)
	}
}
