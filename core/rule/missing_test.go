package rule

import (
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"slipfit/core/predict"

	"github.com/stretchr/testify/require"
)

// placed lists the rules whose margin follows where a card or module is put: a place that lacks a figure is passed over
// for one that is known to do, so the margin may pass with the other place's figures.
var placed = []string{"drive-slots", "cooler-card"}

// TestMissingFigureNeverPasses takes each figure of each part of a full build off its sheet, one at a time: no margin may
// then pass with other figures than before. What rests on the figure is unknown; what does not is unchanged. Nor may a rule
// say in its quick way that such a build holds.
func TestMissingFigureNeverPasses(t *testing.T) {
	b, needs := bench(t, ruleCase{
		Seats: map[string]json.RawMessage{
			"archive": []byte(`{"part":"disk","count":2}`),
			"fans":    []byte(`{"part":"fan-120","count":2,"face":"top"}`),
			"cards":   []byte(`[{"part":"nic"},{"part":"hub"}]`),
			"screens": []byte(`{"part":"screen"}`),
			"ups":     []byte(`{"part":"ups"}`),
			"cooler":  []byte(`{"part":"liquid-240","face":"top"}`),
		},
		Needs: []byte(`{"ecc":true,"wish":{"ups_min":5},"loads":[{"Activity":"drawing","Processor":50000,"Graphics":50000}],
			"screens":[{"width_px":3840,"height_px":2160,"refresh_hz":60,"bits_per_colour":10,"count":1}],
			"by":{"wired":{"floor":1000,"enough":2500},"fast-ports":{"floor":2,"enough":3}}}`),
	})
	find := func() map[string]string {
		found := map[string]string{}
		for _, r := range All {
			if slices.Contains(placed, r.ID) || r.Group == Cool || r.Group == Care {
				continue
			}
			for i, m := range NewView(b, needs).Run(r) {
				if m.Passes() && !m.Advice {
					found[fmt.Sprint(r.ID, " ", m.Subject, " ", i)] = m.Have.String() + " against " + m.Need.String()
				}
			}
		}
		return found
	}
	whole := find()
	figures, held, sufficed := 0, 0, 0
	var drop func(path string, x reflect.Value)
	drop = func(path string, x reflect.Value) {
		switch {
		case x.Kind() == reflect.Pointer && !x.IsNil():
			drop(path, x.Elem())
		case x.Kind() == reflect.Slice:
			for i := range x.Len() {
				drop(fmt.Sprintf("%s[%d]", path, i), x.Index(i))
			}
		case x.Kind() == reflect.Struct && strings.HasPrefix(x.Type().Name(), "Figure["):
			if x.IsZero() {
				return
			}
			figures++
			stated := reflect.New(x.Type()).Elem()
			stated.Set(x)
			x.SetZero()
			for margin, says := range find() {
				if before, was := whole[margin]; was {
					require.Equal(t, before, says, "%s passes with other figures where %s is not stated", margin, path)
				}
			}
			for _, r := range All {
				if NewView(b, needs).Holds(r, predict.Besides{}) {
					require.True(t, passes(NewView(b, needs).Run(r)), "%s holds where %s is not stated", r.ID, path)
					held++
				}
				if suffices(NewView(b, needs), r) {
					require.True(t, passes(NewView(b, needs).Run(r)), "the sums of %s suffice where %s is not stated", r.ID, path)
					sufficed++
				}
			}
			x.Set(stated)
		case x.Kind() == reflect.Struct:
			for i := range x.NumField() {
				if f := x.Type().Field(i); f.IsExported() {
					drop(path+"."+f.Name, x.Field(i))
				}
			}
		}
	}
	for _, p := range []any{b.Case, b.Board, b.Processor, b.Cooler, b.Memory, b.Graphics, b.Supply, b.Boot.Drive, b.Archive.Drive,
		b.Fans[0].Fan, b.Cards[0].Card, b.Cards[1].Card, b.Screens[0].Monitor, b.UPS} {
		drop(reflect.TypeOf(p).Elem().Name(), reflect.ValueOf(p))
	}
	require.Greater(t, figures, 300)
	require.Greater(t, held, 300)
	require.Greater(t, sufficed, 300)
}
