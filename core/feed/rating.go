package feed

// SlotRating is what an expansion slot may give a card.
type SlotRating struct {
	TotalMW   int64 // both rails together: this is the budget
	Rail12MA  int64 // +12 V
	Rail3V3MA int64 // +3.3 V
}

// SlotPower is the rating for a card with that many lanes, after configuration. A ×16 graphics card has 75 W in all (its
// rails alone would sum to 75.9 W, which is not a budget), ×4 and ×8 cards 25 W, a ×1 card 10 W or, in full height, 25 W.
// ok is false for a width the standard's table does not list.
//
// Source: PCIe CEM as set out in encyclopaedia article "PCI Express", Slot power.
func SlotPower(cardLanes int, fullHeight bool) (rating SlotRating, ok bool) {
	switch cardLanes {
	case 1:
		if fullHeight {
			return SlotRating{25_000, 2_100, 3_000}, true
		}
		return SlotRating{10_000, 500, 3_000}, true
	case 4, 8:
		return SlotRating{25_000, 2_100, 3_000}, true
	case 16:
		return SlotRating{75_000, 5_500, 3_000}, true
	}
	return SlotRating{}, false
}

// Ratings of plugs, sustained over any 1 s, in mW.
//
// Source: 2×3, 2×4 and the 12-contact plug: ATX 3.0 guide rev. 2.01, Table 3-5. Processor plugs: live pins × 8 A × 12 V,
// where 6 to 8 A a pin is the usual load of 18 AWG (ATX 3.0 guide § 2.2.1) and four live pins in the 2×4 are from memory.
// SATA: three pins of 1.5 A a rail (published question and answer on the SATA specification). 4-pin peripheral: 5 A on a
// shared 18 AWG lead, common practice.
const (
	Card6MW        = 75_000
	Card8MW        = 150_000
	Card12MW       = 600_000
	Processor4MW   = 2 * 8 * 12_000
	Processor8MW   = 4 * 8 * 12_000
	SATARailMA     = 4_500
	SATA12MW       = 54_000
	SATA5MW        = 22_500
	SATA3V3MW      = 14_850
	PeripheralMA   = 5_000
	Peripheral12MW = 60_000
)

// Greatest RMS current over any 1 s of the card plugs, in mA.
//
// Source: ATX 3.0 guide rev. 2.01, Table 3-5.
const (
	Card6MA  = 6_750
	Card8MA  = 13_500
	Card12MA = 55_000
)

// Contact ratings at 30 °C rise with all power pins energised, in mA a pin.
//
// Source: ATX 3.0 guide § 5.2.2.4 (2×3) and § 5.2.2.4.3 (12-contact).
const (
	Card6PinMA  = 8_000
	Card12PinMA = 9_200
)

// M.2 sockets: what the 3.3 V pins carry at 0.5 A each, in mW (nine, five and four pins for keys M, B and E).
//
// Source: PCI-SIG M.2 pin-out, from memory.
const (
	M2KeyMMW = 14_850
	M2KeyBMW = 8_250
	M2KeyEMW = 6_600
)

// Greatest power of a single card from all sources, in mW: 600 W under CEM 5.0, 675 W under CEM 5.1.
//
// Source: ATX 3.0 guide rev. 2.01 and ATX 3.1 guide rev. 2.1a, introductions to chapter 3.
const (
	CardCeilingCEM50MW = 600_000
	CardCeilingCEM51MW = 675_000
)

// CardCeilingMW is the most a card may draw from its slot and its plugs together, all in mW.
//
// Source: the sums the standard itself makes (75 + 150 + 75 = 300 W).
func CardCeilingMW(slotMW int64, plugLimitsMW ...int64) int64 {
	total := slotMW
	for _, limit := range plugLimitsMW {
		total += limit
	}
	return total
}

// ContactMarginPermille compares what the live pins of a plug could carry at 12 V with the plug's rating, in thousandths
// rounded down: 1104 means 10.4 % to spare.
func ContactMarginPermille(livePins, pinMA, ratingMW int64) int64 {
	return livePins * pinMA * 12 * 1000 / ratingMW
}
