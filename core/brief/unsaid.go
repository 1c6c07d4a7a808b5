package brief

import (
	"fmt"
	"slices"
	"strings"

	"slipfit/core/unit"
)

// unsaid says what is taken where nothing was said of the place, of the next upgrade and of the money: the figures that the
// rules and the predictions then reckon with.
func (b *Brief) unsaid() []string {
	p := &b.Place
	var list, taken []string
	for _, f := range []struct {
		said bool
		what string
	}{
		{said(p.Room), "22 °C in the room"}, {said(p.Hottest), "30 °C on the hottest day"}, {said(p.Altitude), "0 m above the sea"},
		{said(p.Chair), "700 mm from machine to ear"}, {said(p.Mains), "mains of 230 V"}, {said(p.Circuit), "a circuit of 10 A"},
		{said(p.Energy), "0.30 a kilowatt-hour"},
	} {
		if !f.said {
			taken = append(taken, f.what)
		}
	}
	if len(taken) > 0 {
		list = append(list, "place not said: "+strings.Join(taken, ", ")+" taken")
	}
	if !said(b.Wish.Growth) {
		list = append(list, "upgrade not said: none thought of for 5 years taken")
	}
	if !said(b.Budget) {
		list = append(list, "budget not said: no limit taken")
	}
	return list
}

// differing says what is taken where screens of several modes are to be bought: a plan holds one kind of screen, so that the
// cheapest that shows every mode stands for all of them. Empty where one mode is bought.
func (b *Brief) differing() string {
	var modes []string
	for _, s := range b.Screens {
		mode := fmt.Sprintf("%d × %d at %d Hz with %d bits", s.Width, s.Height, s.Refresh, s.Bits)
		if !s.Owned && !slices.Contains(modes, mode) {
			modes = append(modes, mode)
		}
	}
	if len(modes) < 2 {
		return ""
	}
	return "screens to be bought differ: one kind that shows " + strings.Join(modes, " and ") +
		" taken for all; different ones in the build may cost less, and its proof counts them"
}

func said[T ~int64 | ~bool](f unit.Figure[T]) bool {
	_, ok := f.Get()
	return ok
}
