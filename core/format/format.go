// Package format reads and writes slipfit's files: JSON, strictly, by structs whose tags are the format. A field's tags are
//
//	json     its name; omitempty or omitzero makes it optional
//	range    accepted numbers, in the unit the name ends on: "50..600"
//	min      fewest elements of a list
//	pattern  regular expression a string must match
//	doc      the sentence the JSON Schema carries
//
// Figures of package unit are read exactly, as decimals, into their integer base. Nothing is guessed: an unknown
// field, a field given twice, a wrong type, a number out of range or more decimals than the base holds is an error that
// names the file, the path in it, the value and what was expected. All errors of a file are reported, not the first.
package format

import (
	"encoding/json"
	"errors"
	"fmt"
	"reflect"
	"strings"
	"unicode/utf8"
	"unsafe"

	"github.com/tidwall/gjson"
)

// Error is one thing wrong in a file.
type Error struct {
	File  string // as the caller named it
	Path  string // within the file: parts[3].length_mm; empty for the file as a whole
	Value string // what stands there, shortened
	Want  string // what was expected
}

func (e *Error) Error() string {
	var b strings.Builder
	b.WriteString(e.File)
	if e.Path != "" {
		b.WriteString(": " + e.Path)
	}
	if e.Value != "" {
		b.WriteString(": got " + e.Value + ", want " + e.Want)
	} else {
		b.WriteString(": want " + e.Want)
	}
	return b.String()
}

// Head is what every slipfit file opens with.
type Head struct {
	Kind    string `json:"kind" doc:"What the file is."`
	Version int    `json:"version" range:"1..1000" doc:"Version of the format."`
}

// Read reads a file of the given kind and of a version up to the given one into v, a pointer to a struct that embeds
// Head. v is changed only where the whole file is sound. Neither v nor the error keeps any of data, which may be used again.
func Read(file string, data []byte, kind string, version int, v any) error {
	root, err := parse(file, data)
	if err != nil {
		return err
	}
	if k := root.Get("kind"); k.Type != gjson.String || k.String() != kind {
		return &Error{file, "kind", show(k), fmt.Sprintf("%q", kind)}
	}
	if n := root.Get("version"); n.Type == gjson.Number && n.Num > float64(version) {
		return &Error{file, "version", show(n), fmt.Sprintf("at most %d: the file is of a newer slipfit", version)}
	}
	return fill(file, root, v)
}

// Value reads a JSON value without a head into v, a pointer, as Read does.
func Value(file string, data []byte, v any) error {
	root, err := parse(file, data)
	if err != nil {
		return err
	}
	return fill(file, root, v)
}

func fill(file string, root gjson.Result, v any) error {
	target := reflect.ValueOf(v).Elem()
	fresh := reflect.New(target.Type()).Elem()
	r := reader{file: file}
	r.value(root, fresh, planOf(target.Type(), rules{}))
	if len(r.errs) > 0 {
		return errors.Join(r.errs...)
	}
	target.Set(fresh)
	return nil
}

// maxDepth bounds nesting, so that a hostile file cannot exhaust the stack of the readers below.
const maxDepth = 64

func parse(file string, data []byte) (gjson.Result, error) {
	if !utf8.Valid(data) {
		return gjson.Result{}, &Error{file, "", "bytes that are not UTF-8", "JSON text in UTF-8"}
	}
	if !shallow(data) {
		return gjson.Result{}, &Error{file, "", "deeper nesting", fmt.Sprintf("at most %d levels", maxDepth)}
	}
	if !gjson.ValidBytes(data) {
		return gjson.Result{}, &Error{file, "", syntax(data), "one complete JSON value"}
	}
	// The text is data itself, not a copy, which for a large catalog would take as long as reading it: what is kept of it is cloned.
	return gjson.Parse(unsafe.String(unsafe.SliceData(data), len(data))), nil
}

// shallow reports that data nests no deeper than maxDepth, as far as it is read: outside a text it breaks off at a backslash.
func shallow(data []byte) bool {
	depth, inString := 0, false
	for i := 0; i < len(data); i++ {
		if !structure[data[i]] {
			continue
		}
		switch c := data[i]; {
		case c == '"':
			inString = !inString
		case c == '\\':
			i++
		case inString:
		case c == '{' || c == '[':
			if depth++; depth > maxDepth {
				return false
			}
		default:
			depth--
		}
	}
	return true
}

// structure tells the bytes that open and close objects, lists and texts, and the one that takes the next for itself.
var structure = [256]bool{'{': true, '}': true, '[': true, ']': true, '"': true, '\\': true}

// syntax says where the JSON breaks off, as line and column.
func syntax(data []byte) string {
	if len(strings.TrimSpace(string(data))) == 0 {
		return "an empty file"
	}
	var whole json.RawMessage
	err := json.Unmarshal(data, &whole)
	var bad *json.SyntaxError
	if errors.As(err, &bad) {
		at := max(min(int(bad.Offset), len(data))-1, 0)
		line := 1 + strings.Count(string(data[:at]), "\n")
		column := at - strings.LastIndex(string(data[:at]), "\n")
		return fmt.Sprintf("broken JSON at line %d, column %d (%s)", line, column, bad.Error())
	}
	return "broken JSON"
}

// show is a value as printed in an error: its JSON, cut to a readable length.
func show(r gjson.Result) string {
	if !r.Exists() {
		return "nothing"
	}
	s := strings.Clone(strings.Join(strings.Fields(r.Raw), " "))
	if runes := []rune(s); len(runes) > 60 {
		return string(runes[:57]) + "..."
	}
	return s
}
