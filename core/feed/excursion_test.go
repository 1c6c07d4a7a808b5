package feed

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Source: beside each row of excursions.csv.
func TestExcursionVectors(t *testing.T) {
	columns := [SpanCount]string{"at_100us_w", "at_1ms_w", "at_10ms_w", "at_100ms_w", "steady_w"}
	for _, row := range vectors(t, "excursions.csv") {
		var want Peaks
		for s, c := range columns {
			want[s] = milli(t, row[c])
		}
		basis := milli(t, row["basis_w"])
		if row["what"] == "card" {
			class := CardOlder
			if row["class"] == "12-contact" {
				class = CardTwelve
			}
			require.Equal(t, want, CardPeaks(basis, class), row)
			continue
		}
		text, plug, _ := strings.Cut(row["class"], " ")
		revision, err := ParseRevision(text)
		require.NoError(t, err)
		got, promised := SupplyPeaks(basis, revision, plug == "with 12-contact plug")
		require.Equal(t, want, got, row)
		require.Equal(t, revision != Revision2, promised, row)
	}
}

func TestUnknownRevisionPromisesNothing(t *testing.T) {
	peaks, promised := SupplyPeaks(850_000, RevisionUnknown, true)
	require.False(t, promised)
	require.Equal(t, SteadyPeaks(850_000), peaks)
	for _, text := range []string{"", "2", "2.", "3", "3.2", "three"} {
		_, err := ParseRevision(text)
		require.ErrorContains(t, err, "expected 2.x, 3.0 or 3.1", text)
	}
	for _, r := range []Revision{Revision2, Revision30, Revision31} {
		back, err := ParseRevision(r.String())
		require.NoError(t, err)
		require.Equal(t, r, back)
	}
}

// Source: the guide's author in the trade press: a 300 W card, a 300 W processor and 150 W of the rest go with a 750 W
// supply of edition 3.x. Under the CEM 5.x allowance the budget is met, and to the watt at 100 ms.
func TestGuideExampleBudget(t *testing.T) {
	have, promised := SupplyPeaks(750_000, Revision30, true)
	require.True(t, promised)
	need := TotalPeaks(CardPeaks(300_000, CardTwelve), ProcessorPeaks(300_000, 300_000), SteadyPeaks(150_000))
	for s := range need {
		require.LessOrEqual(t, need[s], have[s], Span(s).String())
	}
	require.Equal(t, have[Span100ms], need[Span100ms])
	require.Equal(t, have[SpanSteady], need[SpanSteady])
	old, _ := SupplyPeaks(750_000, Revision2, false)
	require.Greater(t, need[Span100us], old[Span100us])
}

// Source: ATX12VO guide rev. 2.01, Table 3-4, within 0.5 W.
func TestDutyVectors(t *testing.T) {
	for _, row := range vectors(t, "duty.csv") {
		got, err := DutyLowMW(milli(t, row["rating_w"]), integer(t, row["peak_percent"]), integer(t, row["duty_permille"]))
		require.NoError(t, err)
		require.InDelta(t, milli(t, row["low_w"]), got, 500, row)
	}
	// The published duties are those of the excursion table's higher column.
	for s, percent := range largePercent {
		if Span(s) == SpanSteady {
			continue
		}
		low, err := DutyLowMW(1_000_000, percent, SpanDutyPermille(Span(s)))
		require.NoError(t, err)
		require.Less(t, low, int64(1_000_000))
	}
	low, err := DutyLowMW(1_000_000, 100, 250) // a peak at the rating leaves the rating
	require.NoError(t, err)
	require.Equal(t, int64(1_000_000), low)
	low, err = DutyLowMW(1_000_000, 200, 250) // k² · D = 1 leaves nothing
	require.NoError(t, err)
	require.Zero(t, low)
	_, err = DutyLowMW(1_000_000, 201, 250)
	require.ErrorContains(t, err, "exceed the rating")
	_, err = DutyLowMW(1_000_000, 100, 1000)
	require.ErrorContains(t, err, "out of range")
}

// The curve between the points passes through all five. Source: PCIe CEM 5.0, from memory.
func TestCardAllowanceCurve(t *testing.T) {
	for durationUS, want := range map[float64]float64{10: 3, 100: 3, 1e3: 2.5, 1e4: 2, 1e5: 1.5, 1e6: 1, 1e7: 1} {
		require.InDelta(t, want, CardAllowance(durationUS), 1e-12, durationUS)
	}
	for us := 50.0; us < 2e6; us *= 1.3 {
		require.GreaterOrEqual(t, CardAllowance(us), CardAllowance(us*1.3))
	}
}

// Peaks fall with time, and rise with the rating or the load.
func TestPeaksAreMonotone(t *testing.T) {
	for w := int64(1); w < 2000; w += 7 {
		supply, _ := SupplyPeaks(w*1000, Revision31, true)
		next, _ := SupplyPeaks((w+7)*1000, Revision31, true)
		twelve, older := CardPeaks(w*1000, CardTwelve), CardPeaks(w*1000, CardOlder)
		for s := range SpanCount {
			require.GreaterOrEqual(t, next[s], supply[s])
			require.GreaterOrEqual(t, twelve[s], older[s])
			if s > 0 {
				require.LessOrEqual(t, supply[s], supply[s-1])
				require.LessOrEqual(t, twelve[s], twelve[s-1])
				require.LessOrEqual(t, older[s], older[s-1])
			}
		}
	}
}

// Source: ATX 3.0 guide, Table 2-1 and § 3.1.1 (11.2 V): 65, 125 and 165 W give 257.6, 291.2 and 420.0 W.
func TestProcessorVectors(t *testing.T) {
	for _, row := range vectors(t, "processor.csv") {
		got := ProcessorPower(milli(t, row["tdp_w"]))
		require.Equal(t, milli(t, row["continuous_a"])*112/10, got.ContinuousMW, row)
		require.Equal(t, milli(t, row["peak_a"])*112/10, got.PeakMW, row)
		require.Equal(t, ProcessorRow, got.Basis)
	}
	require.Equal(t, int64(257_600), ProcessorPower(65_000).ContinuousMW)
	require.Equal(t, int64(291_200), ProcessorPower(125_000).ContinuousMW)
	require.Equal(t, int64(420_000), ProcessorPower(165_000).ContinuousMW)

	// Straight line between 65 and 125 W at 105 W: 25 A and 37.334 A (rounded up), × 11.2 V rounded up.
	require.Equal(t, ProcessorBudget{280_000, 418_141, ProcessorInterpolated}, ProcessorPower(105_000))
	require.Equal(t, ProcessorBudget{123_200, 212_800, ProcessorBelow}, ProcessorPower(10_000))
	require.Equal(t, ProcessorBudget{840_000, 896_000, ProcessorBeyond}, ProcessorPower(330_000))
}

func TestProcessorIsMonotone(t *testing.T) {
	last := ProcessorBudget{}
	for mw := int64(0); mw <= 400_000; mw += 137 {
		got := ProcessorPower(mw)
		require.GreaterOrEqual(t, got.ContinuousMW, last.ContinuousMW)
		require.GreaterOrEqual(t, got.PeakMW, last.PeakMW)
		require.GreaterOrEqual(t, got.PeakMW, got.ContinuousMW)
		last = got
	}
	peaks := ProcessorPeaks(200_000, 300_000)
	require.Equal(t, Peaks{300_000, 300_000, 300_000, 200_000, 200_000}, peaks)
	require.Equal(t, SteadyPeaks(200_000), ProcessorPeaks(200_000, 0))
}

// Source: derived from ATX 3.0 guide rev. 2.01, Table 4-9, and ATX 3.1 guide rev. 2.1a, Table 4-10.
func TestHoldUp(t *testing.T) {
	for r, want := range map[Revision]int64{Revision30: 17, Revision31: 12} {
		ms, ok := HoldUpMS(r)
		require.True(t, ok)
		require.Equal(t, want, ms)
		require.Greater(t, ms, int64(UPSTransferMS))
	}
	_, ok := HoldUpMS(Revision2)
	require.False(t, ok)
}
