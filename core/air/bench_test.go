package air_test

import (
	"testing"

	"slipfit/core/air"
)

func benchmarkSolve(b *testing.B, m air.Machine) {
	var (
		s air.Solver
		r air.Result
	)
	if err := s.Solve(&m, &r); err != nil {
		b.Fatal(err)
	}
	b.ReportMetric(float64(r.Evaluations), "evaluations")
	b.ReportAllocs()
	for b.Loop() {
		if err := s.Solve(&m, &r); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSolveFixedSpeeds(b *testing.B) { benchmarkSolve(b, workedMachine()) }

func BenchmarkSolveCoolantCurve(b *testing.B) {
	m := workedMachine()
	onCoolantCurve(&m)
	benchmarkSolve(b, m)
}

// All fans on curves of three temperatures.
func BenchmarkSolveAllCurves(b *testing.B) { benchmarkSolve(b, controlledMachine()) }

// The same, asked for more than it can hold.
func BenchmarkSolveHeldPower(b *testing.B) {
	m := controlledMachine()
	m.Consumers[processor].PowerW, m.Consumers[graphics].PowerW = 400, 700
	benchmarkSolve(b, m)
}

func BenchmarkSolveSandwich(b *testing.B) { benchmarkSolve(b, sandwichMachine()) }

func BenchmarkSolveFresh(b *testing.B) {
	m := controlledMachine()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := air.Solve(m); err != nil {
			b.Fatal(err)
		}
	}
}
