package main

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"sync"
	"time"
	"unicode/utf8"
)

// redraw is the least time between two drawings of a progress line.
const redraw = 100 * time.Millisecond

// progress is one line at a terminal that tells how far a long answer is. It is told from one goroutine and drawn from another.
type progress struct {
	out   io.Writer
	now   func() time.Time
	most  time.Duration // after which the answer ends; nought where it has all the time it takes
	stops string        // what Ctrl-C does
	ended bool          // it has been pressed: what it does now must stand there

	mu    sync.Mutex
	began time.Time
	drawn time.Time // when the line was drawn last, or the work began
	done  float64   // a share, nought where it is not known
	note  string
	there string // the line as it stands on the terminal
}

func newProgress(out io.Writer, now func() time.Time) *progress {
	p := &progress{out: out, now: now, stops: "Ctrl-C for what is found"}
	p.began = now()
	p.drawn = p.began
	return p
}

// tell takes what the answer has come to.
func (p *progress) tell(done float64, note string) {
	p.mu.Lock()
	p.done, p.note = done, note
	p.mu.Unlock()
	p.draw()
}

// ending takes that Ctrl-C has been pressed.
func (p *progress) ending() {
	p.mu.Lock()
	p.ended, p.stops = true, "ending; Ctrl-C again ends at once"
	p.mu.Unlock()
	p.draw()
}

// draw writes the line where it is time to, in place of the one that stands there.
func (p *progress) draw() {
	p.mu.Lock()
	defer p.mu.Unlock()
	now := p.now()
	text := p.text(now.Sub(p.began))
	if now.Sub(p.drawn) < redraw || p.note == "" || text == p.there {
		return
	}
	p.drawn, p.there = now, text
	fmt.Fprint(p.out, "\r"+text+eraseLine)
}

// clear takes the line away.
func (p *progress) clear() {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.there != "" {
		fmt.Fprint(p.out, "\r"+eraseLine)
	}
	p.there = ""
}

// eraseLine erases from the cursor to the end of the line: EL of ECMA-48, section 8.3.41.
const eraseLine = "\x1b[K"

// text is the line after so much time, no longer than a line of the terminal. What matters least is left out where there is no room:
// how far the search has looked, then what Ctrl-C does, then how much better another build may be.
func (p *progress) text(spent time.Duration) string {
	took := clock(spent)
	if p.most > 0 {
		took += " of " + clock(p.most)
	}
	if p.done > 0 {
		took = fmt.Sprintf("%.0f %%, %s", 100*p.done, took)
	}
	words, stops := strings.Split(p.note, ", "), "; "+p.stops
	text := ""
	fits := func(words []string, stops string) bool {
		text = strings.Join(append(slices.Clone(words), took), ", ") + stops
		return utf8.RuneCountInString(text) < columns // in the last column the cursor may go on to the next line
	}
	for n := len(words); n > 0; n-- {
		if fits(words[:n], stops) || n == 2 && !p.ended && fits(words[:n], "") {
			return text
		}
	}
	return string([]rune(text)[:columns-1])
}

// clock tells a time in whole seconds.
func clock(d time.Duration) string {
	s := int(d / time.Second)
	if s < 60 {
		return fmt.Sprintf("%d s", s)
	}
	return fmt.Sprintf("%d min %02d s", s/60, s%60)
}
