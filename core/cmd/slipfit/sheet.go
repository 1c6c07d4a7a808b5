package main

import (
	"time"

	"slipfit/core/verb"
)

var sheetCommand = command{
	name:  "sheet",
	usage: "quote|forecast BUILD [-brief BRIEF] [-html] [-out FILE]",
	short: "the papers of a job: quote, forecast",
	long: `Prints a paper of a build: quote is the priced offer; forecast is what the machine
will do, with its graphs (on the printed page). With -html it is a page for a printer (A4); with -out it
is written to a file. Exit 1 where the build does not stand: the paper says so.`,
	example: "slipfit sheet quote build.json -brief testdata/briefs/museum-pottery.brief.json -html -out quote.html",
	setup: func(k *call) {
		k.flags.String("brief", "", "what the customer said, in `BRIEF`")
		k.flags.Bool("html", false, "a page for a printer in place of plain text")
		k.flags.String("out", "", "write to `FILE` in place of the screen")
		k.flags.String("job", "", "job `NUMBER`")
		k.flags.String("revision", "A", "revision `LETTER`")
		k.flags.String("date", time.Now().Format(time.DateOnly), "`DATE` printed on the paper")
	},
	run: func(k *call) int {
		if len(k.args) != 2 {
			return k.usage("needs the paper's name, quote or forecast, and one build")
		}
		name := k.args[0]
		k.args = k.args[1:]
		w, err := k.bench()
		if err != nil {
			return k.fail(err)
		}
		file, asked, err := k.buildAndBrief()
		if err != nil {
			return k.fail(err)
		}
		q, err := w.Sheet(name, file, asked, verb.Stamp{Number: k.text("job"), Revision: k.text("revision"), Date: k.text("date")})
		if err != nil {
			return k.fail(err)
		}
		return k.paper(q)
	},
}

func (k *call) paper(q *verb.Paper) int {
	var out []byte
	switch {
	case k.json:
		out = verb.JSON(q)
	case k.text("html") == "true":
		out = []byte(q.Paper.HTML())
	default:
		out = []byte(q.Paper.Text(columns))
	}
	if path := k.text("out"); path != "" {
		if err := write(path, out); err != nil {
			return k.fail(err)
		}
	} else {
		k.printf("%s", out)
	}
	if !q.Stands {
		return failing
	}
	return fine
}
