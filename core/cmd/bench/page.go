package main

import (
	"io"
	"os/exec"
	"slices"
	"strings"
)

// workerParts is the size of stock the page's worker is measured on; the largest size asked where that is not among them.
const workerParts = 2000

// workerTimes is how many times the native figure the page's worker may take.
const workerTimes = 4

// paged is what the page's worker takes beside what the same questions take natively.
type paged struct {
	note    string // why nothing was measured
	column  int
	samples []sample
}

// page runs this program as the page's worker would and takes its samples of one size.
func (set *setting) page(worker string, progress io.Writer) (*paged, error) {
	command := strings.Fields(worker)
	if len(command) == 0 {
		return &paged{note: "not asked: no -worker was named"}, nil
	}
	if _, err := exec.LookPath("node"); err != nil {
		return &paged{note: "not asked: node, which runs the worker's program outside a browser, is not installed"}, nil
	}
	one := *set
	one.sizes, one.four = []int{set.sizes[len(set.sizes)-1]}, true
	if slices.Contains(set.sizes, workerParts) {
		one.sizes[0] = workerParts
	}
	var r reading
	if err := one.remote(command, &r, progress); err != nil {
		return nil, err
	}
	return &paged{column: one.sizes[0], samples: r.samples}, nil
}

// pair is a question both asked natively and in the worker.
type pair struct{ native, worker sample }

// pairs puts the worker's samples of a measure beside the native ones of the same questions. Apart is how many pairs were proven on
// both sides with different answers.
func (p *paged) pairs(m *measure, native []sample) (both []pair, apart int) {
	for _, w := range p.samples {
		for _, n := range native {
			if w.Measure != m.name || n.Measure != w.Measure || n.Column != w.Column || n.Seed != w.Seed || n.Brief != w.Brief || n.Lean != w.Lean {
				continue
			}
			both = append(both, pair{n, w})
			if n.Proven && w.Proven && (n.Price != w.Price || n.Worth != w.Worth) {
				apart++
			}
		}
	}
	return both, apart
}

// times is how many times the native figure the worker takes, over the pairs that both have proven: by the medians, and of the
// worst pair.
func times(both []pair) (proven int, middle, most float64) {
	var native, worker []int64
	for _, b := range both {
		if !b.native.Proven || !b.worker.Proven {
			continue
		}
		native, worker = append(native, b.native.Figure), append(worker, b.worker.Figure)
		most = max(most, ratio(b.worker.Figure, b.native.Figure))
	}
	return len(native), ratio(median(worker), median(native)), most
}
