package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"slices"
	"strconv"
	"strings"
	"time"
)

// line is what -json prints as it goes on: what a stock is, that a question is about to be asked, or what came of it.
type line struct {
	Stock  *stocked `json:"stock,omitempty"`
	Asking *sample  `json:"asking,omitempty"`
	Got    *sample  `json:"got,omitempty"`
}

// stocked is how much was asked of the stocks of one size.
type stocked struct {
	Column int `json:"column"`
	Parts  int `json:"parts"`
	Asked  int `json:"asked"` // briefs, each on a stock
	Of     int `json:"of"`
}

// reading is everything a run has found.
type reading struct {
	stocks  []stocked
	samples []sample
	asking  *sample  // asked and not answered yet
	hung    []sample // questions that were ended from outside
}

// take adds a line to what was found.
func (r *reading) take(l line) {
	switch {
	case l.Asking != nil:
		r.asking = l.Asking
	case l.Got != nil:
		r.samples, r.asking = append(r.samples, *l.Got), nil
	case l.Stock != nil:
		if n := len(r.stocks); n > 0 && r.stocks[n-1].Column == l.Stock.Column {
			r.stocks = r.stocks[:n-1]
		}
		r.stocks = append(r.stocks, *l.Stock)
	}
}

// cut notes the question that was being asked for so long when a process was ended: it has no answer.
func (r *reading) cut(after time.Duration) {
	if r.asking == nil {
		return
	}
	s := *r.asking
	s.Figure = int64(after)
	r.samples, r.hung, r.asking = append(r.samples, s), append(r.hung, s), nil
}

// remote has a process of its own measure, and ends it at twice the patience: a planner that does not hear of its deadline does not
// keep the table from being printed.
func (set *setting) remote(command []string, found *reading, progress io.Writer) error {
	ctx, cancel := context.WithTimeout(context.Background(), 2*set.patience)
	defer cancel()
	c := exec.CommandContext(ctx, command[0], slices.Concat(command[1:], set.flags())...)
	c.Env = []string{"PATH=" + os.Getenv("PATH")} // what runs js/wasm takes few and short variables
	var complaint strings.Builder
	c.Stderr = &complaint
	c.WaitDelay = time.Second
	out, err := c.StdoutPipe()
	if err != nil {
		return err
	}
	if err := c.Start(); err != nil {
		return err
	}
	last := time.Now()
	for lines := json.NewDecoder(out); ; last = time.Now() {
		var l line
		if err = lines.Decode(&l); err != nil {
			break
		}
		found.take(l)
		if l.Asking != nil {
			fmt.Fprintf(progress, "\r%s parts, seed %d, %-40s", heading(l.Asking.Column), l.Asking.Seed, l.Asking.Brief+", "+l.Asking.Measure)
		}
	}
	took := time.Since(last)
	if ctx.Err() == nil && err != io.EOF {
		cancel() // what it says cannot be read
		return errors.Join(fmt.Errorf("%s: %w", strings.Join(command, " "), err), c.Wait())
	}
	err = c.Wait()
	fmt.Fprintf(progress, "\r%70s\r", "")
	switch {
	case ctx.Err() != nil:
		found.cut(took)
	case err != nil:
		return fmt.Errorf("%s: %w: %s", strings.Join(command, " "), err, complaint.String())
	}
	return nil
}

// flags say a setting on a command line.
func (set *setting) flags() []string {
	var sizes []string
	for _, n := range set.sizes {
		if n == 0 {
			sizes = append(sizes, catalogue)
			continue
		}
		sizes = append(sizes, strconv.Itoa(n))
	}
	list := []string{"-json", "-sizes", strings.Join(sizes, ","), "-seeds", strconv.Itoa(set.seeds), "-deadline", set.deadline.String(), "-patience", set.patience.String()}
	if set.four {
		list = append(list, "-four")
	}
	return list
}
