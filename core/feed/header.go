package feed

// Limits of board headers, in mA.
//
// Source: fan and pump headers and both lighting headers: common practice, the board's manual rules. USB ports:
// encyclopaedia article "USB hardware". USB headers: board practice, the sum of their ports. USB-C: USB Type-C
// specification, from memory.
const (
	FanHeaderMA         = 1_000
	PumpHeaderMA        = 2_000 // the lower end of 2 to 3 A
	USB2PortMA          = 500
	USB3PortMA          = 900
	USBChargingPortMA   = 1_500
	USBCPortMA          = 3_000
	USB2HeaderMA        = 2 * USB2PortMA
	USB3HeaderMA        = 2 * USB3PortMA
	USBCHeaderMA        = USBCPortMA
	LightHeader12VMA    = 3_000 // 4-pin, 36 W
	LightHeader5VMA     = 3_000 // 3-pin, addressable, 15 W
	AddressableLEDMA    = 60    // one LED at full white
	FanLimitMA          = 1_500 // steady, a compliant fan at most
	FanStartLimitMA     = 2_200 // at most 1.0 s at start, a compliant fan at most
	FanPulsesPerTurn    = 2
	FanPWMHz            = 25_000
	FanLeastDutyPercent = 30 // the lowest speed every compliant fan reaches, from memory
)

// HeaderLoad is a header's current balance.
type HeaderLoad struct {
	SumMA  int64
	FreeMA int64 // limit − sum; below zero the header is overloaded
}

// SumHeader adds the currents of what hangs on one header, through splitters or not, against the header's limit.
func SumHeader(limitMA int64, currentsMA ...int64) HeaderLoad {
	var sum int64
	for _, c := range currentsMA {
		sum += c
	}
	return HeaderLoad{sum, limitMA - sum}
}

// LEDsWithin is the number of addressable LEDs at full white a current in mA can feed.
func LEDsWithin(currentMA int64) int64 {
	return currentMA / AddressableLEDMA
}

// FanRPM turns a tachometer frequency in mHz into revolutions per minute, rounded down: two pulses a turn, rpm = 30 · Hz.
//
// Source: 4-Wire PWM Controlled Fans Specification § 2.1.3.
func FanRPM(tachometerMilliHz int64) int64 {
	return tachometerMilliHz * 60 / FanPulsesPerTurn / 1000
}
