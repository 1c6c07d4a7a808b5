package plan

import (
	"fmt"
	"slices"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// Ask is what has been said before the planner looks: the needs, and what customer and shop have settled already.
type Ask struct {
	Needs   *brief.Needs // nil asks nothing but that the parts go together
	Keep    []Choice     // seats whose filling is settled
	Without []string     // ids of parts that may not be used
	Avoid   []string     // makers that may not be used, besides those the needs avoid
	Lift    []string     // ids of rules that are not asked for, such as budget
}

// Choice settles a seat as far as it goes: the part, and whatever else is named with it.
type Choice struct {
	Seat   build.Seat
	Part   string                  // id of the part; empty leaves the seat empty
	Count  int                     // 0 leaves the number open; of what is owned it is one, or one pack of fans
	Layout string                  // for a case; empty leaves the layout open
	Plate  unit.Figure[unit.Whole] // for a case; missing leaves the step open
	Face   part.Face               // for a liquid cooler and for fans; empty leaves the face open
	Owned  bool                    // the customer has it already, so it costs nothing
}

// Choices settles every filled seat of a build as it is, save the seats left open.
func Choices(b *build.Build, open build.Set) []Choice {
	var list []Choice
	fans := 0
	for _, l := range b.Lines() {
		c := Choice{Seat: l.Seat, Part: l.Article.ID, Count: l.Count, Owned: l.Owned}
		switch l.Seat {
		case build.Case:
			c.Layout = b.Layout.ID
			c.Plate.Set(unit.Whole(b.Plate))
		case build.Cooler:
			c.Face = b.Face
		case build.Fans:
			c.Count, c.Face = b.Fans[fans].Count, b.Fans[fans].Face
			fans++
		}
		if !open.Has(l.Seat) {
			list = append(list, c)
		}
	}
	return list
}

// loose reports fans of which it is left open how many there are, or on which face.
func (c *Choice) loose() bool {
	return c.Seat == build.Fans && c.Part != "" && (c.Count == 0 || c.Face == "")
}

// admits reports an option that a choice allows.
func (c *Choice) admits(o build.Option) bool {
	if o.ID() != c.Part {
		return false
	}
	if o.Part == nil {
		return true
	}
	if c.Owned && c.Count == 0 && articles(o) > 1 {
		return false
	}
	plate, settled := c.Plate.Get()
	return (c.Count == 0 || c.Count == o.Count) &&
		(c.Layout == "" || o.Layout != nil && c.Layout == o.Layout.ID) &&
		(!settled || o.Seat != build.Case || int(plate) == o.Plate) &&
		(c.Face == "" || c.Face == o.Face)
}

// picky reports that some part is not to be used.
func (a *Ask) picky() bool {
	return len(a.Without)+len(a.Avoid)+len(a.Needs.Wish.Avoid) > 0 || a.Needs.Wish.InStock
}

// refuses reports a part that is not to be used: left out by name, by its maker, or not on the shelf.
func (a *Ask) refuses(o build.Option) bool {
	if o.Part == nil {
		return false
	}
	c := o.Part.Common()
	return slices.Contains(a.Without, c.ID) || slices.Contains(a.Avoid, c.Maker) ||
		slices.Contains(a.Needs.Wish.Avoid, c.Maker) ||
		a.Needs.Wish.InStock && int(c.Stock) < articles(o)
}

// check says what in an ask the stock cannot answer to.
func (a *Ask) check(stock *part.Stock) error {
	known := map[string]bool{}
	if len(a.Keep)+len(a.Without) > 0 {
		for _, c := range stock.Articles() {
			known[c.ID] = true
		}
	}
	var taken build.Set
	for _, c := range a.Keep {
		if c.Part != "" && !known[c.Part] {
			return fmt.Errorf("kept in seat %s: %q is not the id of a part of this catalog", c.Seat, c.Part)
		}
		if taken.Has(c.Seat) && c.Seat.Single() {
			return fmt.Errorf("kept in seat %s: %q, a second part in that seat", c.Seat, c.Part)
		}
		taken |= build.SetOf(c.Seat)
	}
	for _, id := range a.Without {
		if !known[id] {
			return fmt.Errorf("without %q: not the id of a part of this catalog", id)
		}
	}
	return nil
}
