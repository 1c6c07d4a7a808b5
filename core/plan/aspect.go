package plan

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"

	"slipfit/core/build"
	"slipfit/core/part"
)

// aspect is one thing that a rule can see of an option: a figure, a word or a list of its part or of the layout of its case, or a
// decision. What a rule sees of an option is some of its aspects.
type aspect struct {
	id     int                         // no other of its shelf has it
	under  set                         // the fields that a rule must read to see it
	inside set                         // of a list: the fields within it
	decide func(o *build.Option) int64 // of a decision; nil of what stands in wares
	of     *wares
	path   []int                       // the fields that lead to it
	field  int                         // the last of them, among fields
	t      reflect.Type                // of what stands there
	figure func(v reflect.Value) int64 // of a figure; nil of a word or a list
	draw   drawing                     // of a word or a list
	less   map[string]*aspect          // what those rules see of it that see less than others do
	whole  *aspect                     // of such: what others see

	sortedWares   *classes // the wares sorted by it; nil until they are asked for
	sortedOptions *classes
	first         []int64 // by class of these: the figure, or the number of the word or list
}

// wares are what the options of a shelf are made of that has fields: their parts, or the layouts of their cases.
type wares struct {
	at     []int32         // by option: its place among the values
	values []reflect.Value // each once; not valid where there is none
	t      reflect.Type    // of the values; nil where there are none
}

// newWares lays out what options point to. Those that point to the same mostly come one after the other.
func newWares(options []build.Option, pointer func(o *build.Option) reflect.Value) *wares {
	w := &wares{at: make([]int32, len(options))}
	var last reflect.Value
	for i := range options {
		v := pointer(&options[i])
		if i == 0 || v != last {
			last = v
			if v.IsValid() {
				v = v.Elem()
				w.t = v.Type()
			}
			w.values = append(w.values, v)
		}
		w.at[i] = int32(len(w.values) - 1)
	}
	return w
}

// all lists the aspects of the options that any rule sees.
func (c *shelf) all() []*aspect {
	if c.aspects != nil {
		return c.aspects
	}
	c.decisions()
	of := []*wares{newWares(c.options, func(o *build.Option) reflect.Value { return reflect.ValueOf(o.Part) })}
	if c.seat == build.Case {
		of = append(of, newWares(c.options, func(o *build.Option) reflect.Value { return reflect.ValueOf(o.Layout) }))
	}
	for _, w := range of {
		there := &aspect{of: w, figure: thereIs}
		c.add(there)
		if w.t != nil {
			c.structure(w.t, *there)
		}
	}
	return c.aspects
}

// add adds an aspect that any rule sees that reads what leads to it.
func (c *shelf) add(a *aspect) {
	c.number(a)
	c.aspects = append(c.aspects, a)
}

func (c *shelf) number(a *aspect) {
	a.id = c.numbered
	c.numbered++
}

// structure adds the fields of a structure, those of structures within it one by one.
func (c *shelf) structure(t reflect.Type, in aspect) {
	for i := range t.NumField() {
		f := t.Field(i)
		a := aspect{of: in.of, under: in.under, path: append(slices.Clone(in.path), i)}
		if !f.Anonymous {
			at, read := slices.BinarySearch(fields, t.Name()+"."+f.Name)
			if !read {
				continue
			}
			a.under, a.field = fieldSet(), at
			copy(a.under, in.under)
			a.under.add(at)
		}
		c.field(f.Type, a)
	}
}

func (c *shelf) field(t reflect.Type, a aspect) {
	a.t = t
	switch kind := t.Kind(); {
	case kind == reflect.Struct && strings.HasSuffix(t.PkgPath(), "core/part"):
		c.structure(t, a)
		return
	case kind == reflect.Struct && strings.HasPrefix(t.Name(), "Figure["):
		a.figure = stated
	case kind == reflect.Pointer:
		a.figure = thereIs
		c.field(t.Elem(), a)
	case kind == reflect.Bool:
		a.figure = truth
	case kind == reflect.Int64:
		a.figure = reflect.Value.Int
	default:
		a.inside = fieldSet()
		a.draw = draw(t, everyField, a.inside)
	}
	c.add(&a)
}

// decisions adds the decisions beside the part.
func (c *shelf) decisions() {
	add := func(field string, decide func(o *build.Option) int64) {
		if at, read := slices.BinarySearch(fields, field); read {
			a := &aspect{under: fieldSet(), decide: decide}
			a.under.add(at)
			c.add(a)
		}
	}
	count := func(o *build.Option) int64 { return int64(o.Count) }
	faces := part.Face("").Values()
	face := func(o *build.Option) int64 { return int64(slices.Index(faces, string(o.Face))) }
	switch c.seat {
	case build.Case:
		add("Build.Plate", func(o *build.Option) int64 { return int64(o.Plate) })
	case build.Cooler:
		add("Build.Face", face)
	case build.Memory:
		add("Build.Kits", count)
	case build.Boot, build.Cache, build.Archive:
		add("Storage.Count", count)
	case build.Fans:
		add("FanSet.Count", count)
		add("FanSet.Face", face)
	case build.Cards:
		add("CardSet.Count", count)
	case build.Screens:
		add("ScreenSet.Count", count)
	}
}

// seen is how a rule sees an aspect that reads some fields, and of some figures no more than which of these values they reach, the lowest
// first.
func (c *shelf) seen(a *aspect, reads set, steps map[string][]int64) *aspect {
	var from []int64
	if len(steps) > 0 && a.figure != nil && a.path != nil {
		from = steps[fields[a.field]]
	}
	switch {
	case a.inside != nil && !a.inside.inside(reads):
		some := slices.Clone(a.inside)
		some.keep(reads)
		return c.lesser(a, fmt.Sprint(some), func(b *aspect) { b.draw = draw(a.t, some, fieldSet()) })
	case from != nil:
		return c.lesser(a, fmt.Sprint(from), func(b *aspect) { b.figure = reached(from) })
	}
	return a
}

// lesser is an aspect of which less is seen.
func (c *shelf) lesser(whole *aspect, key string, narrow func(a *aspect)) *aspect {
	if a := whole.less[key]; a != nil {
		return a
	}
	a := &aspect{of: whole.of, path: whole.path, draw: whole.draw, whole: whole}
	narrow(a)
	c.number(a)
	if whole.less == nil {
		whole.less = map[string]*aspect{}
	}
	whole.less[key] = a
	return a
}

// sort sorts the options by an aspect.
func (c *shelf) sort(a *aspect) *classes {
	if a.sortedOptions != nil {
		return a.sortedOptions
	}
	n := len(c.options)
	if a.decide != nil {
		decided := room(&c.sorter.figures, n)
		for o := range c.options {
			decided[o] = a.decide(&c.options[o])
		}
		a.sortedOptions = c.sorter.sort(decided)
		a.first = slices.Clone(c.sorter.first)
		return a.sortedOptions
	}
	kinds := a.kinds(c.sorter)
	a.sortedOptions = &classes{of: make([]int32, n), count: kinds.count}
	for o, at := range a.of.at {
		a.sortedOptions.of[o] = kinds.of[at]
	}
	return a.sortedOptions
}

// kinds sorts the wares by an aspect. Where less is seen of it than others see, it looks once at those that are the same to these.
func (a *aspect) kinds(r *sorter) *classes {
	if a.sortedWares != nil {
		return a.sortedWares
	}
	read := a.read()
	var whole *classes
	if a.whole != nil {
		whole = a.whole.kinds(r)
	}
	figures := room(&r.figures, len(a.of.values))
	if whole == nil {
		for i, v := range a.of.values {
			figures[i] = read(v)
		}
	} else {
		seen, known := make([]int64, whole.count), make([]bool, whole.count)
		for i, class := range whole.of {
			if !known[class] {
				seen[class], known[class] = read(a.of.values[i]), true
			}
			figures[i] = seen[class]
		}
	}
	a.sortedWares = r.sort(figures)
	a.first = slices.Clone(r.first)
	return a.sortedWares
}

// What a figure is where its sheet lacks it, and where there is no structure for it to stand in.
const (
	unstated = math.MinInt64
	nowhere  = math.MinInt64 + 1
)

// read makes what reads an aspect of one value after the other: a figure as it is, of a word or a list a number that no other has.
func (a *aspect) read() func(v reflect.Value) int64 {
	numbers := map[string]int64{}
	var key []byte
	return func(v reflect.Value) int64 {
		for _, i := range a.path {
			if v.Kind() == reflect.Pointer {
				v = v.Elem()
			}
			if !v.IsValid() {
				return nowhere
			}
			v = v.Field(i)
		}
		switch {
		case !v.IsValid():
			return nowhere
		case a.figure != nil:
			return a.figure(v)
		}
		key = a.draw(key[:0], v)
		n, known := numbers[string(key)]
		if !known {
			n = int64(len(numbers))
			numbers[string(key)] = n
		}
		return n
	}
}

// thereIs tells a pointer that points to something.
func thereIs(v reflect.Value) int64 {
	if v.Kind() == reflect.Pointer && v.IsNil() {
		return 0
	}
	return 1
}

func truth(v reflect.Value) int64 {
	if v.Bool() {
		return 1
	}
	return 0
}

// stated is a figure of a data sheet.
func stated(v reflect.Value) int64 {
	value, known := v.Field(0), v.Field(1)
	switch {
	case !known.Bool():
		return unstated
	case value.Kind() == reflect.Bool:
		return truth(value)
	}
	return value.Int()
}

// reached is how many of some values a figure reaches.
func reached(steps []int64) func(v reflect.Value) int64 {
	return func(v reflect.Value) int64 {
		n := stated(v)
		if n == unstated {
			return n
		}
		at, _ := slices.BinarySearch(steps, n+1)
		return int64(at)
	}
}
