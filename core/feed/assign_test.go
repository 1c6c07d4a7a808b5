package feed

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

func cable(kinds ...PlugKind) Cable {
	var c Cable
	for _, k := range kinds {
		c.Plugs = append(c.Plugs, Plug{Kind: k})
	}
	return c
}

func sockets(kinds ...SocketKind) []Socket {
	var out []Socket
	for _, k := range kinds {
		out = append(out, Socket{Kind: k})
	}
	return out
}

// checkValid requires that an assignment keeps every rule.
func checkValid(t *testing.T, sockets []Socket, cables []Cable, a Assignment) {
	t.Helper()
	require.Len(t, a.Feeds, len(sockets))
	usedPlug := map[Feed]bool{}
	feeds := map[int]int{}
	var unfed []int
	for i, f := range a.Feeds {
		if f.Cable < 0 {
			require.Equal(t, Feed{-1, -1}, f)
			unfed = append(unfed, i)
			continue
		}
		plug := cables[f.Cable].Plugs[f.Plug]
		require.True(t, plug.Kind.Serves(sockets[i].Kind))
		require.True(t, plug.LimitMW == 0 || sockets[i].LoadMW <= plug.LimitMW)
		require.False(t, usedPlug[f], "plug used twice")
		usedPlug[f] = true
		feeds[f.Cable]++
	}
	for i, f := range a.Feeds {
		if f.Cable >= 0 && sockets[i].OwnCable {
			require.Equal(t, 1, feeds[f.Cable], "socket %d shares its cable", i)
		}
	}
	require.Equal(t, unfed, a.Unfed)
}

func TestAssignCases(t *testing.T) {
	pigtail := cable(PlugCard6Plus2, PlugCard6Plus2)
	single := cable(PlugCard6Plus2)
	own8 := Socket{Kind: SocketCard8, LoadMW: 140_000, OwnCable: true}
	cases := []struct {
		name    string
		sockets []Socket
		cables  []Cable
		feeds   []Feed
		unfed   []int
	}{
		{"nothing asked", nil, []Cable{pigtail}, []Feed{}, nil},
		{"nothing given", sockets(SocketSATA), nil, []Feed{{-1, -1}}, []int{0}},
		{"pigtail feeds two that may share", sockets(SocketCard8, SocketCard6), []Cable{pigtail}, []Feed{{0, 0}, {0, 1}}, nil},
		{"pigtail feeds one that may not", []Socket{own8, own8}, []Cable{pigtail}, []Feed{{0, 0}, {-1, -1}}, []int{1}},
		{"own cables", []Socket{own8, own8}, []Cable{pigtail, pigtail}, []Feed{{0, 0}, {1, 0}}, nil},
		{"own cable takes the single, the pair shares", append([]Socket{own8}, sockets(SocketCard8, SocketCard8)...),
			[]Cable{pigtail, single}, []Feed{{1, 0}, {0, 0}, {0, 1}}, nil},
		{"6+2 kept for the 2×4", sockets(SocketCard6, SocketCard8), []Cable{single, cable(PlugCard6)}, []Feed{{1, 0}, {0, 0}}, nil},
		{"4+4 serves 2×2 or 2×4", sockets(SocketProcessor4, SocketProcessor8),
			[]Cable{cable(PlugProcessor4Plus4), cable(PlugProcessor4Plus4)}, []Feed{{0, 0}, {1, 0}}, nil},
		{"processor plug never feeds a card", sockets(SocketCard8), []Cable{cable(PlugProcessor8)}, []Feed{{-1, -1}}, []int{0}},
		{"card plug never feeds the processor", sockets(SocketProcessor8), []Cable{pigtail}, []Feed{{-1, -1}}, []int{0}},
		{"2×3 plug does not fill a 2×4", sockets(SocketCard8), []Cable{cable(PlugCard6)}, []Feed{{-1, -1}}, []int{0}},
		{"coded below the load", []Socket{{Kind: SocketCard12, LoadMW: 450_000}},
			[]Cable{{Plugs: []Plug{{PlugCard12, 300_000}}}}, []Feed{{-1, -1}}, []int{0}},
		{"coded at the load", []Socket{{Kind: SocketCard12, LoadMW: 300_000}},
			[]Cable{{}, {Plugs: []Plug{{PlugCard12, 300_000}}}}, []Feed{{1, 0}}, nil},
		{"last socket starves", sockets(SocketSATA, SocketSATA, SocketSATA), []Cable{cable(PlugSATA, PlugPeripheral, PlugSATA)},
			[]Feed{{0, 0}, {0, 2}, {-1, -1}}, []int{2}},
	}
	for _, c := range cases {
		got, err := AssignPlugs(c.sockets, c.cables)
		require.NoError(t, err, c.name)
		checkValid(t, c.sockets, c.cables, got)
		require.Equal(t, c.unfed, got.Unfed, c.name)
		for i, f := range got.Feeds {
			require.Equal(t, c.feeds[i].Cable, f.Cable, c.name)
			require.Equal(t, c.feeds[i].Plug < 0, f.Plug < 0, c.name)
		}
	}
}

func TestAssignRefusesTooMuch(t *testing.T) {
	_, err := AssignPlugs(make([]Socket, MaxSockets+1), nil)
	require.ErrorContains(t, err, "65 sockets, at most 64")
	_, err = AssignPlugs(nil, []Cable{{Plugs: make([]Plug, MaxPlugs)}, {Plugs: make([]Plug, 1)}})
	require.ErrorContains(t, err, "more than 64 plugs")
	full, err := AssignPlugs(make([]Socket, MaxSockets), []Cable{{Plugs: make([]Plug, MaxPlugs)}})
	require.NoError(t, err)
	require.Empty(t, full.Unfed)
}

func TestAsksOwnCable(t *testing.T) {
	require.False(t, AsksOwnCable(SocketCard8, 108_000)) // two make the 216 W of three wires at 6 A
	require.True(t, AsksOwnCable(SocketCard8, 108_001))
	require.False(t, AsksOwnCable(SocketMain24, 300_000))
}

// No plug serves a socket of another family, and every kind of socket has a plug and a limit.
func TestServesTable(t *testing.T) {
	family := func(s SocketKind) int {
		return map[SocketKind]int{SocketProcessor8: 1, SocketProcessor4: 1, SocketCard6: 2, SocketCard8: 2}[s]
	}
	for s := SocketKind(0); s < socketKinds; s++ {
		plugs := 0
		for p := PlugKind(0); p < plugKinds; p++ {
			if p.Serves(s) {
				plugs++
				for other := SocketKind(0); other < socketKinds; other++ {
					if other != s && p.Serves(other) {
						require.NotZero(t, family(s))
						require.Equal(t, family(s), family(other))
					}
				}
			}
		}
		require.Positive(t, plugs, s.String())
		require.Positive(t, s.LimitMW(), s.String())
	}
	require.False(t, plugKinds.Serves(SocketSATA))
	require.Zero(t, socketKinds.LimitMW())
	require.Equal(t, "unknown plug", plugKinds.String())
	require.Equal(t, "unknown socket", socketKinds.String())
}

// bruteFed tries every way to feed the sockets and returns the best fed set, first as a count, then earliest sockets.
func bruteFed(sockets []Socket, cables []Cable) socketSet {
	type plugAt struct{ cable, plug int }
	var plugs []plugAt
	for c := range cables {
		for p := range cables[c].Plugs {
			plugs = append(plugs, plugAt{c, p})
		}
	}
	used := make([]bool, len(plugs))
	feeds := make([]int, len(cables))
	alone := make([]bool, len(cables))
	var best socketSet
	var try func(i int, fed socketSet)
	try = func(i int, fed socketSet) {
		if i == len(sockets) {
			if fed.better(best) {
				best = fed
			}
			return
		}
		s := sockets[i]
		for k, at := range plugs {
			plug := cables[at.cable].Plugs[at.plug]
			if used[k] || alone[at.cable] || s.OwnCable && feeds[at.cable] > 0 ||
				!plug.Kind.Serves(s.Kind) || plug.LimitMW != 0 && s.LoadMW > plug.LimitMW {
				continue
			}
			used[k] = true
			feeds[at.cable]++
			alone[at.cable] = s.OwnCable
			try(i+1, fed|socketBit(i))
			alone[at.cable] = false
			feeds[at.cable]--
			used[k] = false
		}
		try(i+1, fed)
	}
	try(0, 0)
	return best
}

func fedSet(a Assignment) socketSet {
	var fed socketSet
	for i, f := range a.Feeds {
		if f.Cable >= 0 {
			fed |= socketBit(i)
		}
	}
	return fed
}

// instance draws a small problem in which plugs are scarce and kinds collide.
func instance(r *rand.Rand, maxSockets, maxPlugs int) ([]Socket, []Cable) {
	socketKind := []SocketKind{SocketCard6, SocketCard8, SocketCard8, SocketSATA, SocketProcessor4, SocketProcessor8}
	plugKind := []PlugKind{PlugCard6, PlugCard6Plus2, PlugCard6Plus2, PlugCard8, PlugSATA, PlugProcessor4Plus4, PlugProcessor4}
	var ss []Socket
	for range r.IntN(maxSockets + 1) {
		ss = append(ss, Socket{socketKind[r.IntN(len(socketKind))], int64(r.IntN(3)) * 75_000, r.IntN(2) == 0})
	}
	var cs []Cable
	for left := r.IntN(maxPlugs + 1); left > 0; {
		var c Cable
		for range min(left, 1+r.IntN(3)) {
			c.Plugs = append(c.Plugs, Plug{plugKind[r.IntN(len(plugKind))], int64(r.IntN(4)) * 75_000})
			left--
		}
		cs = append(cs, c)
	}
	return ss, cs
}

func TestAssignEqualsBruteForce(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	short := 0
	for n := range 20_000 {
		ss, cs := instance(r, 6, 7)
		got, err := AssignPlugs(ss, cs)
		require.NoError(t, err)
		checkValid(t, ss, cs, got)
		require.Equal(t, bruteFed(ss, cs), fedSet(got), "instance %d: %v %v", n, ss, cs)
		if len(got.Unfed) > 0 {
			short++
		}
	}
	require.Greater(t, short, 1_000)
	require.Less(t, short, 19_000)
}

// One more cable never feeds fewer sockets, and where no socket asks a cable of its own it never leaves a socket unfed that
// was fed. (With such sockets the greatest count may move from one socket to others.)
func TestMoreCablesNeverUnfeed(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for n := range 20_000 {
		ss, cs := instance(r, 8, 10)
		if n%2 == 0 {
			for i := range ss {
				ss[i].OwnCable = false
			}
		}
		_, more := instance(r, 0, 3)
		before, err := AssignPlugs(ss, cs)
		require.NoError(t, err)
		after, err := AssignPlugs(ss, append(cs[:len(cs):len(cs)], more...))
		require.NoError(t, err)
		require.LessOrEqual(t, len(after.Unfed), len(before.Unfed))
		if n%2 == 0 {
			lost := fedSet(before) &^ fedSet(after)
			require.Zero(t, lost, "instance %d: %v %v and %v", n, ss, cs, more)
		}
		again, err := AssignPlugs(ss, cs)
		require.NoError(t, err)
		require.Equal(t, before, again)
	}
}

func TestAssignLarge(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 500 {
		ss, cs := instance(r, 14, 28)
		got, err := AssignPlugs(ss, cs)
		require.NoError(t, err)
		checkValid(t, ss, cs, got)
	}
}

// workshop is an ordinary machine: board, two processor plugs, a card with three 2×4 sockets, four drives.
func workshop() ([]Socket, []Cable) {
	own8 := Socket{Kind: SocketCard8, LoadMW: 125_000, OwnCable: true}
	ss := append(sockets(SocketMain24, SocketProcessor8, SocketProcessor4), own8, own8, own8)
	ss = append(ss, sockets(SocketSATA, SocketSATA, SocketSATA, SocketSATA, SocketPeripheral)...)
	pigtail := cable(PlugCard6Plus2, PlugCard6Plus2)
	drives := cable(PlugSATA, PlugSATA, PlugSATA, PlugPeripheral)
	return ss, []Cable{cable(PlugMain24), cable(PlugProcessor4Plus4), cable(PlugProcessor4Plus4),
		pigtail, pigtail, pigtail, drives, drives}
}

func TestAssignWorkshop(t *testing.T) {
	ss, cs := workshop()
	got, err := AssignPlugs(ss, cs)
	require.NoError(t, err)
	checkValid(t, ss, cs, got)
	require.Empty(t, got.Unfed)
	got, err = AssignPlugs(ss, append(cs[:5:5], cs[6:]...)) // one pigtail missing
	require.NoError(t, err)
	require.Equal(t, []int{5}, got.Unfed)
}

func BenchmarkAssignPlugs(b *testing.B) {
	ss, cs := workshop()
	for b.Loop() {
		if _, err := AssignPlugs(ss, cs); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkAssignPlugsShort(b *testing.B) {
	ss, cs := workshop()
	cs = append(cs[:5:5], cs[6:]...)
	for b.Loop() {
		if _, err := AssignPlugs(ss, cs); err != nil {
			b.Fatal(err)
		}
	}
}
