package feed

// SensePin is the state a card finds on a sense contact.
type SensePin int

// States of a sense contact.
const (
	SenseOpen SensePin = iota
	SenseGround
	SenseJoined // the two sense contacts are joined to each other and not grounded
)

// Card8SenseMW decodes the sense contacts of a 2×4 card socket: what the plug allows in mW. Both grounded: a 2×4 plug;
// only SENSE0 grounded: a 2×3 plug in the 2×4 socket; both open: nothing plugged in. ok is false for the reserved code.
//
// Source: ATX 3.0 guide rev. 2.0, Table 5-6.
func Card8SenseMW(sense1, sense0 SensePin) (limitMW int64, ok bool) {
	switch {
	case sense1 == SenseGround && sense0 == SenseGround:
		return Card8MW, true
	case sense1 == SenseOpen && sense0 == SenseGround:
		return Card6MW, true
	case sense1 == SenseOpen && sense0 == SenseOpen:
		return 0, true
	}
	return 0, false
}

// Card12Kind tells the two editions of the 12-contact card plug apart.
type Card12Kind int

// Editions of the 12-contact plug.
const (
	Card12CEM50 Card12Kind = iota // 12VHPWR
	Card12CEM51                   // 12V-2x6
)

// Card12Sense is what the sense code of a 12-contact plug allows, in mW.
type Card12Sense struct {
	StartMW     int64 // at power-up
	SustainedMW int64
}

// Card12SensePower decodes the sense contacts of a 12-contact plug. ok is false for a code the edition does not define.
//
// Source: the four levels and that they are coded by ground and open, ATX 3.1 guide rev. 2.1a § 3.3; the coding row by
// row, Table 3-6, from memory.
func Card12SensePower(sense0, sense1 SensePin, kind Card12Kind) (power Card12Sense, ok bool) {
	switch {
	case sense0 == SenseGround && sense1 == SenseGround:
		return Card12Sense{375_000, 600_000}, true
	case sense0 == SenseOpen && sense1 == SenseGround:
		return Card12Sense{225_000, 450_000}, true
	case sense0 == SenseGround && sense1 == SenseOpen:
		return Card12Sense{150_000, 300_000}, true
	case sense0 == SenseOpen && sense1 == SenseOpen:
		if kind == Card12CEM50 {
			return Card12Sense{100_000, 150_000}, true
		}
		return Card12Sense{0, 0}, true // not home: the card must not start
	case sense0 == SenseJoined && sense1 == SenseJoined && kind == Card12CEM51:
		return Card12Sense{100_000, 150_000}, true
	}
	return Card12Sense{}, false
}
