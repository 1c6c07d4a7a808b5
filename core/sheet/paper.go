// Package sheet makes the papers of a job. A paper is a value made of blocks; Text prints it for a terminal and HTML for
// a printer, from the same words and figures. Paper is A4; the date is the caller's, for core has no clock.
package sheet

// Paper is one printed sheet.
type Paper struct {
	Title    string // what the paper is: Quote
	Job      string // the job's title
	Number   string // job number, empty to be filled in by hand
	Revision string
	Date     string
	Shop     string
	Blocks   []Block
}

// Block is one piece of a paper; exactly one of its parts is set.
type Block struct {
	Heading string
	Text    string   // a paragraph
	Table   *Table   // rows
	Notes   []string // a list, one line each
	Sign    []string // lines to sign on, each with its label
}

// Table is rows under headings.
type Table struct {
	Columns []Column
	Rows    []Row
}

// Column is a heading with how its cells stand.
type Column struct {
	Name  string
	Right bool // figures, aligned right
}

// Row is cells; a strong row is a total.
type Row struct {
	Cells  []string
	Strong bool
}

// Cautions that a paper carries where the work can hurt someone. They are the usual ones of the trade; local codes and
// licensed practice come first.
const (
	cautionMains  = "Mains: pull the plug and press the power button for some seconds before opening the case. Never open the power supply. For sockets, circuits and fixed wiring follow local codes and ask a licensed electrician."
	cautionStatic = "Static: touch bare metal of the case, or wear an earthed wrist strap, before touching parts."
	cautionEdges  = "Edges: sheet metal cuts; wear gloves when reaching into the case."
	cautionCell   = "Coin cell inside. Keep away from children. If swallowed, seek emergency help at once."
	cautionLiquid = "Liquid: a closed cooling loop is under the lid. If it ever leaks, pull the plug first and call the shop; do not refill it."
	cautionWaste  = "Waste: boards, supplies and cells go to separate collection, not household waste; local law says how."
)
