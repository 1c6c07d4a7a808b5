package build

// MemorySlots lists the memory slots of the board that the modules go into, counted from the processor socket; ok is
// false where a sheet does not state how many slots or modules there are, or which slot comes first. One module and a
// pair on a board with more slots use every other slot from the first used on; more modules than that use the slots from
// the nearest on. It looks at the Board and Memory seats.
// Source: board manuals' population order, common practice.
func (b *Build) MemorySlots() (used []int, ok bool) {
	if b.Board == nil || b.Memory == nil {
		return nil, true
	}
	slots, knownSlots := b.Board.Slots.Get()
	each, knownEach := b.Memory.Modules.Get()
	first, knownFirst := b.Board.SocketAt.FirstIn.Get()
	if !knownSlots || !knownEach || !knownFirst {
		return nil, false
	}
	n := min(int(each)*b.Kits, int(slots))
	at, step := 1, 1
	if n <= 2 && n < int(slots) {
		at = int(first)
		if slots > 2 {
			step = 2
		}
	}
	for range n {
		used = append(used, at)
		at += step
	}
	return used, true
}
