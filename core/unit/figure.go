package unit

// Figure is a figure of a data sheet, which may be missing. The zero Figure is missing: unknown, never nought.
type Figure[T ~int64 | ~bool] struct {
	value T
	known bool
}

// Known is a stated figure.
func Known[T ~int64 | ~bool](v T) Figure[T] { return Figure[T]{v, true} }

// Get returns the figure and whether the sheet states it.
func (f Figure[T]) Get() (T, bool) { return f.value, f.known }

// Set states the figure.
func (f *Figure[T]) Set(v T) { *f = Known(v) }

// IsZero reports that the sheet does not state the figure, so that writers leave it out.
func (f Figure[T]) IsZero() bool { return !f.known }

// Or returns the figure, or v where the sheet does not state it. Only for drawing; a verdict asks Get.
func (f Figure[T]) Or(v T) T {
	if f.known {
		return f.value
	}
	return v
}
