package predict

import (
	"slices"

	"slipfit/core/part"
	"slipfit/core/unit"
)

// sheet reads data sheets and keeps what they do not state.
type sheet struct {
	missing []string // "part: field"
}

func (s *sheet) lacks(owner *part.Article, field string) {
	if l := owner.ID + ": " + field; !slices.Contains(s.missing, l) {
		s.missing = append(s.missing, l)
	}
}

// read gives a figure, or nought and a note.
func read[T ~int64 | ~bool](s *sheet, f unit.Figure[T], owner *part.Article, field string) T {
	x, ok := f.Get()
	if !ok {
		s.lacks(owner, field)
	}
	return x
}

// thousandth reads a figure that counts thousandths of its unit as a number of that unit.
func thousandth[T ~int64](s *sheet, f unit.Figure[T], owner *part.Article, field string) float64 {
	return float64(read(s, f, owner, field)) / 1000
}

// metres reads a length.
func metres(s *sheet, f unit.Figure[unit.Length], owner *part.Article, field string) float64 {
	return float64(read(s, f, owner, field)) / 1e6
}

// cubicMetresPerS reads a flow stated in cubic metres an hour.
func cubicMetresPerS(s *sheet, f unit.Figure[unit.Flow], owner *part.Article, field string) float64 {
	return float64(read(s, f, owner, field)) / 3.6e6
}
