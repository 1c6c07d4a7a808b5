package format

import (
	"fmt"
	"reflect"
	"regexp"

	"slipfit/core/unit"
)

// shape is what a value is read as.
type shape uint8

const (
	shapeNumber shape = iota
	shapeFloat
	shapeFlag
	shapeText
	shapeWord
	shapeRelease
	shapeObject
	shapeList
)

// plan is how values of one type are read where one field's rules hold, worked out before the first is read.
type plan struct {
	shape   shape
	rule    rules
	typ     reflect.Type // what is set, the value of a figure
	figure  bool
	pointer bool
	measure measure
	pattern *regexp.Regexp
	words   []string
	fields  []planned
	byName  map[string]int
	item    *plan
}

// planned is a field of an object: where it lies and how it is read.
type planned struct {
	field
	plan *plan
}

// words is a type whose values are a fixed list of words.
type words interface{ Values() []string }

var (
	releaseType = reflect.TypeFor[unit.Release]()
	wordsType   = reflect.TypeFor[words]()
)

// planOf works out how values of type t are read under a field's rules.
func planOf(t reflect.Type, rule rules) *plan {
	p := &plan{rule: rule}
	if isFigure(t) {
		p.figure, t = true, figureOf(t)
	}
	if t.Kind() == reflect.Pointer {
		p.pointer, t = true, t.Elem()
	}
	p.typ = t
	p.measure = measureOf(t)
	if p.figure && p.measure.state == nil && t.Kind() != reflect.Bool {
		panic(fmt.Sprintf("format: field %s: no reading for a figure of %s", rule.name, t))
	}
	if rule.pattern != "" {
		p.pattern = regexp.MustCompile(rule.pattern)
	}
	switch {
	case t == releaseType:
		p.shape = shapeRelease
	case t.Kind() == reflect.String && t.Implements(wordsType):
		p.shape, p.words = shapeWord, reflect.Zero(t).Interface().(words).Values()
	case t.Kind() == reflect.String:
		p.shape = shapeText
	case t.Kind() == reflect.Bool:
		p.shape = shapeFlag
	case t.Kind() == reflect.Int64 || t.Kind() == reflect.Int:
		p.shape = shapeNumber
	case t.Kind() == reflect.Float64:
		p.shape = shapeFloat
	case t.Kind() == reflect.Struct:
		p.shape = shapeObject
		p.byName = map[string]int{}
		for i, f := range fields(t) {
			p.fields = append(p.fields, planned{f, planOf(f.typ, f.rules)})
			p.byName[f.name] = i
		}
	case t.Kind() == reflect.Slice:
		p.shape = shapeList
		p.item = planOf(t.Elem(), rules{name: rule.name, bounded: rule.bounded, low: rule.low, top: rule.top, pattern: rule.pattern})
	default:
		panic(fmt.Sprintf("format: field %s: no reading for %s", rule.name, t))
	}
	return p
}
