package feed

import (
	"errors"
	"fmt"
)

// UPS is an uninterruptible supply by its two ratings. A load must be under both.
type UPS struct {
	RatedMVA int64
	RatedMW  int64
}

// UPSPlannedSharePercent is the share of the W rating a load should stay within. Source: common practice.
const UPSPlannedSharePercent = 80

// UPSTransferMS is a typical longest transfer time in ms, to hold against the supply's hold-up. Source: common practice.
const UPSTransferMS = 10

// FreeMW is what is left of the planned share of the W rating; below zero the load is too much.
func (u UPS) FreeMW(loadMW int64) int64 {
	return u.RatedMW*UPSPlannedSharePercent/100 - loadMW
}

// FreeMVA is what is left of the VA rating; below zero the load is too much.
func (u UPS) FreeMVA(loadMVA int64) int64 {
	return u.RatedMVA - loadMVA
}

// RuntimePoint is one row of a data sheet's runtime table.
type RuntimePoint struct {
	LoadMW   int64
	RuntimeS int64
}

// ErrUPSLoad says that the load is above the last row of the runtime table: the sheet promises no time at all.
var ErrUPSLoad = errors.New("load above the runtime table")

// UPSRuntimeS is the runtime in s at loadMW, rounded down, from a table sorted by rising load.
//
// Between two rows the drain 1/t is interpolated on a straight line in load. A battery behind an inverter of fixed loss
// has exactly that line, and one that gives less when drained faster (Peukert) has a drain under it, so the answer is not
// above the true time for either, and always between its neighbours. Under the first row the first row's time is taken.
// A bad table (empty, not rising in load, rising in time, a value not above zero) is an error.
func UPSRuntimeS(table []RuntimePoint, loadMW int64) (int64, error) {
	if len(table) == 0 {
		return 0, errors.New("runtime table is empty")
	}
	if loadMW < 0 {
		return 0, fmt.Errorf("load %d mW: expected zero or more", loadMW)
	}
	for i, row := range table {
		if row.LoadMW <= 0 || row.RuntimeS <= 0 {
			return 0, fmt.Errorf("runtime table row %d: %d mW, %d s: expected both above zero", i, row.LoadMW, row.RuntimeS)
		}
		if i > 0 && (row.LoadMW <= table[i-1].LoadMW || row.RuntimeS > table[i-1].RuntimeS) {
			return 0, fmt.Errorf("runtime table row %d: %d mW, %d s: expected more load and no more time than the row before", i, row.LoadMW, row.RuntimeS)
		}
	}
	if loadMW <= table[0].LoadMW {
		return table[0].RuntimeS, nil
	}
	for i := 1; i < len(table); i++ {
		low, high := table[i-1], table[i]
		if loadMW > high.LoadMW {
			continue
		}
		width := high.LoadMW - low.LoadMW
		weight := high.RuntimeS*(high.LoadMW-loadMW) + low.RuntimeS*(loadMW-low.LoadMW)
		return low.RuntimeS * high.RuntimeS * width / weight, nil
	}
	return 0, ErrUPSLoad
}
