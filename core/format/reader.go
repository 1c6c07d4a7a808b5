package format

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"slipfit/core/unit"

	"github.com/tidwall/gjson"
)

// reader fills values and gathers what is wrong.
type reader struct {
	file string
	errs []error
	path []step
}

// step is one step of the path to the value being read: a field, or an element of a list where the name is empty.
type step struct {
	name  string
	index int
}

// at prints the path: parts[3].length_mm.
func (r *reader) at() string {
	var b strings.Builder
	for _, s := range r.path {
		switch {
		case s.name == "":
			b.WriteString("[" + strconv.Itoa(s.index) + "]")
		case b.Len() == 0:
			b.WriteString(s.name)
		default:
			b.WriteString("." + s.name)
		}
	}
	return b.String()
}

func join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

func (r *reader) fail(got gjson.Result, want string) {
	r.errs = append(r.errs, &Error{r.file, r.at(), show(got), want})
}

// value reads j into v by its plan.
func (r *reader) value(j gjson.Result, v reflect.Value, p *plan) {
	if p.pointer {
		fresh := reflect.New(p.typ)
		v.Set(fresh)
		v = fresh.Elem()
	}
	switch p.shape {
	case shapeNumber:
		r.number(j, v, p)
	case shapeFloat:
		if j.Type != gjson.Number || p.rule.bounded && (j.Num < p.rule.low || j.Num > p.rule.top) {
			r.fail(j, describe(p.typ, p.rule))
			return
		}
		v.SetFloat(j.Num)
	case shapeFlag:
		r.flag(j, v, p)
	case shapeText:
		r.text(j, v, p)
	case shapeWord:
		r.word(j, v, p)
	case shapeRelease:
		r.release(j, v, p)
	case shapeObject:
		r.object(j, v, p)
	case shapeList:
		r.list(j, v, p)
	}
}

func (r *reader) object(j gjson.Result, v reflect.Value, p *plan) {
	if !j.IsObject() {
		r.fail(j, "an object")
		return
	}
	seen := make([]bool, len(p.fields))
	depth, last := len(r.path), -1
	j.ForEach(func(key, val gjson.Result) bool {
		name := key.Str
		r.path = append(r.path[:depth], step{name: name})
		i, known := p.named(name, last+1)
		last = i
		switch {
		case !known:
			if quoted := strconv.Quote(name); name == "" || quoted != `"`+name+`"` {
				r.path[depth].name = quoted
			}
			r.fail(val, "no such field here; known are "+names(p.fields))
		case seen[i]:
			r.fail(val, "this field once")
		default:
			seen[i] = true
			if f := &p.fields[i]; val.Type != gjson.Null || !f.optional {
				r.value(val, v.FieldByIndex(f.index), f.plan)
			}
		}
		return true
	})
	r.path = r.path[:depth]
	for i, f := range p.fields {
		if !seen[i] && !f.optional {
			r.errs = append(r.errs, &Error{r.file, join(r.at(), f.name), "nothing", describe(f.typ, f.rules)})
		}
	}
}

// named finds a field by its name; at is where it stands if the file tells its fields in order and leaves none out.
func (p *plan) named(name string, at int) (i int, known bool) {
	if at < len(p.fields) && p.fields[at].name == name {
		return at, true
	}
	i, known = p.byName[name]
	return i, known
}

func names(list []planned) string {
	all := make([]string, len(list))
	for i, f := range list {
		all[i] = f.name
	}
	return strings.Join(all, ", ")
}

func (r *reader) list(j gjson.Result, v reflect.Value, p *plan) {
	if !j.IsArray() {
		r.fail(j, "a list")
		return
	}
	v.Set(reflect.MakeSlice(p.typ, 0, p.rule.least))
	depth, n := len(r.path), 0
	j.ForEach(func(_, item gjson.Result) bool {
		r.path = append(r.path[:depth], step{index: n})
		v.Grow(1)
		v.SetLen(n + 1)
		r.value(item, v.Index(n), p.item)
		n++
		return true
	})
	r.path = r.path[:depth]
	if n < p.rule.least {
		r.fail(j, fmt.Sprintf("a list of at least %d", p.rule.least))
	}
}

func (r *reader) text(j gjson.Result, v reflect.Value, p *plan) {
	switch {
	case j.Type != gjson.String:
		r.fail(j, "a text")
	case j.Str == "" && !p.rule.optional:
		r.fail(j, "a text that is not empty")
	case p.pattern != nil && !p.pattern.MatchString(j.Str):
		r.fail(j, "a text of the form "+p.rule.pattern)
	default:
		v.SetString(strings.Clone(j.Str))
	}
}

func (r *reader) word(j gjson.Result, v reflect.Value, p *plan) {
	if j.Type == gjson.String {
		for _, w := range p.words {
			if j.Str == w {
				v.SetString(w)
				return
			}
		}
	}
	r.fail(j, "one of "+strings.Join(p.words, ", "))
}

func (r *reader) flag(j gjson.Result, v reflect.Value, p *plan) {
	switch {
	case j.Type != gjson.True && j.Type != gjson.False:
		r.fail(j, "true or false")
	case p.figure:
		v.Addr().Interface().(*unit.Figure[bool]).Set(j.Type == gjson.True)
	default:
		v.SetBool(j.Type == gjson.True)
	}
}

func (r *reader) release(j gjson.Result, v reflect.Value, p *plan) {
	n, err := unit.ParseRelease(j.Str)
	if j.Type != gjson.String || err != nil || p.rule.bounded && (float64(n) < p.rule.low*1000 || float64(n) > p.rule.top*1000+999) {
		r.fail(j, `a version as a text such as "2.14"`+p.rule.span())
		return
	}
	p.store(v, int64(n))
}

// number reads an integer or a typed quantity: the JSON decimal times the type's base, exactly.
func (r *reader) number(j gjson.Result, v reflect.Value, p *plan) {
	base := p.measure.perUnit
	n, ok := int64(0), false
	if j.Type == gjson.Number {
		n, ok = scaled(j.Raw, base)
	}
	switch {
	case ok && !(p.rule.bounded && (float64(n) < p.rule.low*float64(base) || float64(n) > p.rule.top*float64(base))):
		p.store(v, n)
	case ok || base == 1 || j.Type != gjson.Number:
		r.fail(j, describe(p.typ, p.rule))
	default:
		r.fail(j, describe(p.typ, p.rule)+fmt.Sprintf(" in steps of 1/%d %s", base, p.measure.symbol))
	}
}

// store sets a count, through the figure's own method where v is a figure.
func (p *plan) store(v reflect.Value, n int64) {
	if p.figure {
		p.measure.state(v.Addr().Interface(), n)
		return
	}
	v.SetInt(n)
}

// scaled turns a JSON number into an integer count of 1/base, exactly; false where it does not fit.
func scaled(raw string, base int64) (int64, bool) {
	if strings.ContainsAny(raw, "eE") {
		return 0, false
	}
	sign := int64(1)
	if strings.HasPrefix(raw, "-") {
		sign, raw = -1, raw[1:]
	}
	whole, frac, _ := strings.Cut(raw, ".")
	n, err := strconv.ParseInt(whole, 10, 64)
	if err != nil || n > (1<<62)/base {
		return 0, false
	}
	n *= base
	frac = strings.TrimRight(frac, "0")
	if frac == "" {
		return sign * n, true
	}
	if len(frac) > 10 {
		return 0, false
	}
	f, err := strconv.ParseInt(frac, 10, 64)
	if err != nil {
		return 0, false
	}
	tens := int64(1)
	for range len(frac) {
		tens *= 10
	}
	if f*base%tens != 0 {
		return 0, false
	}
	return sign * (n + f*base/tens), true
}
