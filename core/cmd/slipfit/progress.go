package main

import (
	"fmt"
	"io"
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

	mu    sync.Mutex
	began time.Time
	drawn time.Time // when the line was drawn last, or the work began
	done  float64   // a share, nought where it is not known
	note  string
	there string // the line as it stands on the terminal
}

func newProgress(out io.Writer, now func() time.Time) *progress {
	p := &progress{out: out, now: now, stops: "Ctrl-C ends it"}
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

// ends takes what Ctrl-C does from now on.
func (p *progress) ends(stops string) {
	p.mu.Lock()
	p.stops = stops
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

// text is the line after so much time, no longer than a line of the terminal.
func (p *progress) text(spent time.Duration) string {
	words := []string{p.note}
	if p.done > 0 {
		words = append(words, fmt.Sprintf("%.0f %%", 100*p.done))
	}
	took := clock(spent)
	if p.most > 0 {
		took += " of " + clock(p.most)
	}
	text := strings.Join(append(words, took), ", ") + "; " + p.stops
	for utf8.RuneCountInString(text) >= columns { // in the last column the cursor may go on to the next line
		_, last := utf8.DecodeLastRuneInString(text)
		text = text[:len(text)-last]
	}
	return text
}

// clock tells a time in whole seconds.
func clock(d time.Duration) string {
	s := int(d / time.Second)
	if s < 60 {
		return fmt.Sprintf("%d s", s)
	}
	return fmt.Sprintf("%d min %02d s", s/60, s%60)
}
