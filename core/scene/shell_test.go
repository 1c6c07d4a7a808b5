package scene

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"testing"

	"slipfit/catalog"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/rule"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// TestEverythingLiesInTheCase builds every layout of the built-in cases with every board and supply form it takes, the plate
// at both ends, cooled by air and at every radiator mount, with the largest parts that fit and its bays full: everything lies
// within the shell, and nothing where something else lies.
func TestEverythingLiesInTheCase(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	supplies, drives := map[string]bool{}, map[string]bool{}
	for name, b := range furnished(stock) {
		s := Of(b)
		require.Empty(t, s.Overlaps(), name)
		shell, ok := s.Find("case")
		require.True(t, ok, name)
		for i := range s.Boxes {
			a := &s.Boxes[i]
			if !a.solid() || a.Whole {
				continue
			}
			for axis := range a.Lo {
				require.True(t, a.Lo[axis] >= shell.Lo[axis] && a.Hi[axis] <= shell.Hi[axis], "%s: the %s is outside the case: %v to %v of %v to %v",
					name, a.Name, a.Lo, a.Hi, shell.Lo, shell.Hi)
			}
			for j := range s.Boxes[:i] {
				c := &s.Boxes[j]
				if c.solid() && !c.Whole && !onSlot(a, c) && !onSlot(c, a) {
					require.False(t, a.meets(c), "%s: the %s and the %s lie in the same place", name, c.Name, a.Name)
				}
			}
		}
		supplies[b.Case.ID+b.Layout.ID] = supplies[b.Case.ID+b.Layout.ID] || b.Supply != nil
		drives[b.Case.ID+b.Layout.ID] = drives[b.Case.ID+b.Layout.ID] || b.Archive.Drive != nil || b.Cache.Drive != nil
	}
	for _, c := range stock.Cases {
		for _, l := range c.Layouts {
			require.True(t, supplies[c.ID+l.ID], "%s %s was never seen with a supply", c.ID, l.ID)
			require.True(t, drives[c.ID+l.ID] || len(l.Bays) == 0, "%s %s was never seen with drives", c.ID, l.ID)
		}
	}
}

// onSlot reports a part over a slot: a card stands in or over it, and modules are drawn up to the edge of the smallest boards.
func onSlot(slot, a *Box) bool {
	return strings.HasPrefix(slot.Name, "slot") && (a.Seat == build.Graphics || a.Seat == build.Memory)
}

// furnished are builds by name: every layout with every combination of board form, supply form, plate and cooler place.
func furnished(s *part.Stock) map[string]*build.Build {
	all := map[string]*build.Build{}
	for _, c := range s.Cases {
		for i := range c.Layouts {
			l := &c.Layouts[i]
			plates, faces := []int{0}, []part.Face{""}
			if l.Plate != nil {
				plates = append(plates, int(l.Plate.Steps))
			}
			for _, r := range l.Radiators {
				faces = append(faces, r.Face)
			}
			for _, board := range l.Boards {
				for _, supply := range l.Supply.Forms {
					for _, plate := range plates {
						for _, face := range faces {
							b := &build.Build{Case: c, Layout: l, Plate: plate, Face: face}
							furnish(b, s, board, supply)
							all[fmt.Sprintf("%s %s, %s, %s, plate %d, cooler %q", c.ID, l.ID, board, supply, plate, face)] = b
						}
					}
				}
			}
		}
	}
	return all
}

// furnish fills a layout with the largest parts of the stock with which it stands; a seat for which there are none stays empty.
func furnish(b *build.Build, s *part.Stock, board part.BoardForm, supply part.SupplyForm) {
	b.Board = s.Boards[slices.IndexFunc(s.Boards, func(p *part.Board) bool { return p.Form == board })]
	b.Memory, b.Kits = s.Memory[0], 1
	b.Boot = build.Storage{Drive: s.Drives[slices.IndexFunc(s.Drives, func(d *part.Drive) bool { return d.Form == part.FormM2 })], Count: 1}
	largest(b, &b.Supply, s.Supplies, func(p *part.Supply) unit.Length { return p.Length.Or(0) }, func(p *part.Supply) bool { return p.Form == supply })
	largest(b, &b.Cooler, s.Coolers, func(p *part.Cooler) unit.Length {
		if p.Liquid != nil {
			return p.Liquid.Length.Or(0)
		}
		return p.Air.Height.Or(0)
	}, func(p *part.Cooler) bool { return (p.Liquid != nil) == (b.Face != "") })
	largest(b, &b.Graphics, s.Graphics, func(p *part.Graphics) unit.Length { return p.Length.Or(0) }, func(*part.Graphics) bool { return true })
	for _, form := range []part.DriveForm{part.Form35, part.Form25} {
		tier := &b.Archive
		if form == part.Form25 {
			tier = &b.Cache
		}
		drive := s.Drives[slices.IndexFunc(s.Drives, func(d *part.Drive) bool { return d.Form == form })]
		for n := 8; n > 0 && tier.Drive == nil; n-- {
			if *tier = (build.Storage{Drive: drive, Count: n}); !stands(b) {
				*tier = build.Storage{}
			}
		}
	}
}

// largest takes a seat with the largest of the stock with which the build stands.
func largest[P any](b *build.Build, seat **P, stock []*P, size func(*P) unit.Length, takes func(*P) bool) {
	bySize := slices.SortedStableFunc(slices.Values(stock), func(p, q *P) int { return cmp.Compare(size(q), size(p)) })
	for _, p := range bySize {
		if *seat = p; takes(p) && stands(b) {
			return
		}
	}
	*seat = nil
}

// stands reports a build in which everything has room.
func stands(b *build.Build) bool {
	v := rule.NewView(b, nil)
	for _, r := range []*rule.Rule{&rule.BoardForm, &rule.GraphicsLength, &rule.GraphicsThickness, &rule.GraphicsSlot, &rule.GraphicsHeight,
		&rule.GraphicsBrackets, &rule.CoolerHeight, &rule.CoolerRaised, &rule.CoolerMemory, &rule.CoolerBoard, &rule.CoolerCard,
		&rule.RadiatorPlace, &rule.RadiatorMount, &rule.RadiatorCard, &rule.RadiatorMemory, &rule.RadiatorBoard, &rule.SupplyForm, &rule.SupplyLength, &rule.DriveBays} {
		if slices.ContainsFunc(v.Run(r), func(m rule.Margin) bool { return m.Verdict == rule.Clash || m.Verdict == rule.Unknown }) {
			return false
		}
	}
	return true
}
