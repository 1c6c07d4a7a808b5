package main

import (
	"path/filepath"
	"slices"
	"strings"

	"slipfit/core/format"
	"slipfit/core/unit"
	"slipfit/core/verb"
)

var planCommand = command{
	name:  "plan",
	usage: "BRIEF [-for least|best|quiet|small|frontier] [-keep SEAT=PART]... [-out FILE] [-export FILE]",
	short: "the build for a brief, with the certificate that nothing better exists",
	long: `Plans a machine from the catalog that serves every floor of the brief within the
budget. least: the cheapest. best: the one that serves most. quiet: the one heard
least at the chair. small: the one in the smallest case. frontier: every price at
which more is served than for less, with what changes there. The answer is exact
for this catalog and these rules; where a deadline or Ctrl-C ends the search, it
says how far from the best it may be. -out writes the build, for prove and sheet. -export
writes the problem of least or best for other solvers and seeks nothing itself: a
linear program (FILE.lp) or a pseudo-boolean problem (FILE.opb), whose comments
tell what it leaves out; nothing is written where a deadline or Ctrl-C comes first.
Exit 1 where no build can be found.`,
	example: "slipfit plan testdata/briefs/museum-pottery.brief.json -for best -out build.json",
	setup: func(k *call) {
		k.flags.String("for", "least", "seek `WHAT`: least (price), best (value), quiet, small (case), or the whole frontier of price and value")
		k.flags.Var(&list{}, "keep", "settle `SEAT=PART`; SEAT=none leaves it empty; may be given again")
		k.flags.String("out", "", "write the build to `FILE`")
		k.flags.String("export", "", "write the problem to `FILE`, .lp or .opb, for another solver")
		k.flags.Duration("deadline", 0, "give the best found after this `TIME`, such as 5s")
		k.flags.Bool("why", false, "give the reason of every margin")
	},
	run: func(k *call) int {
		if len(k.args) != 1 {
			return k.usage("needs one brief")
		}
		aims := append(verb.Seekings(), "frontier")
		if f := k.text("for"); !slices.Contains(aims, f) {
			return k.usage("cannot plan for %q, want %s", f, strings.Join(aims, ", "))
		}
		if k.text("for") == "frontier" && k.text("out") != "" {
			return k.usage("a frontier is many builds; -out writes one: plan for least or best")
		}
		form := strings.TrimPrefix(filepath.Ext(k.text("export")), ".")
		if k.text("export") != "" && !slices.Contains(verb.Exchanges(), form) {
			return k.usage("cannot write %s: want a name that ends in .%s", k.text("export"), strings.Join(verb.Exchanges(), " or ."))
		}
		w, err := k.bench()
		if err != nil {
			return k.fail(err)
		}
		file, err := document(k.args[0])
		if err != nil {
			return k.fail(err)
		}
		ask := verb.PlanAsk{For: k.text("for"), Keep: *k.flags.Lookup("keep").Value.(*list)}
		if path := k.text("export"); path != "" {
			ctx, told, done := k.search()
			text, err := w.Exchange(ctx, file, ask, form, told)
			done()
			if err == nil {
				err = write(path, text)
			}
			if err != nil {
				return k.fail(err)
			}
			k.printf("Written to %s.\n", path)
			return fine
		}
		if k.text("for") == "frontier" {
			return k.frontier(w, file)
		}
		ctx, told, done := k.search()
		p, err := w.Plan(ctx, file, ask, told)
		done()
		if err != nil {
			return k.fail(err)
		}
		if path := k.text("out"); path != "" && p.Build != nil {
			if err := write(path, format.Write(p.Build)); err != nil {
				return k.fail(err)
			}
		}
		if k.json {
			k.printf("%s", verb.JSON(p))
		} else {
			k.plan(p, k.text("why") == "true")
			if p.Status == "infeasible" {
				if err := k.explain(w, file); err != nil {
					return k.fail(err)
				}
			}
		}
		if p.Build == nil {
			return failing
		}
		return fine
	},
}

// list is a flag that may be given again.
type list []string

func (l *list) String() string     { return strings.Join(*l, " ") }
func (l *list) Set(s string) error { *l = append(*l, s); return nil }

// explain says why nothing can be planned.
func (k *call) explain(w *verb.Bench, file verb.Document) error {
	ctx, told, done := k.search()
	y, err := w.Why(ctx, file, *k.flags.Lookup("keep").Value.(*list), told)
	done()
	if err != nil {
		return err
	}
	k.printf("\n")
	k.why(y)
	return nil
}

func (k *call) plan(p *verb.Plan, every bool) {
	if p.Proof == nil {
		k.nothing(p.Title, p.Status, &p.Certificate)
		return
	}
	k.proof(p.Proof, every)
	k.printf("\n")
	c := &p.Certificate
	switch p.Status {
	case "optimal":
		k.paragraph("  ", "Proven "+seeking(p)+" among "+unit.Group(c.Combinations)+" combinations, "+count(int(c.Nodes), "node")+" opened.")
	default:
		k.paragraph("  ", "Stopped early: another build may be "+missing(c)+".")
	}
	if path := k.text("out"); path != "" {
		k.printf("  Written to %s.\n", path)
	}
}

// nothing says that no build was found.
func (k *call) nothing(title, status string, c *verb.Certificate) {
	k.printf("%s\n\n", k.strong(title))
	if status == "infeasible" {
		k.paragraph("  ", "No build of this catalog can do it: "+unit.Group(c.Combinations)+" combinations are ruled out.")
	} else {
		k.paragraph("  ", "The search ended before a build was found; there may be one.")
	}
}

// seeking says what a plan was for, and what it came to where its price does not tell.
func seeking(p *verb.Plan) string {
	text := map[string]string{
		"least": "the least price", "best": "the most served within the budget", "quiet": "the least heard at the chair", "small": "the smallest case",
	}[p.For]
	if p.Reached != nil {
		text += ", " + p.Reached.String() + ", at the least price,"
	}
	return text
}

// missing says how much better another build may still be.
func missing(c *verb.Certificate) string {
	var list []string
	if c.GapVolume != nil && c.GapVolume.N > 0 {
		list = append(list, "up to "+c.GapVolume.String()+" smaller")
	}
	if c.GapNoise != nil && c.GapNoise.N > 0 {
		list = append(list, "up to "+c.GapNoise.String()+" quieter")
	}
	if c.GapPrice.N > 0 {
		list = append(list, "up to "+c.GapPrice.String()+" cheaper")
	}
	if c.GapWorth > 0 || len(list) == 0 {
		list = append(list, "worth up to "+count(int(c.GapWorth), "point")+" more")
	}
	return strings.Join(list, ", or ")
}
