package plan

import (
	"encoding/binary"
	"reflect"
	"slices"
	"strings"
)

// fields are the fields of parts and of builds that any rule reads, in order of their names; a set of them holds their places.
var fields = func() []string {
	var all []string
	for _, t := range traits {
		all = append(all, t.fields...)
	}
	slices.Sort(all)
	return slices.Compact(all)
}()

// everyField is all of them.
var everyField = fieldSet(fields...)

// fieldSet is the set of some fields.
func fieldSet(names ...string) set {
	s := make(set, words(len(fields)))
	for _, name := range names {
		if at, read := slices.BinarySearch(fields, name); read {
			s.add(at)
		}
	}
	return s
}

// drawing writes down a value, so that values alike in what is read of them are written alike; nil where nothing is.
type drawing func(b []byte, v reflect.Value) []byte

// draw makes the drawing of a type: of a part's structures the fields that are read, which it notes as met, of anything else all.
func draw(t reflect.Type, read, met set) drawing {
	switch t.Kind() {
	case reflect.Struct:
		return drawFields(t, read, met)
	case reflect.Pointer:
		inner := draw(t.Elem(), read, met)
		return func(b []byte, v reflect.Value) []byte {
			if v.IsNil() {
				return append(b, 0)
			}
			b = append(b, 1)
			if inner != nil {
				b = inner(b, v.Elem())
			}
			return b
		}
	case reflect.Slice, reflect.Array:
		inner := draw(t.Elem(), read, met)
		return func(b []byte, v reflect.Value) []byte {
			n := v.Len()
			b = binary.AppendVarint(b, int64(n))
			if inner != nil {
				for i := range n {
					b = inner(b, v.Index(i))
				}
			}
			return b
		}
	case reflect.String:
		return func(b []byte, v reflect.Value) []byte {
			return append(binary.AppendVarint(b, int64(v.Len())), v.String()...)
		}
	case reflect.Bool:
		return func(b []byte, v reflect.Value) []byte {
			if v.Bool() {
				return append(b, 1)
			}
			return append(b, 0)
		}
	case reflect.Uint8:
		return func(b []byte, v reflect.Value) []byte { return append(b, byte(v.Uint())) }
	}
	return func(b []byte, v reflect.Value) []byte { return binary.AppendVarint(b, v.Int()) }
}

func drawFields(t reflect.Type, read, met set) drawing {
	type member struct {
		at   int
		draw drawing
	}
	var members []member
	for i := range t.NumField() {
		if d := drawField(t, i, read, met); d != nil {
			members = append(members, member{i, d})
		}
	}
	if len(members) == 0 {
		return nil
	}
	return func(b []byte, v reflect.Value) []byte {
		for _, m := range members {
			b = m.draw(b, v.Field(m.at))
		}
		return b
	}
}

// drawField makes the drawing of a field of a structure, nil where nothing of it is read.
func drawField(t reflect.Type, i int, read, met set) drawing {
	f := t.Field(i)
	if f.Anonymous || !strings.HasSuffix(t.PkgPath(), "core/part") {
		return draw(f.Type, read, met)
	}
	at, known := slices.BinarySearch(fields, t.Name()+"."+f.Name)
	if !known || !read.has(at) {
		return nil
	}
	met.add(at)
	return draw(f.Type, read, met)
}
