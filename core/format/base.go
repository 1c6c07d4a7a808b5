package format

import (
	"reflect"
	"strings"

	"slipfit/core/unit"
)

// Base returns how many counts of a type make one of the unit its JSON figure is given in, and that unit's symbol.
// A plain count has base 1 and no symbol.
func Base(t reflect.Type) (perUnit int64, symbol string) {
	switch t {
	case reflect.TypeFor[unit.Length]():
		return 1000, "mm"
	case reflect.TypeFor[unit.Power]():
		return 1000, "W"
	case reflect.TypeFor[unit.Current]():
		return 1000, "A"
	case reflect.TypeFor[unit.Mass]():
		return 1000, "kg"
	case reflect.TypeFor[unit.Money]():
		return 1, "minor units"
	case reflect.TypeFor[unit.Memory]():
		return 1024, "GiB"
	case reflect.TypeFor[unit.Storage]():
		return 1000, "GB"
	case reflect.TypeFor[unit.Throughput]():
		return 1, "MB/s"
	case reflect.TypeFor[unit.LinkRate]():
		return 1, "Mbit/s"
	case reflect.TypeFor[unit.TransferRate]():
		return 1, "MT/s"
	case reflect.TypeFor[unit.Temperature]():
		return 1000, "°C"
	case reflect.TypeFor[unit.Sound]():
		return 1000, "dB(A)"
	case reflect.TypeFor[unit.Flow]():
		return 1000, "m³/h"
	case reflect.TypeFor[unit.Pressure]():
		return 1000, "Pa"
	case reflect.TypeFor[unit.Resistance]():
		return 1000, "K/W or W/K"
	case reflect.TypeFor[unit.Share]():
		return 1000, "%"
	case reflect.TypeFor[unit.Millilitre]():
		return 1000, "l"
	case reflect.TypeFor[unit.Duration]():
		return 1, "min"
	case reflect.TypeFor[unit.Points]():
		return 1, "points"
	case reflect.TypeFor[unit.Energy]():
		return 1, "Wh"
	case reflect.TypeFor[unit.Endurance]():
		return 1, "TB written"
	case reflect.TypeFor[unit.Speed]():
		return 1, "rpm"
	}
	return 1, ""
}

// isFigure tells a unit.Figure by its package and name.
func isFigure(t reflect.Type) bool {
	return t.Kind() == reflect.Struct && t.PkgPath() == "slipfit/core/unit" && strings.HasPrefix(t.Name(), "Figure[")
}

// figureOf is the type of the value a figure holds.
func figureOf(figure reflect.Type) reflect.Type {
	get, _ := reflect.PointerTo(figure).MethodByName("Get")
	return get.Type.Out(0)
}

// describe says what a field takes, as an error or a schema tells it.
func describe(t reflect.Type, rule rules) string {
	if isFigure(t) {
		t = figureOf(t)
	}
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	switch {
	case t == releaseType:
		return `a version as a text such as "2.14"`
	case t.Implements(wordsType) && t.Kind() == reflect.String:
		return "one of " + strings.Join(reflect.Zero(t).Interface().(words).Values(), ", ")
	}
	switch t.Kind() {
	case reflect.String:
		return "a text"
	case reflect.Bool:
		return "true or false"
	case reflect.Slice:
		return "a list"
	case reflect.Struct:
		return "an object"
	case reflect.Float64:
		return "a number" + rule.span()
	}
	base, symbol := Base(t)
	if base == 1 && symbol == "" {
		return "a whole number" + rule.span()
	}
	if base == 1 {
		return "a whole number of " + symbol + rule.span()
	}
	return "a number of " + symbol + rule.span()
}
