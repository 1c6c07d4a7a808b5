package web

import (
	"strings"

	"slipfit/core/unit"
)

// blame takes what is wrong with the brief. It is told beside the answers; where no question is about it, in full.
func (d *Desk) blame(err error) {
	d.faults = faultsOf(err)
	d.heard++
	for _, f := range d.faults {
		if !d.asks(f.Path) {
			d.grieve(err)
			return
		}
	}
	switch n := len(d.faults); n {
	case 0:
		d.grieve(err)
	case 1:
		d.trouble = unusable(n) + ": it says there what is wanted."
	default:
		d.trouble = unusable(n) + ": each says what is wanted."
	}
}

// unusable counts answers that the core refuses.
func unusable(n int) string { return counted(n, "answer", "answers") + " cannot be used" }

// fault is what is wrong with the answer at a path.
func (d *Desk) fault(path string) string {
	for _, f := range d.faults {
		switch {
		case f.Path != path:
		case unit.InMinor(path):
			return "want " + unit.WantedInMajor(f.Want, d.asked.Currency)
		default:
			return "want " + f.Want
		}
	}
	return ""
}

// faultsIn counts what is wrong at a path and in what lies under it.
func (d *Desk) faultsIn(path string) int {
	n := 0
	for _, f := range d.faults {
		if within(f.Path, path) {
			n++
		}
	}
	return n
}

// within reports a path that is another one or leads on from it.
func within(path, from string) bool {
	rest, ok := strings.CutPrefix(path, from)
	return ok && (rest == "" || rest[0] == '.' || rest[0] == '[')
}

// asks reports a path that a question of the page is about.
func (d *Desk) asks(path string) bool {
	if path == "title" || path == "who" || path == "said" || path == "activities" {
		return true
	}
	if d.asked == nil {
		return false
	}
	for _, q := range d.asked.Surroundings {
		if within(path, q.Field) {
			return true
		}
	}
	at := steps(path)
	if len(at) < 3 || at[0] != "activities" {
		return false
	}
	_, field, _ := strings.Cut(path, "].")
	i, _ := at[1].(int)
	t := d.brief.topicOf(i, d.asked.Topics)
	if t == nil {
		return false
	}
	for _, q := range t.Questions {
		if field == q.path(t) {
			return true
		}
	}
	return field == "said"
}

// path is where the answer to a question about a kind of work stands in its activity.
func (q *Question) path(t *Topic) string {
	if q.Field == "hours_week" || q.Field == "at_once" {
		return q.Field
	}
	return t.Field + "." + q.Field
}
