// Command slipfit listens to a brief, plans a machine from a shop's stock, and proves that it goes together.
//
// Exit codes: 0 fine; 1 something clashes, is short or is unknown, or nothing can be planned; 2 bad usage or input. A build
// that is found but not proven the best, since a deadline or Ctrl-C ended the search, is fine.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"

	"slipfit/catalog"
	"slipfit/core/heap"
	"slipfit/core/part"
	"slipfit/core/verb"
)

// Exit codes.
const (
	fine    = 0
	failing = 1
	bad     = 2
)

func main() {
	heap.Settle()
	os.Exit(run(context.Background(), os.Args[1:], os.Stdout, os.Stderr))
}

// command is one verb of the command line.
type command struct {
	name    string
	usage   string // arguments after the name
	short   string // one line
	long    string // what it prints and when it fails
	example string
	setup   func(*call)     // declares flags of its own
	run     func(*call) int // does it
}

// commands in the order help lists them.
func commands() []command {
	return []command{askCommand, needsCommand, planCommand, whyCommand, choicesCommand, proveCommand, outcomeCommand, balanceCommand, stepCommand, equalsCommand, calibrateCommand, sheetCommand, rulesCommand, formatsCommand, stockCommand, serveCommand, exportCommand}
}

// call is one use of a command.
type call struct {
	ctx     context.Context
	in      io.Reader
	flags   *flag.FlagSet
	args    []string
	json    bool
	catalog string
	colour  bool
	out     io.Writer
	err     io.Writer
}

func run(ctx context.Context, args []string, out, errOut io.Writer) int {
	if len(args) == 0 || args[0] == "help" && len(args) == 1 || args[0] == "-h" || args[0] == "-help" || args[0] == "--help" {
		overview(out)
		if len(args) == 0 {
			return bad
		}
		return fine
	}
	name := args[0]
	if name == "help" {
		name, args = args[1], []string{args[1], "-h"}
	}
	for _, c := range commands() {
		if c.name == name {
			return c.call(ctx, args[1:], out, errOut)
		}
	}
	fmt.Fprintf(errOut, "slipfit: no verb %q; `slipfit help` lists them\n", name)
	return bad
}

func overview(out io.Writer) {
	fmt.Fprintln(out, "slipfit plans a desktop machine from a brief and proves that it goes together.")
	fmt.Fprintln(out)
	for _, c := range commands() {
		fmt.Fprintf(out, "  %-10s %s\n", c.name, c.short)
	}
	fmt.Fprintln(out, "\nslipfit help VERB tells more. Every verb takes -json and -catalog DIR.")
	fmt.Fprintln(out, "At a terminal a line tells what a search has found so far, and how much better it may be.")
	fmt.Fprintln(out, "Ctrl-C ends a search with the best found so far; pressed again, it ends at once.")
	fmt.Fprintln(out, "Exit codes: 0 fine, 1 something clashes or is short, 2 bad usage or input.")
}

func (c command) call(ctx context.Context, args []string, out, errOut io.Writer) int {
	k := &call{ctx: ctx, in: os.Stdin, out: out, err: errOut, colour: colourful(out)}
	k.flags = flag.NewFlagSet(c.name, flag.ContinueOnError)
	k.flags.SetOutput(io.Discard)
	k.flags.BoolVar(&k.json, "json", false, "print the answer as JSON")
	k.flags.StringVar(&k.catalog, "catalog", "", "read the catalog from `DIR` in place of the built-in one")
	if c.setup != nil {
		c.setup(k)
	}
	if err := k.parse(args); err != nil {
		if errors.Is(err, flag.ErrHelp) {
			c.help(k, out)
			return fine
		}
		fmt.Fprintf(errOut, "slipfit %s: %v\n\nusage: slipfit %s %s\n", c.name, err, c.name, c.usage)
		return bad
	}
	return c.run(k)
}

// parse takes flags before, between and after the arguments.
func (k *call) parse(args []string) error {
	for {
		if err := k.flags.Parse(args); err != nil {
			return err
		}
		rest := k.flags.Args()
		if len(rest) == 0 {
			return nil
		}
		k.args = append(k.args, rest[0])
		args = rest[1:]
	}
}

func (c command) help(k *call, out io.Writer) {
	fmt.Fprintf(out, "usage: slipfit %s %s\n\n%s\n\nexample:\n  %s\n\nflags:\n", c.name, c.usage, c.long, c.example)
	k.flags.VisitAll(func(f *flag.Flag) {
		name, usage := flag.UnquoteUsage(f)
		if name != "" {
			name = " " + name
		}
		fmt.Fprintf(out, "  -%s%s\n        %s\n", f.Name, name, usage)
	})
}

// usage reports a wrong use of the verb.
func (k *call) usage(format string, args ...any) int {
	fmt.Fprintf(k.err, "slipfit %s: %s; `slipfit help %s` tells how\n", k.flags.Name(), fmt.Sprintf(format, args...), k.flags.Name())
	return bad
}

// fail reports bad input, one error a line.
func (k *call) fail(err error) int {
	for line := range strings.SplitSeq(err.Error(), "\n") {
		fmt.Fprintf(k.err, "slipfit %s: %s\n", k.flags.Name(), line)
	}
	return bad
}

// bench reads the catalog.
func (k *call) bench() (*verb.Bench, error) {
	var stock *part.Stock
	var err error
	if k.catalog == "" {
		stock, err = catalog.Embedded()
	} else {
		stock, err = catalog.Load(os.DirFS(k.catalog))
	}
	if err != nil {
		return nil, err
	}
	return &verb.Bench{Stock: stock}, nil
}

// document reads a file whole.
func document(path string) (verb.Document, error) {
	data, err := os.ReadFile(path)
	if err != nil {
		var wrong *fs.PathError
		if errors.As(err, &wrong) {
			return verb.Document{}, fmt.Errorf("%s: %w", path, wrong.Err)
		}
		return verb.Document{}, err
	}
	return verb.Document{Name: path, Data: data}, nil
}

// write keeps a file whole: it is written beside its place and moved there, so that a full disk leaves the old one.
func write(path string, data []byte) (err error) {
	tmp, err := os.CreateTemp(dirOf(path), ".slipfit-*")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, os.Remove(tmp.Name()))
		}
	}()
	_, err = tmp.Write(data)
	if err == nil {
		err = tmp.Sync()
	}
	if err = errors.Join(err, tmp.Close()); err != nil {
		return err
	}
	if err = os.Chmod(tmp.Name(), 0o644); err != nil {
		return err
	}
	return os.Rename(tmp.Name(), path)
}

func dirOf(path string) string {
	if i := strings.LastIndexByte(path, os.PathSeparator); i >= 0 {
		return path[:i+1]
	}
	return "."
}
