// Package build is parts in seats: a machine on paper, with the layout of its case and the mounting decisions.
package build

// Seat is a place in a build that takes parts.
type Seat uint8

// The seats, in the order papers list them.
const (
	Case Seat = iota
	Board
	Processor
	Cooler
	Memory
	Graphics
	Supply
	Boot
	Cache
	Archive
	Fans
	Cards
	Screens
	UPS
	Services

	Seats = int(Services) + 1
)

var seatNames = [Seats]string{"case", "board", "processor", "cooler", "memory", "graphics", "supply", "boot", "cache", "archive", "fans", "cards", "screens", "ups", "services"}

// what a person calls the part that sits there
var seatTitles = [Seats]string{"case", "main board", "processor", "processor cooler", "memory", "graphics card", "power supply", "boot drive", "cache drive", "archive drive", "case fans", "cards and adapters", "screens", "uninterruptible supply", "labour and sundries"}

// String is the seat's word in files and on the command line.
func (s Seat) String() string { return seatNames[s] }

// Title is what a person calls the part that sits there.
func (s Seat) Title() string { return seatTitles[s] }

// Named returns the seat of a word.
func Named(name string) (Seat, bool) {
	for i, n := range seatNames {
		if n == name {
			return Seat(i), true
		}
	}
	return 0, false
}

// Single reports a seat that takes one article; the others take several different ones.
func (s Seat) Single() bool {
	return s != Fans && s != Cards && s != Screens && s != Services
}

// Compulsory lists the seats without which nothing runs.
func Compulsory() []Seat { return []Seat{Case, Board, Processor, Cooler, Memory, Supply, Boot} }

// Several reports a seat whose article may come more than once: kits of memory, equal drives.
func (s Seat) Several() bool {
	switch s {
	case Memory, Boot, Cache, Archive, Fans, Cards, Screens, Services:
		return true
	}
	return false
}

// Set is a set of seats.
type Set uint32

// SetOf returns the set of the given seats.
func SetOf(seats ...Seat) Set {
	var set Set
	for _, s := range seats {
		set |= 1 << s
	}
	return set
}

// Has reports whether s is in the set.
func (set Set) Has(s Seat) bool { return set&(1<<s) != 0 }

// Holds reports whether every seat of the other set is in this one.
func (set Set) Holds(other Set) bool { return set&other == other }
