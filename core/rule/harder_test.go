package rule

import (
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"slipfit/catalog"
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/predict"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// TestHarder holds every rule to the figures it calls harder or easier: a build that fails by it does not stand with more of a harder one,
// or less of an easier one, nor do seats of it that can decide alone. Each figure makes some build fail that stood.
func TestHarder(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	r := rand.New(rand.NewPCG(2026, 11))
	for _, rule := range All {
		for i, field := range slices.Concat(rule.Harder, rule.Easier) {
			failed, told := 0, 0
			for n := 0; n < 20_000 || n < 300_000 && (failed < 50 || told < 50); n++ {
				b := randomBuild(r, stock)
				if r.IntN(4) > 0 { // near what it comes to
					for _, s := range rule.Reads {
						if !b.Filled(s) {
							randomSeat(r, b, s, stock)
						}
					}
				}
				fails, early := !passes(NewView(b, &brief.Needs{}).Run(rule)), failsEarly(b, rule)
				by := 1 + r.Int64N(60_000)
				if strings.HasSuffix(field, ".Count") || strings.HasSuffix(field, ".Slots") || strings.HasSuffix(field, ".Brackets") {
					by = 1 + r.Int64N(3)
				}
				if i >= len(rule.Harder) {
					by = -by
				}
				if !strain(b, rule.Reads[r.IntN(len(rule.Reads))], field, by) {
					continue
				}
				for nth, still := range failsEarly(b, rule) {
					require.True(t, still || !early[nth], "rule %s fails %v no more with %s changed by %d", rule.ID, rule.Early[nth].Seats, field, by)
				}
				switch stands := passes(NewView(b, &brief.Needs{}).Run(rule)); {
				case fails:
					require.False(t, stands, "rule %s stands with %s changed by %d", rule.ID, field, by)
					failed++
				case !stands:
					told++
				}
			}
			t.Logf("%s, %s: %d builds failed, %d stood no more", rule.ID, field, failed, told)
			require.Greater(t, failed, 20, "rule %s, %s", rule.ID, field)
			require.Greater(t, told, 20, "rule %s, %s", rule.ID, field)
		}
	}
}

// failsEarly tells which of the seats that can decide alone fail a build by a rule.
func failsEarly(b *build.Build, r *Rule) []bool {
	var list []bool
	for _, e := range r.Early {
		alone := *b
		for s := range build.Seat(build.Seats) {
			if !slices.Contains(e.Seats, s) {
				alone.Clear(s)
			}
		}
		list = append(list, NewView(&alone, &brief.Needs{}).FailsEarly(r, e, predict.Besides{}))
	}
	return list
}

// strain changes a figure or count of what fills a seat, by its type and field; false where there is none, or where its sheet lacks it.
func strain(b *build.Build, s build.Seat, field string, by int64) bool {
	owner, name, _ := strings.Cut(field, ".")
	var holder reflect.Value
	v := reflect.ValueOf(b).Elem()
	switch s {
	case build.Case:
		holder = v.FieldByName("Layout")
	case build.Cards:
		b.Cards = slices.Clone(b.Cards)
		if len(b.Cards) == 0 {
			return false
		}
		holder = v.FieldByName("Cards").Index(0)
	default:
		holder = v.FieldByName(strings.ToUpper(s.String()[:1]) + s.String()[1:])
	}
	at := find(holder, owner, name)
	if !at.IsValid() {
		return false
	}
	switch x := at.Addr().Interface().(type) {
	case *int:
		*x += int(by)
		return true
	case *unit.Figure[unit.Whole]:
		return more(x, by)
	case *unit.Figure[unit.Length]:
		return more(x, by)
	}
	return false
}

func more[T ~int64](x *unit.Figure[T], by int64) bool {
	was, known := x.Get()
	if known {
		x.Set(was + T(by))
	}
	return known
}

// find is a field of a structure of that name, somewhere within a value; what pointers lead to it point to copies afterwards.
func find(v reflect.Value, owner, name string) reflect.Value {
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() {
			return reflect.Value{}
		}
		own := reflect.New(v.Type().Elem())
		own.Elem().Set(v.Elem())
		at := find(own.Elem(), owner, name)
		if at.IsValid() {
			v.Set(own)
		}
		return at
	case reflect.Struct:
		if v.Type().Name() == owner {
			return v.FieldByName(name)
		}
		for i := range v.NumField() {
			if at := find(v.Field(i), owner, name); at.IsValid() {
				return at
			}
		}
	}
	return reflect.Value{}
}
