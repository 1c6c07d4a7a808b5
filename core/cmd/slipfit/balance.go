package main

import (
	"fmt"
	"time"

	"slipfit/core/verb"
)

var balanceCommand = command{
	name:  "balance",
	usage: "BUILD -brief BRIEF [-deadline TIME]",
	short: "where a build is short, right or past the work, and the money that buys nothing",
	long: `For every activity: have against need, resource by resource, what limits it, and
what the next step up in the catalog would cost and buy. Then idle money: the
price of the build less that of the cheapest that serves the same needs (the
planner looks for it), and part by part what the cheapest other part in its
place would save while every verdict stays. The parts need not add up to the
total: swaps can exclude one another, and several together can save what none
does alone. Exit 1 where something is short.`,
	example: "slipfit balance build.json -brief testdata/briefs/museum-pottery.brief.json",
	setup: func(k *call) {
		k.flags.String("brief", "", "the `BRIEF` the build is held against")
		k.flags.Duration("deadline", 20*time.Second, "end the search for the cheapest build after this `TIME`")
	},
	run: func(k *call) int {
		w, file, asked, code := k.underBrief()
		if w == nil {
			return code
		}
		ctx, told, done := k.search()
		b, err := w.Balance(ctx, file, asked, told)
		done()
		if err != nil {
			return k.fail(err)
		}
		if k.json {
			k.printf("%s", verb.JSON(b))
		} else {
			k.balance(b)
		}
		for _, a := range b.Activities {
			for _, r := range a.Rows {
				if r.Verdict != "snug" && r.Verdict != "loose" {
					return failing
				}
			}
		}
		return fine
	},
}

func (k *call) balance(b *verb.Balance) {
	k.printf("%s\n", k.strong(titled(b.Title)))
	for _, a := range b.Activities {
		k.printf("\n  %s\n", k.strong(a.Name))
		k.printf("  %s %s %s %s %s %s\n", cell("verdict", 7), cell("resource", 25), cell("from", 14), right("have", 13), right("need", 13), right("ratio", 6))
		for _, r := range a.Rows {
			row := fmt.Sprintf("%s %s %s %s %s %s", cell(r.Verdict, 7), cell(r.Title, 25), cell(r.Seat, 14), right(r.Have.String(), 13), right(r.Need.String(), 13), right(ratio(r.Ratio), 6))
			if r.Verdict == "short" {
				row = k.fails(row)
			}
			k.printf("  %s\n", row)
		}
		for _, f := range a.Figures {
			k.paragraph("    ", f.What+": "+f.Expected.Text)
		}
		switch {
		case a.Tight == nil:
			k.paragraph("  ", "Nothing holds it back: everything is enough.")
		case a.Step == nil && a.Unfinished:
			k.paragraph("  ", "Held back most by "+a.Tight.Title+"; the search ended before a step up was found; there may be one.")
		case a.Step == nil:
			k.paragraph("  ", "Held back most by "+a.Tight.Title+"; nothing in the catalog that fits this build goes further.")
		default:
			k.paragraph("  ", "Held back most by "+a.Tight.Title+". "+step(a.Step))
		}
		if a.Step != nil && a.Unfinished {
			k.paragraph("  ", "Stopped early: another step up may cost less.")
		}
	}
	k.printf("\n")
	k.idle(b.Idle)
	k.assumed(b.Assumed)
}

// ratio prints have ÷ need.
func ratio(r float64) string {
	if r >= 100 {
		return "> 99"
	}
	return fmt.Sprintf("%.2f", r)
}

func step(s *verb.Step) string {
	text := "The next step up: " + named(s.To) + " (" + s.Have.String() + ")"
	if s.Also != nil {
		text += " with " + named(*s.Also)
	}
	text += " for " + s.Costs.String() + " more"
	if len(s.Changes) == 0 {
		return text + "; no outcome changes by it."
	}
	return text + ": " + changes(s.Changes) + "."
}

func named(i verb.Instead) string {
	if i.Count > 1 {
		return fmt.Sprintf("%d × %s", i.Count, i.Name)
	}
	return i.Name
}

func changes(list []verb.Moved) string {
	text := ""
	for i, c := range list {
		if i > 0 {
			text += "; "
		}
		text += c.What + ": " + c.Before.Text + " → " + c.After.Text
	}
	return text
}

// idle prints the money that buys nothing the brief asks for.
func (k *call) idle(i *verb.Idle) {
	switch {
	case !i.Searched:
		k.paragraph("  ", "Idle money, part by part:")
	case i.Total == nil:
		k.paragraph("  ", "Idle money: the search ended before a build was found; no build that serves costs less than "+i.Bound.String()+", so that at most "+i.AtMost.String()+" is idle.")
	case i.Proven:
		k.paragraph("  ", "Idle money: "+i.Total.String()+" of "+i.Price.String()+". The cheapest build that serves the same needs costs "+i.Least.String()+", which is proven.")
	default:
		k.paragraph("  ", "Idle money: at least "+i.Total.String()+" of "+i.Price.String()+" and at most "+i.AtMost.String()+": a build for "+i.Least.String()+" serves the same needs, and the search ended before it was proven the cheapest.")
	}
	for _, p := range i.Parts {
		instead := "doing without"
		if p.Instead.ID != "" {
			instead = named(p.Instead)
		}
		text := instead + " would keep every verdict and save " + p.Saves.String() + " of " + p.Price.String()
		switch {
		case p.Nothing:
			text += "; that money buys nothing"
		case len(p.Buys) > 0:
			text += ", which buys " + changes(p.Buys)
		default:
			text += ", which only goes further past what is asked"
		}
		k.paragraph("    "+cell(p.Title, 16)+" ", p.Part+": "+text+".")
	}
	if len(i.Parts) > 1 && !i.Unfinished {
		k.paragraph("  ", "Swapped one after another, parts alone save "+i.Together.String()+"; some exclude others.")
	}
	switch {
	case i.Unfinished:
		k.paragraph("  ", "Stopped early: not every part was looked at; others may be had cheaper too.")
	case len(i.Parts) == 0:
		k.paragraph("  ", "No single part can be cheaper and keep every verdict.")
	}
}
