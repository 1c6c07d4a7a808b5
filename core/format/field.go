package format

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"
)

// rules is what a field's tags ask of its value.
type rules struct {
	name     string
	optional bool
	bounded  bool
	low, top float64
	least    int
	pattern  string
	doc      string
}

// field is one field of a struct with its rules; fields of embedded structs stand in line with the rest.
type field struct {
	rules
	index []int
	typ   reflect.Type
}

// fields lists the fields of a struct type in order.
func fields(t reflect.Type) []field {
	var list []field
	for i := range t.NumField() {
		f := t.Field(i)
		tag := f.Tag.Get("json")
		if f.Anonymous && tag == "" {
			for _, inner := range fields(f.Type) {
				inner.index = append([]int{i}, inner.index...)
				list = append(list, inner)
			}
			continue
		}
		if tag == "" || tag == "-" {
			continue
		}
		list = append(list, field{tags(f), []int{i}, f.Type})
	}
	return list
}

func tags(f reflect.StructField) rules {
	name, options, _ := strings.Cut(f.Tag.Get("json"), ",")
	r := rules{
		name:     name,
		optional: options != "",
		pattern:  f.Tag.Get("pattern"),
		doc:      f.Tag.Get("doc"),
	}
	if s := f.Tag.Get("range"); s != "" {
		low, top, ok := strings.Cut(s, "..")
		var errLow, errTop error
		r.low, errLow = strconv.ParseFloat(low, 64)
		r.top, errTop = strconv.ParseFloat(top, 64)
		if !ok || errLow != nil || errTop != nil {
			panic(fmt.Sprintf("format: field %s: range %q is not LOW..HIGH", f.Name, s))
		}
		r.bounded = true
	}
	if s := f.Tag.Get("min"); s != "" {
		n, err := strconv.Atoi(s)
		if err != nil {
			panic(fmt.Sprintf("format: field %s: min %q is not a number", f.Name, s))
		}
		r.least = n
	}
	return r
}

// span prints a range as a person reads it: "between 50 and 600".
func (r rules) span() string {
	if !r.bounded {
		return ""
	}
	return fmt.Sprintf(" between %s and %s", plain(r.low), plain(r.top))
}

func plain(f float64) string { return strconv.FormatFloat(f, 'f', -1, 64) }
