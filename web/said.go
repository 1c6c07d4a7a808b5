package web

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strconv"
	"strings"
)

// Said is a brief as the page holds it: the JSON of its file, read and changed by path as errors name it
// (activities[0].photogrammetry.pictures). What a field may hold is the core's to say.
type Said map[string]any

// blankBrief is a brief in which nothing has been said.
func blankBrief() Said {
	return Said{"kind": "slipfit-brief", "version": json.Number("1"), "title": "Machine to order", "activities": []any{}}
}

// readSaid reads the JSON of a brief.
func readSaid(data []byte) (Said, error) {
	d := json.NewDecoder(bytes.NewReader(data))
	d.UseNumber()
	var s Said
	if err := d.Decode(&s); err != nil {
		return nil, fmt.Errorf("brief: %w", err)
	}
	if s == nil {
		return nil, fmt.Errorf("brief: null, want an object")
	}
	return s, nil
}

// JSON is the brief as one text.
func (s Said) JSON() json.RawMessage {
	data, err := json.Marshal(s)
	if err != nil {
		panic(fmt.Sprintf("web: brief: %v", err))
	}
	return data
}

// steps takes a path apart: names as string, places in a list as int.
func steps(path string) []any {
	var list []any
	for _, name := range strings.Split(path, ".") {
		name, rest, _ := strings.Cut(name, "[")
		list = append(list, name)
		for rest != "" {
			var digits string
			digits, rest, _ = strings.Cut(rest, "]")
			if n, err := strconv.Atoi(digits); err == nil {
				list = append(list, n)
			}
			rest = strings.TrimPrefix(rest, "[")
		}
	}
	return list
}

// Get returns what stands at a path, nil where nothing does.
func (s Said) Get(path string) any {
	var at any = map[string]any(s)
	for _, step := range steps(path) {
		switch step := step.(type) {
		case string:
			object, _ := at.(map[string]any)
			at = object[step]
		case int:
			list, _ := at.([]any)
			if step >= len(list) {
				return nil
			}
			at = list[step]
		}
	}
	return at
}

// Text is what stands at a path as a person typed it: empty where nothing does.
func (s Said) Text(path string) string {
	switch v := s.Get(path).(type) {
	case nil:
		return ""
	case string:
		return v
	case bool:
		return strconv.FormatBool(v)
	case json.Number:
		return v.String()
	}
	return ""
}

// Count is how many things a list holds.
func (s Said) Count(path string) int {
	list, _ := s.Get(path).([]any)
	return len(list)
}

// Words lists the texts of a list.
func (s Said) Words(path string) []string {
	list, _ := s.Get(path).([]any)
	var words []string
	for _, v := range list {
		if word, ok := v.(string); ok {
			words = append(words, word)
		}
	}
	return words
}

// Set puts a value at a path, and makes the objects it lies in; nil takes away what stands there. A place in a list must be
// there already.
func (s Said) Set(path string, value any) {
	all := steps(path)
	var at any = map[string]any(s)
	for i, step := range all {
		last := i == len(all)-1
		switch step := step.(type) {
		case string:
			object, ok := at.(map[string]any)
			if !ok {
				return
			}
			switch {
			case last && value == nil:
				delete(object, step)
			case last:
				object[step] = value
			case object[step] == nil:
				object[step] = map[string]any{}
			}
			at = object[step]
		case int:
			list, ok := at.([]any)
			if !ok || step >= len(list) {
				return
			}
			if last {
				list[step] = value
			}
			at = list[step]
		}
	}
}

// Add appends to a list.
func (s Said) Add(path string, value any) {
	list, _ := s.Get(path).([]any)
	s.Set(path, append(list, value))
}

// Remove takes the thing at a place out of a list; the list goes with its last one, save the list of activities.
func (s Said) Remove(path string, at int) {
	list, _ := s.Get(path).([]any)
	if at < 0 || at >= len(list) {
		return
	}
	rest := append(append([]any{}, list[:at]...), list[at+1:]...)
	if len(rest) == 0 && path != "activities" {
		s.Set(path, nil)
		return
	}
	s.Set(path, rest)
}

// number is what was typed as a number, where it is one; else the text, for the core to refuse by name.
func number(typed string) any {
	typed = strings.TrimSpace(typed)
	if typed == "" {
		return nil
	}
	if json.Valid([]byte(typed)) && strings.ContainsRune("-0123456789", rune(typed[0])) {
		return json.Number(typed)
	}
	return typed
}

// topicOf is the field of the kind of work at a place of the list of activities, empty where none is given.
func (s Said) topicOf(at int, topics []Topic) *Topic {
	activity, _ := s.Get(fmt.Sprintf("activities[%d]", at)).(map[string]any)
	for i := range topics {
		if _, ok := activity[topics[i].Field]; ok {
			return &topics[i]
		}
	}
	return nil
}
