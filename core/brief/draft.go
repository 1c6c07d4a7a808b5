package brief

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"slipfit/core/build"
	"slipfit/core/format"
)

// Draft is a brief in the making, filled answer by answer with what Topics and Surroundings ask. What is not answered is left
// out, which is what "I don't know" means.
type Draft struct {
	top        map[string]any
	activities []draftActivity
}

type draftActivity struct {
	field string
	kind  map[string]any
	whole map[string]any // hours_week and at_once, which every kind of work has
}

// NewDraft starts a brief with its title.
func NewDraft(title string) *Draft {
	return &Draft{top: map[string]any{"kind": Kind, "version": Version, "title": title}}
}

// Say notes who the brief is for and what they said, in their words.
func (d *Draft) Say(who string, said []string) {
	if who != "" {
		d.top["who"] = who
	}
	if len(said) > 0 {
		d.top["said"] = said
	}
}

// Does starts an activity; the answers to its topic's questions follow.
func (d *Draft) Does(t Topic) {
	d.activities = append(d.activities, draftActivity{t.Field, map[string]any{}, map[string]any{}})
}

// Activities counts what was started.
func (d *Draft) Activities() int { return len(d.activities) }

// AnswerWork answers a question of the activity started last. An answer that the brief does not take is refused with what it
// would take, and changes nothing.
func (d *Draft) AnswerWork(q Question, text string) error {
	value, err := valueOf(q, text)
	if err != nil {
		return err
	}
	a := &d.activities[len(d.activities)-1]
	into := a.kind
	if q.Field == "hours_week" || q.Field == "at_once" {
		into = a.whole
	}
	return d.try(into, q.Field, value)
}

// Answer answers a question about the surroundings.
func (d *Draft) Answer(q Question, text string) error {
	value, err := valueOf(q, text)
	if err != nil {
		return err
	}
	outer, field, nested := strings.Cut(q.Field, ".")
	if !nested {
		return d.try(d.top, q.Field, value)
	}
	group, ok := d.top[outer].(map[string]any)
	if !ok {
		group = map[string]any{}
		d.top[outer] = group
	}
	return d.try(group, field, value)
}

// try sets a field and takes it back where the brief does not read with it.
func (d *Draft) try(into map[string]any, field string, value any) error {
	before, was := into[field]
	into[field] = value
	if _, err := d.Brief(); err != nil {
		delete(into, field)
		if was {
			into[field] = before
		}
		var wrong *format.Error
		if errors.As(err, &wrong) {
			return fmt.Errorf("got %s, want %s", wrong.Value, wrong.Want)
		}
		return err
	}
	return nil
}

// Brief is the brief so far.
func (d *Draft) Brief() (*Brief, error) {
	list := []any{}
	for _, a := range d.activities {
		one := map[string]any{a.field: a.kind}
		for k, v := range a.whole {
			one[k] = v
		}
		list = append(list, one)
	}
	d.top["activities"] = list
	text, err := json.Marshal(d.top)
	if err != nil {
		return nil, err
	}
	return Read("answer", text)
}

// File is the brief as its file.
func (d *Draft) File() ([]byte, error) {
	b, err := d.Brief()
	if err != nil {
		return nil, err
	}
	return format.Write(b), nil
}

// valueOf turns a person's answer into what the field holds: one of the choices by its word or its place in the list, yes or
// no, a number with or without its unit behind it, makers separated by commas, screens, owned parts, or money in major units.
func valueOf(q Question, text string) (any, error) {
	text = strings.TrimSpace(text)
	switch {
	case q.YesNo:
		return YesOrNo(text)
	case len(q.Choices) > 0:
		if n, err := strconv.Atoi(text); err == nil && n >= 1 && n <= len(q.Choices) {
			return q.Choices[n-1], nil
		}
		if slices.Contains(q.Choices, text) {
			return text, nil
		}
		return nil, fmt.Errorf("%q is none of %s", text, strings.Join(q.Choices, ", "))
	case q.Field == "screens":
		return screensOf(text)
	case q.Field == "owned":
		return ownedOf(text)
	case strings.HasSuffix(q.Field, "_makers"):
		var list []string
		for m := range strings.SplitSeq(text, ",") {
			list = append(list, strings.TrimSpace(m))
		}
		return list, nil
	}
	number, _, _ := strings.Cut(text, " ")
	v, err := strconv.ParseFloat(number, 64)
	if err != nil {
		return nil, fmt.Errorf("%q is not a number", text)
	}
	if strings.HasSuffix(q.Field, "_minor") {
		v *= 100
	}
	return json.Number(strconv.FormatFloat(v, 'f', -1, 64)), nil
}

// YesOrNo reads yes or no.
func YesOrNo(text string) (bool, error) {
	switch strings.ToLower(text) {
	case "y", "yes":
		return true, nil
	case "n", "no":
		return false, nil
	}
	return false, fmt.Errorf("%q is neither yes nor no", text)
}

// HowToWrite says how an answer that is not plain is written, empty where it is.
func HowToWrite(q Question) string {
	switch {
	case q.Field == "screens":
		return "like 2 of 3840x2160 at 60, or 2560x1440 at 144 mine; several separated by commas"
	case q.Field == "owned":
		return "seat=part of the catalog, like graphics=part-id; several separated by commas"
	case strings.HasSuffix(q.Field, "_makers"):
		return "names separated by commas"
	case strings.HasSuffix(q.Field, "_minor"):
		return "an amount"
	}
	return ""
}

// screensOf reads "2 of 3840x2160 at 60, 2560x1440 at 144 mine".
func screensOf(text string) (any, error) {
	var list []any
	for one := range strings.SplitSeq(text, ",") {
		words := strings.Fields(strings.NewReplacer("×", "x", "@", " at ", "hz", "", "Hz", "").Replace(one))
		count, refresh, mine := 1, 60, false
		var width, height int
		for i, w := range words {
			n, err := strconv.Atoi(w)
			switch {
			case err == nil && i+1 < len(words) && words[i+1] == "of":
				count = n
			case err == nil && i > 0 && words[i-1] == "at":
				refresh = n
			case w == "mine":
				mine = true
			case w == "of" || w == "at":
			default:
				across, down, found := strings.Cut(w, "x")
				var errW, errH error
				width, errW = strconv.Atoi(across)
				height, errH = strconv.Atoi(down)
				if !found || errW != nil || errH != nil {
					return nil, fmt.Errorf("%q is not a screen %s", strings.TrimSpace(one), HowToWrite(Question{Field: "screens"}))
				}
			}
		}
		s := map[string]any{"width_px": width, "height_px": height, "refresh_hz": refresh, "bits_per_colour": 8, "count": count}
		if mine {
			s["owned"] = true
		}
		list = append(list, s)
	}
	return list, nil
}

// ownedOf reads "graphics=part-id, case=other-id".
func ownedOf(text string) (any, error) {
	var list []any
	for one := range strings.SplitSeq(text, ",") {
		seat, id, ok := strings.Cut(strings.TrimSpace(one), "=")
		if _, known := build.Named(seat); !ok || !known {
			return nil, fmt.Errorf("%q is not %s", strings.TrimSpace(one), HowToWrite(Question{Field: "owned"}))
		}
		list = append(list, map[string]any{"seat": seat, "part": id})
	}
	return list, nil
}
