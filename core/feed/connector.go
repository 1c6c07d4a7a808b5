package feed

// SocketKind is a power socket on a board, a card or a drive.
type SocketKind int

// Kinds of socket.
const (
	SocketMain24     SocketKind = iota // board, 24 contacts
	SocketProcessor8                   // processor, 2×4
	SocketProcessor4                   // processor, 2×2
	SocketCard6                        // card, 2×3
	SocketCard8                        // card, 2×4
	SocketCard12                       // card, 12 contacts
	SocketSATA
	SocketPeripheral // 4-pin, 5.08 mm pitch
	socketKinds
)

var socketNames = [socketKinds]string{
	"24-pin board", "2×4 processor", "2×2 processor", "2×3 card", "2×4 card", "12-contact card", "SATA power", "4-pin peripheral",
}

// String names the socket.
func (k SocketKind) String() string {
	if k < 0 || k >= socketKinds {
		return "unknown socket"
	}
	return socketNames[k]
}

// LimitMW is the most power through a socket of that kind, in mW, on 12 V where the plug has several rails; see the
// constants Card6MW and on. The 24-pin figure is two live +12 V pins at 8 A, from memory. The 12-contact figure is the
// plug's highest code: the sense code of the supply's plug may set less. An unknown kind carries nothing.
func (k SocketKind) LimitMW() int64 {
	limits := [socketKinds]int64{
		2 * 8 * 12_000, Processor8MW, Processor4MW, Card6MW, Card8MW, Card12MW, SATA12MW, Peripheral12MW,
	}
	if k < 0 || k >= socketKinds {
		return 0
	}
	return limits[k]
}

// PlugKind is a plug on a supply's cable.
type PlugKind int

// Kinds of plug.
const (
	PlugMain24          PlugKind = iota // one piece or 20+4
	PlugProcessor8                      // 2×4, one piece
	PlugProcessor4                      // 2×2
	PlugProcessor4Plus4                 // serves a 2×4 or one 2×2 socket
	PlugCard6                           // 2×3
	PlugCard8                           // 2×4, one piece
	PlugCard6Plus2                      // serves a 2×3 or a 2×4 socket
	PlugCard12                          // 12 contacts
	PlugSATA
	PlugPeripheral
	plugKinds
)

var plugNames = [plugKinds]string{
	"24-pin board", "2×4 processor", "2×2 processor", "4+4 processor", "2×3 card", "2×4 card", "6+2 card",
	"12-contact card", "SATA power", "4-pin peripheral",
}

// String names the plug.
func (k PlugKind) String() string {
	if k < 0 || k >= plugKinds {
		return "unknown plug"
	}
	return plugNames[k]
}

// Serves says whether the plug feeds the socket fully. A plug that goes in but leaves contacts empty (a 2×3 plug in a 2×4
// card socket, a 2×2 plug in a 2×4 processor socket) does not.
//
// Source: ATX 3.0 guide § 2.2.1: the card and processor families differ in pinning and keying and do not interchange.
func (k PlugKind) Serves(s SocketKind) bool {
	switch k {
	case PlugMain24:
		return s == SocketMain24
	case PlugProcessor8:
		return s == SocketProcessor8
	case PlugProcessor4:
		return s == SocketProcessor4
	case PlugProcessor4Plus4:
		return s == SocketProcessor8 || s == SocketProcessor4
	case PlugCard6:
		return s == SocketCard6
	case PlugCard8:
		return s == SocketCard8
	case PlugCard6Plus2:
		return s == SocketCard6 || s == SocketCard8
	case PlugCard12:
		return s == SocketCard12
	case PlugSATA:
		return s == SocketSATA
	case PlugPeripheral:
		return s == SocketPeripheral
	}
	return false
}

// SharedCardCableMW is the power to plan through one card cable with more than one plug: three live wires at 6 A and 12 V.
//
// Source: 6 A is the lower end of the usual 18 AWG pin load (ATX 3.0 guide § 2.2.1); that a pigtail cable is not planned
// beyond it is common practice.
const SharedCardCableMW = 3 * 6 * 12_000

// AsksOwnCable says whether a card socket loaded with loadMW should not share a cable: two such sockets would pass
// SharedCardCableMW. Sockets of other kinds do not ask it.
func AsksOwnCable(k SocketKind, loadMW int64) bool {
	return (k == SocketCard6 || k == SocketCard8 || k == SocketCard12) && 2*loadMW > SharedCardCableMW
}
