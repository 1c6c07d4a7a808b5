package format

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
)

// Schema writes the JSON Schema (2020-12) of the files that hold v, a struct or a pointer to one. It says what Read accepts, from the same
// tags: every figure a sheet may lack is optional, every field unknown here is refused. Where v embeds a Head that is
// filled in, the schema asks for its kind and for no later version. Two things Read refuses a schema cannot say so that
// every validator agrees: more decimals than a figure's base holds, and numbers written with an exponent.
func Schema(id, title string, v any) []byte {
	s := &ordered{}
	s.add("$schema", "https://json-schema.org/draft/2020-12/schema")
	s.add("$id", id)
	s.add("title", title)
	value := reflect.Indirect(reflect.ValueOf(v))
	body := schemaOf(value.Type(), rules{})
	if head := value.FieldByName("Head"); head.IsValid() {
		if h, ok := head.Interface().(Head); ok && h.Kind != "" {
			properties := body.get("properties").(*ordered)
			properties.get("kind").(*ordered).add("const", h.Kind)
			properties.get("version").(*ordered).set("maximum", h.Version)
		}
	}
	for _, e := range body.entries {
		s.add(e.key, e.value)
	}
	var raw, out bytes.Buffer
	s.write(&raw)
	if err := json.Indent(&out, raw.Bytes(), "", "  "); err != nil {
		panic(fmt.Sprintf("format: schema of %T: %v", v, err))
	}
	out.WriteByte('\n')
	return out.Bytes()
}

// ordered is a JSON object whose fields keep their order.
type ordered struct{ entries []entry }

type entry struct {
	key   string
	value any
}

func (o *ordered) add(key string, value any) { o.entries = append(o.entries, entry{key, value}) }

func (o *ordered) get(key string) any {
	for _, e := range o.entries {
		if e.key == key {
			return e.value
		}
	}
	return nil
}

func (o *ordered) set(key string, value any) {
	for i := range o.entries {
		if o.entries[i].key == key {
			o.entries[i].value = value
			return
		}
	}
	o.add(key, value)
}

func (o *ordered) write(b *bytes.Buffer) {
	b.WriteByte('{')
	for i, e := range o.entries {
		if i > 0 {
			b.WriteByte(',')
		}
		fmt.Fprintf(b, "%q:", e.key)
		if inner, ok := e.value.(*ordered); ok {
			inner.write(b)
			continue
		}
		raw, err := json.Marshal(e.value)
		if err != nil {
			panic(fmt.Sprintf("format: schema field %s: %v", e.key, err))
		}
		b.Write(raw)
	}
	b.WriteByte('}')
}

func schemaOf(t reflect.Type, rule rules) *ordered {
	s := &ordered{}
	if isFigure(t) {
		t = figureOf(t)
	}
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	typed := func(name string) {
		if rule.optional {
			s.add("type", []string{name, "null"})
			return
		}
		s.add("type", name)
	}
	if rule.doc != "" {
		s.add("description", rule.doc)
	}
	switch {
	case t == releaseType:
		typed("string")
		s.add("pattern", `^[0-9]{1,3}(\.[0-9]{1,3})?$`)
	case t.Implements(wordsType) && t.Kind() == reflect.String:
		typed("string")
		enum := []any{}
		for _, w := range reflect.Zero(t).Interface().(words).Values() {
			enum = append(enum, w)
		}
		if rule.optional {
			enum = append(enum, nil)
		}
		s.add("enum", enum)
	case t.Kind() == reflect.String:
		typed("string")
		if !rule.optional {
			s.add("minLength", 1)
		}
		if rule.pattern != "" {
			s.add("pattern", rule.pattern)
		}
	case t.Kind() == reflect.Bool:
		typed("boolean")
	case t.Kind() == reflect.Slice:
		typed("array")
		if rule.least > 0 {
			s.add("minItems", rule.least)
		}
		s.add("items", schemaOf(t.Elem(), rules{bounded: rule.bounded, low: rule.low, top: rule.top, pattern: rule.pattern}))
	case t.Kind() == reflect.Struct:
		typed("object")
		properties, required := &ordered{}, []string{}
		for _, f := range fields(t) {
			properties.add(f.name, schemaOf(f.typ, f.rules))
			if !f.optional {
				required = append(required, f.name)
			}
		}
		s.add("properties", properties)
		if len(required) > 0 {
			s.add("required", required)
		}
		s.add("additionalProperties", false)
	default:
		base, symbol := Base(t)
		if base == 1 && t.Kind() != reflect.Float64 {
			typed("integer")
		} else {
			typed("number")
		}
		if symbol != "" {
			s.add("$comment", "unit: "+symbol)
		}
		if rule.bounded {
			s.add("minimum", rule.low)
			s.add("maximum", rule.top)
		}
	}
	return s
}
