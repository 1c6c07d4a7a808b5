package media

// Working memory by habit of the trade. Source of this file: common practice; a shop may hold other figures.

// GuestBytes is the memory of a host for virtual machines: the guests' sum plus 8 GB for the host (4 to 8, the upper end).
func GuestBytes(guestBytes ...int64) int64 {
	sum := int64(8 * GB)
	for _, g := range guestBytes {
		sum += g
	}
	return sum
}

// OvercommitPercent is how far guests may be promised more than there is.
const OvercommitPercent = 125

// Memory per parallel compile job: ordinary code, and heavy C++ template code.
const (
	CompileJobBytes      = 2 * GB
	CompileJobHeavyBytes = 4 * GB
)

// TableBytes is the memory for data work in memory: three times the largest table held (2 to 3, the upper end).
func TableBytes(largestTableBytes int64) int64 {
	return 3 * largestTableBytes
}
