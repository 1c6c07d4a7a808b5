package link

import "fmt"

// ratio is a share of a rate, kept exact.
type ratio struct{ num, den int64 }

// of applies the ratio and rounds down.
func (r ratio) of(v int64) int64 { return v * r.num / r.den }

// expressGenerations are rate per lane and line code of PCI Express: 8b/10b, 128b/130b, and 236 packet bytes in a 256-byte
// FLIT from generation 6.
//
// Source: PCI Express Base Specification.
var expressGenerations = [...]struct {
	laneBitPerS int64
	code        ratio
}{
	{2_500_000_000, ratio{8, 10}},
	{5_000_000_000, ratio{8, 10}},
	{8_000_000_000, ratio{128, 130}},
	{16_000_000_000, ratio{128, 130}},
	{32_000_000_000, ratio{128, 130}},
	{64_000_000_000, ratio{236, 256}},
}

// ExpressBitPerS is what a PCI Express link of a generation (1 to 6) and lanes (1, 2, 4, 8, 16) carries each way after its
// line code, in bit/s rounded down. Packet headers take more: see ExpressPracticalLowPercent.
func ExpressBitPerS(generation, lanes int) (int64, error) {
	if generation < 1 || generation > len(expressGenerations) {
		return 0, fmt.Errorf("PCIe generation %d: expected 1 to %d", generation, len(expressGenerations))
	}
	switch lanes {
	case 1, 2, 4, 8, 16:
	default:
		return 0, fmt.Errorf("PCIe lanes %d: expected 1, 2, 4, 8 or 16", lanes)
	}
	g := expressGenerations[generation-1]
	return g.code.of(g.laneBitPerS * int64(lanes)), nil
}

// ExpressBytePerS is ExpressBitPerS in byte/s, rounded down.
func ExpressBytePerS(generation, lanes int) (int64, error) {
	bits, err := ExpressBitPerS(generation, lanes)
	return bits / 8, err
}

// Share of the line-code figure that large blocks reach in practice, in percent. Source: measurement habit.
const (
	ExpressPracticalLowPercent  = 80
	ExpressPracticalHighPercent = 90
)

// Bus is a serial bus or network by the name of its rate.
type Bus int

// Serial buses and networks.
const (
	SATA1500 Bus = iota
	SATA3000
	SATA6000
	USB2HighSpeed
	USB32Gen1x1 // 5 Gbit/s
	USB32Gen1x2 // 10 Gbit/s over two lanes
	USB32Gen2x1 // 10 Gbit/s
	USB32Gen2x2 // 20 Gbit/s
	USB4At20G
	USB4At40G
	Ethernet1G
	Ethernet2G5
	Ethernet5G
	Ethernet10G
	busCount
)

// ethernetShare is TCP data in a frame at the ordinary 1500-byte packet: 1460 of 1538 bytes on the wire.
var ethernetShare = ratio{1460, 1538}

// buses: raw rate over all lanes, and the share left after the line code (SATA 8b/10b; USB 5G 8b/10b, 10G and up
// 128b/132b; USB4 20G 64b/66b, 40G 128b/132b, both before FEC and tunnelling), the bulk ceiling of USB 2.0 (13 packets of
// 512 bytes in each 125 µs) or the TCP share of Ethernet.
//
// Source: Serial ATA, USB 2.0, USB 3.2, USB4 specifications; IEEE 802.3 framing.
var buses = [busCount]struct {
	name  string
	raw   int64
	share ratio
}{
	SATA1500:      {"SATA 1.5 Gbit/s", 1_500_000_000, ratio{8, 10}},
	SATA3000:      {"SATA 3 Gbit/s", 3_000_000_000, ratio{8, 10}},
	SATA6000:      {"SATA 6 Gbit/s", 6_000_000_000, ratio{8, 10}},
	USB2HighSpeed: {"USB 2.0", 480_000_000, ratio{13 * 512 * 8 * 8000, 480_000_000}},
	USB32Gen1x1:   {"USB 3.2 Gen 1×1", 5_000_000_000, ratio{8, 10}},
	USB32Gen1x2:   {"USB 3.2 Gen 1×2", 10_000_000_000, ratio{8, 10}},
	USB32Gen2x1:   {"USB 3.2 Gen 2×1", 10_000_000_000, ratio{128, 132}},
	USB32Gen2x2:   {"USB 3.2 Gen 2×2", 20_000_000_000, ratio{128, 132}},
	USB4At20G:     {"USB4 20 Gbit/s", 20_000_000_000, ratio{64, 66}},
	USB4At40G:     {"USB4 40 Gbit/s", 40_000_000_000, ratio{128, 132}},
	Ethernet1G:    {"Ethernet 1 Gbit/s", 1_000_000_000, ethernetShare},
	Ethernet2G5:   {"Ethernet 2.5 Gbit/s", 2_500_000_000, ethernetShare},
	Ethernet5G:    {"Ethernet 5 Gbit/s", 5_000_000_000, ethernetShare},
	Ethernet10G:   {"Ethernet 10 Gbit/s", 10_000_000_000, ethernetShare},
}

// String names the bus and its rate.
func (b Bus) String() string {
	if b < 0 || b >= busCount {
		return fmt.Sprintf("bus %d", int(b))
	}
	return buses[b].name
}

// RawBitPerS is the rate on the wire over all lanes; zero for an unknown bus.
func (b Bus) RawBitPerS() int64 {
	if b < 0 || b >= busCount {
		return 0
	}
	return buses[b].raw
}

// PayloadBitPerS is what the bus can carry for its user at best, rounded down; zero for an unknown bus.
func (b Bus) PayloadBitPerS() int64 {
	if b < 0 || b >= busCount {
		return 0
	}
	return buses[b].share.of(buses[b].raw)
}

// PayloadBytePerS is PayloadBitPerS in byte/s, rounded down.
func (b Bus) PayloadBytePerS() int64 { return b.PayloadBitPerS() / 8 }

// PracticalMBPerS is what large transfers reach in practice, in MB/s (10⁶ byte/s), on the low side. ok is false where no
// habit is known. Source: measurement habit.
func (b Bus) PracticalMBPerS() (rate int64, ok bool) {
	switch b {
	case SATA6000:
		return 530, true
	case USB2HighSpeed:
		return 35, true
	case USB32Gen1x1:
		return 430, true
	case USB32Gen2x1:
		return 1000, true
	case USB32Gen2x2:
		return 2000, true
	case USB4At40G:
		return 3000, true
	}
	return 0, false
}

// JumboGoodputBitPerS is the TCP data rate of a raw Ethernet rate with 9000-byte packets: 8960 of 9038 bytes, rounded down.
//
// Source: IEEE 802.3 framing.
func JumboGoodputBitPerS(rawBitPerS int64) int64 {
	return ratio{8960, 9038}.of(rawBitPerS)
}
