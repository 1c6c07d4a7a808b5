// Package unit holds the typed quantities of slipfit. A quantity that decides a verdict is an integer in a stated base,
// so that the command line, the page and the planner agree to the bit. Every type that a data sheet can state counts
// thousandths of the unit its JSON field names (length_mm is read into µm), or is a plain count.
package unit

import (
	"fmt"
	"strings"
)

// Length is in µm. Negative only as a difference.
type Length int64

// Millimetre is one millimetre.
const Millimetre Length = 1000

// Power is in mW.
type Power int64

// Common powers.
const (
	Milliwatt Power = 1
	Watts     Power = 1000
)

// Current is in mA.
type Current int64

// Mass is in g.
type Mass int64

// Money is in minor units of the catalog's currency (cents, pence).
type Money int64

// String prints major units with two decimals: "1234.50".
func (m Money) String() string {
	sign := ""
	if m < 0 {
		sign, m = "−", -m
	}
	return sign + group(int64(m/100)) + fmt.Sprintf(".%02d", m%100)
}

// Memory is in MiB.
type Memory int64

// GiB is one binary gigabyte of memory.
const GiB Memory = 1024

// Storage is in MB, 10^6 bytes, as drives are sold.
type Storage int64

// Gigabyte and Terabyte of storage, decimal.
const (
	Gigabyte Storage = 1000
	Terabyte Storage = 1_000_000
)

// Throughput is in MB/s, 10^6 bytes a second.
type Throughput int64

// LinkRate is in Mbit/s.
type LinkRate int64

// TransferRate is in MT/s, millions of transfers a second.
type TransferRate int64

// Temperature is in thousandths of a degree Celsius.
type Temperature int64

// Sound is in thousandths of a dB(A).
type Sound int64

// Flow is in thousandths of a cubic metre an hour.
type Flow int64

// Pressure is in mPa.
type Pressure int64

// Resistance is thermal, in thousandths of a kelvin a watt.
type Resistance int64

// Duration is in minutes.
type Duration int64

// Share is in thousandths of a per cent.
type Share int64

// Millilitre is a volume.
type Millilitre int64

// Whole is a plain count.
type Whole int64

// Points is work in the catalog's calibration units (work points).
type Points int64

// Energy is in Wh.
type Energy int64

// Endurance is in TB written (TBW), 10^12 bytes.
type Endurance int64

// Speed is in turns a minute.
type Speed int64

// Q gives the figure as a margin's quantity.
func (v Length) Q() Quantity       { return Quantity{int64(v), Metre} }
func (v Power) Q() Quantity        { return Quantity{int64(v), Watt} }
func (v Current) Q() Quantity      { return Quantity{int64(v), Ampere} }
func (v Mass) Q() Quantity         { return Quantity{int64(v), Gram} }
func (m Money) Q() Quantity        { return Quantity{int64(m), Minor} }
func (v Memory) Q() Quantity       { return Quantity{int64(v), MemoryByte} }
func (v Storage) Q() Quantity      { return Quantity{int64(v), StorageByte} }
func (v Throughput) Q() Quantity   { return Quantity{int64(v), ByteRate} }
func (v LinkRate) Q() Quantity     { return Quantity{int64(v), BitRate} }
func (v TransferRate) Q() Quantity { return Quantity{int64(v), Transfer} }
func (v Temperature) Q() Quantity  { return Quantity{int64(v), Celsius} }
func (v Sound) Q() Quantity        { return Quantity{int64(v), Decibel} }
func (v Flow) Q() Quantity         { return Quantity{int64(v), Airflow} }
func (v Duration) Q() Quantity     { return Quantity{int64(v), Minute} }
func (v Share) Q() Quantity        { return Quantity{int64(v), Percent} }
func (v Millilitre) Q() Quantity   { return Quantity{int64(v), Volume} }
func (v Points) Q() Quantity       { return Quantity{int64(v), Work} }
func (v Whole) Q() Quantity        { return Quantity{int64(v), Number} }

// Count is n things.
func Count(n int) Quantity { return Quantity{int64(n), Number} }

// Met is a yes or a no.
func Met(ok bool) Quantity {
	if ok {
		return Quantity{1, Yes}
	}
	return Quantity{0, Yes}
}

// Release is a firmware, bus or standard version: major × 1000 + minor, so that 1.10 is later than 1.9.
type Release int64

// Q gives the release as a margin's quantity.
func (r Release) Q() Quantity { return Quantity{int64(r), Version} }

// String prints "2.14".
func (r Release) String() string { return fmt.Sprintf("%d.%d", r/1000, r%1000) }

// ParseRelease reads "2" or "2.14"; the minor part is a number, not a decimal, below 1000.
func ParseRelease(s string) (Release, error) {
	major, minor, _ := strings.Cut(s, ".")
	a, okA := digits(major)
	b, okB := digits(minor)
	if minor == "" {
		b, okB = 0, !strings.Contains(s, ".")
	}
	if !okA || !okB {
		return 0, fmt.Errorf("%q is not a version such as 2.14", s)
	}
	return Release(a*1000 + b), nil
}

func digits(s string) (n int64, ok bool) {
	if s == "" || len(s) > 3 {
		return 0, false
	}
	for _, c := range s {
		if c < '0' || c > '9' {
			return 0, false
		}
		n = n*10 + int64(c-'0')
	}
	return n, true
}
