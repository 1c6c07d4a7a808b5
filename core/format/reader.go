package format

import (
	"fmt"
	"reflect"
	"regexp"
	"strconv"
	"strings"

	"slipfit/core/unit"

	"github.com/tidwall/gjson"
)

// reader fills values and gathers what is wrong.
type reader struct {
	file     string
	errs     []error
	fields   map[reflect.Type][]field
	patterns map[string]*regexp.Regexp
}

// of is fields, worked out once a type and file.
func (r *reader) of(t reflect.Type) []field {
	list, ok := r.fields[t]
	if !ok {
		list = fields(t)
		r.fields[t] = list
	}
	return list
}

func (r *reader) matches(pattern, s string) bool {
	re, ok := r.patterns[pattern]
	if !ok {
		re = regexp.MustCompile(pattern)
		r.patterns[pattern] = re
	}
	return re.MatchString(s)
}

func (r *reader) fail(path string, got gjson.Result, want string) {
	r.errs = append(r.errs, &Error{r.file, path, show(got), want})
}

// words is a type whose values are a fixed list of words.
type words interface{ Values() []string }

var (
	releaseType = reflect.TypeFor[unit.Release]()
	wordsType   = reflect.TypeFor[words]()
)

// value reads j into v.
func (r *reader) value(j gjson.Result, path string, v reflect.Value, rule rules) {
	t := v.Type()
	switch {
	case t == releaseType:
		r.release(j, path, v, rule)
	case isFigure(t):
		r.figure(j, path, v, rule)
	case t.Implements(wordsType) && t.Kind() == reflect.String:
		r.word(j, path, v)
	case t.Kind() == reflect.Pointer:
		fresh := reflect.New(t.Elem())
		r.value(j, path, fresh.Elem(), rule)
		v.Set(fresh)
	case t.Kind() == reflect.Struct:
		r.object(j, path, v)
	case t.Kind() == reflect.Slice:
		r.list(j, path, v, rule)
	case t.Kind() == reflect.String:
		r.text(j, path, v, rule)
	case t.Kind() == reflect.Bool:
		if j.Type != gjson.True && j.Type != gjson.False {
			r.fail(path, j, "true or false")
			return
		}
		v.SetBool(j.Bool())
	case t.Kind() == reflect.Int64 || t.Kind() == reflect.Int:
		r.number(j, path, v, rule)
	case t.Kind() == reflect.Float64:
		r.float(j, path, v, rule)
	default:
		panic(fmt.Sprintf("format: %s: no reading for %s", path, t))
	}
}

func (r *reader) object(j gjson.Result, path string, v reflect.Value) {
	if !j.IsObject() {
		r.fail(path, j, "an object")
		return
	}
	list := r.of(v.Type())
	seen := make([]bool, len(list))
	j.ForEach(func(key, val gjson.Result) bool {
		name := key.String()
		at := join(path, name)
		for i, f := range list {
			if f.name != name {
				continue
			}
			if seen[i] {
				r.fail(at, val, "this field once")
				return true
			}
			seen[i] = true
			if val.Type == gjson.Null && f.optional {
				return true
			}
			r.value(val, at, v.FieldByIndex(f.index), f.rules)
			return true
		}
		r.fail(at, val, "no such field here; known are "+names(list))
		return true
	})
	for i, f := range list {
		if !seen[i] && !f.optional {
			r.errs = append(r.errs, &Error{r.file, join(path, f.name), "nothing", describe(f.typ, f.rules)})
		}
	}
}

func names(list []field) string {
	all := make([]string, len(list))
	for i, f := range list {
		all[i] = f.name
	}
	return strings.Join(all, ", ")
}

func join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

func (r *reader) list(j gjson.Result, path string, v reflect.Value, rule rules) {
	if !j.IsArray() {
		r.fail(path, j, "a list")
		return
	}
	items := j.Array()
	if len(items) < rule.least {
		r.fail(path, j, fmt.Sprintf("a list of at least %d", rule.least))
		return
	}
	out := reflect.MakeSlice(v.Type(), len(items), len(items))
	inner := rules{name: rule.name, bounded: rule.bounded, low: rule.low, top: rule.top, pattern: rule.pattern}
	for i, item := range items {
		r.value(item, fmt.Sprintf("%s[%d]", path, i), out.Index(i), inner)
	}
	v.Set(out)
}

func (r *reader) text(j gjson.Result, path string, v reflect.Value, rule rules) {
	if j.Type != gjson.String {
		r.fail(path, j, "a text")
		return
	}
	s := j.String()
	if s == "" && !rule.optional {
		r.fail(path, j, "a text that is not empty")
		return
	}
	if rule.pattern != "" && !r.matches(rule.pattern, s) {
		r.fail(path, j, "a text of the form "+rule.pattern)
		return
	}
	v.SetString(s)
}

func (r *reader) word(j gjson.Result, path string, v reflect.Value) {
	list := v.Interface().(words).Values()
	if j.Type == gjson.String {
		for _, w := range list {
			if j.String() == w {
				v.SetString(w)
				return
			}
		}
	}
	r.fail(path, j, "one of "+strings.Join(list, ", "))
}

func (r *reader) release(j gjson.Result, path string, v reflect.Value, rule rules) {
	n, err := unit.ParseRelease(j.String())
	if j.Type != gjson.String || err != nil || rule.bounded && (float64(n) < rule.low*1000 || float64(n) > rule.top*1000+999) {
		r.fail(path, j, `a version as a text such as "2.14"`+rule.span())
		return
	}
	v.SetInt(int64(n))
}

// number reads an integer or a typed quantity: the JSON decimal times the type's base, exactly.
func (r *reader) number(j gjson.Result, path string, v reflect.Value, rule rules) {
	base, symbol := Base(v.Type())
	want := describe(v.Type(), rule)
	n, ok := int64(0), false
	if j.Type == gjson.Number {
		n, ok = scaled(j.Raw, base)
	}
	if !ok || rule.bounded && (float64(n) < rule.low*float64(base) || float64(n) > rule.top*float64(base)) {
		if ok || base == 1 || j.Type != gjson.Number {
			r.fail(path, j, want)
		} else {
			r.fail(path, j, want+fmt.Sprintf(" in steps of 1/%d %s", base, symbol))
		}
		return
	}
	v.SetInt(n)
}

func (r *reader) float(j gjson.Result, path string, v reflect.Value, rule rules) {
	if j.Type != gjson.Number || rule.bounded && (j.Num < rule.low || j.Num > rule.top) {
		r.fail(path, j, "a number"+rule.span())
		return
	}
	v.SetFloat(j.Num)
}

// figure reads a unit.Figure through its own pointer method, so that its fields stay private.
func (r *reader) figure(j gjson.Result, path string, v reflect.Value, rule rules) {
	inner := reflect.New(figureOf(v.Type())).Elem()
	before := len(r.errs)
	r.value(j, path, inner, rule)
	if len(r.errs) == before {
		v.Addr().MethodByName("Set").Call([]reflect.Value{inner})
	}
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
