package air

import "math"

// solveDense solves A·x = b in place by elimination with partial pivoting; a holds n rows of n, b becomes x. It reports
// false when A is singular to working precision.
func solveDense(a, b []float64, n int) bool {
	for c := range n {
		best, at := math.Abs(a[c*n+c]), c
		for r := c + 1; r < n; r++ {
			if v := math.Abs(a[r*n+c]); v > best {
				best, at = v, r
			}
		}
		if !(best > 1e-300) {
			return false
		}
		if at != c {
			for k := c; k < n; k++ {
				a[c*n+k], a[at*n+k] = a[at*n+k], a[c*n+k]
			}
			b[c], b[at] = b[at], b[c]
		}
		inv := 1 / a[c*n+c]
		for r := c + 1; r < n; r++ {
			f := a[r*n+c] * inv
			if f == 0 {
				continue
			}
			for k := c + 1; k < n; k++ {
				a[r*n+k] -= float64(f * a[c*n+k])
			}
			b[r] -= float64(f * b[c])
		}
	}
	for r := n - 1; r >= 0; r-- {
		v := b[r]
		for k := r + 1; k < n; k++ {
			v -= float64(a[r*n+k] * b[k])
		}
		b[r] = v / a[r*n+r]
	}
	return true
}
