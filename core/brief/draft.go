package brief

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"slipfit/core/format"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// Draft is a brief in the making, filled answer by answer with what Topics and Surroundings ask. What is not answered is left
// out, which is what "I don't know" means.
type Draft struct {
	stock      *part.Stock
	top        map[string]any
	activities []draftActivity
}

type draftActivity struct {
	field string
	kind  map[string]any
	whole map[string]any // hours_week and at_once, which every kind of work has
}

// NewDraft starts a brief with its title. Parts the customer has are looked for in the stock.
func NewDraft(title string, stock *part.Stock) *Draft {
	return &Draft{stock: stock, top: map[string]any{"kind": Kind, "version": Version, "title": title}}
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
	value, err := valueOf(q, text, d.stock.Shop.Currency)
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
	switch q.Field {
	case ownScreens, newScreens:
		return d.screens(q.Field == ownScreens, text)
	case "owned":
		list, err := ownedOf(d.stock, text)
		if err != nil {
			return err
		}
		return d.try(d.top, q.Field, list)
	}
	value, err := valueOf(q, text, d.stock.Shop.Currency)
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

// screens sets the screens that the customer has, or those to be bought, and leaves the others.
func (d *Draft) screens(owned bool, text string) error {
	list, err := screensOf(text)
	if err != nil {
		return err
	}
	var all []any
	before, _ := d.top["screens"].([]any)
	for _, s := range before {
		if s.(map[string]any)["owned"] != owned {
			all = append(all, s)
		}
	}
	for _, s := range list {
		s.(map[string]any)["owned"] = owned
		all = append(all, s)
	}
	return d.try(d.top, "screens", all)
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
		switch {
		case !errors.As(err, &wrong):
			return err
		case unit.InMinor(field):
			return fmt.Errorf("got %s, want %s", unit.MajorOf(wrong.Value), unit.WantedInMajor(wrong.Want, d.stock.Shop.Currency))
		default:
			return fmt.Errorf("got %s, want %s", wrong.Value, wrong.Want)
		}
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
// no, a number with or without its unit behind it, makers separated by commas, screens, owned parts, or money in major units with or without the currency.
func valueOf(q Question, text, currency string) (any, error) {
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
	case strings.HasSuffix(q.Field, "_makers"):
		var list []string
		for m := range strings.SplitSeq(text, ",") {
			list = append(list, strings.TrimSpace(m))
		}
		return list, nil
	}
	if unit.InMinor(q.Field) {
		minor, ok := unit.MinorOf(amountOf(text, currency))
		if !ok {
			return nil, fmt.Errorf("%q is no amount", text)
		}
		return json.Number(minor), nil
	}
	number, _, _ := strings.Cut(text, " ")
	v, err := strconv.ParseFloat(number, 64)
	if err != nil {
		return nil, fmt.Errorf("%q is not a number", text)
	}
	return json.Number(strconv.FormatFloat(v, 'f', -1, 64)), nil
}

// amountOf is an amount without the currency, or a currency's sign, on either side of it.
func amountOf(text, currency string) string {
	sign := func(r rune) bool { return unicode.IsSpace(r) || unicode.Is(unicode.Sc, r) }
	amount := strings.TrimFunc(text, sign)
	if n := len(amount) - len(currency); n > 0 && strings.EqualFold(amount[n:], currency) {
		amount = amount[:n]
	} else if n > 0 && strings.EqualFold(amount[:len(currency)], currency) {
		amount = amount[len(currency):]
	}
	return strings.TrimFunc(amount, sign)
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

// HowToWrite says how an answer that is not plain is written, empty where it is; money is in whole units of the currency.
func HowToWrite(q Question, currency string) string {
	switch {
	case q.Field == "screens":
		return screenWords + " mine" + severalWords
	case q.Field == ownScreens:
		return screenWords + ", by hdmi where it has no other input" + severalWords
	case q.Field == newScreens:
		return screenWords + severalWords
	case q.Field == "owned":
		return "names as the catalog has them, or seat=name where a part could sit in several" + severalWords
	case strings.HasSuffix(q.Field, "_makers"):
		return "names separated by commas"
	case unit.InMinor(q.Field):
		return "an amount in " + currency
	}
	return ""
}

const (
	screenWords  = "like 2 of 3840x2160 at 60 with 10 bits, or 2560x1440 at 144"
	severalWords = "; several separated by commas"
)

// screensOf reads "2 of 3840x2160 at 60 with 10 bits, 2560x1440 at 144 by hdmi mine".
func screensOf(text string) ([]any, error) {
	var list []any
	for one := range strings.SplitSeq(text, ",") {
		words := strings.Fields(strings.NewReplacer("×", "x", "@", " at ", "hz", "", "Hz", "").Replace(one))
		count, refresh, bits, mine, input := 1, 60, 8, false, ""
		var width, height int
		for i, w := range words {
			n, err := strconv.Atoi(w)
			switch {
			case err == nil && i+1 < len(words) && words[i+1] == "of":
				count = n
			case err == nil && i > 0 && words[i-1] == "at":
				refresh = n
			case err == nil && i > 0 && words[i-1] == "with":
				bits = n
			case w == "mine":
				mine = true
			case i > 0 && words[i-1] == "by":
				input = w
			case slices.Contains([]string{"of", "at", "with", "by", "bit", "bits"}, w):
			default:
				across, down, found := strings.Cut(w, "x")
				var errW, errH error
				width, errW = strconv.Atoi(across)
				height, errH = strconv.Atoi(down)
				if !found || errW != nil || errH != nil {
					return nil, fmt.Errorf("%q is not a screen %s", strings.TrimSpace(one), HowToWrite(Question{Field: "screens"}, ""))
				}
			}
		}
		s := map[string]any{"width_px": width, "height_px": height, "refresh_hz": refresh, "bits_per_colour": bits, "count": count}
		if mine {
			s["owned"] = true
		}
		if input != "" {
			s["input"] = input
		}
		list = append(list, s)
	}
	return list, nil
}
