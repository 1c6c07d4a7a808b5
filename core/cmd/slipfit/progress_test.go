package main

import (
	"bytes"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// TestProgressLine holds what a terminal is sent to the byte, by a clock that the test sets.
func TestProgressLine(t *testing.T) {
	var out bytes.Buffer
	now := time.Date(2026, 1, 2, 3, 4, 5, 0, time.UTC)
	p := newProgress(&out, func() time.Time { return now })
	sent := func(after time.Duration, event func()) string {
		now = now.Add(after)
		out.Reset()
		event()
		return out.String()
	}
	require.Empty(t, sent(time.Second, p.draw), "nothing is told yet")
	require.Empty(t, sent(0, p.clear))
	require.Equal(t, "\rsearching, 1 s; Ctrl-C for what is found\x1b[K", sent(0, func() { p.tell(0, "searching") }))
	require.Empty(t, sent(500*time.Millisecond, p.draw), "it stands there already")
	require.Equal(t, "\rlooking at every part, 1 s; Ctrl-C for what is found\x1b[K", sent(0, func() { p.tell(0, "looking at every part") }))
	require.Empty(t, sent(99*time.Millisecond, func() { p.tell(0.375, "looking at every part") }), "ten times a second at most: what is told too soon waits")
	require.Equal(t, "\rlooking at every part, 38 %, 1 s; Ctrl-C for what is found\x1b[K", sent(time.Millisecond, p.draw))
	p.most = 90 * time.Second
	require.Equal(t, "\rlooking at every part, 38 %, 1 min 05 s of 1 min 30 s; Ctrl-C for what is found\x1b[K", sent(64*time.Second, p.draw), "as long as a line may be")
	p.most = 0
	require.Equal(t, "\rfound 1816.40, perhaps 1102.70 less, 1 min 05 s; Ctrl-C for what is found\x1b[K",
		sent(redraw, func() { p.tell(0, "found 1816.40, perhaps 1102.70 less, 641 tried") }), "how far it has looked is left out first")
	p.most = 90 * time.Second
	require.Equal(t, "\rfound 1816.40, perhaps 1102.70 less, 1 min 05 s of 1 min 30 s\x1b[K",
		sent(redraw, func() { p.tell(0, "found 1816.40, perhaps 1102.70 less, 641 tried") }), "then what Ctrl-C does")
	require.Equal(t, "\rfound 1816.40, 1 min 05 s of 1 min 30 s; ending; Ctrl-C again ends at once\x1b[K", sent(redraw, p.ending), "but not what it does now")
	p.most = 0
	require.Equal(t, "\rsearching, 641 tried, 1 min 06 s; ending; Ctrl-C again ends at once\x1b[K", sent(redraw, func() { p.tell(0, "searching, 641 tried") }))
	require.Equal(t, "\r\x1b[K", sent(0, p.clear))
	require.Empty(t, sent(0, p.clear), "it is gone already")
}

// TestProgressStaysOnItsLine tries every length of a note: a line that reached the last column would scroll the terminal.
func TestProgressStaysOnItsLine(t *testing.T) {
	now := time.Now()
	for n := range 2 * columns {
		var out bytes.Buffer
		p := newProgress(&out, func() time.Time { return now })
		p.drawn = now.Add(-redraw)
		p.tell(0.5, strings.Repeat("ü", n+1))
		runes := []rune(strings.TrimSuffix(strings.TrimPrefix(out.String(), "\r"), eraseLine))
		require.Less(t, len(runes), columns)
		require.Greater(t, len(runes), min(n, columns-2))
	}
}

func TestProgressIsForTerminals(t *testing.T) {
	k := &call{err: new(bytes.Buffer)}
	line, done := k.watch(0)
	require.Nil(t, line)
	done()
}
