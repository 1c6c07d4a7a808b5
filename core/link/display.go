package link

import "fmt"

// DisplayKind is a family of display link.
type DisplayKind int

// Families of display link.
const (
	DisplayPort8b10b    DisplayKind = iota // RBR to HBR3
	DisplayPort128b132b                    // UHBR
	HDMITMDS
	HDMIFRL
)

// DisplayLink is a display link: its family, lanes and the raw rate of a lane.
type DisplayLink struct {
	Kind        DisplayKind
	Lanes       int64
	LaneBitPerS int64
}

// Raw lane rates in bit/s.
//
// Source: VESA DP 1.4 and 2.1; HDMI 2.1 FRL steps.
const (
	LaneRBR    = 1_620_000_000
	LaneHBR    = 2_700_000_000
	LaneHBR2   = 5_400_000_000
	LaneHBR3   = 8_100_000_000
	LaneUHBR10 = 10_000_000_000
	LaneUHBR13 = 13_500_000_000
	LaneUHBR20 = 20_000_000_000
	LaneFRL3   = 3_000_000_000
	LaneFRL6   = 6_000_000_000
	LaneFRL8   = 8_000_000_000
	LaneFRL10  = 10_000_000_000
	LaneFRL12  = 12_000_000_000
	LaneHDMI14 = 3_400_000_000 // 340 MHz characters of ten bits
	LaneHDMI20 = 6_000_000_000 // 600 MHz characters of ten bits
)

// DisplayLinkNamed finds a link by the name its standard gives the rate: "RBR", "HBR", "HBR2", "HBR3", "UHBR10",
// "UHBR13.5", "UHBR20" with 1, 2 or 4 lanes; "HDMI 1.4", "HDMI 2.0" (always three lanes); "FRL3" and "FRL6" with three or
// "FRL6", "FRL8", "FRL10", "FRL12" with four. Any other pair is an error.
func DisplayLinkNamed(name string, lanes int64) (DisplayLink, error) {
	for _, l := range displayLinks {
		if l.name != name {
			continue
		}
		for _, allowed := range l.lanes {
			if allowed == lanes {
				return DisplayLink{l.kind, lanes, l.rate}, nil
			}
		}
		return DisplayLink{}, fmt.Errorf("display link %s with %d lanes: expected one of %v", name, lanes, l.lanes)
	}
	return DisplayLink{}, fmt.Errorf("display link %q: not a known rate", name)
}

var displayLinks = [...]struct {
	name  string
	kind  DisplayKind
	rate  int64
	lanes []int64
}{
	{"RBR", DisplayPort8b10b, LaneRBR, []int64{1, 2, 4}},
	{"HBR", DisplayPort8b10b, LaneHBR, []int64{1, 2, 4}},
	{"HBR2", DisplayPort8b10b, LaneHBR2, []int64{1, 2, 4}},
	{"HBR3", DisplayPort8b10b, LaneHBR3, []int64{1, 2, 4}},
	{"UHBR10", DisplayPort128b132b, LaneUHBR10, []int64{1, 2, 4}},
	{"UHBR13.5", DisplayPort128b132b, LaneUHBR13, []int64{1, 2, 4}},
	{"UHBR20", DisplayPort128b132b, LaneUHBR20, []int64{1, 2, 4}},
	{"HDMI 1.4", HDMITMDS, LaneHDMI14, []int64{3}},
	{"HDMI 2.0", HDMITMDS, LaneHDMI20, []int64{3}},
	{"FRL3", HDMIFRL, LaneFRL3, []int64{3}},
	{"FRL6", HDMIFRL, LaneFRL6, []int64{3, 4}},
	{"FRL8", HDMIFRL, LaneFRL8, []int64{4}},
	{"FRL10", HDMIFRL, LaneFRL10, []int64{4}},
	{"FRL12", HDMIFRL, LaneFRL12, []int64{4}},
}

// RawBitPerS is lanes times the lane rate.
func (l DisplayLink) RawBitPerS() int64 { return l.Lanes * l.LaneBitPerS }

// PayloadBitPerS is what is left for pixels, rounded down: 8b/10b and TMDS 0.8, 128b/132b with FEC and PHY overhead
// 0.9671, FRL 16b/18b (before its Reed-Solomon and packet loss of 2 to 3 %, see Doubtful).
//
// Source: VESA DP 1.4 and 2.1 § 3.5.2.18 as used in public display-driver source; HDMI 2.0 and 2.1.
func (l DisplayLink) PayloadBitPerS() int64 {
	switch l.Kind {
	case DisplayPort128b132b:
		return l.RawBitPerS() * 9671 / 10_000
	case HDMIFRL:
		return l.RawBitPerS() * 16 / 18
	}
	return l.RawBitPerS() * 8 / 10
}

// CompressedPayloadBitPerS is the payload for a compressed stream. 8b/10b then carries forward error correction, an
// overhead of 1537/64000 on the data; the other codes include theirs. TMDS carries no compressed stream: zero.
//
// Source: (256·6 + 1)/(256·250) as derived in public display-driver source.
func (l DisplayLink) CompressedPayloadBitPerS() int64 {
	switch l.Kind {
	case HDMITMDS:
		return 0
	case DisplayPort8b10b:
		return l.PayloadBitPerS() * 64_000 / 65_537
	}
	return l.PayloadBitPerS()
}

// MultiStreamPayloadBitPerS is the payload of an 8b/10b link shared by several streams: one packet in 64 is a header.
// Other links are unchanged.
//
// Source: efficiency 0.7875, public display-driver source.
func (l DisplayLink) MultiStreamPayloadBitPerS() int64 {
	if l.Kind == DisplayPort8b10b {
		return l.RawBitPerS() * 7875 / 10_000
	}
	return l.PayloadBitPerS()
}

// Carriage says how a link carries a mode.
type Carriage int

// Ways a link carries a mode.
const (
	No               Carriage = iota // not at all
	Doubtful                         // fits on paper within 3 % of an FRL link's limit: check with display and card
	NeedsCompression                 // only as a compressed stream, which both ends allow
	Fits                             // uncompressed
)

// String names the carriage.
func (c Carriage) String() string {
	switch c {
	case No:
		return "no"
	case Doubtful:
		return "doubtful"
	case NeedsCompression:
		return "needs compression"
	case Fits:
		return "fits"
	}
	return fmt.Sprintf("carriage %d", int(c))
}

// Mode is a display mode on a link.
type Mode struct {
	ClockKHz      int64 // pixel clock of the timing in use
	Sampling      Sampling
	BitsPerColour int64
	Compression   bool // both ends state display stream compression
}

// Fit is a mode against a link: the rate needed and the rate there is, in bit/s, for the carriage named.
type Fit struct {
	Carriage    Carriage
	NeedBitPerS int64
	HaveBitPerS int64
}

// doubtPercent is the share of an FRL payload that Reed-Solomon coding and packets may take. Source: HDMI 2.1, from memory.
const doubtPercent = 3

// FitMode compares clock × bits per pixel with the link's payload, exactly. HDMI always sends 4:2:2 as 24 bits. A mode
// that does not surely fit plain is tried at the least compressed size if both ends compress and the link can; where that is
// the better answer, Need and Have are those of the compressed stream. On FRL, blanking may be sent shorter than the timing says and coding may take a
// little more than counted: within 3 % under the limit the answer is Doubtful, over it the answer is as for any link.
func FitMode(l DisplayLink, m Mode) (Fit, error) {
	bits, err := BitsPerPixel(m.Sampling, m.BitsPerColour)
	if err != nil {
		return Fit{}, err
	}
	if m.ClockKHz <= 0 {
		return Fit{}, fmt.Errorf("pixel clock %d kHz: expected above zero", m.ClockKHz)
	}
	if m.Sampling == Sampling422 && (l.Kind == HDMITMDS || l.Kind == HDMIFRL) {
		bits = max(bits, 24)
	}
	plain := Fit{NeedBitPerS: m.ClockKHz * 1000 * bits, HaveBitPerS: l.PayloadBitPerS()}
	plain.Carriage = carriage(l, plain, Fits)
	if plain.Carriage == Fits || !m.Compression {
		return plain, nil
	}
	packed := Fit{
		NeedBitPerS: m.ClockKHz * 1000 * CompressedBitsPerPixel(m.Sampling),
		HaveBitPerS: l.CompressedPayloadBitPerS(),
	}
	packed.Carriage = carriage(l, packed, NeedsCompression)
	if packed.Carriage > plain.Carriage {
		return packed, nil
	}
	return plain, nil
}

func carriage(l DisplayLink, f Fit, good Carriage) Carriage {
	switch {
	case f.NeedBitPerS > f.HaveBitPerS:
		return No
	case l.Kind == HDMIFRL && f.NeedBitPerS*100 > f.HaveBitPerS*(100-doubtPercent):
		return Doubtful
	}
	return good
}
