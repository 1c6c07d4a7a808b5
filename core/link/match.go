package link

import "fmt"

// Largest problem Match takes.
const (
	MaxDevices = 12
	MaxSockets = 16
)

// Unplaced stands in a Placement for a device without a socket.
const Unplaced = -1

// Lack tells how a device fares in a socket: what it lacks there (lanes, generations, whatever the caller weighs; zero is
// all it asks for), and whether it works there at all. halvings is how many times the socket's lanes have been halved by
// others in use. Lack must not be negative nor fall as halvings rise, and ok must not become true as they rise.
type Lack func(device, socket, halvings int) (lack int64, ok bool)

// Sharing says what using one socket does to others: those in Off cannot be used, those in Halves have half the lanes. A
// port that only one way of using a socket switches off is modelled by giving that socket twice, each switching the other
// off.
type Sharing struct {
	Used   int
	Off    []int
	Halves []int
}

// Placement is the best way to put devices in sockets.
type Placement struct {
	Socket   []int // socket of each device, or Unplaced
	Missing  int   // devices without a socket
	Lack     int64 // sum of what placed devices lack
	Halvings []int // how many times each socket is halved
	Off      []int // sockets the others in use switch off, rising
}

// Match puts devices into sockets, one in each: most devices placed, then the least sum of lacks, then the lowest socket
// for the first device, for the second, and so on. The answer is exact and unique.
//
// Method: only sockets with a Sharing rule change what others offer. For each set of those that may be in use the rest is
// an assignment problem, solved by successive shortest paths over costs (missing and lack, then order); a lower bound
// skips sets that cannot be better.
//
// Cost: up to 2^t assignments for t sockets with a rule; t is 2 or 3 on ordinary boards.
func Match(devices, sockets int, lack Lack, sharing []Sharing) (Placement, error) {
	m, err := newMatcher(devices, sockets, lack, sharing)
	if err != nil {
		return Placement{}, err
	}
	best, found := cost{}, false
	var bestSocket [MaxDevices]int8
	m.eachInUse(func() {
		if found && !m.bound().less(best) {
			return
		}
		if total := m.assign(); !found || total.less(best) {
			best, found, bestSocket = total, true, m.socketOf
		}
	})
	return m.placement(bestSocket), nil
}

// Blocking is a smallest set of devices that cannot all be placed together, the first such set in device order, or nil if
// all can be placed: leaving out any one of them lets the others in. It is for explaining; Match is the fast question.
func Blocking(devices, sockets int, lack Lack, sharing []Sharing) ([]int, error) {
	m, err := newMatcher(devices, sockets, lack, sharing)
	if err != nil {
		return nil, err
	}
	var open [][MaxDevices]uint16 // for each set in use, the sockets each device can take
	m.eachInUse(func() {
		open = append(open, m.fits)
	})
	for size := 1; size <= devices; size++ {
		if set := firstBlocked(nil, 0, size, devices, open); set != nil {
			return set, nil
		}
	}
	return nil, nil
}

// firstBlocked extends a set by so many devices, in rising order, and returns the first that no set in use can take.
func firstBlocked(set []int, from, more, devices int, open [][MaxDevices]uint16) []int {
	if more == 0 {
		for i := range open {
			if placeAll(set, &open[i]) {
				return nil
			}
		}
		return append([]int(nil), set...)
	}
	for d := from; d <= devices-more; d++ {
		if found := firstBlocked(append(set, d), d+1, more-1, devices, open); found != nil {
			return found
		}
	}
	return nil
}

// placeAll says whether each device of a set finds a socket of its own, by augmenting paths.
func placeAll(set []int, open *[MaxDevices]uint16) bool {
	var holder [MaxSockets]int8
	for i := range holder {
		holder[i] = -1
	}
	for _, d := range set {
		seen := uint16(0)
		if !makeRoom(d, open, &holder, &seen) {
			return false
		}
	}
	return true
}

func makeRoom(d int, open *[MaxDevices]uint16, holder *[MaxSockets]int8, seen *uint16) bool {
	for s := range holder {
		if open[d]&^*seen&(1<<s) == 0 {
			continue
		}
		*seen |= 1 << s
		if holder[s] < 0 || makeRoom(int(holder[s]), open, holder, seen) {
			holder[s] = int8(d)
			return true
		}
	}
	return false
}

// matcher is one problem, and the state of the set of rule sockets now taken to be in use.
type matcher struct {
	devices, sockets int
	lack             Lack
	off              [MaxSockets]uint16           // sockets that socket switches off
	halves           [MaxSockets][MaxSockets]int8 // times socket halves another
	ruled            []int                        // sockets with a rule that some device can use
	digit            [MaxDevices]int64            // weight of each device's socket in the order: digits to the base MaxSockets + 1

	inUse    uint16          // rule sockets taken to be in use
	usable   uint16          // sockets open under inUse
	halvings [MaxSockets]int // under inUse
	edges    [MaxDevices][MaxSockets]cost
	fits     [MaxDevices]uint16
	socketOf [MaxDevices]int8 // answer of assign
}

func newMatcher(devices, sockets int, lack Lack, sharing []Sharing) (*matcher, error) {
	if devices < 0 || devices > MaxDevices || sockets < 0 || sockets > MaxSockets {
		return nil, fmt.Errorf("match: %d devices and %d sockets, at most %d and %d", devices, sockets, MaxDevices, MaxSockets)
	}
	m := &matcher{devices: devices, sockets: sockets, lack: lack}
	weight := int64(1)
	for d := devices - 1; d >= 0; d-- {
		m.digit[d] = weight
		weight *= MaxSockets + 1
	}
	var hasRule uint16
	for i, rule := range sharing {
		for _, named := range [][]int{{rule.Used}, rule.Off, rule.Halves} {
			for _, s := range named {
				if s < 0 || s >= sockets {
					return nil, fmt.Errorf("match: sharing rule %d names socket %d, expected 0 to %d", i, s, sockets-1)
				}
			}
		}
		for _, s := range rule.Off {
			m.off[rule.Used] |= 1 << s
		}
		for _, s := range rule.Halves {
			m.halves[rule.Used][s]++
		}
		hasRule |= 1 << rule.Used
	}
	for s := range sockets {
		if hasRule&(1<<s) != 0 && m.wanted(s) {
			m.ruled = append(m.ruled, s)
		}
	}
	return m, nil
}

// wanted says whether some device can use a socket at its best.
func (m *matcher) wanted(socket int) bool {
	for d := range m.devices {
		if _, ok := m.lack(d, socket, 0); ok {
			return true
		}
	}
	return false
}

// eachInUse sets up every set of rule sockets that can be in use together and calls visit.
func (m *matcher) eachInUse(visit func()) {
	for set := range 1 << len(m.ruled) {
		m.inUse = 0
		closed := uint16(0)
		m.halvings = [MaxSockets]int{}
		for i, s := range m.ruled {
			if set&(1<<i) == 0 {
				closed |= 1 << s // taken to be not in use
				continue
			}
			m.inUse |= 1 << s
		}
		off := uint16(0)
		for _, s := range m.ruled {
			if m.inUse&(1<<s) == 0 {
				continue
			}
			off |= m.off[s]
			for other := range m.sockets {
				m.halvings[other] += int(m.halves[s][other])
			}
		}
		if off&m.inUse != 0 {
			continue // they switch each other off
		}
		m.usable = (1<<m.sockets - 1) &^ (off | closed)
		m.price()
		visit()
	}
}

// cost orders answers: first missing devices and lacks, then the order of sockets.
type cost struct{ lack, order int64 }

func (c cost) plus(o cost) cost  { return cost{c.lack + o.lack, c.order + o.order} }
func (c cost) minus(o cost) cost { return cost{c.lack - o.lack, c.order - o.order} }
func (c cost) less(o cost) bool {
	return c.lack < o.lack || c.lack == o.lack && c.order < o.order
}

const (
	missingLack = 1 << 40 // one device missing outweighs any lack
	greatLack   = 1 << 30 // lacks are cut here, so that twelve stay below missingLack
)

func (m *matcher) missing(device int) cost {
	return cost{missingLack, m.digit[device] * MaxSockets}
}

// price fills the costs of each device in each open socket.
func (m *matcher) price() {
	for d := range m.devices {
		m.fits[d] = 0
		for s := range m.sockets {
			if m.usable&(1<<s) == 0 {
				continue
			}
			if lack, ok := m.lack(d, s, m.halvings[s]); ok {
				m.fits[d] |= 1 << s
				m.edges[d][s] = cost{min(lack, greatLack), m.digit[d] * int64(s)}
			}
		}
	}
}

// bound is the sum of each device's best cost, as if sockets could be shared.
func (m *matcher) bound() cost {
	var sum cost
	for d := range m.devices {
		best := m.missing(d)
		for s := range m.sockets {
			if m.fits[d]&(1<<s) != 0 && m.edges[d][s].less(best) {
				best = m.edges[d][s]
			}
		}
		sum = sum.plus(best)
	}
	return sum
}

// assign finds the least total cost by successive shortest augmenting paths (the Hungarian method with potentials).
// Column 0 is the root, columns 1 to sockets are the sockets, and each device has one more column for going without.
func (m *matcher) assign() cost {
	const columns = 1 + MaxSockets + MaxDevices
	var rowPotential [MaxDevices + 1]cost
	var columnPotential [columns]cost
	var holder, from [columns]int8 // rows count from 1; 0 is nobody
	last := m.sockets + m.devices
	for row := 1; row <= m.devices; row++ {
		holder[0] = int8(row)
		var reach [columns]cost
		for j := range reach {
			reach[j] = cost{1 << 62, 0}
		}
		var done [columns]bool
		at := 0
		for {
			done[at] = true
			r := int(holder[at])
			step, next := cost{1 << 62, 0}, -1
			for j := 1; j <= last; j++ {
				if done[j] {
					continue
				}
				if c, ok := m.column(r-1, j); ok {
					reduced := c.minus(rowPotential[r]).minus(columnPotential[j])
					if reduced.less(reach[j]) {
						reach[j], from[j] = reduced, int8(at)
					}
				}
				if next < 0 || reach[j].less(step) {
					step, next = reach[j], j
				}
			}
			for j := 0; j <= last; j++ {
				if done[j] {
					rowPotential[holder[j]] = rowPotential[holder[j]].plus(step)
					columnPotential[j] = columnPotential[j].minus(step)
				} else {
					reach[j] = reach[j].minus(step)
				}
			}
			at = next
			if holder[at] == 0 {
				break
			}
		}
		for at != 0 {
			holder[at] = holder[from[at]]
			at = int(from[at])
		}
	}
	var total cost
	for j := 1; j <= last; j++ {
		if holder[j] == 0 {
			continue
		}
		d := int(holder[j]) - 1
		c, _ := m.column(d, j)
		total = total.plus(c)
		m.socketOf[d] = Unplaced
		if j <= m.sockets {
			m.socketOf[d] = int8(j - 1)
		}
	}
	return total
}

// column is the cost of a device in a column of assign, if it may go there.
func (m *matcher) column(device, column int) (cost, bool) {
	if column <= m.sockets {
		s := column - 1
		return m.edges[device][s], m.fits[device]&(1<<s) != 0
	}
	if column-m.sockets-1 == device {
		return m.missing(device), true
	}
	return cost{}, false
}

// placement reads an answer back, with what the sockets really in use do to the others.
func (m *matcher) placement(socketOf [MaxDevices]int8) Placement {
	p := Placement{Socket: make([]int, m.devices), Halvings: make([]int, m.sockets)}
	off := uint16(0)
	for d := range m.devices {
		s := int(socketOf[d])
		p.Socket[d] = s
		if s == Unplaced {
			p.Missing++
			continue
		}
		off |= m.off[s]
		for other := range m.sockets {
			p.Halvings[other] += int(m.halves[s][other])
		}
	}
	for d, s := range p.Socket {
		if s != Unplaced {
			lack, _ := m.lack(d, s, p.Halvings[s])
			p.Lack += lack
		}
	}
	for s := range m.sockets {
		if off&(1<<s) != 0 {
			p.Off = append(p.Off, s)
		}
	}
	return p
}
