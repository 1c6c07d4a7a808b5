// Package heap says how every program of the project collects its memory: late, for what an answer leaves behind is small, and to collect
// it while somebody waits takes longer than to find the answer.
package heap

import "runtime/debug"

const (
	growth = 400       // percent of what is held by which the heap grows before it is collected
	most   = 192 << 20 // bytes taken from which on it is collected sooner
)

// Settle lets the heap of the program grow by as much, before its work begins.
func Settle() {
	debug.SetGCPercent(growth)
	debug.SetMemoryLimit(most)
}
