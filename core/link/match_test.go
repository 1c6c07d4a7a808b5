package link

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// lanesLack builds a Lack from lanes asked and lanes offered by sockets: halving halves the offer. A socket of the wrong
// kind does not take the device.
func lanesLack(deviceKind, socketKind []byte, asks, offers []int64) Lack {
	return func(d, s, halvings int) (int64, bool) {
		if deviceKind[d] != socketKind[s] {
			return 0, false
		}
		return max(0, asks[d]-offers[s]>>halvings), true
	}
}

func TestMatchCases(t *testing.T) {
	// Two cards, two long slots of 16 lanes that run as 8 + 8 when both are used, one slot of 4.
	slots := lanesLack([]byte("cc"), []byte("ccc"), []int64{16, 4}, []int64{16, 16, 4})
	bifurcated := []Sharing{{Used: 1, Halves: []int{0, 1}}}
	p, err := Match(2, 3, slots, bifurcated)
	require.NoError(t, err)
	require.Equal(t, Placement{Socket: []int{0, 2}, Halvings: []int{0, 0, 0}}, p) // the small card keeps the pair apart

	// Two cards that both want 16: either way eight are lacking each.
	both := lanesLack([]byte("cc"), []byte("cc"), []int64{16, 16}, []int64{16, 16})
	p, err = Match(2, 2, both, bifurcated)
	require.NoError(t, err)
	require.Equal(t, Placement{Socket: []int{0, 1}, Lack: 16, Halvings: []int{1, 1}}, p)

	// Two M.2 drives; the second M.2 socket switches off the fifth and sixth SATA port; five SATA drives are there.
	drives := lanesLack([]byte("mmsssss"), []byte("mmmssssss"), []int64{4, 4, 1, 1, 1, 1, 1}, []int64{4, 4, 2, 1, 1, 1, 1, 1, 1})
	ports := []Sharing{{Used: 1, Off: []int{7, 8}}}
	p, err = Match(7, 9, drives, ports)
	require.NoError(t, err)
	require.Equal(t, []int{0, 2, 3, 4, 5, 6, 7}, p.Socket) // the slower third socket: all placed, two lanes lacking
	require.Equal(t, int64(2), p.Lack)
	require.Empty(t, p.Off)
	p, err = Match(6, 9, drives, ports) // one drive fewer: the second socket is free to be used
	require.NoError(t, err)
	require.Equal(t, []int{0, 1, 3, 4, 5, 6}, p.Socket)
	require.Equal(t, []int{7, 8}, p.Off)
	require.Zero(t, p.Lack)

	// A socket that can run in one of two ways is given twice, each switching the other off.
	ways := lanesLack([]byte("ab"), []byte("ab"), []int64{1, 1}, []int64{1, 1})
	exclusive := []Sharing{{Used: 0, Off: []int{1}}, {Used: 1, Off: []int{0}}}
	p, err = Match(2, 2, ways, exclusive)
	require.NoError(t, err)
	require.Equal(t, []int{0, Unplaced}, append([]int(nil), p.Socket...))
	require.Equal(t, 1, p.Missing)
	set, err := Blocking(2, 2, ways, exclusive)
	require.NoError(t, err)
	require.Equal(t, []int{0, 1}, set)
}

func TestMatchEmpty(t *testing.T) {
	never := func(int, int, int) (int64, bool) { return 0, false }
	p, err := Match(0, 3, never, nil)
	require.NoError(t, err)
	require.Zero(t, p.Missing)
	p, err = Match(2, 0, never, nil)
	require.NoError(t, err)
	require.Equal(t, []int{Unplaced, Unplaced}, p.Socket)
	set, err := Blocking(2, 1, never, nil)
	require.NoError(t, err)
	require.Equal(t, []int{0}, set)
}

func TestMatchRefuses(t *testing.T) {
	never := func(int, int, int) (int64, bool) { return 0, false }
	_, err := Match(13, 1, never, nil)
	require.ErrorContains(t, err, "at most 12 and 16")
	_, err = Match(1, 17, never, nil)
	require.ErrorContains(t, err, "at most 12 and 16")
	_, err = Blocking(-1, 1, never, nil)
	require.Error(t, err)
	for _, rule := range []Sharing{{Used: 2}, {Used: 0, Off: []int{2}}, {Used: 0, Halves: []int{-1}}} {
		_, err = Match(1, 2, never, []Sharing{rule})
		require.ErrorContains(t, err, "expected 0 to 1")
	}
}

// problem is a drawn instance: what each device lacks in each socket, by how much a halving adds, and how many it bears.
type problem struct {
	devices, sockets int
	base, step       [MaxDevices][MaxSockets]int64
	bears            [MaxDevices][MaxSockets]int // −1: never
	sharing          []Sharing
}

func (p *problem) lack(d, s, halvings int) (int64, bool) {
	return p.base[d][s] + p.step[d][s]*int64(halvings), halvings <= p.bears[d][s]
}

func draw(r *rand.Rand, maxDevices, maxSockets, maxRules int) *problem {
	p := &problem{devices: r.IntN(maxDevices + 1), sockets: r.IntN(maxSockets + 1)}
	for d := range p.devices {
		for s := range p.sockets {
			p.base[d][s] = int64(r.IntN(3) * r.IntN(3))
			p.step[d][s] = int64(r.IntN(3))
			p.bears[d][s] = r.IntN(5) - 2
		}
	}
	if p.sockets > 0 {
		pick := func(n int) (out []int) {
			for range r.IntN(n) {
				out = append(out, r.IntN(p.sockets))
			}
			return out
		}
		for range r.IntN(maxRules + 1) {
			p.sharing = append(p.sharing, Sharing{r.IntN(p.sockets), pick(3), pick(3)})
		}
	}
	return p
}

// judge works out what a whole placement costs, or that it breaks a rule.
func (p *problem) judge(socket []int) (missing int, lack int64, ok bool) {
	var halvings [MaxSockets]int
	var off, used uint16
	for _, s := range socket {
		if s == Unplaced {
			continue
		}
		if used&(1<<s) != 0 {
			return 0, 0, false
		}
		used |= 1 << s
		for _, rule := range p.sharing {
			if rule.Used != s {
				continue
			}
			for _, o := range rule.Off {
				off |= 1 << o
			}
			for _, h := range rule.Halves {
				halvings[h]++
			}
		}
	}
	if off&used != 0 {
		return 0, 0, false
	}
	for d, s := range socket {
		if s == Unplaced {
			missing++
			continue
		}
		l, fits := p.lack(d, s, halvings[s])
		if !fits {
			return 0, 0, false
		}
		lack += l
	}
	return missing, lack, true
}

// brute tries every placement, low sockets first, and keeps the first best.
func (p *problem) brute(devices []int) (best []int, missing int, lack int64) {
	socket := make([]int, p.devices)
	for d := range socket {
		socket[d] = Unplaced
	}
	missing = 1 << 30
	var try func(i int)
	try = func(i int) {
		if i == len(devices) {
			m, l, ok := p.judge(socket)
			m -= p.devices - len(devices)
			if ok && (m < missing || m == missing && l < lack) {
				best, missing, lack = append([]int(nil), socket...), m, l
			}
			return
		}
		for s := range p.sockets {
			socket[devices[i]] = s
			try(i + 1)
		}
		socket[devices[i]] = Unplaced
		try(i + 1)
	}
	try(0)
	return best, missing, lack
}

func (p *problem) allDevices() []int {
	all := make([]int, p.devices)
	for d := range all {
		all[d] = d
	}
	return all
}

func TestMatchEqualsBruteForce(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	short, lacking := 0, 0
	for n := range 8_000 {
		p := draw(r, 4, 5, 4)
		got, err := Match(p.devices, p.sockets, p.lack, p.sharing)
		require.NoError(t, err)
		socket, missing, lack := p.brute(p.allDevices())
		require.Equal(t, missing, got.Missing, "instance %d", n)
		require.Equal(t, lack, got.Lack, "instance %d", n)
		require.Equal(t, append([]int{}, socket...), got.Socket, "instance %d", n)
		if missing > 0 {
			short++
		}
		if lack > 0 {
			lacking++
		}
	}
	require.Greater(t, short, 500)
	require.Greater(t, lacking, 500)
}

// Blocking is a smallest set that brute force cannot place, and each of its subsets one smaller can be placed.
func TestBlockingEqualsBruteForce(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	for n := range 3_000 {
		p := draw(r, 4, 4, 3)
		set, err := Blocking(p.devices, p.sockets, p.lack, p.sharing)
		require.NoError(t, err)
		_, missing, _ := p.brute(p.allDevices())
		require.Equal(t, missing > 0, set != nil, "instance %d", n)
		var smallest []int
		for mask := range 1 << p.devices {
			var devices []int
			for d := range p.devices {
				if mask&(1<<d) != 0 {
					devices = append(devices, d)
				}
			}
			if _, short, _ := p.brute(devices); short > 0 && (smallest == nil || len(devices) < len(smallest)) {
				smallest = devices
			}
		}
		require.Len(t, set, len(smallest), "instance %d", n)
		if set != nil {
			_, short, _ := p.brute(set)
			require.Positive(t, short)
		}
	}
}

// Large instances keep every rule, and the same input gives the same answer.
func TestMatchLarge(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	for range 500 {
		p := draw(r, MaxDevices, MaxSockets, 5)
		got, err := Match(p.devices, p.sockets, p.lack, p.sharing)
		require.NoError(t, err)
		missing, lack, ok := p.judge(got.Socket)
		require.True(t, ok)
		require.Equal(t, got.Missing, missing)
		require.Equal(t, got.Lack, lack)
		again, err := Match(p.devices, p.sockets, p.lack, p.sharing)
		require.NoError(t, err)
		require.Equal(t, got, again)
	}
}

// One more socket never leaves more devices out, nor makes them lack more.
func TestMoreSocketsNeverHurt(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 14))
	for range 3_000 {
		p := draw(r, 6, 8, 3)
		if p.sockets == 0 {
			continue
		}
		whole, err := Match(p.devices, p.sockets, p.lack, p.sharing)
		require.NoError(t, err)
		hidden := r.IntN(p.sockets)
		part, err := Match(p.devices, p.sockets, func(d, s, h int) (int64, bool) {
			l, ok := p.lack(d, s, h)
			return l, ok && s != hidden
		}, p.sharing)
		require.NoError(t, err)
		require.LessOrEqual(t, whole.Missing, part.Missing)
		if whole.Missing == part.Missing {
			require.LessOrEqual(t, whole.Lack, part.Lack)
		}
	}
}

// board is an ordinary board with cards and drives: two long slots that halve each other, a short slot shared with an
// M.2 socket, three M.2 sockets of which one switches off two SATA ports, six SATA ports.
func board() (devices, sockets int, lack Lack, sharing []Sharing) {
	return 8, 12, lanesLack([]byte("ccmmssss"), []byte("cccmmmssssss"),
			[]int64{16, 4, 4, 4, 1, 1, 1, 1}, []int64{16, 8, 4, 4, 4, 4, 1, 1, 1, 1, 1, 1}),
		[]Sharing{{Used: 1, Halves: []int{0}}, {Used: 5, Off: []int{2}}, {Used: 4, Off: []int{10, 11}}}
}

func BenchmarkMatch(b *testing.B) {
	devices, sockets, lack, sharing := board()
	for b.Loop() {
		if _, err := Match(devices, sockets, lack, sharing); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkMatchLargest(b *testing.B) {
	r := rand.New(rand.NewPCG(15, 16))
	p := draw(r, MaxDevices, MaxSockets, 4)
	for p.devices < MaxDevices || p.sockets < MaxSockets || len(p.sharing) < 4 {
		p = draw(r, MaxDevices, MaxSockets, 4)
	}
	for b.Loop() {
		if _, err := Match(p.devices, p.sockets, p.lack, p.sharing); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkBlocking(b *testing.B) {
	devices, sockets, lack, sharing := board()
	short := func(d, s, h int) (int64, bool) {
		l, ok := lack(d, s, h)
		return l, ok && s < 9
	}
	for b.Loop() {
		if _, err := Blocking(devices, sockets, short, sharing); err != nil {
			b.Fatal(err)
		}
	}
}
