package link

import "fmt"

// The memory interface: a channel is 64 data bits wide (DDR5 splits it in two subchannels of 32).
//
// Source: JESD79-4, JESD79-5.
const (
	ChannelBytes    = 8
	BurstBeatsDDR4  = 8
	BurstBeatsDDR5  = 16
	SupplyMVDDR4    = 1_200
	SupplyMVDDR5    = 1_100
	TopRateDDR4     = 3_200 // MT/s
	TopRateDDR5     = 8_800 // MT/s, JESD79-5C from memory; 6400 in the first edition
	TopDieGbitDDR4  = 16
	TopDieGbitDDR5  = 64
	StreamLowShare  = 75 // percent of the peak that streaming reads reach, measurement habit
	StreamHighShare = 90
)

// MemoryBytePerS is the peak bandwidth of memory: MT/s × 8 bytes × channels, in byte/s.
func MemoryBytePerS(megaTransfersPerS, channels int64) int64 {
	return megaTransfersPerS * 1_000_000 * ChannelBytes * channels
}

// ModuleGiB is the capacity of a module: die capacity × (64 ÷ chip width) × ranks ÷ 8, in GiB. Chip widths are 4, 8 or 16
// bits; others are an error.
func ModuleGiB(dieGbit, chipWidthBits, ranks int64) (int64, error) {
	switch chipWidthBits {
	case 4, 8, 16:
	default:
		return 0, fmt.Errorf("memory chip width %d bits: expected 4, 8 or 16", chipWidthBits)
	}
	return dieGbit * (64 / chipWidthBits) * ranks / 8, nil
}
