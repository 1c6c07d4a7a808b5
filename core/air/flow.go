package air

import "math"

// The pressure network. Zones are nodes with a gauge pressure, the room is at 0, and every path, leak and opening is a
// branch from one to another:
//
//	p_from − p_to + head = A·Q·|Q| + B·Q
//
// with the fans' shut-off pressure and the draught in head. Each branch's flow rises with its pressure difference, so
// the flows are the gradient of a strictly convex function of the pressures: there is exactly one solution, and
// Newton's method with a line search on that function finds it from anywhere. B is a trace of laminar loss; it makes
// the slope of a branch finite where its flow passes through zero and changes no flow worth reading.

const (
	room = -1 // node index of the room

	laminarM3PerS = 1e-7  // B = A·laminarM3PerS: the linear part equals the quadratic one at a tenth of a millilitre a second
	seepM3PerSPa  = 1e-15 // of every zone to the room: settles the pressure of a sealed zone
)

// branch is one way for air. Positive flow runs from → to.
type branch struct {
	from, to int
	a, b     float64 // Pa·s²/m⁶, Pa·s/m³
	head     float64 // Pa
	flow     float64 // m³/s, result
}

// at gives the flow for a pressure difference x, head included, and its slope.
func (b *branch) at(x float64) (flow, slope float64) {
	root := math.Sqrt(float64(b.b*b.b) + float64(4*b.a*math.Abs(x)))
	return 2 * x / (b.b + root), 1 / root
}

// flowNet holds the pressure network and its working space.
type flowNet struct {
	branches   []branch
	p          []float64 // gauge pressure of each zone at the reference density, kept as the next start
	net        []float64 // net inflow of each zone, m³/s
	step, hess []float64
	start      []float64 // the pressures that a step starts from
	steps      int       // Newton steps taken in all
}

func (f *flowNet) add(from, to int, impedance float64) {
	f.branches = append(f.branches, branch{from: from, to: to, a: impedance, b: impedance * laminarM3PerS})
}

// drop gives the pressure difference of a branch, head included.
func (f *flowNet) drop(b *branch) float64 {
	x := b.head
	if b.from != room {
		x += f.p[b.from]
	}
	if b.to != room {
		x -= f.p[b.to]
	}
	return x
}

// move goes so far along the step from where it starts.
func (f *flowNet) move(t float64) {
	for z := range f.p {
		f.p[z] = f.start[z] + float64(t*f.step[z])
	}
}

// rise gives the slope of the convex function along the step, at the pressures that were balanced last.
func (f *flowNet) rise() float64 {
	value := 0.0
	for z, v := range f.net {
		value -= float64(v * f.step[z])
	}
	return value
}

// along goes along the step and gives the slope of the convex function there, and the slope's own slope.
func (f *flowNet) along(t float64) (value, slope float64) {
	f.move(t)
	for i := range f.branches {
		b := &f.branches[i]
		d := 0.0
		if b.from != room {
			d = f.step[b.from]
		}
		if b.to != room {
			d -= f.step[b.to]
		}
		if d == 0 {
			continue
		}
		q, s := b.at(f.drop(b))
		value += float64(q * d)
		slope += float64(s * d * d)
	}
	for z, p := range f.p {
		d := f.step[z]
		value += float64(seepM3PerSPa * p * d)
		slope += float64(seepM3PerSPa * d * d)
	}
	return value, slope
}

// balance works out flows and net inflows at the present pressures and returns the largest net inflow, m³/s.
func (f *flowNet) balance() (imbalance float64) {
	n := len(f.p)
	for i := range f.hess {
		f.hess[i] = 0
	}
	for z := range f.p {
		f.net[z] = -seepM3PerSPa * f.p[z]
		f.hess[z*n+z] = seepM3PerSPa
	}
	for i := range f.branches {
		b := &f.branches[i]
		q, s := b.at(f.drop(b))
		b.flow = q
		if b.from != room {
			f.net[b.from] -= q
			f.hess[b.from*n+b.from] += s
		}
		if b.to != room {
			f.net[b.to] += q
			f.hess[b.to*n+b.to] += s
		}
		if b.from != room && b.to != room {
			f.hess[b.from*n+b.to] -= s
			f.hess[b.to*n+b.from] -= s
		}
	}
	for _, v := range f.net {
		imbalance = max(imbalance, math.Abs(v))
	}
	return imbalance
}

// solve finds the pressures and flows. It goes on until rounding stops it, and reports false when the flows then do not
// balance to a thousandth of a millilitre a second. A step is taken in full where the slope along it falls to a tenth of what it was,
// else as far as it does.
func (f *flowNet) solve() bool {
	const want, enough, most = 1e-14, 1e-9, 200
	imbalance := f.balance()
	for range most {
		if imbalance <= want {
			return true
		}
		copy(f.step, f.net)
		if !solveDense(f.hess, f.step, len(f.p)) {
			return false
		}
		f.steps++
		before, limit := imbalance, 0.1*math.Abs(f.rise())
		copy(f.start, f.p)
		f.move(1)
		if imbalance = f.balance(); math.Abs(f.rise()) > limit {
			f.search(limit)
			imbalance = f.balance()
		}
		if imbalance <= enough && imbalance > 0.1*before {
			return true
		}
	}
	return imbalance <= enough
}

// search goes along the step to where the slope along it, which rises all the way, is within a limit.
func (f *flowNet) search(limit float64) {
	lo, hi, t := 0.0, math.Inf(1), 1.0
	for range 100 {
		value, slope := f.along(t)
		if math.Abs(value) <= limit {
			return
		}
		if value < 0 {
			lo = t
		} else {
			hi = t
		}
		next := t - value/slope
		switch {
		case math.IsInf(hi, 1):
			t = min(max(next, 1.5*t), 10*t)
		case next <= lo+0.05*(hi-lo) || next >= hi-0.05*(hi-lo):
			t = (lo + hi) / 2
		default:
			t = next
		}
	}
	f.move(t)
}
