package main

import (
	"slipfit/core/grow"
	"slipfit/core/part"
)

// sized is a stock of so many parts made from the catalog's: grown from a seed, or, where fewer are wanted than there are, thinned
// to an even share of every kind, whatever the seed. 0 parts are the catalog as it is.
func sized(generic *part.Stock, parts int, seed uint64) (*part.Stock, error) {
	all := len(generic.Articles())
	switch {
	case parts == 0:
		return generic, nil
	case parts >= all:
		return grow.Stock(generic, parts, seed)
	}
	s := *generic
	s.Cases = thinned(s.Cases, parts, all)
	s.Boards = thinned(s.Boards, parts, all)
	s.Processors = thinned(s.Processors, parts, all)
	s.Coolers = thinned(s.Coolers, parts, all)
	s.Memory = thinned(s.Memory, parts, all)
	s.Graphics = thinned(s.Graphics, parts, all)
	s.Supplies = thinned(s.Supplies, parts, all)
	s.Drives = thinned(s.Drives, parts, all)
	s.Fans = thinned(s.Fans, parts, all)
	s.Monitors = thinned(s.Monitors, parts, all)
	s.Cards = thinned(s.Cards, parts, all)
	s.UPS = thinned(s.UPS, parts, all)
	return &s, nil
}

// thinned keeps so many parts in so many, evenly over the list.
func thinned[P any](list []P, parts, all int) []P {
	var kept []P
	for i, p := range list {
		if (i+1)*parts/all > i*parts/all {
			kept = append(kept, p)
		}
	}
	return kept
}
