package build

import (
	"math/rand/v2"
	"testing"

	"slipfit/core/part"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

func slot(id string, place, lanes int64, gen unit.Release, shares ...part.Sharing) part.Slot {
	return part.Slot{ID: id, Place: unit.Known(unit.Whole(place)), Size: unit.Known(unit.Whole(16)), Lanes: unit.Known(unit.Whole(lanes)), PCIe: unit.Known(gen), Shares: shares}
}

func socket(id string, gen unit.Release, two, sata bool, shares ...part.Sharing) part.M2Slot {
	return part.M2Slot{ID: id, Lengths: []unit.Whole{60, 80}, Lanes: unit.Known(unit.Whole(4)), PCIe: unit.Known(gen),
		SATA: unit.Known(sata), Height: unit.Known(5 * unit.Millimetre), TwoSided: unit.Known(two), Shares: shares}
}

func module(bus part.BusKind, gen unit.Release, two bool) *part.Drive {
	return &part.Drive{Form: part.FormM2, Bus: bus, Module: unit.Known(unit.Whole(80)), Above: unit.Known(2 * unit.Millimetre),
		TwoSided: unit.Known(two), PCIe: unit.Known(gen), Lanes: unit.Known(unit.Whole(4))}
}

var everything = SetOf(Case, Board, Graphics, Cards, Boot, Cache, Archive)

func graphics(slots int64) *part.Graphics {
	return &part.Graphics{PCIe: unit.Known(unit.Release(5000)), Lanes: unit.Known(unit.Whole(16)), Slots: unit.Known(unit.Whole(slots)),
		Thickness: unit.Known(unit.Length(slots) * SlotPitch)}
}

func TestAssignCoversSlots(t *testing.T) {
	board := &part.Board{Cards: []part.Slot{slot("slot1", 1, 16, 5000), slot("slot2", 3, 4, 4000), slot("slot3", 5, 4, 3000)}}
	nic := &part.Card{Slot: unit.Known(unit.Whole(4)), PCIe: unit.Known(unit.Release(3000)), Brackets: unit.Known(unit.Whole(1))}
	b := &Build{Board: board, Graphics: graphics(3), Cards: []CardSet{{nic, 1}}}
	got := b.Assign(everything)
	require.Equal(t, "slot1", got.Cards[0].Slot.ID)
	require.Equal(t, "slot3", got.Cards[1].Slot.ID, "the graphics card covers slot2")
	b.Graphics = graphics(2)
	require.Equal(t, "slot2", b.Assign(everything).Cards[1].Slot.ID)

	b.Layout = &part.Layout{Card: part.CardSpace{Mount: part.Behind}}
	b.Graphics = graphics(3)
	got = b.Assign(everything)
	require.Equal(t, "slot1", got.Cards[0].Slot.ID)
	require.Nil(t, got.Cards[1].Slot, "with the card on a riser the board's slots have no brackets")

	b.Layout = &part.Layout{Card: part.CardSpace{Mount: part.InSlot, Brackets: unit.Known(unit.Whole(4))}}
	require.Nil(t, b.Assign(everything).Cards[1].Slot, "no fifth bracket")
	require.Equal(t, "slot3", b.Assign(SetOf(Board, Graphics, Cards)).Cards[1].Slot.ID, "the case is not looked at")
}

func TestAssignSharesLanes(t *testing.T) {
	board := &part.Board{
		Cards: []part.Slot{slot("slot1", 1, 16, 5000)},
		M2: []part.M2Slot{
			socket("m2a", 5000, true, false, part.Sharing{With: "slot1", Lanes: 8}),
			socket("m2b", 3000, true, true, part.Sharing{With: "sata2", Lanes: 0, Only: part.BusSATA}),
		},
		SATA: unit.Known(unit.Whole(2)),
	}
	fast := module(part.BusPCIe, 5000, false)
	b := &Build{Board: board, Graphics: graphics(1), Boot: Storage{fast, 1}}
	got := b.Assign(everything)
	require.Equal(t, "m2b", got.Drives[0].Socket.ID, "a module on two generations less loses less than a card on half its lanes")
	require.EqualValues(t, 16, got.Cards[0].Lanes)
	require.Empty(t, got.Off, "sata2 is lost to SATA modules alone")

	b.Cache = Storage{fast, 1}
	got = b.Assign(everything)
	require.Equal(t, []string{"m2a", "m2b"}, []string{got.Drives[0].Socket.ID, got.Drives[1].Socket.ID})
	require.EqualValues(t, 8, got.Cards[0].Lanes)

	b.Graphics = nil
	b.Boot, b.Cache, b.Archive = Storage{module(part.BusSATA, 0, false), 1}, Storage{}, Storage{&part.Drive{Form: part.Form35, Bus: part.BusSATA}, 2}
	got = b.Assign(everything)
	require.Equal(t, "m2b", got.Drives[0].Socket.ID)
	require.Equal(t, []string{"sata2"}, got.Off)
	require.Equal(t, 1, got.Ports)
	require.Equal(t, 1, got.Drives[1].Port)
	require.Equal(t, Out, got.Drives[2].State)
}

func TestAssignMissingFigures(t *testing.T) {
	m := module(part.BusPCIe, 4000, false)
	m.Above = unit.Figure[unit.Length]{}
	b := &Build{Board: &part.Board{M2: []part.M2Slot{socket("m2a", 4000, true, false)}}, Boot: Storage{m, 1}, Archive: Storage{&part.Drive{Form: part.Form35}, 1}}
	got := b.Assign(everything)
	require.Equal(t, Unsure, got.Drives[0].State)
	_, missing := ModuleFits(m, got.Drives[0].Socket)
	require.Equal(t, [2]string{"drive", "height_above_mm"}, missing)
	require.Equal(t, Unsure, got.Drives[1].State, "ports of the board are not stated")
}

// TestAssignAgainstEveryPlacing holds the search to a plain enumeration of all placings of modules on random boards.
func TestAssignAgainstEveryPlacing(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	names := []string{"slot1", "m2a", "m2b", "m2c", "sata1", "sata2"}
	shares := func(own string) (list []part.Sharing) {
		for range r.IntN(3) {
			with := names[r.IntN(len(names))]
			if with == own {
				continue
			}
			list = append(list, part.Sharing{With: with, Lanes: unit.Whole(r.IntN(3) * 2), Only: []part.BusKind{"", "", "pcie", "sata"}[r.IntN(4)]})
		}
		return list
	}
	full := 0
	for range 3000 {
		board := &part.Board{SATA: unit.Known(unit.Whole(2)), Cards: []part.Slot{slot("slot1", 1, 16, 4000, shares("slot1")...)}}
		for _, id := range names[1:4] {
			board.M2 = append(board.M2, socket(id, unit.Release(3000+1000*r.IntN(3)), r.IntN(2) == 0, r.IntN(2) == 0, shares(id)...))
		}
		random := func() *part.Drive {
			return module([]part.BusKind{part.BusPCIe, part.BusSATA}[r.IntN(2)], unit.Release(3000+1000*r.IntN(3)), r.IntN(2) == 0)
		}
		b := &Build{Board: board, Graphics: graphics(1), Boot: Storage{random(), 1}, Cache: Storage{random(), 1 + r.IntN(2)}, Archive: Storage{&part.Drive{Form: part.Form35}, r.IntN(3)}}
		got := b.Assign(everything)
		want := enumerate(b)
		missing, lack := score(b, places(b, got))
		require.Equal(t, want, [2]int64{missing, lack})
		if missing == 0 {
			full++
		}
	}
	require.Greater(t, full, 300, "boards on which everything goes in")
	require.Less(t, full, 2700)
}

// places reads an answer as the socket of the card (0 or −1) and of each module.
func places(b *Build, a Assignment) []int {
	list := []int{-1}
	if a.Cards[0].Slot != nil {
		list[0] = 0
	}
	for _, d := range a.Drives {
		if d.Drive.Form != part.FormM2 {
			continue
		}
		at := -1
		for i := range b.Board.M2 {
			if d.Socket == &b.Board.M2[i] {
				at = i
			}
		}
		list = append(list, at)
	}
	return list
}

func enumerate(b *Build) [2]int64 {
	n := 1 + b.Boot.Count + b.Cache.Count
	at := make([]int, n)
	best := [2]int64{1 << 40, 0}
	var next func(i int)
	next = func(i int) {
		if i == n {
			if m, l := score(b, at); m >= 0 && (m < best[0] || m == best[0] && l < best[1]) {
				best = [2]int64{m, l}
			}
			return
		}
		top := 3
		if i == 0 {
			top = 1
		}
		for s := -1; s < top; s++ {
			at[i] = s
			next(i + 1)
		}
	}
	next(0)
	return best
}

// score is how many devices have no place and what bandwidth is lost, in lanes of the first generation; −1 where the
// placing cannot be.
func score(b *Build, at []int) (missing, lack int64) {
	drives := []*part.Drive{nil, b.Boot.Drive}
	for range b.Cache.Count {
		drives = append(drives, b.Cache.Drive)
	}
	used := map[string]part.BusKind{}
	for i, s := range at {
		switch {
		case s < 0:
			missing++
		case i == 0:
			used["slot1"] = part.BusPCIe
		default:
			id := b.Board.M2[s].ID
			if _, twice := used[id]; twice {
				return -1, 0
			}
			sock := b.Board.M2[s]
			takesSATA, _ := sock.SATA.Get()
			takesTwo, _ := sock.TwoSided.Get()
			two, _ := drives[i].TwoSided.Get()
			if drives[i].Bus == part.BusSATA && !takesSATA || two && !takesTwo {
				return -1, 0
			}
			used[id] = drives[i].Bus
		}
	}
	keeps := map[string]unit.Whole{"slot1": 16, "m2a": 4, "m2b": 4, "m2c": 4}
	off := map[string]bool{}
	act := func(id string, list []part.Sharing) {
		bus, in := used[id]
		for _, s := range list {
			if !in || s.Only != "" && s.Only != bus {
				continue
			}
			if s.Lanes == 0 {
				off[s.With] = true
			} else {
				keeps[s.With] = min(keeps[s.With], s.Lanes)
			}
		}
	}
	act("slot1", b.Board.Cards[0].Shares)
	for _, s := range b.Board.M2 {
		act(s.ID, s.Shares)
	}
	for id := range used {
		if off[id] {
			return -1, 0
		}
	}
	ports := 2
	for _, p := range []string{"sata1", "sata2"} {
		if off[p] {
			ports--
		}
	}
	missing += int64(max(0, b.Archive.Count-ports))
	rate := func(lanes unit.Whole, gen unit.Release) int64 { return int64(lanes) << (gen/1000 - 1) }
	for i, s := range at {
		switch {
		case s < 0:
		case i == 0:
			lack += rate(16, 5000) - rate(keeps["slot1"], 4000)
		case drives[i].Bus == part.BusPCIe:
			sock := b.Board.M2[s]
			own, _ := drives[i].PCIe.Get()
			its, _ := sock.PCIe.Get()
			lack += rate(4, own) - rate(min(4, keeps[sock.ID]), min(own, its))
		}
	}
	return missing, lack
}

// TestAssignBays holds the sharing of bays to a plain matching of drives to places.
func TestAssignBays(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	forms := [][]part.BayForm{{part.Bay35}, {part.Bay25}, {part.Bay35, part.Bay25}}
	for range 2000 {
		layout := &part.Layout{}
		var places []int // which forms each place takes, by bit
		for i := range r.IntN(4) {
			f, n := r.IntN(3), 1+r.IntN(3)
			layout.Bays = append(layout.Bays, part.Bay{ID: string(rune('a' + i)), Forms: forms[f], Count: unit.Known(unit.Whole(n))})
			for range n {
				places = append(places, f+1)
			}
		}
		n35, n25 := r.IntN(5), r.IntN(5)
		b := &Build{Case: &part.Case{}, Layout: layout, Cache: Storage{&part.Drive{Form: part.Form25}, n25}, Archive: Storage{&part.Drive{Form: part.Form35}, n35}}
		got := b.AssignBays()
		placed := 0
		for _, p := range got.Places {
			if p.Bay != nil {
				placed++
			}
		}
		fits := got.Have35 >= n35 && got.Have25 >= n25
		require.Equal(t, canPlace(places, n35, n25), fits, "places %v, %d and %d drives", places, n35, n25)
		require.Equal(t, fits, placed == n35+n25)
	}
}

// canPlace tries every way to give drives places: bit 0 of a place takes 3.5 inch, bit 1 takes 2.5 inch.
func canPlace(places []int, n35, n25 int) bool {
	if n35 == 0 && n25 == 0 {
		return true
	}
	if len(places) == 0 {
		return false
	}
	rest := places[1:]
	return canPlace(rest, n35, n25) || places[0]&1 != 0 && n35 > 0 && canPlace(rest, n35-1, n25) || places[0]&2 != 0 && n25 > 0 && canPlace(rest, n35, n25-1)
}
