// Package sheet makes the papers of a job. A paper is a value made of blocks; Text prints it for a terminal and HTML for
// a printer, from the same words and figures. Paper is A4; the date is the caller's, for core has no clock.
package sheet

// Paper is one printed sheet.
type Paper struct {
	Title    string // what the paper is: Quote
	Job      string // the job's title
	For      string // the customer, empty where not said
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
	Drawing string   // an SVG drawing; plain text leaves it out and says so
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
