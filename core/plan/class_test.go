package plan

import (
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"slipfit/core/build"
	"slipfit/core/grow"
	"slipfit/core/part"
	"slipfit/core/rule"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// firstSeen numbers things in the order in which they first come.
func firstSeen[T comparable](list []T) []int32 {
	seen := map[T]int32{}
	var numbers []int32
	for _, x := range list {
		if _, known := seen[x]; !known {
			seen[x] = int32(len(seen))
		}
		numbers = append(numbers, seen[x])
	}
	return numbers
}

// TestClassify holds how options are sorted for a rule to what it reads of them, written out option by option.
func TestClassify(t *testing.T) {
	grown, err := grow.Stock(generic(t), 600, 3)
	require.NoError(t, err)
	p, err := New(grown, Ask{Needs: briefed(t, grown)[0].needs})
	require.NoError(t, err)
	several, partial := 0, 0
	for _, r := range rule.All {
		trait, known := traits[r.ID]
		require.True(t, known)
		for _, c := range p.cols {
			reads := trait.fields
			if slices.Contains(r.Filled, c.seat) {
				reads = nil
			}
			s := p.stepped(r)
			w := copyist{reads, s.steps}
			var texts []string
			for _, o := range c.options {
				if r.Purse != nil {
					texts = append(texts, o.Price().String())
					continue
				}
				texts = append(texts, w.option(o))
			}
			k := c.classify(s)
			require.Equal(t, firstSeen(texts), k.of, "%s sees %s", r.ID, c.seat)
			require.Equal(t, int(slices.Max(k.of))+1, k.count)
			if k.count > 2 && k.count < len(c.options)/2 {
				several++
			}
		}
	}
	for _, c := range p.cols {
		for _, a := range c.aspects {
			partial += len(a.less)
		}
	}
	require.Greater(t, several, 200)
	require.Greater(t, partial, 20, "lists and figures of which some rules see less")
}

// copyist writes out what a rule reads of an option.
type copyist struct {
	reads []string
	steps map[string][]int64
}

func (w copyist) option(o build.Option) string {
	if o.Part == nil {
		return "empty"
	}
	text := w.value(reflect.ValueOf(o.Part).Elem(), "")
	if o.Layout != nil {
		text += w.value(reflect.ValueOf(o.Layout).Elem(), "")
	}
	decided := map[string]any{}
	switch o.Seat {
	case build.Case:
		decided["Build.Plate"] = o.Plate
	case build.Cooler:
		decided["Build.Face"] = o.Face
	case build.Memory:
		decided["Build.Kits"] = o.Count
	case build.Boot, build.Cache, build.Archive:
		decided["Storage.Count"] = o.Count
	case build.Fans:
		decided["FanSet.Count"], decided["FanSet.Face"] = o.Count, o.Face
	case build.Cards:
		decided["CardSet.Count"] = o.Count
	case build.Screens:
		decided["ScreenSet.Count"] = o.Count
	}
	for _, field := range slices.Sorted(maps.Keys(decided)) {
		if slices.Contains(w.reads, field) {
			text += fmt.Sprintf("<%v>", decided[field])
		}
	}
	return text
}

func (w copyist) value(v reflect.Value, field string) string {
	var b strings.Builder
	switch t := v.Type(); {
	case t.Kind() == reflect.Pointer && v.IsNil():
		return "none"
	case t.Kind() == reflect.Pointer:
		return "some(" + w.value(v.Elem(), "") + ")"
	case t.Kind() == reflect.Slice:
		for i := range v.Len() {
			b.WriteString(w.value(v.Index(i), "") + ";")
		}
		return "[" + b.String() + "]"
	case t.Kind() == reflect.Struct && strings.HasSuffix(t.PkgPath(), "core/part"):
		for i := range t.NumField() {
			f := t.Field(i)
			if full := t.Name() + "." + f.Name; f.Anonymous || slices.Contains(w.reads, full) {
				b.WriteString(w.value(v.Field(i), full) + ",")
			}
		}
		return "{" + b.String() + "}"
	case w.steps[field] != nil && v.Field(1).Bool():
		reached := 0
		for _, step := range w.steps[field] {
			if v.Field(0).Int() >= step {
				reached++
			}
		}
		return fmt.Sprint("reaches ", reached)
	}
	return fmt.Sprintf("%#v", v)
}

// TestJointClasses sorts figures at random, near and far, two by two.
func TestJointClasses(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 2))
	draw := func(n int) []int64 {
		list := make([]int64, n)
		apart := int64(1) << rng.IntN(60)
		for i := range list {
			list[i] = (rng.Int64N(int64(2+rng.IntN(n+1))) - 3) * apart
			if rng.IntN(9) == 0 {
				list[i] = unstated
			}
		}
		return list
	}
	for range 500 {
		n := 1 + rng.IntN(80)
		a, b := draw(n), draw(n)
		var r sorter
		k, l := r.sort(a), r.sort(b)
		require.Equal(t, firstSeen(a), k.of)
		require.Equal(t, firstSeen(b), l.of)
		pairs := make([][2]int64, n)
		for i := range pairs {
			pairs[i] = [2]int64{a[i], b[i]}
		}
		joint := r.joint(k, l)
		require.Equal(t, firstSeen(pairs), joint.of)
		require.Equal(t, int(slices.Max(joint.of))+1, joint.count)
	}
}

// TestUnstatedFigures tells a figure that a sheet lacks from every one that it states, and from a structure that is not there.
func TestUnstatedFigures(t *testing.T) {
	figure := func(f unit.Figure[unit.Length]) int64 { return stated(reflect.ValueOf(f)) }
	require.Equal(t, int64(0), figure(unit.Known(unit.Length(0))))
	require.Equal(t, int64(unstated), figure(unit.Figure[unit.Length]{}))
	coolers := []*part.Cooler{{Air: &part.AirCooler{}}, {Air: &part.AirCooler{Height: unit.Known(unit.Length(0))}}, {}}
	var options []build.Option
	for _, c := range coolers {
		options = append(options, build.Option{Seat: build.Cooler, Part: c, Count: 1})
	}
	c := &shelf{seat: build.Cooler, options: options, byLook: map[string]*classes{}, sorter: &sorter{}}
	require.Equal(t, []int32{0, 1, 2}, c.look(&rule.CoolerHeight, nil).of)
}

// Coolers are of one kind where they are air coolers whose resistances round up to the same step, or where neither is one that states it.
func TestByKind(t *testing.T) {
	p, err := New(generic(t), Ask{})
	require.NoError(t, err)
	c := p.cols[p.colOf[build.Cooler]]
	kind := func(o int) float64 {
		if x := c.options[o].Part.(*part.Cooler); x.Air != nil {
			if sink, stated := x.Air.Sink.Get(); stated {
				return math.Ceil(float64(sink) / 50) // steps of 0.05 K/W
			}
		}
		return -1
	}
	k := c.byKind()
	for o := range k.of {
		for j := range k.of {
			require.Equal(t, kind(o) == kind(j), k.of[o] == k.of[j], "%s and %s", c.options[o].ID(), c.options[j].ID())
		}
	}
	require.Greater(t, k.count, 5)
	require.Less(t, k.count, 15)
}
