package main

import (
	"context"
	"strings"
	"time"

	"slipfit/core/format"
	"slipfit/core/verb"
)

var planCommand = command{
	name:  "plan",
	usage: "BRIEF [-for least|best] [-keep SEAT=PART]... [-out FILE]",
	short: "the build for a brief, with the certificate that nothing better exists",
	long: `Plans a machine from the catalog. least: the cheapest that serves every floor of
the brief. best: the one that serves most within the budget. The answer is exact
for this catalog and these rules; where a deadline ends the search, it says how
far from the best it may be. -out writes the build, for prove and sheet. Exit 1
where no build can be found.`,
	example: "slipfit plan testdata/briefs/museum-pottery.brief.json -for best -out build.json",
	setup: func(k *call) {
		k.flags.String("for", "least", "seek `WHAT`: least (price) or best (value within the budget)")
		k.flags.Var(&list{}, "keep", "settle `SEAT=PART`; SEAT=none leaves it empty; may be given again")
		k.flags.String("out", "", "write the build to `FILE`")
		k.flags.Duration("deadline", 0, "give the best found after this `TIME`, such as 5s")
		k.flags.Bool("why", false, "give the reason of every margin")
	},
	run: func(k *call) int {
		if len(k.args) != 1 {
			return k.usage("needs one brief")
		}
		if f := k.text("for"); f != "least" && f != "best" {
			return k.usage("cannot plan for %q, want least or best", f)
		}
		w, err := k.bench()
		if err != nil {
			return k.fail(err)
		}
		file, err := document(k.args[0])
		if err != nil {
			return k.fail(err)
		}
		ctx := k.ctx
		if d, err := time.ParseDuration(k.text("deadline")); err == nil && d > 0 {
			limited, cancel := context.WithTimeout(ctx, d)
			defer cancel()
			ctx = limited
		}
		p, err := w.Plan(ctx, file, verb.PlanAsk{For: k.text("for"), Keep: *k.flags.Lookup("keep").Value.(*list)}, nil)
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
				y, err := w.Why(ctx, file, *k.flags.Lookup("keep").Value.(*list), nil)
				if err != nil {
					return k.fail(err)
				}
				k.printf("\n")
				k.why(y)
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

func (k *call) plan(p *verb.Plan, every bool) {
	if p.Proof == nil {
		k.printf("%s\n\n", k.strong(p.Title))
		if p.Status == "infeasible" {
			k.paragraph("  ", "No build of this catalog can do it: "+p.Certificate.Combinations+" combinations are ruled out.")
		} else {
			k.paragraph("  ", "The search ended before a build was found; there may be one.")
		}
		return
	}
	k.proof(p.Proof, every)
	k.printf("\n")
	c := &p.Certificate
	switch p.Status {
	case "optimal":
		k.paragraph("  ", "Proven the "+seeking(p.For)+" among "+c.Combinations+" combinations, "+count(int(c.Nodes), "node")+" opened.")
	default:
		k.paragraph("  ", "Stopped early: another build may be up to "+c.GapPrice.String()+" cheaper or serve "+count(int(c.GapWorth), "point")+" more.")
	}
	if path := k.text("out"); path != "" {
		k.printf("  Written to %s.\n", path)
	}
}

func seeking(what string) string {
	if what == "best" {
		return "most served within the budget"
	}
	return "least price"
}
