package main

import (
	"fmt"
	"strings"

	"slipfit/core/verb"
)

var calibrateCommand = command{
	name:  "calibrate",
	usage: "MEASUREMENTS.csv [-out FILE]",
	short: "fit the coefficients of the outcomes to a shop's own measurements",
	long:  calibrateLong(),
	example: `slipfit calibrate measured.csv -out shop/calibration.json
  # measured.csv:
  measure,amount,single_points,all_points,graphics_points,measured
  match,4320,1650,23560,1690,2870
  match,4320,1200,9000,1000,5610`,
	setup: func(k *call) {
		k.flags.String("out", "", "write the catalog's calibration file with the new coefficients to `FILE`")
	},
	run: func(k *call) int {
		if len(k.args) != 1 {
			return k.usage("needs one file of measurements")
		}
		w, err := k.bench()
		if err != nil {
			return k.fail(err)
		}
		file, err := document(k.args[0])
		if err != nil {
			return k.fail(err)
		}
		c, err := w.Calibrate(file)
		if err != nil {
			return k.fail(err)
		}
		if path := k.text("out"); path != "" {
			if err := write(path, []byte(c.File)); err != nil {
				return k.fail(err)
			}
		}
		if k.json {
			k.printf("%s", verb.JSON(c))
		} else {
			k.fits(c)
		}
		return fine
	},
}

// calibrateLong tells the columns and what can be measured.
func calibrateLong() string {
	var b strings.Builder
	b.WriteString(`Fits by least squares and shows how far each measurement lies from what the new
coefficients tell. What nobody measured stays as it is. The file is CSV with the
columns measure, amount, single_points, all_points, graphics_points, measured; a
column its measure does not read may be empty; # begins a comment. Measures:
`)
	for _, m := range verb.Measures() {
		amount := ""
		if m.Amount != "" {
			amount = "amount: " + m.Amount + "; "
		}
		fmt.Fprintf(&b, "\n  %s %smeasured: %s; points: %s\n      fits %s", cell(m.Name, 12), amount, m.Measured, m.Reads, strings.Join(m.Fields, ", "))
	}
	return b.String()
}

func (k *call) fits(c *verb.Calibration) {
	for i, f := range c.Fits {
		if i > 0 {
			k.printf("\n")
		}
		k.printf("%s\n", k.strong(f.Measure))
		for _, x := range f.Coefficients {
			k.printf("  %s %s → %s\n", cell(x.Field, 32), number(x.Old), number(x.New))
		}
		if f.Note != "" {
			k.paragraph("  ", f.Note)
		}
		k.printf("  %s %s %s %s\n", right("line", 6), right("measured", 12), right("told", 12), right("off", 9))
		for _, r := range f.Residuals {
			k.printf("  %s %s %s %s\n", right(fmt.Sprint(r.Line), 6), right(fmt.Sprintf("%.4g", r.Measured), 12), right(fmt.Sprintf("%.4g", r.Told), 12), right(fmt.Sprintf("%+.1f %%", r.Off), 9))
		}
		k.printf("  spread %.1f %%\n", f.Spread)
	}
	if path := k.text("out"); path != "" {
		k.printf("\nWritten to %s.\n", path)
	}
}

// number prints a coefficient without digits that say nothing.
func number(v float64) string { return fmt.Sprintf("%.6g", v) }
