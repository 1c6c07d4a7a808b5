package main

import (
	"fmt"
	"strings"

	"slipfit/core/unit"
	"slipfit/core/verb"
)

// frontier answers plan -for frontier.
func (k *call) frontier(w *verb.Bench, file verb.Document) int {
	ctx, told, done := k.search()
	f, err := w.Frontier(ctx, file, *k.flags.Lookup("keep").Value.(*list), told)
	done()
	if err != nil {
		return k.fail(err)
	}
	switch {
	case k.json:
		k.printf("%s", verb.JSON(f))
	case len(f.Points) > 0:
		k.points(f)
	default:
		k.nothing(f.Title, f.Status, &f.Certificate)
		if f.Status == "infeasible" {
			if err := k.explain(w, file); err != nil {
				return k.fail(err)
			}
		}
	}
	if len(f.Points) == 0 {
		return failing
	}
	return fine
}

// points prints every point of a frontier with the parts that come in there.
func (k *call) points(f *verb.Frontier) {
	k.printf("%s\n\n", k.strong(f.Title))
	k.printf("  %s %s  %s\n", right("before tax", 10), right("served", 7), "what comes in")
	for i, p := range f.Points {
		names := []string{"the cheapest build that stands"}
		if i > 0 {
			names = nil
			for _, l := range p.Parts {
				name := l.Name
				if l.Count > 1 {
					name = fmt.Sprintf("%d × %s", l.Count, name)
				}
				names = append(names, name)
			}
			if len(names) == 0 {
				names = []string{"a part less"}
			}
		}
		k.paragraph(fmt.Sprintf("  %s %s  ", right(p.Price.Figure(), 10), right(share(p.Worth, f.Full), 7)), strings.Join(names, ", "))
	}
	k.printf("\n")
	c := &f.Certificate
	if f.Status == "optimal" {
		k.paragraph("  ", "Proven: among "+unit.Group(c.Combinations)+" combinations nothing else serves more for its price; "+count(int(c.Nodes), "node")+" opened.")
	} else {
		k.paragraph("  ", "Stopped early: another build may serve up to "+share(c.GapWorth, f.Full)+" more of what is asked than what is listed at its price.")
	}
}

// share is value in per cent of everything asked for.
func share(worth, full int64) string {
	return fmt.Sprintf("%.1f %%", float64(worth)*100/float64(max(full, 1)))
}
