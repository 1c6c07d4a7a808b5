package verb_test

import (
	"context"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slipfit/catalog"
	"slipfit/core/build"
	"slipfit/core/format"
	"slipfit/core/part"
	"slipfit/core/unit"
	"slipfit/core/verb"

	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "write golden proofs and sheets anew")

// job is a brief of testdata with the cheapest build for it.
type job struct {
	name  string
	bench *verb.Bench
	brief verb.Document
	plan  *verb.Plan
}

func (j *job) file() verb.Document {
	return verb.Document{Name: j.name, Data: format.Write(j.plan.Build)}
}

// fresh gives the job a stock of its own, so that a test may change it.
func (j *job) fresh(t *testing.T) *verb.Bench {
	t.Helper()
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	return &verb.Bench{Stock: stock}
}

// jobs plans every brief of testdata for the least price.
func jobs(t *testing.T) []*job {
	t.Helper()
	files, err := filepath.Glob("../../testdata/briefs/*.brief.json")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(files), 8)
	var list []*job
	for _, f := range files {
		data, err := os.ReadFile(f)
		require.NoError(t, err)
		j := &job{name: strings.TrimSuffix(filepath.Base(f), ".brief.json"), brief: verb.Document{Name: f, Data: data}}
		j.bench = j.fresh(t)
		j.plan, err = j.bench.Plan(context.Background(), j.brief, verb.PlanAsk{For: "least"}, nil)
		require.NoError(t, err)
		require.Equal(t, "optimal", j.plan.Status, j.name)
		list = append(list, j)
	}
	return list
}

// golden compares a text with a file of testdata.
func golden(t *testing.T, path, got string) {
	t.Helper()
	path = filepath.Join("../../testdata", path)
	if *update {
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, string(want), got, "%s; after reading the difference: go test ./core/verb -update", path)
}

// TestGoldenProofs holds the cheapest build of every brief, its price and every one of its margins to what was read and
// found right: a rule, a part or a need that changes shows here.
func TestGoldenProofs(t *testing.T) {
	for _, j := range jobs(t) {
		t.Run(j.name, func(t *testing.T) {
			p, err := j.bench.Prove(t.Context(), j.file(), &j.brief)
			require.NoError(t, err)
			require.True(t, p.Stands)
			require.Zero(t, p.Counts["clash"]+p.Counts["short"]+p.Counts["unknown"])
			require.Equal(t, j.plan.Proof.Price, p.Price, "plan and prove tell one price")
			var b strings.Builder
			for _, l := range p.Parts {
				fmt.Fprintf(&b, "%-10s %d × %s\n", l.Seat, l.Count, l.ID)
			}
			fmt.Fprintf(&b, "price      %s %s\nworth      %d\n\n", p.Price, p.Currency, p.Worth)
			for _, m := range p.Margins {
				word := m.Verdict
				if m.Advice {
					word = "advice"
				}
				fmt.Fprintf(&b, "%-7s %s: %s: have %s, need %s\n", word, m.Rule, m.Subject, m.Have, m.Need)
			}
			golden(t, "proofs/"+j.name+".golden", b.String())
		})
	}
}

// TestGoldenSheets holds the papers of every job to what was read and found right.
func TestGoldenSheets(t *testing.T) {
	stamp := verb.Stamp{Number: "12", Revision: "A", Date: "2026-01-02"}
	for _, j := range jobs(t) {
		for _, name := range []string{"quote", "forecast"} {
			p, err := j.bench.Sheet(name, j.file(), &j.brief, stamp)
			require.NoError(t, err)
			require.True(t, p.Stands)
			golden(t, "sheets/"+j.name+"."+name+".golden", p.Paper.Text(80))
		}
	}
}

// TestWhatBreaksIsCaught takes the planned build of every brief and spoils it in the ways a shop spoils one. The rule that
// should catch it must, and no build passes.
func TestWhatBreaksIsCaught(t *testing.T) {
	all := jobs(t)
	for _, spoil := range []struct {
		name  string
		rules []string                  // at least one of them fails
		do    func(b *build.Build) bool // false where the build has nothing to spoil
	}{
		{"a longer card", []string{"graphics-length", "radiator-card"}, func(b *build.Build) bool {
			if b.Graphics == nil {
				return false
			}
			b.Graphics.Length = unit.Known(b.Layout.Card.Length.Or(0) + unit.Millimetre/10)
			return true
		}},
		{"a thicker card", []string{"graphics-thickness", "graphics-slot"}, func(b *build.Build) bool {
			if b.Graphics == nil {
				return false
			}
			b.Graphics.Thickness = unit.Known(b.Layout.Card.Thickness.Or(0) + b.Shift() + unit.Millimetre/10)
			return true
		}},
		{"a weaker supply", []string{"supply-steady"}, func(b *build.Build) bool {
			b.Supply.Rating = unit.Known(b.Supply.Rating.Or(0) / 8)
			return true
		}},
		{"another socket", []string{"socket"}, func(b *build.Build) bool { b.Processor.Socket += "x"; return true }},
		{"a third module on a two-slot board", []string{"memory-count"}, func(b *build.Build) bool {
			b.Board.Slots = unit.Known(unit.Whole(2))
			b.Memory.Modules = unit.Known(unit.Whole(3))
			b.Kits = 1
			return true
		}},
		{"a taller cooler", []string{"cooler-height"}, func(b *build.Build) bool {
			if b.Cooler.Air == nil {
				return false
			}
			b.Cooler.Air.Height = unit.Known(b.Layout.Cooler.Or(0) - b.Shift() + unit.Millimetre/10)
			return true
		}},
		{"memory of the other generation", []string{"memory-type"}, func(b *build.Build) bool {
			b.Memory.Type = map[part.MemoryType]part.MemoryType{part.DDR4: part.DDR5, part.DDR5: part.DDR4}[b.Memory.Type]
			return true
		}},
		{"a supply too long for its bay", []string{"supply-length"}, func(b *build.Build) bool {
			b.Supply.Length = unit.Known(b.Layout.Supply.Length.Or(0) + unit.Millimetre/10)
			return true
		}},
		{"a board too large", []string{"board-form"}, func(b *build.Build) bool { b.Layout.Boards = []part.BoardForm{}; return true }},
		{"a card plug nobody has", []string{"plugs"}, func(b *build.Build) bool {
			if b.Graphics == nil {
				return false
			}
			b.Graphics.Sockets = []part.Socket{{Kind: part.SocketCard12, Count: unit.Known(unit.Whole(6))}}
			return true
		}},
		{"half the memory", []string{"serve-memory"}, func(b *build.Build) bool {
			b.Memory.Module = unit.Known(b.Memory.Module.Or(0) / 4)
			return true
		}},
		{"a figure nobody stated", []string{"supply-length"}, func(b *build.Build) bool {
			b.Supply.Length = unit.Figure[unit.Length]{}
			return true
		}},
	} {
		t.Run(spoil.name, func(t *testing.T) {
			spoiled := 0
			for _, j := range all {
				bench := j.fresh(t)
				b, err := build.Read(j.name, j.file().Data, bench.Stock)
				require.NoError(t, err)
				if !spoil.do(b) {
					continue
				}
				spoiled++
				p, err := bench.Prove(t.Context(), verb.Document{Name: j.name, Data: format.Write(b.File())}, &j.brief)
				require.NoError(t, err)
				require.False(t, p.Stands, j.name)
				var failing []string
				for _, m := range p.Margins {
					if !m.Advice && m.Verdict != "snug" && m.Verdict != "loose" {
						failing = append(failing, m.Rule)
					}
				}
				require.True(t, intersect(failing, spoil.rules), "%s: %v fail, none of %v", j.name, failing, spoil.rules)
			}
			require.Positive(t, spoiled)
		})
	}
}

func intersect(a, b []string) bool {
	for _, x := range a {
		for _, y := range b {
			if x == y {
				return true
			}
		}
	}
	return false
}
