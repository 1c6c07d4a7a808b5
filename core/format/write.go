package format

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
	"strconv"

	"slipfit/core/unit"
)

// Write prints v, a struct or a pointer to one, in the form Read takes: indented, fields in declared order, absent
// optional fields left out. Writing what was read and reading it again gives the same value.
func Write(v any) []byte {
	w := writer{fields: map[reflect.Type][]field{}}
	w.value(reflect.Indirect(reflect.ValueOf(v)), "")
	w.WriteByte('\n')
	return w.Bytes()
}

// writer prints values, and works the fields of a type out once.
type writer struct {
	bytes.Buffer
	fields map[reflect.Type][]field
}

func (w *writer) of(t reflect.Type) []field {
	list, ok := w.fields[t]
	if !ok {
		list = fields(t)
		w.fields[t] = list
	}
	return list
}

func (w *writer) value(v reflect.Value, indent string) {
	t := v.Type()
	switch {
	case t == releaseType:
		w.text(unit.Release(v.Int()).String())
	case isFigure(t):
		w.value(heldBy(v), indent)
	case t.Kind() == reflect.Pointer:
		w.value(v.Elem(), indent)
	case t.Kind() == reflect.Struct:
		w.object(v, indent)
	case t.Kind() == reflect.Slice:
		w.list(v, indent)
	case t.Kind() == reflect.String:
		w.text(v.String())
	case t.Kind() == reflect.Bool:
		w.WriteString(strconv.FormatBool(v.Bool()))
	case t.Kind() == reflect.Float64:
		w.WriteString(plain(v.Float()))
	default:
		base, _ := Base(t)
		w.WriteString(quotient(v.Int(), base))
	}
}

func (w *writer) object(v reflect.Value, indent string) {
	w.WriteByte('{')
	first := true
	for _, f := range w.of(v.Type()) {
		inner := v.FieldByIndex(f.index)
		if f.optional && absent(inner) {
			continue
		}
		if !first {
			w.WriteByte(',')
		}
		first = false
		w.WriteString("\n" + indent + "  ")
		w.text(f.name)
		w.WriteString(": ")
		w.value(inner, indent+"  ")
	}
	if !first {
		w.WriteString("\n" + indent)
	}
	w.WriteByte('}')
}

func (w *writer) list(v reflect.Value, indent string) {
	if v.Len() == 0 {
		w.WriteString("[]")
		return
	}
	plainItems := v.Type().Elem().Kind() != reflect.Struct && v.Type().Elem().Kind() != reflect.Pointer
	w.WriteByte('[')
	for i := range v.Len() {
		if i > 0 {
			w.WriteByte(',')
		}
		switch {
		case plainItems && i > 0:
			w.WriteByte(' ')
		case !plainItems:
			w.WriteString("\n" + indent + "  ")
		}
		w.value(v.Index(i), indent+"  ")
	}
	if !plainItems {
		w.WriteString("\n" + indent)
	}
	w.WriteByte(']')
}

// absent reports an optional field that says nothing: a missing figure, an empty list, a zero value.
func absent(v reflect.Value) bool {
	if v.Kind() == reflect.Slice {
		return v.Len() == 0
	}
	return v.IsZero()
}

func (w *writer) text(s string) {
	quoted, err := json.Marshal(s)
	if err != nil {
		panic(fmt.Sprintf("format: text %q does not print: %v", s, err))
	}
	w.Write(quoted)
}

// quotient prints n/base exactly as a decimal; every base divides a power of ten or two.
func quotient(n, base int64) string {
	if base == 1 {
		return strconv.FormatInt(n, 10)
	}
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	s := sign + strconv.FormatInt(n/base, 10)
	rest := n % base
	if rest == 0 {
		return s
	}
	s += "."
	for rest != 0 {
		rest *= 10
		s += strconv.FormatInt(rest/base, 10)
		rest %= base
	}
	return s
}
