package brief

import (
	"fmt"
	"slices"
	"strings"

	"slipfit/core/build"
	"slipfit/core/part"
)

// ownedOf reads parts of a stock by their names: "Calderby Lantern 30, archive=Archivane Shelf 4 TB".
func ownedOf(stock *part.Stock, text string) (any, error) {
	var list []any
	for one := range strings.SplitSeq(text, ",") {
		o, err := ownedNamed(stock, strings.TrimSpace(one))
		if err != nil {
			return nil, err
		}
		list = append(list, map[string]any{"seat": o.Seat, "part": o.Part})
	}
	return list, nil
}

// ownedNamed finds a part by its id, its name or words of it, in the seat named before it or in any.
func ownedNamed(stock *part.Stock, text string) (Owned, error) {
	seat, name, named := strings.Cut(text, "=")
	only, known := build.Named(strings.TrimSpace(seat))
	if !named {
		name = text
	} else if !known {
		return Owned{}, fmt.Errorf("%q names no seat, like graphics=name", text)
	}
	words := strings.Fields(strings.ToLower(name))
	var exact, like []Owned
	for s := range build.Seat(build.Seats) {
		if s == build.Services || named && s != only {
			continue
		}
		for _, p := range build.Shelf(stock, s) {
			a := p.Common()
			title := strings.ToLower(a.Title())
			switch o := (Owned{Seat: s.String(), Part: a.ID}); {
			case a.ID == strings.TrimSpace(name) || title == strings.Join(words, " "):
				exact = append(exact, o)
			case len(words) > 0 && !slices.ContainsFunc(words, func(w string) bool { return !strings.Contains(title, w) }):
				like = append(like, o)
			}
		}
	}
	if len(exact) > 0 {
		like = exact
	}
	switch len(like) {
	case 0:
		return Owned{}, fmt.Errorf("%q is no part of the catalog: enter it there first", text)
	case 1:
		return like[0], nil
	}
	const told = 5
	var could []string
	for _, o := range like[:min(told, len(like))] {
		could = append(could, o.Seat+"="+o.Part)
	}
	return Owned{}, fmt.Errorf("%q could be %d parts, such as %s", text, len(like), strings.Join(could, ", "))
}
