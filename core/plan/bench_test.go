package plan

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"slipfit/core/brief"
	"slipfit/core/part"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// trade is the needs of one order.
type trade struct {
	name  string
	needs *brief.Needs
}

// briefed are the needs of the briefs under testdata.
func briefed(t testing.TB, stock *part.Stock) []trade {
	t.Helper()
	files, err := filepath.Glob("../../testdata/briefs/*.brief.json")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	var list []trade
	for _, f := range files {
		data, err := os.ReadFile(f)
		require.NoError(t, err)
		b, err := brief.Read(f, data)
		require.NoError(t, err)
		list = append(list, trade{strings.TrimSuffix(filepath.Base(f), ".brief.json"), b.Needs(stock)})
	}
	return list
}

// trades are needs of ordinary orders, from a modest one to a large one.
var trades = []trade{
	{"bare", &brief.Needs{}},
	{"letters", order(90_000,
		brief.SingleWork, 600, 900, 30, brief.AllWork, 1500, 4000, 20, brief.MemorySize, 8<<10, 16<<10, 30,
		brief.BootSize, 200_000, 500_000, 20, brief.BootRead, 400, 3000, 10, brief.Wired, 1000, 1000, 10)},
	{"games", order(220_000,
		brief.SingleWork, 900, 1200, 40, brief.AllWork, 4000, 9000, 20, brief.MemorySize, 16<<10, 32<<10, 30,
		brief.DrawWork, 1500, 4000, 60, brief.GraphicsMemory, 8<<10, 16<<10, 40, brief.BootSize, 1_000_000, 2_000_000, 20,
		brief.BootRead, 3000, 7000, 10, brief.FastPorts, 4, 8, 5, brief.Wireless, 1000, 2400, 10)},
	{"film", order(450_000,
		brief.SingleWork, 800, 1200, 20, brief.AllWork, 8000, 24000, 60, brief.Threads, 16, 32, 20,
		brief.MemorySize, 32<<10, 96<<10, 40, brief.MemoryRate, 50_000, 90_000, 10, brief.ComputeWork, 1500, 5000, 50,
		brief.GraphicsMemory, 8<<10, 16<<10, 30, brief.BootSize, 500_000, 1_000_000, 20, brief.CacheSize, 1_000_000, 2_000_000, 30,
		brief.CacheWrite, 1000, 3000, 20, brief.ArchiveSize, 8_000_000, 16_000_000, 30, brief.Wired, 2500, 10_000, 20)},
	{"plenty", order(900_000,
		brief.AllWork, 4000, 60_000, 60, brief.MemorySize, 16<<10, 256<<10, 40, brief.DrawWork, 500, 20_000, 50,
		brief.GraphicsMemory, 4<<10, 32<<10, 30, brief.BootSize, 500_000, 8_000_000, 20, brief.ArchiveSize, 2_000_000, 60_000_000, 20)},
}

// order makes needs from a budget and rows of resource, floor, enough, weight.
func order(budget unit.Money, rows ...any) *brief.Needs {
	n := &brief.Needs{Budget: budget}
	for i := 0; i < len(rows); i += 4 {
		r := rows[i].(brief.Resource)
		n.By[r] = brief.Need{Resource: r, Floor: int64(rows[i+1].(int)), Enough: int64(rows[i+2].(int)), Weight: rows[i+3].(int), Reason: "the order asks it"}
	}
	n.Loads = []brief.Load{{Activity: "work", Processor: 100_000, Graphics: 100_000, Memory: 100_000, Drives: 50_000, Hours: 1500}}
	return n
}

func BenchmarkPlan(b *testing.B) {
	stock := generic(b)
	for _, t := range append(briefed(b, stock), trades...) {
		ask := Ask{Needs: t.needs}
		b.Run("prepare/"+t.name, func(b *testing.B) {
			for b.Loop() {
				problem(b, stock, ask)
			}
		})
		b.Run("least/"+t.name, func(b *testing.B) { answer(b, stock, ask, (*Problem).Least) })
		b.Run("best/"+t.name, func(b *testing.B) { answer(b, stock, ask, (*Problem).Best) })
	}
}

func problem(b *testing.B, stock *part.Stock, ask Ask) *Problem {
	b.Helper()
	p, err := New(stock, ask)
	if err != nil {
		b.Fatal(err)
	}
	return p
}

// answer times a question from preparation to answer.
func answer(b *testing.B, stock *part.Stock, ask Ask, question func(*Problem, context.Context) Answer) {
	var a Answer
	for b.Loop() {
		ctx, cancel := context.WithTimeout(context.Background(), 10*time.Second)
		a = question(problem(b, stock, ask), ctx)
		cancel()
	}
	b.ReportMetric(float64(a.Certificate.Nodes), "nodes")
	b.ReportMetric(float64(a.Certificate.Checks), "checks")
	b.ReportMetric(float64(a.Status), "status")
	b.ReportMetric(float64(a.Price)/100, "price")
	b.ReportMetric(float64(a.Worth)/1000, "worth")
}
