package feed

import (
	"fmt"
	"math/bits"
	"slices"
)

// Socket is a power socket of the machine that wants feeding.
type Socket struct {
	Kind     SocketKind
	LoadMW   int64
	OwnCable bool // its cable may feed no other socket
}

// Plug is a plug on a cable. LimitMW is the least a maker states for it (a sense-coded 12-contact plug of 300 W, say);
// zero states nothing beyond the plug's kind.
type Plug struct {
	Kind    PlugKind
	LimitMW int64
}

// Cable is a cable of the supply with its plugs in order from the supply.
type Cable struct {
	Plugs []Plug
}

// Feed names the plug that feeds a socket. An unfed socket has Cable and Plug −1.
type Feed struct {
	Cable, Plug int
}

// Assignment says what feeds each socket, in the order of the sockets, and which sockets stay unfed.
type Assignment struct {
	Feeds []Feed
	Unfed []int
}

// Largest problem AssignPlugs takes.
const (
	MaxSockets = 64
	MaxPlugs   = 64
)

// AssignPlugs feeds as many sockets as possible, each by a plug of its own; among equals it feeds the earlier sockets, so
// give the sockets in order of importance. A socket with OwnCable uses up its whole cable. The answer is exact and the
// same for the same input. More than MaxSockets sockets or MaxPlugs plugs is an error.
//
// Method: the sockets that ask a cable of their own are tried on each cable in turn (cables with the same plugs and
// sockets alike only once); for each trial the rest is a bipartite matching by augmenting paths.
func AssignPlugs(sockets []Socket, cables []Cable) (Assignment, error) {
	if len(sockets) > MaxSockets {
		return Assignment{}, fmt.Errorf("plug assignment: %d sockets, at most %d", len(sockets), MaxSockets)
	}
	var a assigner
	a.sockets, a.cables = sockets, cables
	if err := a.prepare(); err != nil {
		return Assignment{}, err
	}
	a.place(0)
	return a.result(), nil
}

// socketSet holds socket i at bit 63−i, so that of two sets of one size the greater integer feeds the earlier sockets.
type socketSet uint64

func (s socketSet) better(than socketSet) bool {
	n, m := bits.OnesCount64(uint64(s)), bits.OnesCount64(uint64(than))
	return n > m || n == m && s > than
}

func socketBit(i int) socketSet { return 1 << (63 - i) }

// assigner is the search state. Plugs of all cables are numbered through; a plug set is a bit mask over that numbering.
type assigner struct {
	sockets []Socket
	cables  []Cable

	plugCable [MaxPlugs]int8
	plugIndex [MaxPlugs]int8
	cablePlug [MaxPlugs]uint64 // plugs of a cable that has any
	served    [MaxSockets]uint64
	own       [MaxSockets]int8 // sockets that ask a cable of their own
	owns      int
	shared    socketSet // the other sockets
	all       socketSet
	reach     socketSet // fed by a matching that ignores OwnCable: no answer feeds more
	usable    int       // number of cables with plugs
	cableAt   [MaxPlugs]int

	open   uint64           // plugs not on a cable used up
	chosen [MaxSockets]int8 // plug of each OwnCable socket on trial, −1 for none
	cableC [MaxSockets]int8 // and its cable
	owner  [MaxPlugs]int8   // socket of each plug in the matching, −1 for none
	seen   uint64           // plugs tried in this augmentation
	taken  uint64           // plugs with an owner
	best   [MaxSockets]int8 // plug of each socket in the best answer
	fed    socketSet        // sockets the best answer feeds
	found  bool
}

func (a *assigner) prepare() error {
	plugs := 0
	for c, cable := range a.cables {
		if len(cable.Plugs) == 0 {
			continue
		}
		if plugs+len(cable.Plugs) > MaxPlugs {
			return fmt.Errorf("plug assignment: more than %d plugs", MaxPlugs)
		}
		a.cableAt[a.usable] = c
		for p := range cable.Plugs {
			a.plugCable[plugs], a.plugIndex[plugs] = int8(a.usable), int8(p)
			a.cablePlug[a.usable] |= 1 << plugs
			plugs++
		}
		a.usable++
	}
	for i, s := range a.sockets {
		for p := range plugs {
			plug := a.plug(p)
			if plug.Kind.Serves(s.Kind) && (plug.LimitMW == 0 || s.LoadMW <= plug.LimitMW) {
				a.served[i] |= 1 << p
			}
		}
		a.all |= socketBit(i)
		if s.OwnCable {
			a.own[a.owns] = int8(i)
			a.owns++
		} else {
			a.shared |= socketBit(i)
		}
	}
	a.open = ^uint64(0)
	a.reach = a.match(a.all)
	return nil
}

func (a *assigner) plug(p int) Plug {
	return a.cables[a.cableAt[a.plugCable[p]]].Plugs[a.plugIndex[p]]
}

// match feeds the sockets of want from the open plugs, earlier sockets first, and returns those it could feed: a greatest
// set and, as matchable sets are a matroid, the one with the earliest sockets.
func (a *assigner) match(want socketSet) socketSet {
	for p := range a.owner {
		a.owner[p] = -1
	}
	a.taken = 0
	var fed socketSet
	for i := range a.sockets {
		if want&socketBit(i) == 0 {
			continue
		}
		a.seen = 0
		if a.augment(i) {
			fed |= socketBit(i)
		}
	}
	return fed
}

func (a *assigner) augment(socket int) bool {
	if free := a.served[socket] & a.open &^ a.taken; free != 0 {
		p := bits.TrailingZeros64(free)
		a.taken |= 1 << p
		a.owner[p] = int8(socket)
		return true
	}
	for {
		left := a.served[socket] & a.open &^ a.seen
		if left == 0 {
			return false
		}
		p := bits.TrailingZeros64(left)
		a.seen |= 1 << p
		if a.augment(int(a.owner[p])) {
			a.owner[p] = int8(socket)
			return true
		}
	}
}

// place tries the k-th OwnCable socket on every cable worth trying, then without one. It reports whether the search is
// over because nothing can be better.
func (a *assigner) place(k int) bool {
	if k == a.owns {
		return a.settle()
	}
	if a.found && !a.hope(k).better(a.fed) {
		return false
	}
	socket := int(a.own[k])
	from := 0
	if k > 0 && a.served[a.own[k-1]] == a.served[socket] { // alike: cables in rising order, and fed before unfed
		if a.chosen[k-1] < 0 {
			from = a.usable
		} else {
			from = int(a.cableC[k-1]) + 1
		}
	}
	for c := from; c < a.usable; c++ {
		usable := a.served[socket] & a.open & a.cablePlug[c]
		if usable == 0 || a.triedAlike(from, c) {
			continue
		}
		a.chosen[k], a.cableC[k] = int8(bits.TrailingZeros64(usable)), int8(c)
		a.open &^= a.cablePlug[c]
		over := a.place(k + 1)
		a.open |= a.cablePlug[c]
		if over {
			return true
		}
	}
	a.chosen[k] = -1
	return a.place(k + 1)
}

// triedAlike says whether an open cable with the same plugs was tried before cable c on this level.
func (a *assigner) triedAlike(from, c int) bool {
	for b := from; b < c; b++ {
		if a.open&a.cablePlug[b] != 0 && slices.Equal(a.cables[a.cableAt[b]].Plugs, a.cables[a.cableAt[c]].Plugs) {
			return true
		}
	}
	return false
}

// hope feeds no less than any completion of the trial: the sockets tried so far keep their cables, and the rest is matched
// as if it could share.
func (a *assigner) hope(k int) socketSet {
	rest, fed := a.all, socketSet(0)
	for i := range k {
		bit := socketBit(int(a.own[i]))
		rest &^= bit
		if a.chosen[i] >= 0 {
			fed |= bit
		}
	}
	return fed | a.match(rest)
}

// settle matches the other sockets and keeps the answer if it is better.
func (a *assigner) settle() bool {
	fed := a.match(a.shared)
	for k := range a.owns {
		if a.chosen[k] >= 0 {
			fed |= socketBit(int(a.own[k]))
		}
	}
	if a.found && !fed.better(a.fed) {
		return false
	}
	a.found, a.fed = true, fed
	for i := range a.sockets {
		a.best[i] = -1
	}
	for p, socket := range a.owner {
		if socket >= 0 {
			a.best[socket] = int8(p)
		}
	}
	for k := range a.owns {
		a.best[a.own[k]] = a.chosen[k]
	}
	return fed == a.reach
}

func (a *assigner) result() Assignment {
	out := Assignment{Feeds: make([]Feed, len(a.sockets))}
	for i := range a.sockets {
		p := a.best[i]
		if p < 0 {
			out.Feeds[i] = Feed{-1, -1}
			out.Unfed = append(out.Unfed, i)
			continue
		}
		out.Feeds[i] = Feed{a.cableAt[a.plugCable[p]], int(a.plugIndex[p])}
	}
	return out
}
