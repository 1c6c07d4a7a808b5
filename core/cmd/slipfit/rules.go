package main

import (
	"fmt"
	"strings"

	"slipfit/core/verb"
)

var rulesCommand = command{
	name:    "rules",
	usage:   "[ID]",
	short:   "the schedule of rules, or one rule with its formula and source",
	long:    `Lists the rules by group. With an id: what the rule checks, its formula with units, what it assumes, what to do when it is short, and its source.`,
	example: "slipfit rules supply-length",
	run: func(k *call) int {
		if len(k.args) > 1 {
			return k.usage("takes one rule id at most")
		}
		id := strings.Join(k.args, "")
		list, err := (&verb.Bench{}).Rules(id)
		if err != nil {
			return k.fail(err)
		}
		if k.json {
			k.printf("%s", verb.JSON(list))
			return fine
		}
		if id == "" {
			k.schedule(list.Rules)
			return fine
		}
		r := list.Rules[0]
		k.printf("%s  (%s)\n%s\n\n", k.strong(r.ID), r.Group, r.Title)
		for line := range strings.SplitSeq(r.Doc, "\n") {
			k.paragraph("  ", line)
		}
		k.printf("\n")
		k.paragraph("  reads:  ", strings.Join(r.Reads, ", "))
		k.paragraph("  source: ", r.Source)
		return fine
	},
}

func (k *call) schedule(rules []verb.Rule) {
	group := ""
	for _, r := range rules {
		if r.Group != group {
			group = r.Group
			k.printf("%s\n", k.strong(group))
		}
		k.printf("  %s %s\n", cell(r.ID, 24), r.Title)
	}
}

// count is "1 margin", "2 margins", or "2 " where the thing has no name.
func count(n int, thing string) string {
	switch {
	case thing == "":
		return fmt.Sprintf("%d ", n)
	case n == 1:
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
