package air

import (
	"fmt"
	"math"
)

// Arrangement is how the two streams of a heat exchanger pass each other. The approximate and the exact form of
// unmixed crossflow differ by up to 3.8 %; published worked examples mostly use the approximate one.
type Arrangement uint8

const (
	CrossflowUnmixedExact  Arrangement = iota // both unmixed, series after Mason
	CrossflowUnmixedApprox                    // both unmixed, closed form found in textbooks
	CrossflowBothMixed
	CrossflowCmaxMixed // the stream of greater capacity is mixed, the other unmixed
	CrossflowCminMixed // the stream of smaller capacity is mixed, the other unmixed
	Counterflow
	ParallelFlow
)

// maxNTU bounds the number of transfer units that Effectiveness evaluates; beyond it nothing changes in print.
const maxNTU = 500

// Effectiveness gives ε = Q/(Cmin·(T_hot,in − T_cold,in)) for NTU = UA/Cmin ≥ 0 and cr = Cmin/Cmax in [0, 1].
// Source: Bergman/Incropera, Fundamentals of Heat and Mass Transfer, table of ε–NTU relations; exact crossflow series
// after Mason; both mixed after Nellis & Klein, Heat Transfer.
func (a Arrangement) Effectiveness(ntu, cr float64) float64 {
	if ntu <= 0 {
		return 0
	}
	ntu = math.Min(ntu, maxNTU)
	single := -math.Expm1(-ntu)
	if cr < 1e-9 {
		return single
	}
	switch a {
	case CrossflowUnmixedExact:
		return unmixedExact(ntu, cr)
	case CrossflowUnmixedApprox:
		return -math.Expm1(math.Pow(ntu, 0.22) / cr * math.Expm1(-cr*math.Pow(ntu, 0.78)))
	case CrossflowBothMixed:
		return 1 / (1/single + cr/-math.Expm1(-cr*ntu) - 1/ntu)
	case CrossflowCmaxMixed:
		return -math.Expm1(-cr*single) / cr
	case CrossflowCminMixed:
		return -math.Expm1(math.Expm1(-cr*ntu) / cr)
	case Counterflow:
		if 1-cr < 1e-9 {
			return ntu / (1 + ntu)
		}
		e := math.Exp(-ntu * (1 - cr))
		return (1 - e) / (1 - cr*e)
	case ParallelFlow:
		return -math.Expm1(-ntu*(1+cr)) / (1 + cr)
	}
	return math.NaN()
}

// unmixedExact sums 1 − e^−N − e^−(1+C)N·Σ Cⁿ/(n+1)!·Σ_{j=1..n} (n+1−j)/j!·N^(n+j). With the exponentials drawn into
// the terms every term is a product of Poisson weights: none overflows and none cancels.
func unmixedExact(ntu, cr float64) float64 {
	var (
		cn     = cr * ntu
		weight = math.Exp(-ntu) // e^−N·N^j/j!, j = n
		outer  = math.Exp(-cn)  // e^−CN·(CN)ⁿ/(n+1)!
		row    float64          // Σ_{j=1..n} weight_j
		s      float64          // Σ of the rows to n = Σ_{j=1..n} (n+1−j)·weight_j
		sum    float64
	)
	last := int(cn+12*math.Sqrt(cn)) + 40
	for n := 1; n <= last; n++ {
		weight *= ntu / float64(n)
		outer *= cn / float64(n+1)
		row += weight
		s += row
		sum += outer * s
	}
	return -math.Expm1(-ntu) - sum
}

// NTU inverts Effectiveness: the least number of transfer units that reaches eps. An eps out of the arrangement's
// reach at that cr is an error.
func (a Arrangement) NTU(eps, cr float64) (float64, error) {
	if !(eps >= 0 && eps < 1) || !(cr >= 0 && cr <= 1) {
		return 0, fmt.Errorf("ntu of effectiveness %g at capacity ratio %g: want 0 <= effectiveness < 1, 0 <= ratio <= 1", eps, cr)
	}
	lo, hi := 0.0, 0.25
	for a.Effectiveness(hi, cr) < eps {
		if hi > 100 || a.Effectiveness(1.1*hi, cr) <= a.Effectiveness(hi, cr) {
			return 0, fmt.Errorf("effectiveness %g is out of reach at capacity ratio %g", eps, cr)
		}
		lo, hi = hi, 1.1*hi
	}
	for range 60 {
		mid := (lo + hi) / 2
		if a.Effectiveness(mid, cr) < eps {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2, nil
}

// Exchange is the working of a heat exchanger between two streams.
type Exchange struct {
	NTU, CapacityRatio, Effectiveness float64
	ConductanceWPerK                  float64 // ε·Cmin: heat per kelvin between the two inlets
}

// Exchange works out a heat exchanger of conductance ua between streams of capacities c1 and c2, all W/K and
// positive.
func (a Arrangement) Exchange(uaWPerK, c1WPerK, c2WPerK float64) Exchange {
	cmin, cmax := math.Min(c1WPerK, c2WPerK), math.Max(c1WPerK, c2WPerK)
	x := Exchange{NTU: uaWPerK / cmin, CapacityRatio: cmin / cmax}
	x.Effectiveness = a.Effectiveness(x.NTU, x.CapacityRatio)
	x.ConductanceWPerK = x.Effectiveness * cmin
	return x
}
