package feed

// ProcessorBasis says how a processor budget was read from the design guide's table.
type ProcessorBasis int

// How the guide's table was read.
const (
	ProcessorRow          ProcessorBasis = iota // the table has this power
	ProcessorInterpolated                       // between two rows
	ProcessorBelow                              // under the lowest row, which is taken
	ProcessorBeyond                             // over the highest row, scaled up in proportion
)

// ProcessorBudget is what the processor asks of the 12 V processor plugs, in mW.
type ProcessorBudget struct {
	ContinuousMW int64 // anything over 1 s: the turbo limit
	PeakMW       int64 // at most 10 ms
	Basis        ProcessorBasis
}

// ProcessorPlanMV is the voltage by which the guide turns processor amperes into watts for a budget.
//
// Source: ATX 3.0 guide § 3.1.1 ("round up slightly").
const ProcessorPlanMV = 11_200

// SplitRailMA is the current above which a supply with 240 VA energy-hazard protection must split its 12 V rails.
//
// Source: ATX 3.0 guide, Table 2-1, note 1.
const SplitRailMA = 18_000

// processorRows is Table 2-1 of the ATX 3.0 guide: nominal power, continuous and peak current of 12V2.
var processorRows = [...]struct{ powerMW, continuousMA, peakMA int64 }{
	{35_000, 11_000, 19_000},
	{65_000, 23_000, 34_000},
	{125_000, 26_000, 39_000},
	{165_000, 37_500, 40_000},
}

// ProcessorPower is the continuous and peak budget for a processor whose nominal power (TDP) is tdpMW: the guide's
// amperes × 11.2 V, rounded up. Between rows the currents are interpolated on a straight line and rounded up; under 35 W
// the 35 W row is taken; over 165 W that row is scaled in proportion (our assumption, not the guide's). A data sheet's
// own limits beat this.
//
// Source: ATX 3.0 guide rev. 2.0, Table 2-1.
func ProcessorPower(tdpMW int64) ProcessorBudget {
	first, last := processorRows[0], processorRows[len(processorRows)-1]
	if tdpMW < first.powerMW {
		return processorBudget(first.continuousMA, first.peakMA, ProcessorBelow)
	}
	if tdpMW > last.powerMW {
		return processorBudget(ceilDiv(last.continuousMA*tdpMW, last.powerMW), ceilDiv(last.peakMA*tdpMW, last.powerMW), ProcessorBeyond)
	}
	for i, row := range processorRows {
		if tdpMW == row.powerMW {
			return processorBudget(row.continuousMA, row.peakMA, ProcessorRow)
		}
		if tdpMW < row.powerMW {
			low := processorRows[i-1]
			past, width := tdpMW-low.powerMW, row.powerMW-low.powerMW
			continuous := low.continuousMA + ceilDiv((row.continuousMA-low.continuousMA)*past, width)
			peak := low.peakMA + ceilDiv((row.peakMA-low.peakMA)*past, width)
			return processorBudget(continuous, peak, ProcessorInterpolated)
		}
	}
	return processorBudget(last.continuousMA, last.peakMA, ProcessorRow)
}

func processorBudget(continuousMA, peakMA int64, basis ProcessorBasis) ProcessorBudget {
	return ProcessorBudget{
		ContinuousMW: ceilDiv(continuousMA*ProcessorPlanMV, 1000),
		PeakMW:       ceilDiv(peakMA*ProcessorPlanMV, 1000),
		Basis:        basis,
	}
}

// ProcessorPeaks spreads a processor's continuous and peak power, in mW, over the time scales: the peak lasts at most
// 10 ms, everything longer is continuous.
//
// Source: ATX 3.0 guide, Table 2-1, notes.
func ProcessorPeaks(continuousMW, peakMW int64) Peaks {
	peakMW = max(peakMW, continuousMW)
	return Peaks{peakMW, peakMW, peakMW, continuousMW, continuousMW}
}
