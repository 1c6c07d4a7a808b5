package plan

// memory holds what a query found, by the classes of its options: in a table while that is small, else in a map. Of a rule that
// serves nothing, only whether it fails is to be known, and that in a quarter of the room.
type memory struct {
	id    int      // no other of its Index has it
	table []int32  // found + asked
	stood [][]int8 // the same, of a rule that serves nothing, in pages; nil of a page of which nothing was asked
	pace  []int    // by column: how far apart two classes lie in the table
	few   map[uint64]int32
	many  map[manyClasses]int32
	net   []int64  // of a sum: what each option gives less what it takes
	ends  [2]int   // of a sum: an option that gives most and one that gives least
	equal *classes // of a sum: the options of equal net
	lower []set    // of a sum, by class: the options of no more net; nil until it is asked for
}

// manyClasses is the classes of up to sixteen columns, sixteen bits to each.
type manyClasses [4]uint64

// asked is what is added to what was found, so that nought is what was not asked yet.
const asked = 2

// tableTo is the largest table that is kept, stoodTo the largest of a rule that serves nothing, mapTo the largest map: past it,
// a memory starts anew.
const (
	tableTo = 1 << 18
	stoodTo = 1 << 21
	mapTo   = 1 << 18

	pageBits = 10 // of a place within a page
)

func newMemory(by []*classes, serves bool) *memory {
	m := &memory{pace: make([]int, len(by))}
	n := 1
	for i := len(by) - 1; i >= 0; i-- {
		m.pace[i] = n
		if n <= stoodTo {
			n *= max(by[i].count, 1)
		}
	}
	switch {
	case n <= stoodTo && !serves:
		m.stood = make([][]int8, n>>pageBits+1)
	case n <= tableTo:
		m.table = make([]int32, n)
	case len(by) <= 4:
		m.few = map[uint64]int32{}
	default:
		m.many = map[manyClasses]int32{}
	}
	return m
}

// recall returns what was found for some options, or else asks and remembers it.
func (m *memory) recall(by []*classes, options []int, ask func() int64) int64 {
	switch {
	case m.stood != nil:
		at := m.place(by, options)
		page := m.stood[at>>pageBits]
		if page == nil {
			page = make([]int8, 1<<pageBits)
			m.stood[at>>pageBits] = page
		}
		said := &page[at&(1<<pageBits-1)]
		if *said == 0 {
			*said = int8(ask()) + asked
		}
		return int64(*said) - asked
	case m.table != nil:
		at := m.place(by, options)
		if m.table[at] == 0 {
			m.table[at] = int32(ask()) + asked
		}
		return int64(m.table[at]) - asked
	case m.few != nil:
		key := uint64(0)
		for i, o := range options {
			key = key<<16 | uint64(uint16(by[i].of[o]))
		}
		w, ok := m.few[key]
		if !ok {
			w = int32(ask())
			if len(m.few) >= mapTo {
				clear(m.few)
			}
			m.few[key] = w
		}
		return int64(w)
	}
	var key manyClasses
	for i, o := range options {
		key[i>>2] = key[i>>2]<<16 | uint64(uint16(by[i].of[o]))
	}
	w, ok := m.many[key]
	if !ok {
		w = int32(ask())
		if len(m.many) >= mapTo {
			clear(m.many)
		}
		m.many[key] = w
	}
	return int64(w)
}

// kinds sorts options by what they give a sum.
func (m *memory) kinds() *classes {
	if m.equal == nil {
		m.equal = new(sorter).sort(m.net)
	}
	return m.equal
}

// under is the options that give a sum no more than one. Where there are many figures it is not remembered.
func (m *memory) under(o int) set {
	k := m.kinds()
	if k.count > fewClasses {
		return m.noMore(m.net[o])
	}
	if m.lower == nil {
		m.lower = make([]set, k.count)
	}
	of := &m.lower[k.of[o]]
	if *of == nil {
		*of = m.noMore(m.net[o])
	}
	return *of
}

// noMore is the options that give a sum no more than so much.
func (m *memory) noMore(than int64) set {
	lower := make(set, words(len(m.net)))
	for o, net := range m.net {
		if net <= than {
			lower.add(o)
		}
	}
	return lower
}

// place is where a table keeps what was found for some options.
func (m *memory) place(by []*classes, options []int) int {
	at := 0
	for i, o := range options {
		at += int(by[i].of[o]) * m.pace[i]
	}
	return at
}
