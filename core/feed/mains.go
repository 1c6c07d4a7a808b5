package feed

// The mains model only warns. It defers to local codes and to licensed electricians; it never designs an installation.

// Circuit is an outlet and what protects it.
type Circuit struct {
	Name             string
	VoltageMV        int64
	RatingMA         int64 // breaker or plug fuse
	ContinuousFactor int64 // percent of a continuous load that counts against the rating: 125 or 100
	Source           string
}

// Circuits lists the outlets the model knows, in a fixed order.
//
// The 125 % for continuous loads (3 h or more) is the North American rule; elsewhere the rating counts in full and the
// usual advice is to stay at or under 80 % of it (PlannedShareMA).
func Circuits() []Circuit {
	return []Circuit{
		{"120 V 15 A branch circuit", 120_000, 15_000, 125, "NEC 210.20(A)"},
		{"120 V 20 A branch circuit", 120_000, 20_000, 125, "NEC 210.20(A)"},
		{"BS 1363 plug with 13 A fuse", 230_000, 13_000, 100, "BS 1363, fuse to BS 1362"},
		{"BS 1363 plug with 5 A fuse", 230_000, 5_000, 100, "BS 1363, fuse to BS 1362"},
		{"BS 1363 plug with 3 A fuse", 230_000, 3_000, 100, "BS 1363, fuse to BS 1362"},
		{"CEE 7 outlet, 16 A", 230_000, 16_000, 100, "national practice, from memory"},
	}
}

// RequiredMA is the rating a circuit must have for continuous and other loads, both in mVA, in mA rounded up:
//
//	I = (factor · continuous + other) / U
//
// Source: NEC 210.20(A) for the factor 1.25.
func (c Circuit) RequiredMA(continuousMVA, otherMVA int64) int64 {
	return ceilDiv((c.ContinuousFactor*continuousMVA+100*otherMVA)*1000, 100*c.VoltageMV)
}

// MarginMA is rating − required; below zero the load does not belong on this circuit.
func (c Circuit) MarginMA(continuousMVA, otherMVA int64) int64 {
	return c.RatingMA - c.RequiredMA(continuousMVA, otherMVA)
}

// ContinuousMA is the greatest continuous current, rounded down: rating ÷ factor (12 A of 15 A, 16 A of 20 A).
func (c Circuit) ContinuousMA() int64 {
	return c.RatingMA * 100 / c.ContinuousFactor
}

// ContinuousMVA is the greatest continuous load in mVA, rounded down.
func (c Circuit) ContinuousMVA() int64 {
	return c.RatingMA * c.VoltageMV / (10 * c.ContinuousFactor)
}

// PlannedShareMA is 80 % of the rating, rounded down: the planning share where no continuous rule applies.
//
// Source: common practice; 1 ÷ 1.25 where NEC 210.20(A) applies.
func (c Circuit) PlannedShareMA() int64 {
	return c.RatingMA * 80 / 100
}

// CurrentMA is the current of an apparent power at a voltage, rounded up.
func CurrentMA(apparentMVA, voltageMV int64) int64 {
	return ceilDiv(apparentMVA*1000, voltageMV)
}

// Cord couplers and flex, in mA.
//
// Source: couplers, IEC 60320-1 and North American practice, both from memory; moulded BS 1363 plug on 0.75 mm² flex,
// BS 1363-1 Table 2 as discussed in a published answer (10 A only if at most 2 m and tested so).
const (
	C13IECMA            = 10_000
	C13NorthAmericaMA   = 15_000
	C19IECMA            = 16_000
	C19NorthAmericaMA   = 20_000
	Flex075MA           = 6_000
	Flex075ShortRatedMA = 10_000
)
