package main

import (
	"slipfit/core/verb"
)

var proveCommand = command{
	name:  "prove",
	usage: "BUILD [-brief BRIEF] [-why]",
	short: "every margin of a build, tightest first",
	long: `Reads a build and checks every rule on it: does it go in, connect, is it powered,
does it stay cool and quiet and, with a brief, does it serve the work. Then it
tells what the machine will do in every activity, each figure with the low and
high end that a meter may show. Exit 1 where a margin clashes, is
short, or cannot be known because a data sheet lacks a figure.`,
	example: "slipfit prove build.json -brief testdata/briefs/museum-pottery.brief.json",
	setup: func(k *call) {
		k.flags.String("brief", "", "check against the needs of `BRIEF` too")
		k.flags.Bool("why", false, "give the reason of every margin, not only of those that fail")
	},
	run: func(k *call) int {
		if len(k.args) != 1 {
			return k.usage("needs one build")
		}
		w, err := k.bench()
		if err != nil {
			return k.fail(err)
		}
		file, asked, err := k.buildAndBrief()
		if err != nil {
			return k.fail(err)
		}
		p, err := w.Prove(k.ctx, file, asked)
		if err != nil {
			return k.fail(err)
		}
		if k.json {
			k.printf("%s", verb.JSON(p))
		} else {
			k.proof(p, k.text("why") == "true")
			k.prediction(p.Prediction)
		}
		if !p.Stands {
			return failing
		}
		return fine
	},
}

// text is a flag's value as given.
func (k *call) text(name string) string { return k.flags.Lookup(name).Value.String() }

// buildAndBrief reads the build of the first argument and the brief of -brief, nil where none is given.
func (k *call) buildAndBrief() (verb.Document, *verb.Document, error) {
	file, err := document(k.args[0])
	if err != nil {
		return file, nil, err
	}
	path := k.text("brief")
	if path == "" {
		return file, nil, nil
	}
	asked, err := document(path)
	return file, &asked, err
}

func (k *call) proof(p *verb.Proof, every bool) {
	title := p.Title
	if title == "" {
		title = "Build"
	}
	k.printf("%s\n\n", k.strong(title))
	k.parts(p.Parts, p.Price.Figure(), p.Currency)
	k.printf("\n")
	k.margins(p.Margins, every)
	if p.Idle != nil && len(p.Idle.Parts) > 0 {
		k.printf("\n")
		k.idle(p.Idle)
	}
	k.assumed(p.Assumed)
	k.printf("\n  %s\n", k.summary(p))
}

// summary counts the verdicts: "61 margins: 2 clash, 58 snug, 1 loose. It does not stand."
func (k *call) summary(p *verb.Proof) string {
	s := count(len(p.Margins), "margin")
	sep := ": "
	for _, v := range []string{"clash", "unknown", "short", "snug", "loose"} {
		if n := p.Counts[v]; n > 0 {
			s += sep + count(n, "") + v
			sep = ", "
		}
	}
	if p.Stands {
		return s + ". It stands."
	}
	return k.fails(s + ". It does not stand.")
}
