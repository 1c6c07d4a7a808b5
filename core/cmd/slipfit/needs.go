package main

import "slipfit/core/verb"

var needsCommand = command{
	name:  "needs",
	usage: "BRIEF",
	short: "what a brief asks of a machine, and why",
	long: `Reads a brief and prints, resource by resource, the floor (under it the work
suffers) and enough (past it more buys nothing), each with its reason.`,
	example: "slipfit needs testdata/briefs/museum-pottery.brief.json",
	run: func(k *call) int {
		if len(k.args) != 1 {
			return k.usage("needs one brief")
		}
		w, err := k.bench()
		if err != nil {
			return k.fail(err)
		}
		file, err := document(k.args[0])
		if err != nil {
			return k.fail(err)
		}
		n, err := w.Needs(file)
		if err != nil {
			return k.fail(err)
		}
		if k.json {
			k.printf("%s", verb.JSON(n))
			return fine
		}
		k.needs(n)
		return fine
	},
}

func (k *call) needs(n *verb.Needs) {
	k.printf("%s\n\n", k.strong(n.Title))
	k.printf("  %s %s %s\n", cell("resource", 22), right("floor", 14), right("enough", 14))
	for _, need := range n.Needs {
		k.printf("  %s %s %s\n", cell(need.Title, 22), right(need.Floor.String(), 14), right(need.Enough.String(), 14))
		k.paragraph("      ", need.Reason+" ("+need.Source+")")
	}
	for _, s := range n.Screens {
		bought := "to be bought"
		if s.Owned {
			bought = "already there"
		}
		k.printf("  screens                %d × %d × %d at %d Hz, %d bits a colour, %s\n", s.Count, s.Width, s.Height, s.Refresh, s.Bits, bought)
	}
	for _, c := range n.Codecs {
		k.printf("  %s %s\n", cell(c.Use+" in hardware", 22), c.Codec)
		k.paragraph("      ", c.Reason)
	}
	k.storage(n.Storage)
	for _, a := range n.Assumed {
		k.paragraph("  assumed: ", a)
	}
	if n.Budget.N > 0 {
		k.printf("  budget                 %s\n", n.Budget)
	}
}
