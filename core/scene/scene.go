// Package scene is a build as boxes in millimetres, from data-sheet limits and board standards. It knows no rule: every box
// stands where the sheets and the standards put it, and walls stand at the limits the sheets state, so that two boxes that
// meet overlap exactly where something does not go in. Drawings are made from it.
//
// The frame, right-handed, in unit.Length (µm):
//
//	x  from the plane of the rear panel towards the front
//	y  along the rear edge of the board, from hole C, positive away from the card slots
//	z  out of the board's top face at plate position 0, towards the panel before the processor cooler
//
// In a tower whose board faces the left panel, y is up. Where the board faces the right panel it stands on its head and y
// is down. Where the plate lies flat, z is up. In a chimney, whose rear panel is its top, x is down and y runs to its rear. Sources of the frame and of the board standards: microATX specification
// 1.2, Mini-ITX addendum 1.1 and public CAD models drawn from them (reference sheet, section 1.2).
package scene

import (
	"slipfit/core/build"
	"slipfit/core/unit"
)

// Axis is one of the three directions.
type Axis uint8

// Axes.
const (
	X Axis = iota
	Y
	Z
)

// Point is x, y, z.
type Point [3]unit.Length

// Kind is what a box stands for.
type Kind uint8

// Kinds of box.
const (
	Shell    Kind = iota // the outer size of the case
	Board                // the board itself
	Part                 // a part or a piece of one
	Fan                  // a fan
	Radiator             // a radiator without its fans
	KeepOut              // room that must stay free: a plug with its bend, air before a card's fans
	Wall                 // what stands beyond a limit a sheet states
)

// Box is something in the way of others.
type Box struct {
	Name   string
	Seat   build.Seat // whose part it is
	Kind   Kind
	Lo, Hi Point
	Drawn  bool // its place is drawn as is usual: no sheet states it
	Faces  Axis // for fans: the axis they blow along
	Whole  bool // the space several boxes take together, or one that could stand elsewhere: it is not drawn
	Order  int  // which of several equal parts it is, from 0
	Line   int  // its part in Scene.Parts; −1 for a wall
}

// Meeting is two boxes that could meet, and along which axis the sheets say how far they are apart.
type Meeting struct {
	Rule    string // the rule that holds them apart
	Subject string // the margin of that rule
	A, B    int    // boxes of the scene; A ends, along the axis, before B begins
	Axis    Axis
	Down    bool // A lies on the far side of B: it begins, along the axis, after B ends
}

// Scene is a build as boxes.
type Scene struct {
	Boxes    []Box
	Meetings []Meeting
	Parts    []build.Line // what the balloons number, from 1: everything that goes into the case
	Socket   Point        // centre of the processor socket on the board
	Unknown  []string     // boxes left out because a sheet lacks their figures
	Up       Axis         // the axis that runs up, or down where it is X
	Over     bool         // with Up Y: the board stands on its head, y is down
	Form     string       // board form, for its holes; empty without a board
	Rise     unit.Length  // height of the board's top face: how far the plate has moved
}

// Overlap is two boxes in each other's way.
type Overlap struct {
	Meeting
	By unit.Length // how far one must move along the axis to clear the other
}

// Gap is how far A ends before B begins; negative where it does not.
func (s *Scene) Gap(m Meeting) unit.Length {
	a, b := &s.Boxes[m.A], &s.Boxes[m.B]
	if m.Down {
		return a.Lo[m.Axis] - b.Hi[m.Axis]
	}
	return b.Lo[m.Axis] - a.Hi[m.Axis]
}

// Overlaps lists the boxes that meet in space though they must not.
func (s *Scene) Overlaps() []Overlap {
	var list []Overlap
	for _, m := range s.Meetings {
		if s.Boxes[m.A].meets(&s.Boxes[m.B]) {
			list = append(list, Overlap{m, -s.Gap(m)})
		}
	}
	return list
}

// meets reports whether two boxes share space; faces that touch do not.
func (a *Box) meets(b *Box) bool {
	for i := range a.Lo {
		if a.Hi[i] <= b.Lo[i] || b.Hi[i] <= a.Lo[i] {
			return false
		}
	}
	return true
}

// Find returns the box of a name, the first of several.
func (s *Scene) Find(name string) (Box, bool) {
	for _, b := range s.Boxes {
		if b.Name == name {
			return b, true
		}
	}
	return Box{}, false
}
