// Package predict says what a build will do before it exists: watts at the parts and at the wall, temperatures, fan
// speeds, flows and the level at the chair, for one activity in one room. It turns a build into one machine of package
// air, lets that come to rest, and reads the outcome through packages feed and sound.
//
// What a data sheet does not state is either missing, and then named, or a matter of common practice, and then stands in
// assume.go with its reason. Every prediction is a Band: what is expected, and what it may miss by either way.
package predict

import "slipfit/core/air"

// Band is a prediction with what it may miss by: two standard uncertainties either way.
type Band = air.Band

// only is a band that has not been spread yet.
func only(x float64) Band { return Band{Low: x, Expected: x, High: x} }
