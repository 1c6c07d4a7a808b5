package unit

import (
	"fmt"
	"strconv"
	"strings"
)

// Kind is the kind of thing a Quantity counts: what its integer stands for and how it is printed.
type Kind uint8

// The kinds of quantity a margin can be told in. The comment is what the integer counts.
const (
	Number      Kind = iota // things: slots, plugs, threads
	Yes                     // 1 met, 0 not met
	Metre                   // µm
	Watt                    // mW
	Ampere                  // mA
	Gram                    // g
	Minor                   // minor units of the catalog's currency
	MemoryByte              // MiB
	StorageByte             // MB, 10^6 bytes
	ByteRate                // MB/s
	BitRate                 // Mbit/s
	Transfer                // MT/s
	Work                    // work points of the catalog's calibration block
	Celsius                 // thousandths of a degree Celsius
	Decibel                 // thousandths of a dB(A)
	Minute                  // minutes
	Year                    // thousandths of a year
	VoltAmpere              // mVA
	Version                 // a firmware or bus version, major × 1000 + minor
	Newton                  // mN·m, a bending moment
	Percent                 // thousandths of a per cent
	Airflow                 // thousandths of a m³/h
	Volume                  // millilitres
	Kelvin                  // thousandths of a kelvin, a difference of temperatures
)

// Quantity is an exact amount of one kind. Two quantities compare only within one kind.
type Quantity struct {
	N    int64
	Kind Kind
}

// Sub returns q − r. Both must be of one kind.
func (q Quantity) Sub(r Quantity) Quantity {
	return Quantity{q.N - r.N, q.Kind}
}

var kinds = [...]struct {
	name, symbol string
	perThousand  bool // the integer counts thousandths of the printed unit
	decimals     int  // digits kept when printed
}{
	Number:      {"number", "", false, 0},
	Yes:         {"yes", "", false, 0},
	Metre:       {"length", "mm", true, 1},
	Watt:        {"power", "W", true, 1},
	Ampere:      {"current", "A", true, 2},
	Gram:        {"mass", "kg", true, 2},
	Minor:       {"money", "", false, 2},
	MemoryByte:  {"memory", "GiB", false, 0},
	StorageByte: {"storage", "GB", true, 0},
	ByteRate:    {"byte-rate", "MB/s", false, 0},
	BitRate:     {"bit-rate", "Mbit/s", false, 0},
	Transfer:    {"transfer-rate", "MT/s", false, 0},
	Work:        {"work", "points", false, 0},
	Celsius:     {"temperature", "°C", true, 1},
	Decibel:     {"sound", "dB(A)", true, 1},
	Minute:      {"time", "min", false, 0},
	Year:        {"years", "years", true, 1},
	VoltAmpere:  {"apparent-power", "VA", true, 0},
	Version:     {"version", "", false, 0},
	Newton:      {"moment", "N·m", true, 2},
	Percent:     {"share", "%", true, 1},
	Airflow:     {"airflow", "m³/h", true, 1},
	Volume:      {"volume", "l", true, 1},
	Kelvin:      {"temperature-difference", "K", true, 1},
}

// Name is the kind's word in JSON.
func (k Kind) Name() string { return kinds[k].name }

// Symbol is the unit printed after the figure, empty for bare counts.
func (k Kind) Symbol() string { return kinds[k].symbol }

// String prints the figure with its unit as a person reads it: "312.5 mm", "64 GiB", "3", "yes".
func (q Quantity) String() string {
	f := q.Figure()
	if s := kinds[q.Kind].symbol; s != "" && q.Kind != Yes {
		return f + " " + s
	}
	return f
}

// Figure prints the number without its unit.
func (q Quantity) Figure() string {
	k := kinds[q.Kind]
	switch {
	case q.Kind == Yes:
		if q.N > 0 {
			return "yes"
		}
		return "no"
	case q.Kind == Minor:
		return Money(q.N).String()
	case q.Kind == Version:
		return Release(q.N).String()
	case q.Kind == MemoryByte:
		return decimal(q.N, 1024, 1)
	case k.perThousand:
		return decimal(q.N, 1000, k.decimals)
	}
	return group(q.N)
}

// Float is the figure in its printed unit, for drawing to scale; verdicts never use it.
func (q Quantity) Float() float64 {
	switch {
	case q.Kind == MemoryByte:
		return float64(q.N) / 1024
	case q.Kind == Minor:
		return float64(q.N) / 100
	case kinds[q.Kind].perThousand:
		return float64(q.N) / 1000
	}
	return float64(q.N)
}

// decimal prints n/per with at most the given digits after the point, rounding half away from zero and dropping
// zeros that say nothing.
func decimal(n, per int64, digits int) string {
	scale := int64(1)
	for range digits {
		scale *= 10
	}
	sign := ""
	if n < 0 {
		sign, n = "−", -n
	}
	r := (n*scale*2 + per) / (2 * per)
	whole, frac := r/scale, r%scale
	s := sign + group(whole)
	if frac == 0 {
		if whole == 0 {
			return "0"
		}
		return s
	}
	return s + "." + strings.TrimRight(fmt.Sprintf("%0*d", digits, frac), "0")
}

func group(n int64) string {
	s := fmt.Sprint(n)
	if s[0] == '-' {
		return "−" + Group(s[1:])
	}
	return Group(s)
}

// Group prints the digits of a whole number with a thin separator between thousands from five digits on: 9999, 12 000.
func Group(digits string) string {
	if len(digits) < 5 {
		return digits
	}
	var b strings.Builder
	for i, r := range digits {
		if i > 0 && (len(digits)-i)%3 == 0 {
			b.WriteRune('\u202f')
		}
		b.WriteRune(r)
	}
	return b.String()
}

// MarshalJSON writes {"figure":312.5,"unit":"mm","kind":"length","text":"312.5 mm"}.
func (q Quantity) MarshalJSON() ([]byte, error) {
	return fmt.Appendf(nil, `{"figure":%s,"unit":%q,"kind":%q,"text":%q}`,
		plainDecimal(q), q.Kind.Symbol(), q.Kind.Name(), q.String()), nil
}

// plainDecimal is the exact figure as a JSON number.
func plainDecimal(q Quantity) string {
	switch {
	case q.Kind == MemoryByte:
		return strconv.FormatFloat(float64(q.N)/1024, 'f', -1, 64)
	case q.Kind == Minor:
		return fmt.Sprint(q.N)
	case kinds[q.Kind].perThousand:
		return exact(q.N)
	}
	return fmt.Sprint(q.N)
}

// exact prints thousandths as a plain decimal: 312500 → 312.5.
func exact(n int64) string {
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	s := fmt.Sprintf("%s%d.%03d", sign, n/1000, n%1000)
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}
