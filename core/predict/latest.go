package predict

// latest keeps what was asked for last, by key: as many as it may, and up to as many again. The zero value is empty.
type latest[K comparable, V any] struct{ young, old map[K]V }

// get is what is kept by a key.
func (l *latest[K, V]) get(k K, most int) (v V, kept bool) {
	if v, kept = l.young[k]; kept {
		return v, true
	}
	if v, kept = l.old[k]; kept {
		l.put(k, v, most)
	}
	return v, kept
}

// put keeps something. Of more than may be kept, what was not asked for since as many others came is forgotten.
func (l *latest[K, V]) put(k K, v V, most int) {
	if len(l.young) >= most || l.young == nil {
		l.young, l.old = map[K]V{}, l.young
	}
	l.young[k] = v
}
