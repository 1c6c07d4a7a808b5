package web

import "encoding/json"

// The answers of the core, as far as the page shows them. Every word and figure in them is the core's.

// Quantity is a figure as the core prints it.
type Quantity struct {
	Figure float64 `json:"figure"`
	Unit   string  `json:"unit"`
	Kind   string  `json:"kind"`
	Text   string  `json:"text"`
}

// mark places a quantity on a ruler. Money is counted in minor units and lettered in major ones.
func (q Quantity) mark() Mark {
	at := q.Figure
	if q.Kind == "money" {
		at /= 100
	}
	return Mark{At: at, Text: q.Text, Known: q.Text != ""}
}

// measured reports a quantity that a ruler can show: not a yes and not a version.
func (q Quantity) measured() bool { return q.Kind != "yes" && q.Kind != "version" && q.Kind != "" }

// Margin is what one rule found.
type Margin struct {
	Rule    string
	Group   string
	Title   string
	Subject string
	Have    Quantity
	Need    Quantity
	Diff    Quantity
	Enough  *Quantity
	Verdict string
	Advice  bool
	Missing []string
	Band    *Band // of a prediction
	Why     string
}

// Band is what a meter may show of a predicted figure.
type Band struct {
	Low, High Quantity
	OfNeed    bool `json:"of_need"` // the need is predicted, not what the build has
}

// fails reports a margin that keeps the build from standing.
func (m *Margin) fails() bool {
	return !m.Advice && m.Verdict != "snug" && m.Verdict != "loose"
}

// key tells the margins of a proof apart.
func (m *Margin) key() string { return m.Rule + " " + m.Subject }

// name is the margin's title with what it is about.
func (m *Margin) name() string {
	if m.Subject == "" {
		return m.Title
	}
	return m.Title + ": " + m.Subject
}

// Line is one article of a build.
type Line struct {
	Seat      string
	SeatTitle string `json:"seat_title"`
	Part      string
	Name      string
	Count     int
	Price     Quantity
	Owned     bool
}

// Sum is what the customer pays, against what they can spend.
type Sum struct {
	Net    Quantity
	Rate   Quantity `json:"tax_rate"`
	Tax    Quantity
	Gross  Quantity
	Budget *Quantity
	Left   *Quantity
}

// Proof is every margin of a build, with its parts and its price.
type Proof struct {
	Title    string
	Stands   bool
	Counts   map[string]int
	Currency string
	Price    Quantity
	Sum      Sum
	Layout   string
	Parts    []Line
	Margins  []Margin
	Idle     *Idle
	Build    json.RawMessage
}

// Certificate is what stands behind a plan.
type Certificate struct {
	Combinations string
	Nodes        int64
	GapPrice     Quantity  `json:"gap_price"`
	GapWorth     int64     `json:"gap_worth"`
	GapVolume    *Quantity `json:"gap_volume"`
	GapNoise     *Quantity `json:"gap_noise"`
}

// Plan is the planner's answer.
type Plan struct {
	Title       string
	For         string
	Status      string
	Certificate Certificate
	Reached     *Quantity // the case's volume or the level at the chair, where that was sought
	Proof       *Proof
}

// Balloon is the number a part carries in the drawing.
type Balloon struct {
	Number int
	Seat   string
	Part   string
}

// Drawing is the build in two views.
type Drawing struct {
	SVG      string
	Balloons []Balloon
	Undrawn  []string
}

// number is the balloon of a line of the build, 0 where the drawing does not show it.
func (d *Drawing) number(l Line) int {
	if d != nil {
		for _, b := range d.Balloons {
			if b.Seat == l.Seat && b.Part == l.Part {
				return b.Number
			}
		}
	}
	return 0
}

// Trial is what else could sit in a seat, or how else its part could be fitted.
type Trial struct {
	Seat      string
	SeatTitle string `json:"seat_title"`
	Now       string
	Parts     []Tried
}

// Tried is one part, or one way of fitting it, on trial.
type Tried struct {
	Part       string
	Name       string
	Count      int
	Face       string
	Layout     string
	LayoutName string `json:"layout_name"`
	Plate      int
	Sits       bool // of the ways to fit a part: the one it is fitted
	Price      Quantity
	Change     Quantity
	Stands     bool
	Fails      string
	Why        string
}

// Need is what a brief asks of one resource.
type Need struct {
	Resource string
	Title    string
	Floor    Quantity
	Enough   Quantity
	Reason   string
	Source   string
	From     string
}

// Codec is a video format that the work asks for in hardware.
type Codec struct{ Codec, Use, Reason string }

// Needs is everything a brief asks of a machine.
type Needs struct {
	Needs   []Need
	Codecs  []Codec
	Assumed []string
}

// Rule is a rule as a person reads it.
type Rule struct{ ID, Group, Title, Doc, Source string }

// Question is one question of the conversation.
type Question struct {
	Field   string
	Asks    string
	Choices []string
	YesNo   bool `json:"yes_no"`
	Usual   string
	High    string
}

// Topic is a kind of work with its questions.
type Topic struct {
	Field     string
	Name      string
	Opens     string
	Questions []Question
}

// Questions is the whole conversation.
type Questions struct {
	Currency     string
	Topics       []Topic
	Surroundings []Question
}

// Shelf is the stock by seat.
type Shelf struct {
	Makers []string
	Seats  []ShelfSeat
}

// ShelfSeat is the parts of one seat.
type ShelfSeat struct {
	Seat      string
	SeatTitle string `json:"seat_title"`
	Parts     []struct{ Part, Name string }
}

// Example is an example brief.
type Example struct {
	Name, Title, Who string
	File             json.RawMessage
}

// Fault is one thing wrong in a file: where, what stands there, and what was expected.
type Fault struct{ File, Path, Value, Want string }
