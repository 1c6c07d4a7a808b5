package wire

import (
	"context"
	"time"
)

// listenEvery is how long an answer computes before messages are let in.
const listenEvery = 50 * time.Millisecond

// hearing is the context of a request: it ends when the page has asked to stop it. A worker has one thread, and no message comes
// in while that computes; so whoever looks at the context lets messages in, where they have waited long enough.
type hearing struct {
	context.Context
	listen func() // waits while messages come in
	heard  *time.Time
	stop   func() bool // the page has asked to stop
}

// Err lets messages in where it is time to, and tells whether one of them was to stop.
func (h hearing) Err() error {
	if time.Since(*h.heard) >= listenEvery {
		h.listen()
		*h.heard = time.Now()
	}
	if h.stop() {
		return context.Canceled
	}
	return nil
}

// Done is closed once the page has asked to stop. Each call looks anew: a channel that is kept does not close.
func (h hearing) Done() <-chan struct{} {
	done := make(chan struct{})
	if h.Err() != nil {
		close(done)
	}
	return done
}
