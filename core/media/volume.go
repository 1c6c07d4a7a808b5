package media

// BytesPerHour is a stream's volume in an hour: rate × 450, exact (1 Mbit/s is 0.45 GB an hour).
func BytesPerHour(bitPerS int64) int64 {
	return bitPerS * 450
}

// BytesFor is a stream's volume over seconds, rounded up.
func BytesFor(bitPerS, seconds int64) int64 {
	return bitPerS/8*seconds + ceilDiv(bitPerS%8*seconds, 8)
}

// SecondsIn is how long a stream fits in a capacity, rounded down; ok is false for a rate not above zero.
func SecondsIn(capacityBytes, bitPerS int64) (seconds int64, ok bool) {
	if bitPerS <= 0 {
		return 0, false
	}
	whole := capacityBytes / bitPerS // byte per bit/s: eight seconds each
	rest := capacityBytes % bitPerS
	return whole*8 + rest*8/bitPerS, true
}

// CaptureBytePerS is the sustained write a recording asks of its drive: rate × streams × 1.5, rounded up.
//
// Source: the 1.5 is common practice.
func CaptureBytePerS(bitPerS, streams int64) int64 {
	return ceilDiv(bitPerS*streams*3, 16)
}
