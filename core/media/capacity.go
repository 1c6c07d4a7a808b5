package media

import "fmt"

// Decimal and binary multiples, in bytes. Source: IEC 80000-13.
const (
	KB  = 1_000
	MB  = 1_000 * KB
	GB  = 1_000 * MB
	TB  = 1_000 * GB
	KiB = 1_024
	MiB = 1_024 * KiB
	GiB = 1_024 * MiB
	TiB = 1_024 * GiB
)

// UsableBytes is what is left of a drive's capacity after the file system's own share and the free space to keep, both
// in thousandths, each rounded down. A share outside 0 to 1000 is an error.
//
// Source: the chain is common practice; 0 to 50 ‰ for a file system.
func UsableBytes(capacityBytes, fileSystemPermille, headroomPermille int64) (int64, error) {
	for _, share := range []int64{fileSystemPermille, headroomPermille} {
		if share < 0 || share > 1000 {
			return 0, fmt.Errorf("usable capacity: share of %d ‰: expected 0 to 1000", share)
		}
	}
	return lessShare(lessShare(capacityBytes, fileSystemPermille), headroomPermille), nil
}

func lessShare(size, permille int64) int64 {
	keep := 1000 - permille
	return size/1000*keep + size%1000*keep/1000
}

// Free space to keep, in thousandths. Source: common practice (10 to 20 % solid-state, 10 to 15 % disk, 25 % scratch).
const (
	HeadroomSolidStatePermille = 200
	HeadroomDiskPermille       = 150
	HeadroomScratchPermille    = 250
)

// Array is a way to join drives.
type Array int

// Ways to join drives.
const (
	RAID0 Array = iota
	RAID1
	RAID5
	RAID6
	RAID10
)

// ArrayResult is what an array of drives gives.
type ArrayResult struct {
	Bytes    int64
	Survives int // drives that may fail, whichever they are
}

// ArrayOf joins drives of the given capacities; each counts as the smallest. RAID 0 and 1 ask one drive or more (two to be
// of use), RAID 5 three, RAID 6 four, RAID 10 an even number from four. An array is not a backup.
//
// Source: SNIA definitions, from memory.
func ArrayOf(kind Array, driveBytes []int64) (ArrayResult, error) {
	n := len(driveBytes)
	least := [...]int{RAID0: 1, RAID1: 1, RAID5: 3, RAID6: 4, RAID10: 4}
	if kind < RAID0 || kind > RAID10 {
		return ArrayResult{}, fmt.Errorf("array kind %d: expected RAID 0, 1, 5, 6 or 10", int(kind))
	}
	if n < least[kind] {
		return ArrayResult{}, fmt.Errorf("array of %d drives: expected %d or more", n, least[kind])
	}
	if kind == RAID10 && n%2 != 0 {
		return ArrayResult{}, fmt.Errorf("array of %d drives: expected an even number", n)
	}
	smallest := driveBytes[0]
	for _, size := range driveBytes {
		smallest = min(smallest, size)
	}
	switch kind {
	case RAID1:
		return ArrayResult{smallest, n - 1}, nil
	case RAID5:
		return ArrayResult{int64(n-1) * smallest, 1}, nil
	case RAID6:
		return ArrayResult{int64(n-2) * smallest, 2}, nil
	case RAID10:
		return ArrayResult{int64(n/2) * smallest, 1}, nil
	}
	return ArrayResult{int64(n) * smallest, 0}, nil
}
