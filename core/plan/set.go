package plan

import "math/bits"

// set is a set of small numbers, 64 to a word.
type set []uint64

func words(n int) int { return (n + 63) / 64 }

// every is all the numbers below n.
func every(n int) set {
	s := make(set, words(n))
	for i := range s {
		s[i] = ^uint64(0)
	}
	if rest := n & 63; rest > 0 {
		s[len(s)-1] = 1<<rest - 1
	}
	return s
}

func (s set) has(i int) bool { return s[i>>6]>>(i&63)&1 != 0 }
func (s set) add(i int)      { s[i>>6] |= 1 << (i & 63) }
func (s set) drop(i int)     { s[i>>6] &^= 1 << (i & 63) }

// keep leaves what is in t too.
func (s set) keep(t set) {
	for i := range s {
		s[i] &= t[i]
	}
}

// less takes out what is in t.
func (s set) less(t set) {
	for i := range s {
		s[i] &^= t[i]
	}
}

// meets reports a set that shares something with t.
func (s set) meets(t set) bool {
	for i := range s {
		if s[i]&t[i] != 0 {
			return true
		}
	}
	return false
}

// first is the first member that is in t too, −1 where there is none.
func (s set) first(t set) int {
	for i := range s {
		if w := s[i] & t[i]; w != 0 {
			return i<<6 + bits.TrailingZeros64(w)
		}
	}
	return -1
}

// inside reports a set all of which is in t.
func (s set) inside(t set) bool {
	for i := range s {
		if s[i]&^t[i] != 0 {
			return false
		}
	}
	return true
}

func (s set) count() int {
	n := 0
	for _, w := range s {
		n += bits.OnesCount64(w)
	}
	return n
}

// next is the first member at or after i, −1 where there is none.
func (s set) next(i int) int {
	w := i >> 6
	if w >= len(s) {
		return -1
	}
	if rest := s[w] >> (i & 63); rest != 0 {
		return i + bits.TrailingZeros64(rest)
	}
	for w++; w < len(s); w++ {
		if s[w] != 0 {
			return w<<6 + bits.TrailingZeros64(s[w])
		}
	}
	return -1
}

// list lists the members.
func (s set) list() []int {
	var list []int
	for i := s.next(0); i >= 0; i = s.next(i + 1) {
		list = append(list, i)
	}
	return list
}
