package main

import (
	"bufio"
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"slipfit/catalog"
	"slipfit/core/verb"

	"github.com/stretchr/testify/require"
)

// program is this test's own binary under another name, which TestMain heeds.
func program(t *testing.T, name string, args ...string) *exec.Cmd {
	t.Helper()
	path, err := os.Executable()
	require.NoError(t, err)
	c := exec.CommandContext(t.Context(), path, args...)
	c.Args[0] = name
	return c
}

// TestInterruptGivesTheBestSoFar interrupts a plan from a stock of 10,000 parts as soon as its progress line tells of a build: the
// quietest to a tenth of a dB(A), which is far from proven then.
func TestInterruptGivesTheBestSoFar(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	grown, err := (&verb.Bench{Stock: stock}).Grow(10_000, 1)
	require.NoError(t, err)
	dir := filepath.Join(t.TempDir(), "grown")
	require.NoError(t, writeCatalog(dir, grown.Files))

	var out bytes.Buffer
	c := program(t, "slipfit", "plan", "../../../testdata/briefs/cutting-room.brief.json", "-for", "quiet", "-catalog", dir)
	c.Stdout = &out
	terminal, err := openTerminal()
	require.NoError(t, err)
	c.Stderr = terminal.inner
	require.NoError(t, c.Start())
	require.NoError(t, terminal.inner.Close())
	require.NoError(t, terminal.readTo("\rsearching, "))
	require.NoError(t, terminal.readTo("\rfound "))
	require.NoError(t, terminal.readTo(" dB(A) less, "))
	from := time.Now()
	require.NoError(t, c.Process.Signal(os.Interrupt))
	require.NoError(t, c.Wait(), "a build that stands is fine")
	t.Logf("from Ctrl-C to the best so far: %v", time.Since(from).Round(time.Millisecond))
	require.NoError(t, terminal.readTo("\r"+eraseLine), "nothing of the line is left")
	require.Contains(t, out.String(), "It stands.")
	require.Regexp(t, `Stopped early: another build may be up to [\d.]+\s+dB\(A\)\s+quieter`, out.String())
	require.NotContains(t, out.String(), "Proven")
	require.NotContains(t, out.String(), "\x1b")
}

// TestSecondInterruptEndsAtOnce holds a second Ctrl-C to end even what does not heed the first.
func TestSecondInterruptEndsAtOnce(t *testing.T) {
	c := program(t, "stubborn")
	out, err := c.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, c.Start())
	lines := bufio.NewScanner(out)
	require.True(t, lines.Scan())
	require.Equal(t, "searching", lines.Text())
	require.NoError(t, c.Process.Signal(os.Interrupt))
	require.True(t, lines.Scan(), "the first lets it end by itself")
	require.Equal(t, "told", lines.Text())
	ended := make(chan error, 1)
	go func() { ended <- c.Wait() }()
	for again := time.NewTicker(20 * time.Millisecond); ; {
		select {
		case <-again.C:
			if err := c.Process.Signal(os.Interrupt); err != nil {
				require.ErrorIs(t, err, os.ErrProcessDone)
			}
			continue
		case err = <-ended:
		}
		break
	}
	var failed *exec.ExitError
	require.ErrorAs(t, err, &failed)
	require.Equal(t, os.Interrupt, failed.Sys().(syscall.WaitStatus).Signal())
}
