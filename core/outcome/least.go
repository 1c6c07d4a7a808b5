package outcome

import (
	"errors"
	"math"
)

// errAlike says that the measurements do not tell the coefficients apart.
var errAlike = errors.New("the measurements are too alike to tell the coefficients apart")

// leastSquares finds the b that makes the sum of squares of y − X·b least, by Householder reflections. X has as many rows as
// y and at least as many rows as columns. A column whose part that no earlier column explains is less than the share alike
// of it is refused.
//
// Source: Golub and Van Loan, Matrix Computations, Householder QR and full-rank least squares, from memory; checked against
// the certified values of NIST StRD.
func leastSquares(x [][]float64, y []float64, alike float64) ([]float64, error) {
	rows, columns := len(x), len(x[0])
	if rows < columns {
		return nil, errAlike
	}
	a := make([][]float64, rows)
	for i := range x {
		a[i] = append(append(make([]float64, 0, columns+1), x[i]...), y[i])
	}
	for k := range columns {
		var whole, below float64
		for i := range rows {
			square := float64(a[i][k] * a[i][k])
			whole += square
			if i >= k {
				below += square
			}
		}
		below = math.Sqrt(below)
		if whole == 0 || below <= alike*math.Sqrt(whole) {
			return nil, errAlike
		}
		reflect(a, k, below)
	}
	b := make([]float64, columns)
	for k := columns - 1; k >= 0; k-- {
		sum := a[k][columns]
		for j := k + 1; j < columns; j++ {
			sum -= float64(a[k][j] * b[j])
		}
		b[k] = sum / a[k][k]
	}
	return b, nil
}

// reflect turns the rows from k on so that column k is nought below its k-th row; length is that of the column from there.
func reflect(a [][]float64, k int, length float64) {
	if a[k][k] > 0 {
		length = -length
	}
	v := make([]float64, len(a))
	var square float64
	for i := k; i < len(a); i++ {
		v[i] = a[i][k]
		if i == k {
			v[i] -= length
		}
		square += float64(v[i] * v[i])
	}
	for j := k; j < len(a[k]); j++ {
		var dot float64
		for i := k; i < len(a); i++ {
			dot += float64(v[i] * a[i][j])
		}
		for i := k; i < len(a); i++ {
			a[i][j] -= float64(2 * dot / square * v[i])
		}
	}
}
