package format

import "reflect"

// Described is one field of a format as a person reads it.
type Described struct {
	Path     string `json:"path"`  // seats[].part
	Takes    string `json:"takes"` // what it takes, with unit and range
	Optional bool   `json:"optional,omitempty"`
	Doc      string `json:"doc,omitempty"`
}

// Describe lists the fields of the files that hold v, a struct or a pointer to one, in the order they are written, from the
// same tags that Read and Schema go by.
func Describe(v any) []Described {
	t := reflect.TypeOf(v)
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	return described(nil, t, "")
}

func described(list []Described, t reflect.Type, path string) []Described {
	for _, f := range fields(t) {
		at := join(path, f.name)
		inner := f.typ
		takes := describe(inner, f.rules)
		for inner.Kind() == reflect.Pointer || inner.Kind() == reflect.Slice {
			if inner.Kind() == reflect.Slice {
				at += "[]"
				takes = "a list of " + describe(inner.Elem(), f.rules)
			}
			inner = inner.Elem()
		}
		list = append(list, Described{at, takes, f.optional, f.doc})
		if inner.Kind() == reflect.Struct && !isFigure(inner) {
			list = described(list, inner, at)
		}
	}
	return list
}
