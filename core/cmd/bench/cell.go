package main

import (
	"fmt"
	"math"
	"slices"
	"time"
)

// cell is what the samples of one measure at one size of stock come to.
type cell struct {
	asked    int
	proven   int
	answered int   // unproven ones that found something
	median   int64 // of all, the unproven included at what they took
	worst    int64
	gap      float64 // widest of the unproven
}

// sum makes a cell of samples.
func sum(samples []sample) cell {
	var c cell
	var figures []int64
	for i := range samples {
		s := &samples[i]
		figures = append(figures, s.Figure)
		c.asked++
		switch {
		case s.Proven:
			c.proven++
		case s.Found:
			c.answered++
			c.gap = max(c.gap, s.Gap)
		}
	}
	c.median, c.worst = median(figures), worst(figures)
	return c
}

// median is the middle figure, or halfway between the two in the middle; nought of none.
func median(figures []int64) int64 {
	if len(figures) == 0 {
		return 0
	}
	sorted := slices.Sorted(slices.Values(figures))
	n := len(sorted)
	return sorted[(n-1)/2] + (sorted[n/2]-sorted[(n-1)/2])/2
}

// worst is the largest figure; nought of none.
func worst(figures []int64) int64 {
	if len(figures) == 0 {
		return 0
	}
	return slices.Max(figures)
}

// meets reports that a cell keeps a goal: every answer proven, the median within it, and the worst where that is asked.
func (c *cell) meets(g goal) bool {
	return c.asked > 0 && c.proven == c.asked && c.median <= g.most && (g.worst == 0 || c.worst <= int64(g.worst))
}

// ratio is how many times a figure another is; nought where there is none.
func ratio(figure, of int64) float64 {
	if of == 0 {
		return 0
	}
	return float64(figure) / float64(of)
}

// exponent is the power of its size that a figure grows by between two sizes: 1 is in proportion.
func exponent(figure, then int64, size, later int) float64 {
	return math.Log(ratio(then, figure)) / math.Log(float64(later)/float64(size))
}

// nearLinear is the largest exponent that is called near-linear.
const nearLinear = 1.1

// lines are how the table shows a cell.
func (c *cell) lines(m *measure) []string {
	if c.asked == 0 {
		return []string{"not asked"}
	}
	list := []string{spoken(c.median, m.bytes) + " / " + spoken(c.worst, m.bytes)}
	if m.bytes {
		return list
	}
	list = append(list, fmt.Sprintf("%d of %d proven", c.proven, c.asked))
	if c.answered > 0 && m.rest != "" {
		list = append(list, fmt.Sprintf("to %s %% %s", percent(c.gap), m.rest))
	}
	if none := c.asked - c.proven - c.answered; none > 0 {
		list = append(list, fmt.Sprintf("%d without answer", none))
	}
	return list
}

// percent writes a share in per cent with two digits.
func percent(share float64) string {
	if v := 100 * share; v < 10 {
		return fmt.Sprintf("%.2g", v)
	}
	return fmt.Sprintf("%.0f", 100*share)
}

// spoken tells a figure with three digits: a time or bytes.
func spoken(figure int64, bytes bool) string {
	switch v := float64(figure); {
	case bytes:
		return digits(v/1e6) + " MB"
	case v >= 1e9:
		return digits(v/1e9) + " s"
	case v >= 1e6:
		return digits(v/1e6) + " ms"
	default:
		return digits(v/1e3) + " µs"
	}
}

func digits(v float64) string {
	switch {
	case v >= 100:
		return fmt.Sprintf("%.0f", v)
	case v >= 10:
		return fmt.Sprintf("%.1f", v)
	}
	return fmt.Sprintf("%.2f", v)
}

// verdict is the word for a goal.
func verdict(met bool) string {
	if met {
		return "met"
	}
	return "MISSED"
}

// held tells a goal and whether the cell at its size keeps it.
func (c *cell) held(m *measure, g goal, column string) string {
	text := fmt.Sprintf("%s: %d ms", column, g.most/ms)
	if m.bytes {
		text = fmt.Sprintf("%s: %d MB", column, g.most/1_000_000)
	}
	if g.worst > 0 {
		text += fmt.Sprintf(", worst %d ms", g.worst/time.Millisecond)
	}
	if c.asked == 0 {
		return text + ", not asked"
	}
	return text + ", " + verdict(c.meets(g))
}
