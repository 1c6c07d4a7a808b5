package format

import (
	"encoding/json"
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"slipfit/core/unit"
)

// Write prints v, a struct or a pointer to one, in the form Read takes: indented, fields in declared order, absent
// optional fields left out. Writing what was read and reading it again gives the same value.
func Write(v any) []byte {
	var b strings.Builder
	writeValue(&b, reflect.Indirect(reflect.ValueOf(v)), "")
	b.WriteByte('\n')
	return []byte(b.String())
}

func writeValue(b *strings.Builder, v reflect.Value, indent string) {
	t := v.Type()
	switch {
	case t == releaseType:
		writeText(b, unit.Release(v.Int()).String())
	case isFigure(t):
		known := v.MethodByName("Get").Call(nil)
		writeValue(b, known[0], indent)
	case t.Kind() == reflect.Pointer:
		writeValue(b, v.Elem(), indent)
	case t.Kind() == reflect.Struct:
		writeObject(b, v, indent)
	case t.Kind() == reflect.Slice:
		writeList(b, v, indent)
	case t.Kind() == reflect.String:
		writeText(b, v.String())
	case t.Kind() == reflect.Bool:
		b.WriteString(strconv.FormatBool(v.Bool()))
	case t.Kind() == reflect.Float64:
		b.WriteString(plain(v.Float()))
	default:
		base, _ := Base(t)
		b.WriteString(quotient(v.Int(), base))
	}
}

func writeObject(b *strings.Builder, v reflect.Value, indent string) {
	b.WriteByte('{')
	first := true
	for _, f := range fields(v.Type()) {
		inner := v.FieldByIndex(f.index)
		if f.optional && absent(inner) {
			continue
		}
		if !first {
			b.WriteByte(',')
		}
		first = false
		b.WriteString("\n" + indent + "  ")
		writeText(b, f.name)
		b.WriteString(": ")
		writeValue(b, inner, indent+"  ")
	}
	if !first {
		b.WriteString("\n" + indent)
	}
	b.WriteByte('}')
}

func writeList(b *strings.Builder, v reflect.Value, indent string) {
	if v.Len() == 0 {
		b.WriteString("[]")
		return
	}
	plainItems := v.Type().Elem().Kind() != reflect.Struct && v.Type().Elem().Kind() != reflect.Pointer
	b.WriteByte('[')
	for i := range v.Len() {
		if i > 0 {
			b.WriteByte(',')
		}
		switch {
		case plainItems && i > 0:
			b.WriteByte(' ')
		case !plainItems:
			b.WriteString("\n" + indent + "  ")
		}
		writeValue(b, v.Index(i), indent+"  ")
	}
	if !plainItems {
		b.WriteString("\n" + indent)
	}
	b.WriteByte(']')
}

// absent reports an optional field that says nothing: a missing figure, an empty list, a zero value.
func absent(v reflect.Value) bool {
	if v.Kind() == reflect.Slice {
		return v.Len() == 0
	}
	return v.IsZero()
}

func writeText(b *strings.Builder, s string) {
	quoted, err := json.Marshal(s)
	if err != nil {
		panic(fmt.Sprintf("format: text %q does not print: %v", s, err))
	}
	b.Write(quoted)
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
