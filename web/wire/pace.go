package wire

import (
	"strings"
	"time"
)

// tellEvery is the least time between two messages of how far an answer is.
const tellEvery = 250 * time.Millisecond

// Pace keeps an answer from telling the page more than a person can read: a note is a list set off by commas, of which the first
// says what is done and the others how far that is.
type Pace struct {
	doing string
	told  time.Time
}

// Due reports a note that is to be told: what is begun at once, how far it is now and then.
func (p *Pace) Due(note string, now time.Time) bool {
	doing, _, figures := strings.Cut(note, ", ")
	if (figures || doing == p.doing) && now.Sub(p.told) < tellEvery {
		return false
	}
	p.doing, p.told = doing, now
	return true
}
