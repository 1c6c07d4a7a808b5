package plan

import (
	"encoding/binary"
	"fmt"
	"math/bits"
	"slices"

	"slipfit/core/brief"
	"slipfit/core/part"
	"slipfit/core/predict"
	"slipfit/core/rule"
)

// trait is what the source of a rule says of it.
type trait struct {
	judges    bool             // whether it finds anything but advice; one that does not is of no concern here
	serves    bool             // whether it finds value
	needs     []string         // fields of the needs that it can read
	fields    []string         // fields of parts and builds that it can read
	resources []brief.Resource // resources it names
}

// decisions are the fields of a build, beside its parts, that a rule can read.
var decisions = []string{"Build.Kits", "Build.Plate", "Build.Face", "Storage.Count", "FanSet.Count", "FanSet.Face", "CardSet.Count", "ScreenSet.Count"}

// classes sorts the options of a shelf by what a rule can see of them: it cannot tell two of one class apart.
type classes struct {
	of    []int32 // by option
	count int
	sets  []set // by class: its options; nil until they are asked for
}

// fewClasses is how many classes at most are kept as sets.
const fewClasses = 256

// members is the options of the class of one; nil where there are too many classes.
func (k *classes) members(o int) set {
	if k.count > fewClasses {
		return nil
	}
	return k.each()[k.of[o]]
}

// each is the options of every class.
func (k *classes) each() []set {
	if k.sets == nil {
		k.sets = make([]set, k.count)
		for i := range k.sets {
			k.sets[i] = make(set, words(len(k.of)))
		}
		for o, class := range k.of {
			k.sets[class].add(o)
		}
	}
	return k.sets
}

// stepped is a rule and the values from which on it sees another figure, the lowest first, by field.
type stepped struct {
	*rule.Rule
	key   string // no other rule has it, nor other values
	steps map[string][]int64
}

// stepped is a rule as it sees figures under what the needs say.
func (p *Problem) stepped(r *rule.Rule) stepped {
	if len(r.Steps) == 0 {
		return stepped{Rule: r, key: r.ID}
	}
	s, known := p.steps[r.ID]
	if !known {
		s = stepped{r, r.ID, map[string][]int64{}}
		for _, step := range r.Steps {
			from := step.From(p.ask.Needs)
			slices.Sort(from)
			s.steps[step.Field] = slices.Compact(from)
			s.key += fmt.Sprint(" ", step.Field, s.steps[step.Field])
		}
		p.steps[r.ID] = s
	}
	return s
}

// classify sorts the options of a shelf as a rule sees them. A rule whose source is not known sees every option apart.
func (c *shelf) classify(r stepped) *classes {
	if k := c.byRule[r.key]; k != nil {
		return k
	}
	var k *classes
	if r.Purse != nil {
		k = c.sorter.sort(c.price) // which is all that it sees
	} else {
		k = c.look(r.Rule, r.steps)
	}
	c.byRule[r.key] = k
	return k
}

// apart sees every option apart.
func (c *shelf) apart() *classes {
	if c.each == nil {
		c.each = &classes{of: make([]int32, len(c.options)), count: len(c.options)}
		for o := range c.options {
			c.each.of[o] = int32(o)
		}
	}
	return c.each
}

// alike sees no option apart.
func (c *shelf) alike() *classes {
	if c.none == nil {
		c.none = &classes{of: make([]int32, len(c.options)), count: 1}
	}
	return c.none
}

// byKind sees options apart by the kind of part (rule.Early.Kinds).
func (c *shelf) byKind() *classes {
	if c.kinds == nil {
		kind := room(&c.sorter.figures, len(c.options))
		for o := range c.options {
			kind[o] = -1
			if x, ok := c.options[o].Part.(*part.Cooler); ok {
				if k, known := predict.CoolerKind(x); known {
					if kind[o] = 2 * int64(k.Sink); k.Stirs {
						kind[o]++
					}
				}
			}
		}
		c.kinds = c.sorter.sort(kind)
	}
	return c.kinds
}

// both sees options apart that either sort does.
func (c *shelf) both(k, l *classes) *classes {
	switch {
	case k == l || l.count == 1 || k.count == len(c.options):
		return k
	case k.count == 1 || l.count == len(c.options):
		return l
	}
	pair := [2]*classes{k, l}
	if found := c.paired[pair]; found != nil {
		return found
	}
	if len(c.paired) == remembered {
		clear(c.paired)
	}
	c.paired[pair] = c.sorter.joint(k, l)
	return c.paired[pair]
}

// sorter sorts options, or whatever else, into classes. It keeps its room from one time to the next; the zero value is ready.
type sorter struct {
	figures, first        []int64
	table                 []int32
	by, start, last, made []int32
}

// room is a slice of n, all nought, in the same memory where it fits.
func room[T any](s *[]T, n int) []T {
	if cap(*s) < n {
		*s = make([]T, n+n/4)
	}
	*s = (*s)[:n]
	clear(*s)
	return *s
}

// joint sees options apart that either of two sorts does: it goes through the classes of the one, and sorts the options of each by the other.
func (r *sorter) joint(k, l *classes) *classes {
	n := len(k.of)
	by, start := room(&r.by, n), room(&r.start, k.count+1) // the options by class of k, and where each class begins
	for _, class := range k.of {
		start[class+1]++
	}
	for class := range k.count {
		start[class+1] += start[class]
	}
	for o, class := range k.of {
		by[start[class]] = int32(o)
		start[class]++
	}
	of := make([]int32, n)
	last, made := room(&r.last, l.count), room(&r.made, l.count) // by class of l: the class of k it was last met in, and what was made of it there
	count := int32(0)
	for _, o := range by {
		class := k.of[o] + 1
		other := l.of[o]
		if last[other] != class {
			last[other], made[other] = class, count
			count++
		}
		of[o] = made[other]
	}
	return r.inOrder(&classes{of: of, count: int(count)})
}

// inOrder numbers classes in the order in which their options come.
func (r *sorter) inOrder(k *classes) *classes {
	number := room(&r.by, k.count) // from one
	next := int32(0)
	for o, class := range k.of {
		if number[class] == 0 {
			next++
			number[class] = next
		}
		k.of[o] = number[class] - 1
	}
	return k
}

// sort sorts by a figure of each.
func (r *sorter) sort(figures []int64) *classes {
	k := &classes{of: make([]int32, len(figures))}
	shift := 64 - bits.Len(uint(2*len(figures)+1))
	table := room(&r.table, 1<<(64-shift)) // classes, from one, near where their figure says
	first := r.first[:0]                   // by class: its figure
	for i, x := range figures {
		at := uint64(x) * spread >> shift
		for table[at] != 0 && first[table[at]-1] != x {
			at = (at + 1) & uint64(len(table)-1)
		}
		if table[at] == 0 {
			first = append(first, x)
			table[at] = int32(len(first))
		}
		k.of[i] = table[at] - 1
	}
	k.count, r.first = len(first), first
	return k
}

// spread is odd, and its product with figures that lie close together begins with bits that do not: 2⁶⁴ over the golden ratio.
const spread = 0x9e3779b97f4a7c15

// look sorts the options of a shelf by what a rule reads of them, one aspect after the other.
func (c *shelf) look(r *rule.Rule, steps map[string][]int64) *classes {
	t, known := traits[r.ID]
	if !known {
		return c.apart()
	}
	if slices.Contains(r.Filled, c.seat) {
		t.fields = nil // whether it is filled is all that the rule sees
	}
	reads := fieldSet(t.fields...)
	var list []*aspect
	var key []byte
	for _, a := range c.all() {
		if a.under.inside(reads) {
			a = c.seen(a, reads, steps)
			list, key = append(list, a), binary.AppendUvarint(key, uint64(a.id))
		}
	}
	if k := c.byLook[string(key)]; k != nil {
		return k
	}
	k := c.sorted(list)
	c.byLook[string(key)] = k
	return k
}

// sorted sorts the options by some aspects.
func (c *shelf) sorted(by []*aspect) *classes {
	k := c.alike()
	for _, a := range by {
		switch l := c.sort(a); {
		case l.count == 1 || k.count == len(c.options):
		case k.count == 1:
			k = l
		default:
			k = c.sorter.joint(k, l)
		}
	}
	return k
}
