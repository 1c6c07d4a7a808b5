package format

import (
	"fmt"
	"reflect"
)

// Missing lists the paths of the figures that v, a struct or a pointer to one, could state and does not. Parts of v
// that are left out as a whole are not looked into.
func Missing(v any) []string {
	return missing(nil, reflect.Indirect(reflect.ValueOf(v)), "")
}

func missing(found []string, v reflect.Value, path string) []string {
	switch {
	case isFigure(v.Type()):
		if v.IsZero() {
			return append(found, path)
		}
	case v.Kind() == reflect.Pointer && !v.IsNil():
		return missing(found, v.Elem(), path)
	case v.Kind() == reflect.Struct:
		for _, f := range fields(v.Type()) {
			found = missing(found, v.FieldByIndex(f.index), join(path, f.name))
		}
	case v.Kind() == reflect.Slice:
		for i := range v.Len() {
			found = missing(found, v.Index(i), fmt.Sprintf("%s[%d]", path, i))
		}
	}
	return found
}
