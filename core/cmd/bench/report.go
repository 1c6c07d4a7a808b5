package main

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"
)

// report is everything the table shows.
type report struct {
	*setting
	reading
	solved *solved
	paged  *paged
}

// of gathers the samples of a measure at one size of stock.
func (r *report) of(m *measure, column int, lean bool) []sample {
	var list []sample
	for i := range r.samples {
		if s := &r.samples[i]; s.Measure == m.name && s.Column == column && s.Lean == lean {
			list = append(list, *s)
		}
	}
	return list
}

// heading names a column.
func heading(column int) string {
	if column == 0 {
		return catalogue
	}
	return grouped(column)
}

// grouped writes a number with its thousands apart.
func grouped(n int) string {
	text := strconv.Itoa(n)
	for i := len(text) - 3; i > 0; i -= 3 {
		text = text[:i] + "," + text[i:]
	}
	return text
}

func (r *report) print(out io.Writer) {
	fmt.Fprintln(out, "A cell: median / worst over briefs and seeds, and how many answers are proven. An answer that is not proven in time counts")
	fmt.Fprintln(out, "at what it took and misses every goal; how far the answer may be from the best is told. On a new index the time to lay out")
	fmt.Fprintln(out, "the stock is counted; a kept index has answered least and best of the same brief with a tenth less to spend.")
	r.asked(out)
	r.main(out, false)
	r.main(out, true)
	r.growth(out)
	r.certificates(out)
	r.worker(out)
	r.outside(out)
}

// asked says what the columns hold.
func (r *report) asked(out io.Writer) {
	for _, s := range r.stocks {
		stocks := fmt.Sprintf("grown from the seeds 1 to %d", r.seeds)
		switch {
		case s.Column == 0:
			stocks = "as it is"
		case r.seeds == 1:
			stocks = "grown from seed 1"
		}
		fmt.Fprintf(out, "  %s: %s parts, %s, %d briefs asked", heading(s.Column), grouped(s.Parts), stocks, s.Asked)
		if s.Asked < s.Of {
			fmt.Fprintf(out, " of %d, for %s were spent by then", s.Of, r.patience)
		}
		fmt.Fprintln(out)
	}
	for _, s := range r.hung {
		fmt.Fprintf(out, "  %s: %s of %s, seed %d, had not heard of its deadline when the column was ended after %s of it\n",
			heading(s.Column), named(s.Measure).title, s.Brief, s.Seed, spoken(s.Figure, false))
	}
}

// main prints the measures against the goals: with every rule, or lean, without those that predict air and sound.
func (r *report) main(out io.Writer, lean bool) {
	title := "With every rule"
	if lean {
		title = "Without the rules that predict air and sound; what these add is told as how many times as long every rule takes, by the medians"
	}
	t := r.table(title, "goal for the median")
	for i := range measures {
		m := &measures[i]
		t.row(m.title)
		for _, s := range r.stocks {
			c := sum(r.of(m, s.Column, lean))
			lines := c.lines(m)
			if lean && c.asked > 0 && !m.bytes {
				every := sum(r.of(m, s.Column, false))
				lines = append(lines, "every rule × "+digits(ratio(every.median, c.median)))
			}
			t.cell(lines...)
		}
		var goals []string
		for _, g := range m.goals {
			c := sum(r.of(m, g.parts, lean))
			goals = append(goals, c.held(m, g, heading(g.parts)))
		}
		t.cell(goals...)
	}
	t.print(out)
}

// growth prints by which power of the size each measure grows.
func (r *report) growth(out io.Writer) {
	var grown []int
	for _, s := range r.stocks {
		if s.Column > 0 {
			grown = append(grown, s.Column)
		}
	}
	if len(grown) < 2 {
		return
	}
	first, last := grown[0], grown[len(grown)-1]
	t := &table{title: fmt.Sprintf("Growth of the median, with every rule, of the briefs asked of both: × from %s to %s parts, and the power of the size that is", grouped(first), grouped(last))}
	t.head = []string{"", "growth", fmt.Sprintf("goal: at most the power %.1f", nearLinear)}
	for i := range measures {
		m := &measures[i]
		if !m.four {
			continue
		}
		before, after := r.of(m, first, false), r.of(m, last, false)
		from, to := sum(alike(before, after)), sum(alike(after, before))
		t.row(m.title)
		if from.asked == 0 || to.asked == 0 {
			t.cell("not asked")
			t.cell("")
			continue
		}
		x := exponent(from.median, to.median, first, last)
		t.cell(fmt.Sprintf("× %s for × %s, power %.2f", digits(ratio(to.median, from.median)), digits(float64(last)/float64(first)), x))
		if from.proven < from.asked || to.proven < to.asked {
			t.cell(verdict(false) + ": not all proven")
		} else {
			t.cell(verdict(x <= nearLinear))
		}
	}
	t.print(out)
}

// alike keeps the samples whose brief and seed are among others.
func alike(samples, others []sample) []sample {
	var kept []sample
	for _, s := range samples {
		if slices.ContainsFunc(others, func(o sample) bool { return o.Brief == s.Brief && o.Seed == s.Seed }) {
			kept = append(kept, s)
		}
	}
	return kept
}

// certificates prints what stands behind the answers.
func (r *report) certificates(out io.Writer) {
	t := r.table("Certificates, with every rule: nodes opened and rules asked, median / worst, and the digits of the number of combinations covered")
	for _, name := range []string{leastNew, bestNew, tight, small, frontier} {
		m := named(name)
		t.row(m.title)
		for _, s := range r.stocks {
			var nodes, checks []int64
			var digits []int
			for _, x := range r.of(m, s.Column, false) {
				nodes, checks = append(nodes, x.Nodes), append(checks, x.Checks)
				digits = append(digits, x.Digits)
			}
			if len(nodes) == 0 {
				t.cell("not asked")
				continue
			}
			t.cell(
				fmt.Sprintf("%s / %s nodes", grouped(int(median(nodes))), grouped(int(worst(nodes)))),
				fmt.Sprintf("%s / %s asked", grouped(int(median(checks))), grouped(int(worst(checks)))),
				fmt.Sprintf("%d to %d digits", slices.Min(digits), slices.Max(digits)))
		}
	}
	t.print(out)
}

// worker prints what the page's worker takes beside the native program.
func (r *report) worker(out io.Writer) {
	p := r.paged
	if p.note != "" {
		fmt.Fprintf(out, "\nThe page's worker (js/wasm): %s.\n", p.note)
		return
	}
	t := &table{title: fmt.Sprintf("The page's worker (js/wasm) at %s parts, every rule: by the medians, and of the worst question", grouped(p.column))}
	t.head = []string{"", "median / worst", "times native", fmt.Sprintf("goal: at most %d times", workerTimes)}
	for i := range measures {
		m := &measures[i]
		if !m.four {
			continue
		}
		both, apart := p.pairs(m, r.samples)
		var own []sample
		for _, b := range both {
			own = append(own, b.worker)
		}
		c := sum(own)
		proven, middle, most := times(both)
		t.row(m.title)
		t.cell(c.lines(m)...)
		switch {
		case apart > 0:
			t.cell(fmt.Sprintf("%d answers DIFFER", apart))
		case proven == 0:
			t.cell("none proven by both")
		default:
			t.cell(fmt.Sprintf("× %s / × %s", digits(middle), digits(most)), fmt.Sprintf("%d of %d proven by both", proven, len(both)))
		}
		t.cell(verdict(apart == 0 && proven > 0 && proven == len(both) && middle <= workerTimes))
	}
	t.print(out)
}

// outside prints how long other solvers take for the same optima.
func (r *report) outside(out io.Writer) {
	s := r.solved
	if len(s.columns) > 0 {
		t := &table{title: "Other solvers, given the exported problem: their process's time for ours on a new index, median / worst of the optima that are equal and proven"}
		t.head = []string{""}
		for _, c := range s.columns {
			t.head = append(t.head, heading(c))
		}
		for i := range yardsticks {
			for _, question := range []string{leastOutside, bestOutside} {
				if slices.Contains(s.missing, yardsticks[i].name) {
					continue
				}
				t.row(yardsticks[i].name + ", " + question)
				for _, c := range s.columns {
					t.cell(s.compared(yardsticks[i].name, question, c)...)
				}
			}
		}
		t.print(out)
		fmt.Fprintln(out, "Neither side was asked the rules that predict air and sound.")
		if len(s.lifted) > 0 {
			fmt.Fprintf(out, "Nor, with some of the orders, those that rows cannot hold: %s.\n", strings.Join(s.lifted, ", "))
		}
	}
	for _, name := range s.missing {
		fmt.Fprintf(out, "%s: not installed.\n", name)
	}
}

// compared tells how a solver did with a question at one size of stock. Where an optimum differs there is nothing to compare.
func (s *solved) compared(solver, question string, column int) []string {
	var ratios []float64
	asked, proven := 0, 0
	for _, y := range s.samples {
		if y.solver != solver || y.question != question || y.column != column {
			continue
		}
		asked++
		if y.proven {
			proven++
		}
		if y.proven && y.equal {
			ratios = append(ratios, ratio(y.theirs, y.ours))
		}
	}
	equal := fmt.Sprintf("%d of %d equal and proven", len(ratios), asked)
	switch {
	case asked == 0:
		return []string{"not asked"}
	case len(ratios) < proven:
		return []string{fmt.Sprintf("%d optima DIFFER", proven-len(ratios)), equal}
	case len(ratios) == 0:
		return []string{"no ratio", equal}
	}
	slices.Sort(ratios)
	return []string{fmt.Sprintf("× %s / × %s", digits(ratios[len(ratios)/2]), digits(ratios[len(ratios)-1])), equal}
}

// table is printed with a column as wide as its widest line.
type table struct {
	title string
	head  []string
	rows  [][][]string // by row and column: lines
}

// table begins a table with a column for every size of stock.
func (r *report) table(title string, more ...string) *table {
	t := &table{title: title, head: []string{""}}
	for _, s := range r.stocks {
		t.head = append(t.head, heading(s.Column))
	}
	t.head = append(t.head, more...)
	return t
}

func (t *table) row(title string) { t.rows = append(t.rows, [][]string{{title}}) }

func (t *table) cell(lines ...string) {
	last := &t.rows[len(t.rows)-1]
	*last = append(*last, lines)
}

func (t *table) print(out io.Writer) {
	wide := make([]int, len(t.head))
	for c, h := range t.head {
		wide[c] = utf8.RuneCountInString(h)
	}
	for _, row := range t.rows {
		for c, lines := range row {
			for _, l := range lines {
				wide[c] = max(wide[c], utf8.RuneCountInString(l))
			}
		}
	}
	line := func(cells []string) {
		var b strings.Builder
		for c, text := range cells {
			b.WriteString(text)
			b.WriteString(strings.Repeat(" ", wide[c]-utf8.RuneCountInString(text)+2))
		}
		fmt.Fprintln(out, strings.TrimRight(b.String(), " "))
	}
	fmt.Fprintf(out, "\n%s\n", t.title)
	line(t.head)
	for _, row := range t.rows {
		high := 0
		for _, lines := range row {
			high = max(high, len(lines))
		}
		for i := range high {
			cells := make([]string, len(row))
			for c, lines := range row {
				if i < len(lines) {
					cells[c] = lines[i]
				}
			}
			line(cells)
		}
	}
}
