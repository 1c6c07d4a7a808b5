package predict

import (
	"reflect"
	"strconv"
	"strings"
	"testing"

	"slipfit/catalog"
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// A cooler yet unknown may load the supply with as much as its fans draw: as many, of as much current at 12 V, as a sheet may state.
func TestAnyCoolerIsLoad(t *testing.T) {
	most := func(of reflect.Type, field string) float64 {
		f, _ := of.FieldByName(field)
		_, top, _ := strings.Cut(f.Tag.Get("range"), "..")
		n, err := strconv.ParseFloat(top, 64)
		require.NoError(t, err)
		return n
	}
	fansW := most(reflect.TypeFor[part.Cooler](), "Fans") * most(reflect.TypeFor[part.FanFigures](), "Current") * 12
	s, err := catalog.Embedded()
	require.NoError(t, err)
	var p Predictor
	seen := 0
	for _, c := range s.Cases {
		b := build.Build{Case: c, Layout: &c.Layouts[0], Supply: s.Supplies[0]}
		if b.Board, b.Processor, b.Cooler = within(s, b.Layout); b.Board == nil {
			continue
		}
		require.Zero(t, p.Core(&b, &brief.Needs{}, Besides{}).model.coolerMostW())
		b.Cooler = &anyCooler
		require.Equal(t, fansW, p.Core(&b, &brief.Needs{}, Besides{}).model.coolerMostW())
		seen++
	}
	require.Greater(t, seen, 10)
}

// The cooler that stands for its kind draws as much, so that no supply turns faster than is thought.
func TestStandInIsLoad(t *testing.T) {
	var p Predictor
	some, ok := p.ofKind(&build.Build{Layout: &part.Layout{}, Cooler: &part.Cooler{
		Air: &part.AirCooler{Sink: unit.Known(unit.Resistance(100))}, Fans: unit.Known(unit.Whole(2)),
	}})
	require.True(t, ok)
	require.InDelta(t, coolerFansW, 12*float64(some.Cooler.Fans.Or(0))*float64(some.Cooler.Fan.Current.Or(0))/1000, 1e-9)
}
