package brief

import "slipfit/core/unit"

// LentMemory is what a processor's own graphics may borrow of main memory; every memory need includes it.
const LentMemory = 2 * unit.GiB

// largestModule is the largest memory module sold, MiB; what two of them do not make is bought as four or eight. Common practice.
const largestModule = int64(64 * unit.GiB)

// sold lists the sizes a resource is sold in, rising, in its own base; nil where it is not sold by size. Memory is what two, four or
// eight equal modules make.
func sold(r Resource) []int64 {
	switch r {
	case MemorySize:
		return scale(int64(unit.GiB), 8, 16, 32, 48, 64, 96, 128, 192, 256, 384, 512, 768, 1024)
	case GraphicsMemory:
		return scale(int64(unit.GiB), 1, 2, 4, 6, 8, 10, 12, 16, 20, 24, 32, 48, 64, 80, 96)
	case Threads:
		return []int64{4, 8, 12, 16, 20, 24, 28, 32, 48, 64, 96, 128}
	case BootSize, CacheSize:
		return scale(int64(unit.Gigabyte), 250, 500, 1000, 2000, 4000, 8000, 16000)
	case ArchiveSize:
		return scale(int64(unit.Terabyte), 1, 2, 4, 6, 8, 10, 12, 16, 20, 24)
	}
	return nil
}

func scale(base int64, sizes ...int64) []int64 {
	for i := range sizes {
		sizes[i] *= base
	}
	return sizes
}

// Sold rounds an amount up to the next size a resource is sold in; past the largest, to so many of the largest. What is not
// sold by size stays as it is.
func Sold(r Resource, n int64) int64 {
	sizes := sold(r)
	if n <= 0 || sizes == nil {
		return n
	}
	for _, s := range sizes {
		if n <= s {
			return s
		}
	}
	largest := sizes[len(sizes)-1]
	return (n + largest - 1) / largest * largest
}
