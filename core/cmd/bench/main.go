// Command bench measures the exact planner on the catalog and on stocks grown from it, and prints one table: a row a measure, a
// column a size of stock, the goal beside it and whether it is met. It is for those who work on the planner.
package main

import (
	"context"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"time"

	"slipfit/core/heap"
)

func main() {
	heap.Settle() // as the programs do that answer
	err := run(os.Args[1:], os.Stdout, os.Stderr)
	switch {
	case errors.Is(err, flag.ErrHelp):
	case err != nil:
		fmt.Fprintf(os.Stderr, "bench: %v\n", err)
		os.Exit(1)
	}
}

// setting is what a run measures.
type setting struct {
	sizes    []int         // of stocks, in parts, the smallest first; 0 is the catalog as it is
	seeds    int           // stocks of each size, grown from the seeds 1, 2 ...
	deadline time.Duration // of one question
	patience time.Duration // of one column: once so much has been spent, no further brief is asked; at twice that it is ended
	four     bool          // only what the page's worker is held to, with every rule
	outside  int           // the largest stock in parts that is given to other solvers
}

func run(args []string, out, progress io.Writer) error {
	flags := flag.NewFlagSet("bench", flag.ContinueOnError)
	flags.SetOutput(progress)
	sizes := flags.String("sizes", "catalog,500,2000,10000,20000", "ask stocks of so many `PARTS`")
	var set setting
	flags.IntVar(&set.seeds, "seeds", 3, "grow so `MANY` stocks of each size")
	flags.DurationVar(&set.deadline, "deadline", 5*time.Second, "end a question after this `TIME`")
	flags.DurationVar(&set.patience, "patience", time.Minute, "ask no further brief of a size once this `TIME` is spent on it")
	flags.IntVar(&set.outside, "outside", 2000, "give other solvers stocks of at most so many `PARTS`")
	flags.BoolVar(&set.four, "four", false, "ask only what the page's worker is held to")
	worker := flags.String("worker", "", "`COMMAND` that runs this program as js/wasm, as the page's worker would")
	asJSON := flags.Bool("json", false, "print what is measured as JSON, a line a question, in place of the table, and ask no other solver")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if flags.NArg() > 0 {
		return fmt.Errorf("got %q, want flags alone", flags.Arg(0))
	}
	for text := range strings.SplitSeq(*sizes, ",") {
		n, err := strconv.Atoi(text)
		if text != catalogue && (err != nil || n < 1) {
			return fmt.Errorf("sizes: got %q, want %s or numbers of parts such as 2000", text, catalogue)
		}
		set.sizes = append(set.sizes, n)
	}
	slices.Sort(set.sizes)
	if set.seeds < 1 || set.deadline <= 0 || set.patience <= 0 {
		return fmt.Errorf("seeds, deadline and patience: got %d, %s and %s, want at least one seed and times above nought", set.seeds, set.deadline, set.patience)
	}
	if *asJSON {
		lines := json.NewEncoder(out)
		return set.measure(func(l line) error { return lines.Encode(l) })
	}
	return set.report(*worker, out, watched(progress))
}

// watched is where a line that is written over and over goes: nowhere but to a terminal.
func watched(progress io.Writer) io.Writer {
	if f, ok := progress.(*os.File); ok {
		if info, err := f.Stat(); err == nil && info.Mode()&os.ModeCharDevice != 0 {
			return progress
		}
	}
	return io.Discard
}

// catalogue is what the catalog as it is goes by among the sizes.
const catalogue = "catalog"

// report measures every column in a process of its own, then what the page's worker and other solvers take, and prints the table.
func (set *setting) report(worker string, out, progress io.Writer) error {
	self, err := os.Executable()
	if err != nil {
		return err
	}
	r := &report{setting: set}
	for _, column := range set.sizes {
		one := *set
		one.sizes = []int{column}
		if err := one.remote([]string{self}, &r.reading, progress); err != nil {
			return err
		}
	}
	if r.paged, err = set.page(worker, progress); err != nil {
		return err
	}
	if r.solved, err = set.solvers(progress); err != nil {
		return err
	}
	fmt.Fprintf(out, "The planner on %d cores, %s/%s, %s; deadline of a question %s.\n", runtime.NumCPU(), runtime.GOOS, runtime.GOARCH, runtime.Version(), set.deadline)
	r.print(out)
	return nil
}

// until is a context that ends at a time. A timer would not come through where the only thread computes, as in the page's worker;
// it is the same for both.
type until struct {
	context.Context
	end time.Time
}

// within is a context that ends in a while.
func within(d time.Duration) until { return until{context.Background(), time.Now().Add(d)} }

// Done is closed once the time has come.
func (u until) Done() <-chan struct{} {
	done := make(chan struct{})
	if u.Err() != nil {
		close(done)
	}
	return done
}

// Err tells that the time has come.
func (u until) Err() error {
	if time.Now().After(u.end) {
		return context.DeadlineExceeded
	}
	return nil
}
