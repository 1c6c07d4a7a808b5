package format

import (
	"reflect"
	"strings"

	"slipfit/core/unit"
)

// measure is how values of one type are counted: how many make one of the unit its JSON figure is given in, that unit's
// symbol, and how a figure of the type is stated.
type measure struct {
	perUnit int64
	symbol  string
	state   func(figure any, n int64)
}

func counted[T ~int64](perUnit int64, symbol string) measure {
	return measure{perUnit, symbol, func(figure any, n int64) { figure.(*unit.Figure[T]).Set(T(n)) }}
}

// measureOf is the measure of a type; a plain count has one to the unit and no symbol.
func measureOf(t reflect.Type) measure {
	switch t {
	case reflect.TypeFor[unit.Length]():
		return counted[unit.Length](1000, "mm")
	case reflect.TypeFor[unit.Power]():
		return counted[unit.Power](1000, "W")
	case reflect.TypeFor[unit.Current]():
		return counted[unit.Current](1000, "A")
	case reflect.TypeFor[unit.Mass]():
		return counted[unit.Mass](1000, "kg")
	case reflect.TypeFor[unit.Money]():
		return counted[unit.Money](1, "minor units")
	case reflect.TypeFor[unit.Memory]():
		return counted[unit.Memory](1024, "GiB")
	case reflect.TypeFor[unit.Storage]():
		return counted[unit.Storage](1000, "GB")
	case reflect.TypeFor[unit.Throughput]():
		return counted[unit.Throughput](1, "MB/s")
	case reflect.TypeFor[unit.LinkRate]():
		return counted[unit.LinkRate](1, "Mbit/s")
	case reflect.TypeFor[unit.TransferRate]():
		return counted[unit.TransferRate](1, "MT/s")
	case reflect.TypeFor[unit.Temperature]():
		return counted[unit.Temperature](1000, "°C")
	case reflect.TypeFor[unit.Sound]():
		return counted[unit.Sound](1000, "dB(A)")
	case reflect.TypeFor[unit.Flow]():
		return counted[unit.Flow](1000, "m³/h")
	case reflect.TypeFor[unit.Pressure]():
		return counted[unit.Pressure](1000, "Pa")
	case reflect.TypeFor[unit.Resistance]():
		return counted[unit.Resistance](1000, "K/W or W/K")
	case reflect.TypeFor[unit.Share]():
		return counted[unit.Share](1000, "%")
	case reflect.TypeFor[unit.Millilitre]():
		return counted[unit.Millilitre](1000, "l")
	case reflect.TypeFor[unit.Duration]():
		return counted[unit.Duration](1, "min")
	case reflect.TypeFor[unit.Points]():
		return counted[unit.Points](1, "points")
	case reflect.TypeFor[unit.Energy]():
		return counted[unit.Energy](1, "Wh")
	case reflect.TypeFor[unit.Endurance]():
		return counted[unit.Endurance](1, "TB written")
	case reflect.TypeFor[unit.Speed]():
		return counted[unit.Speed](1, "rpm")
	case reflect.TypeFor[unit.Whole]():
		return counted[unit.Whole](1, "")
	case reflect.TypeFor[unit.Release]():
		return counted[unit.Release](1, "")
	}
	return measure{perUnit: 1}
}

// Base returns how many counts of a type make one of the unit its JSON figure is given in, and that unit's symbol.
// A plain count has base 1 and no symbol.
func Base(t reflect.Type) (perUnit int64, symbol string) {
	m := measureOf(t)
	return m.perUnit, m.symbol
}

// isFigure tells a unit.Figure by its package and name.
func isFigure(t reflect.Type) bool {
	return t.Kind() == reflect.Struct && t.PkgPath() == "slipfit/core/unit" && strings.HasPrefix(t.Name(), "Figure[")
}

// figureOf is the type of the value a figure holds. No method is looked up by name, here or in heldBy: reflect keeps the method's code as
// what the collector takes for a place in memory, and on js/wasm, where the two can look alike, that may end the program.
func figureOf(figure reflect.Type) reflect.Type { return figure.Field(0).Type }

// heldBy is the value a figure holds, as it is stored: it can be read but not taken out.
func heldBy(figure reflect.Value) reflect.Value { return figure.Field(0) }

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
