package main

import (
	"context"
	"encoding/json"
	"fmt"
	"io/fs"
	"runtime"
	"strings"
	"time"

	"slipfit/catalog"
	"slipfit/core/verb"
	"slipfit/testdata/briefs"
	"slipfit/web/wire"
)

// balanceTime is how long the cheapest build that serves is looked for; the calls that follow wait so long.
const balanceTime = 5 * time.Second

// until is a context that ends at a time, or before with the one it is made from. A timer would not come through while the only
// thread computes.
type until struct {
	context.Context
	end time.Time
}

// Done is closed once it has ended. Each call looks anew: a channel that is kept does not close.
func (u until) Done() <-chan struct{} {
	done := make(chan struct{})
	if u.Err() != nil {
		close(done)
	}
	return done
}

// Err tells that it has ended.
func (u until) Err() error {
	if err := u.Context.Err(); err != nil {
		return err
	}
	if time.Now().After(u.end) {
		return context.DeadlineExceeded
	}
	return nil
}

// worker answers the page through the verbs of the core. The stock is read by the first call that needs it.
type worker struct{ bench *verb.Bench }

// answer does one verb for the page. Args and the result are JSON.
func (w *worker) answer(ctx context.Context, name string, args []byte, progress func(wire.Progress)) ([]byte, error) {
	switch name {
	case "version":
		return json.Marshal(map[string]string{"go": runtime.Version()})
	case "examples":
		return examples()
	}
	if w.bench == nil {
		progress(wire.Progress{Note: "reading the stock"})
		stock, err := catalog.Embedded()
		if err != nil {
			return nil, err
		}
		w.bench = &verb.Bench{Stock: stock}
	}
	if within := allowed(name, args); within > 0 {
		ctx = until{ctx, time.Now().Add(within)}
	}
	var told wire.Pace
	result, err := w.bench.Do(ctx, name, args, func(done float64, note string) {
		if told.Due(note, time.Now()) {
			progress(wire.Progress{Done: done, Note: note})
		}
	})
	if err != nil {
		return nil, refusal{err}
	}
	return result, nil
}

// allowed is how long a call may search: what the page says in within_ms, and for a balance so long; 0 has no bound.
func allowed(name string, args []byte) time.Duration {
	if name == "balance" {
		return balanceTime
	}
	var said struct {
		Within int `json:"within_ms"`
	}
	if json.Unmarshal(args, &said) != nil {
		return 0 // the verb refuses what is no JSON
	}
	return time.Duration(said.Within) * time.Millisecond
}

// examples lists the example briefs, each with its title and its file.
func examples() ([]byte, error) {
	type example struct {
		Name  string          `json:"name"`
		Title string          `json:"title"`
		Who   string          `json:"who"`
		File  json.RawMessage `json:"file"`
	}
	names, err := fs.Glob(briefs.Files, "*.brief.json")
	if err != nil {
		return nil, err
	}
	var list []example
	for _, name := range names {
		data, err := briefs.Files.ReadFile(name)
		if err != nil {
			return nil, err
		}
		e := example{Name: strings.TrimSuffix(name, ".brief.json"), File: data}
		if err := json.Unmarshal(data, &e); err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		e.File = data
		list = append(list, e)
	}
	return json.Marshal(list)
}
