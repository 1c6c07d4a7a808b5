package main

import (
	"fmt"
	"strings"

	"slipfit/core/verb"
)

// prediction prints what the machine will do, run by run: expected, and the low and the high end a meter may show.
func (k *call) prediction(p *verb.Prediction) {
	if p.Note != "" {
		k.printf("\n")
		k.paragraph("  ", p.Note)
		return
	}
	for _, r := range p.Runs {
		k.printf("\n  %s\n", k.strong(fmt.Sprintf("%s, %s, room %.3g °C, ear at %.2g m", r.Activity, r.Day, r.RoomC, r.ChairM)))
		switch {
		case len(r.Missing) > 0:
			k.paragraph("    ", "not known: the data sheets do not state "+strings.Join(r.Missing, ", "))
			continue
		case r.Trouble != "":
			k.paragraph("    ", "not known: "+r.Trouble)
			continue
		}
		k.printf("    %s %s %s %s\n", cell("", 32), right("expected", 9), right("low", 8), right("high", 8))
		for _, f := range r.Figures {
			k.printf("    %s %9.1f %8.1f %8.1f %s\n", cell(f.Name, 32), f.Expected, f.Low, f.High, cell(f.Unit, 6)+f.Rule)
		}
	}
}
