package main

import (
	"context"
	"flag"
	"os"
	"os/signal"
	"time"

	"slipfit/core/verb"
)

// search begins a long answer that can end early with what is found so far: at the time of -deadline, where the verb has one, or
// at Ctrl-C. A second Ctrl-C ends the program at once. Told draws how far it is where a person can see it; done must be called
// once the answer is there.
func (k *call) search() (ctx context.Context, told verb.Progress, done func()) {
	ctx, release := signal.NotifyContext(k.ctx, os.Interrupt)
	within := k.deadline()
	line, put := k.watch(within)
	if line != nil {
		told = line.tell
	}
	untie := context.AfterFunc(ctx, func() {
		release()
		if line != nil {
			line.ending()
		}
	})
	cancel := func() {}
	if within > 0 {
		ctx, cancel = context.WithTimeout(ctx, within)
	}
	return ctx, told, func() {
		untie()
		cancel()
		release()
		put()
	}
}

// deadline is the time of -deadline, nought where there is none.
func (k *call) deadline() time.Duration {
	f := k.flags.Lookup("deadline")
	if f == nil {
		return 0
	}
	return f.Value.(flag.Getter).Get().(time.Duration)
}

// watch draws a progress line on the error output until done is called; it is nil where that is no terminal.
func (k *call) watch(most time.Duration) (line *progress, done func()) {
	if !terminal(k.err) {
		return nil, func() {}
	}
	line = newProgress(k.err, time.Now)
	line.most = most
	again, over, ended := time.NewTicker(redraw), make(chan struct{}), make(chan struct{})
	go func() {
		defer close(ended)
		for {
			select {
			case <-again.C:
				line.draw()
			case <-over:
				return
			}
		}
	}()
	return line, func() {
		again.Stop()
		close(over)
		<-ended
		line.clear()
	}
}
