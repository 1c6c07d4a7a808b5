package scene

import (
	"cmp"
	"slices"

	"slipfit/core/unit"
)

// skin is the wall of a case.
const skin = 2 * mm

// turnCost is how far a part is rather moved than turned from the way it usually lies.
const turnCost = 60 * mm

// turnings are the ways a box can lie: which of its own sides runs along each axis. The first is as it is.
var turnings = [][3]Axis{{X, Y, Z}, {X, Z, Y}, {Y, X, Z}, {Z, X, Y}, {Y, Z, X}, {Z, Y, X}}

// lay finds where a part whose place no sheet states lies: in the shell, clear of all bodies that stand there, as near to its
// usual place as can be, turned where that brings it nearer. Where no place is left, it lies in its usual place.
func (p *placer) lay(usual, size Point) (b Box, turning [3]Axis) {
	best, turning := unit.Length(1<<62), turnings[0]
	for i, t := range turnings {
		c := Box{Lo: usual}
		for a := range c.Hi {
			c.Hi[a] = usual[a] + size[t[a]]
		}
		cost := unit.Length(0)
		if i == 0 {
			b = p.within(c, X, Y, Z)
		} else {
			cost = turnCost
		}
		if c, off, ok := p.settle(c, best-cost, X, Y, Z); ok {
			b, turning, best = c, t, off+cost
		}
	}
	return b, turning
}

// settle moves a box along some axes to the free place in the shell that is nearest, less than so far away; ok is false
// where there is none.
func (p *placer) settle(b Box, less unit.Length, along ...Axis) (place Box, off unit.Length, ok bool) {
	at := [3][]unit.Length{{b.Lo[X]}, {b.Lo[Y]}, {b.Lo[Z]}}
	for _, a := range along {
		at[a] = p.starts(&b, a)
	}
	away := func(v unit.Length, a Axis) unit.Length { return max(v-b.Lo[a], b.Lo[a]-v) }
	off = less
	for _, x := range at[X] {
		for _, y := range at[Y] {
			if away(x, X)+away(y, Y) >= off {
				break
			}
			for _, z := range at[Z] {
				total := away(x, X) + away(y, Y) + away(z, Z)
				if total >= off {
					break
				}
				if c := b.moved(Point{x, y, z}); p.isFree(&c) {
					place, off, ok = c, total, true
					break
				}
			}
		}
	}
	return place, off, ok
}

// starts are the places where a box may begin along an axis, the nearest first: where it stands, at the ends of the shell,
// and against everything that stands there.
func (p *placer) starts(b *Box, a Axis) []unit.Length {
	size := b.Hi[a] - b.Lo[a]
	first, last := p.inside.Lo[a]+skin, p.inside.Hi[a]-skin-size
	list := []unit.Length{b.Lo[a], first, last, p.over.Hi[a], p.over.Lo[a] - size}
	for i := range p.scene.Boxes {
		if o := &p.scene.Boxes[i]; o.bars() {
			list = append(list, o.Hi[a], o.Lo[a]-size)
		}
	}
	if p.inside.Hi[a] > p.inside.Lo[a] {
		list = slices.DeleteFunc(list, func(v unit.Length) bool { return v < first || v > last })
	}
	slices.SortFunc(list, func(v, w unit.Length) int {
		return cmp.Or(cmp.Compare(max(v-b.Lo[a], b.Lo[a]-v), max(w-b.Lo[a], b.Lo[a]-w)), cmp.Compare(v, w))
	})
	return slices.Compact(list)
}

// within moves a box along some axes no farther than it takes to lie in the shell, where it is not too large for it.
func (p *placer) within(b Box, along ...Axis) Box {
	to := b.Lo
	for _, a := range along {
		first, last := p.inside.Lo[a]+skin, p.inside.Hi[a]-skin-(b.Hi[a]-b.Lo[a])
		if first <= last {
			to[a] = min(max(to[a], first), last)
		}
	}
	return b.moved(to)
}

// isFree reports a box that nothing bars.
func (p *placer) isFree(b *Box) bool {
	if b.Kind != Fan && p.over.meets(b) {
		return false
	}
	for i := range p.scene.Boxes {
		if o := &p.scene.Boxes[i]; o.bars() && o.meets(b) {
			return false
		}
	}
	return true
}

// bars reports a box that stands in the way of others: bodies and the room they keep free.
func (b *Box) bars() bool { return !b.Whole && (b.solid() || b.Kind == KeepOut) }

// moved is the box with its lower corner elsewhere.
func (b Box) moved(to Point) Box {
	for a := range to {
		b.Hi[a] += to[a] - b.Lo[a]
	}
	b.Lo = to
	return b
}
