package plan

import (
	"encoding/binary"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/rule"
)

// trait is what the source of a rule says of it.
type trait struct {
	judges    bool             // whether it finds anything but advice; one that does not is of no concern here
	serves    bool             // whether it finds value
	needs     []string         // fields of the needs that it can read
	fields    []string         // fields of parts and builds that it can read
	resources []brief.Resource // resources it names
}

// decisions are the fields of a build, beside its parts, that a rule can read.
var decisions = []string{"Build.Kits", "Build.Plate", "Build.Face", "Storage.Count", "FanSet.Count", "FanSet.Face", "CardSet.Count", "ScreenSet.Count"}

// classes sorts the options of a shelf by what a rule can see of them: it cannot tell two of one class apart.
type classes struct {
	of    []int32 // by option
	count int
	sets  []set // by class: its options; nil until they are asked for
}

// fewClasses is how many classes at most are kept as sets.
const fewClasses = 256

// members is the options of the class of one; nil where there are too many classes.
func (k *classes) members(o int) set {
	if k.count > fewClasses {
		return nil
	}
	if k.sets == nil {
		k.sets = make([]set, k.count)
		for i := range k.sets {
			k.sets[i] = make(set, words(len(k.of)))
		}
		for o, class := range k.of {
			k.sets[class].add(o)
		}
	}
	return k.sets[k.of[o]]
}

// stepped is a rule and the values from which on it sees another figure, the lowest first, by field.
type stepped struct {
	*rule.Rule
	key   string // no other rule has it, nor other values
	steps map[string][]int64
}

// stepped is a rule as it sees figures under what the needs say.
func (p *Problem) stepped(r *rule.Rule) stepped {
	if len(r.Steps) == 0 {
		return stepped{Rule: r, key: r.ID}
	}
	s, known := p.steps[r.ID]
	if !known {
		s = stepped{r, r.ID, map[string][]int64{}}
		for _, step := range r.Steps {
			from := step.From(p.ask.Needs)
			slices.Sort(from)
			s.steps[step.Field] = slices.Compact(from)
			s.key += fmt.Sprint(" ", step.Field, s.steps[step.Field])
		}
		p.steps[r.ID] = s
	}
	return s
}

// classify sorts the options of a shelf as a rule sees them. A rule whose source is not known sees every option apart.
func (c *shelf) classify(r stepped) *classes {
	if k := c.byRule[r.key]; k != nil {
		return k
	}
	k := c.look(r.Rule, r.steps)
	c.byRule[r.key] = k
	return k
}

// apart sees every option apart.
func (c *shelf) apart() *classes {
	if c.each == nil {
		c.each = &classes{of: make([]int32, len(c.options)), count: len(c.options)}
		for o := range c.options {
			c.each.of[o] = int32(o)
		}
	}
	return c.each
}

// alike sees no option apart.
func (c *shelf) alike() *classes {
	if c.none == nil {
		c.none = &classes{of: make([]int32, len(c.options)), count: 1}
	}
	return c.none
}

// both sees options apart that either sort does.
func (c *shelf) both(k, l *classes) *classes {
	switch {
	case k == l || l.count == 1 || k.count == len(c.options):
		return k
	case k.count == 1 || l.count == len(c.options):
		return l
	}
	pair := [2]*classes{k, l}
	if found := c.paired[pair]; found != nil {
		return found
	}
	if len(c.paired) == remembered {
		clear(c.paired)
	}
	joint := sorted(len(c.options), func(o int) int64 { return int64(k.of[o])<<32 | int64(l.of[o]) })
	c.paired[pair] = joint
	return joint
}

// sorted sorts so many options by a figure of each.
func sorted(n int, figure func(o int) int64) *classes {
	k := &classes{of: make([]int32, n)}
	seen := make(map[int64]int32, 64)
	for o := range k.of {
		x := figure(o)
		at, ok := seen[x]
		if !ok {
			at = int32(k.count)
			seen[x] = at
			k.count++
		}
		k.of[o] = at
	}
	return k
}

func (c *shelf) look(r *rule.Rule, steps map[string][]int64) *classes {
	t, known := traits[r.ID]
	if !known {
		return c.apart()
	}
	if slices.Contains(r.Filled, c.seat) {
		t.fields = nil // whether it is filled is all that the rule sees
	}
	s := newSketch(c.options, reading{func(full string) bool { return slices.Contains(t.fields, full) }, steps})
	if k := c.byLook[s.sign]; k != nil {
		return k
	}
	k := &classes{of: make([]int32, len(c.options))}
	seen := map[string]int32{}
	var key []byte
	for o, option := range c.options {
		key = s.option(key[:0], option)
		at, ok := seen[string(key)]
		if !ok {
			at = int32(k.count)
			seen[string(key)] = at
			k.count++
		}
		k.of[o] = at
	}
	c.byLook[s.sign] = k
	return k
}

// sketch writes down what some fields of an option say, so that options alike in them read alike.
type sketch struct {
	sign   string // what it writes down
	part   drawing
	layout drawing
	count  bool
	plate  bool
	face   bool
}

// reading is what is read of a part: some fields, and of some figures no more than which of these values they reach.
type reading struct {
	of    func(full string) bool
	steps map[string][]int64
}

// drawing writes down a value, nil where nothing of it is read.
type drawing func(b []byte, v reflect.Value) []byte

func newSketch(options []build.Option, r reading) *sketch {
	s := &sketch{}
	var sign strings.Builder
	seat := build.Seat(0)
	for _, o := range options {
		if o.Part == nil {
			continue
		}
		seat = o.Seat
		s.part = draw(reflect.TypeOf(o.Part).Elem(), r, &sign)
		if o.Layout != nil {
			s.layout = draw(reflect.TypeOf(*o.Layout), r, &sign)
		}
		break
	}
	switch seat {
	case build.Case:
		s.plate = r.of("Build.Plate")
	case build.Cooler:
		s.face = r.of("Build.Face")
	case build.Memory:
		s.count = r.of("Build.Kits")
	case build.Boot, build.Cache, build.Archive:
		s.count = r.of("Storage.Count")
	case build.Fans:
		s.count, s.face = r.of("FanSet.Count"), r.of("FanSet.Face")
	case build.Cards:
		s.count = r.of("CardSet.Count")
	case build.Screens:
		s.count = r.of("ScreenSet.Count")
	}
	for _, on := range [...]bool{s.count, s.plate, s.face} {
		if on {
			sign.WriteByte('1')
		} else {
			sign.WriteByte('0')
		}
	}
	s.sign = sign.String()
	return s
}

// option writes down an option.
func (s *sketch) option(b []byte, o build.Option) []byte {
	if o.Part == nil {
		return append(b, 0)
	}
	b = append(b, 1)
	if s.part != nil {
		b = s.part(b, reflect.ValueOf(o.Part).Elem())
	}
	if s.layout != nil {
		b = s.layout(b, reflect.ValueOf(o.Layout).Elem())
	}
	if s.count {
		b = binary.AppendVarint(b, int64(o.Count))
	}
	if s.plate {
		b = binary.AppendVarint(b, int64(o.Plate))
	}
	if s.face {
		b = append(append(b, o.Face...), 0)
	}
	return b
}

// draw makes the drawing of a type: of a part's structures the fields read, of anything else all.
func draw(t reflect.Type, r reading, sign *strings.Builder) drawing {
	switch t.Kind() {
	case reflect.Struct:
		return drawFields(t, r, sign)
	case reflect.Pointer:
		inner := draw(t.Elem(), r, sign)
		return func(b []byte, v reflect.Value) []byte {
			if v.IsNil() {
				return append(b, 0)
			}
			b = append(b, 1)
			if inner != nil {
				b = inner(b, v.Elem())
			}
			return b
		}
	case reflect.Slice, reflect.Array:
		inner := draw(t.Elem(), r, sign)
		return func(b []byte, v reflect.Value) []byte {
			n := v.Len()
			b = binary.AppendVarint(b, int64(n))
			if inner != nil {
				for i := range n {
					b = inner(b, v.Index(i))
				}
			}
			return b
		}
	case reflect.String:
		return func(b []byte, v reflect.Value) []byte {
			return append(binary.AppendVarint(b, int64(v.Len())), v.String()...)
		}
	case reflect.Bool:
		return func(b []byte, v reflect.Value) []byte {
			if v.Bool() {
				return append(b, 1)
			}
			return append(b, 0)
		}
	}
	return func(b []byte, v reflect.Value) []byte { return binary.AppendVarint(b, v.Int()) }
}

func drawFields(t reflect.Type, r reading, sign *strings.Builder) drawing {
	type member struct {
		at   int
		draw drawing
	}
	var members []member
	figure := !strings.HasSuffix(t.PkgPath(), "core/part")
	for i := range t.NumField() {
		f := t.Field(i)
		if !figure && !f.Anonymous && !r.of(t.Name()+"."+f.Name) {
			continue
		}
		if !figure && !f.Anonymous {
			sign.WriteString(t.Name() + "." + f.Name + " ")
			if steps := r.steps[t.Name()+"."+f.Name]; steps != nil {
				fmt.Fprint(sign, steps, " ")
				members = append(members, member{i, drawSteps(steps)})
				continue
			}
		}
		if d := draw(f.Type, r, sign); d != nil {
			members = append(members, member{i, d})
		}
	}
	if len(members) == 0 {
		return nil
	}
	return func(b []byte, v reflect.Value) []byte {
		for _, m := range members {
			b = m.draw(b, v.Field(m.at))
		}
		return b
	}
}

// drawSteps makes the drawing of a figure of which no more is read than which of some values it reaches, the lowest first.
func drawSteps(steps []int64) drawing {
	return func(b []byte, v reflect.Value) []byte {
		if !v.FieldByName("known").Bool() {
			return append(b, 0)
		}
		at, _ := slices.BinarySearch(steps, v.FieldByName("value").Int()+1)
		return binary.AppendUvarint(append(b, 1), uint64(at))
	}
}
