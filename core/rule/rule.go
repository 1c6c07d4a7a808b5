// Package rule holds what a careful builder checks before the first screw. A rule is a value: data and a function that
// returns margins. One file a rule; All lists them in the order they are documented.
package rule

import (
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/predict"
	"slipfit/core/unit"
)

// Group is what a rule is about.
type Group uint8

// The groups, in the order of the schedule.
const (
	Fit   Group = iota // does it go in
	Mate               // does it connect
	Feed               // is it powered
	Cool               // is it cooled and quiet
	Serve              // is it enough, is it too much
	Money              // what it costs
	Care               // what to tell the customer
)

var groupNames = [...]string{"fit", "mate", "feed", "cool", "serve", "money", "care"}

// String is the group's word.
func (g Group) String() string { return groupNames[g] }

// Rule is one rule: its name, what it says to a person, what it looks at, and its check.
type Rule struct {
	ID     string // never used again for another rule
	Group  Group
	Title  string // no full stop, at most 60 characters
	Doc    string // what, formula with units, what is assumed, what to do when it is short; a line that goes on begins with a tab
	Source string // standard, section and table; or "common practice"
	// Reads is what the rule looks at. The planner checks a rule as soon as these seats are decided, and makes a table of
	// allowed pairs of a rule that reads two; so Check must not look at any other seat.
	Reads []build.Seat
	// Early lists what can be said against a build before all its seats are filled. Tests hold the rule to it; the planner
	// asks early what it can.
	Early []Early
	// First lists seats of which the first one filled decides: while it is, what the later ones hold is of no matter.
	First []build.Seat
	// Filled lists seats of which the rule sees no more than whether they are filled.
	Filled []build.Seat
	// Steps lists figures of which the rule's verdict sees no more than which of some values they reach. Tests hold the rule to
	// them; the planner takes parts to be alike by them.
	Steps []Steps
	// Harder lists figures and counts, by type and field, of which this holds: a build that fails by the rule fails by it too where such a
	// figure is the higher and all else is the same. Of those that Easier lists it holds where they are the lower. Of a figure that a sheet
	// lacks they say nothing. They hold of every Early too. Tests hold the rule to them; the planner turns away by one part all that are harder.
	Harder, Easier []string
	// Check returns the rule's margins for a build, none where it does not apply (a seat it needs is empty). It reads
	// nothing but v, and always gives the same margins for the same v. The slice is valid until the next check on v.
	Check func(v *View) []Margin
	// Holds is a quick way to tell that Check, of a build with every compulsory seat filled, finds margins that all pass; where it
	// reports false, Check decides. Nil always asks Check. Tests hold the rule to it.
	Holds func(v *View) bool
	// Sum is set on a rule that is a sum over seats; its Check is made from the same terms.
	Sum *Sum
	// Purse is how much everything bought may cost together under some needs, before tax; false where that is not limited. Check finds no
	// more than whether it costs more. Nil is of a rule that finds anything else. Tests hold the rule to it.
	Purse func(n *brief.Needs) (most unit.Money, limited bool)
	// Bounds are sums over seats that are not negative on any build that stands and has those seats filled which the rule
	// needs. Tests hold the rule to them; the planner leaves out early by them what Check would fail.
	Bounds []Sum
	// Suffices are sums over seats under some needs: a build stands by the rule of which all their terms are known and none of them is
	// negative. Tests hold the rule to them; the planner asks Check where they leave it open. Nil says nothing.
	Suffices func(n *brief.Needs) []Sum
}

// Early is a few seats that can decide against a build, however the others are filled.
type Early struct {
	Seats []build.Seat
	// Fails reports seats that no build which stands holds together; it reads those seats and the needs alone. Nil asks
	// the rule's Check of a build that holds these seats and no others.
	Fails func(v *View) bool
	// Layouts tells of which layouts of cases Fails may say something. Nil is of all.
	Layouts func(l *part.Layout) bool
	// Warms lists seats whose parts only warm the air of a build and are not counted by Fails as they are. What they bring at
	// least, whatever fills them, it may count: v tells it.
	Warms []build.Seat
	// Bears is how much heat may come besides, W by activity asked: with that much or more no build which stands holds these seats. +Inf
	// is no limit. Nil says nothing.
	Bears func(v *View) []float64
	// AnySupply says that Fails may be asked with no supply too: what it then reports no build which stands holds together with any of
	// the supplies that v tells. So may Bears. Where the supply is not among the seats it is never asked with one.
	AnySupply bool
	// AnyFans says that Fails, asked with no fans bought for the case, speaks of builds with any of the fans that v tells, of one article on one
	// face, and with none.
	AnyFans bool
	// Places lists seats of which Fails sees no more than Placed tells: what takes which place, from nought to MostPlaced. That sees no more of
	// any part but the board than the rule DriveSlots does.
	Places []build.Seat
	Placed func(v *View) int64
	// Kinds lists seats of which Fails sees no more than the kind of part: predict.CoolerKind.
	Kinds []build.Seat
	// Warmer lists seats of which this holds: where Fails reports some part there, no build stands either that holds in its place
	// one which brings no less heat into the case and has no quieter disks. By how much more those may bring, v tells with Warms.
	Warmer []build.Seat
	// Din, of an early one that reads a cooler and a supply and no board, tells part by part how loud builds that hold its seats are. Nil says
	// nothing.
	Din *Din
	// Leans is a rule by which a build may fail instead of by this one; nil for none. Where that is not asked, this is not.
	Leans *Rule
}

// Din tells how loud a build in one chamber under an air cooler is as a sum of sound powers, pW: of its core, as any of what Core gives says,
// of the cooler in that air, and of disks. One that comes to more than is allowed in some activity does not stand, whatever else it holds.
// Each is asked of a build that holds the seats it is about, and of activities by their places.
type Din struct {
	Loads   func(v *View) []int // activities worth asking about; none where nothing is asked for
	Allowed func(v *View) float64
	Core    func(v *View, load int, besides predict.Besides) []predict.Heard      // case, processor, card and supply; nil where nothing is said
	Feeds   func(v *View, load int, besides predict.Besides) *predict.Choir       // the same with each of the supplies besides
	Cooler  func(v *View, load int, inlet predict.Inlet) (pw float64, known bool) // processor and cooler; of one not known nothing is said
}

// MostPlaced is the largest figure that Placed tells.
const MostPlaced = int(predict.Unsaid)

// Steps is a figure of parts and the values from which on it is another to a rule.
type Steps struct {
	Field string // type and field: "Drive.Read"
	From  func(n *brief.Needs) []int64
}

// Sum is what each seat's part gives less what it takes: the rule declared as one holds while the sum is not negative.
type Sum struct {
	Kind unit.Kind
	// Term returns what the part in one seat of v's build gives and takes, reading that seat alone; nought where it is
	// empty, but for a bound that says nothing of builds with that seat empty: there it gives more than all others can take. A figure
	// it misses is noted in v.
	Term func(v *View, s build.Seat) (gives, takes int64)
}

// Verdict is what a margin comes to.
type Verdict uint8

// Verdicts, from best to worst.
const (
	Snug    Verdict = iota // right
	Loose                  // past enough: money that buys nothing
	Short                  // under the need
	Unknown                // a figure is missing; never a pass
	Clash                  // cannot go together
)

var verdictNames = [...]string{"snug", "loose", "short", "unknown", "clash"}

// String is the verdict's word.
func (v Verdict) String() string { return verdictNames[v] }

// Passes reports a verdict that lets a build stand.
func (v Verdict) Passes() bool { return v == Snug || v == Loose }

// Margin is what one rule finds: have, need, have − need, and one sentence why.
type Margin struct {
	Rule    *Rule
	Subject string // what the margin is about, where a rule gives several: "module in m2a", "24-pin socket"
	Have    unit.Quantity
	Need    unit.Quantity
	Enough  unit.Quantity // past this more buys nothing; only where Capped
	Capped  bool
	Verdict Verdict
	Advice  bool     // the margin only advises; a negative one does not fail the build
	Worth   int64    // value points: how much of the way from floor to enough is served, times the need's weight
	Missing []string // figures the data sheets lack, "part: field"; only where Unknown
	why     func() string
	band    func() Band
}

// Band is what a prediction may miss by: its figure is as likely as not near the expected one, and between the low and the
// high one in about 19 machines of 20 (two standard uncertainties of the inputs either way). The verdict goes by the
// expected figure, rounded on the safe side.
type Band struct {
	Low, Expected, High unit.Quantity
	OfNeed              bool // the need is what is predicted, such as a temperature against its limit; otherwise the have
}

// Band gives the band of a margin that rests on a prediction; predicted is false for the others. It is worked out when it is
// asked for.
func (m *Margin) Band() (b Band, predicted bool) {
	if m.band == nil {
		return Band{}, false
	}
	return m.band(), true
}

// Diff is have − need.
func (m *Margin) Diff() unit.Quantity { return m.Have.Sub(m.Need) }

// Why is the sentence that tells a person what was found.
func (m *Margin) Why() string {
	if m.why == nil {
		return ""
	}
	return m.why()
}

// Passes reports a margin that lets a build stand.
func (m *Margin) Passes() bool { return m.Verdict.Passes() }

// View is what a rule may see: a build and what is asked of it. It also carries the scratch space of one check, so one
// View serves one goroutine.
type View struct {
	*build.Build
	Needs    *brief.Needs
	rule     *Rule
	margins  []Margin
	missing  []string
	unsolved error              // why the prediction that the next margin rests on is no answer
	predict  *predict.Predictor // made when a rule asks for a forecast
	besides  predict.Besides    // what warms a build besides its parts, in an early question
}

// NewView returns a view of a build under needs; nil needs ask nothing.
func NewView(b *build.Build, n *brief.Needs) *View {
	if n == nil {
		n = &brief.Needs{}
	}
	return &View{Build: b, Needs: n, margins: make([]Margin, 0, 16)}
}

// Run checks one rule. The margins are valid until the next Run on this view.
func (v *View) Run(r *Rule) []Margin {
	v.rule, v.margins, v.missing = r, v.margins[:0], v.missing[:0]
	return r.Check(v)
}

// Term returns what the part in one seat gives and takes in a sum of a rule; known is false where a data sheet lacks a figure
// the term reads.
func (v *View) Term(r *Rule, sum *Sum, s build.Seat) (gives, takes int64, known bool) {
	v.rule, v.margins, v.missing = r, v.margins[:0], v.missing[:0]
	gives, takes = sum.Term(v, s)
	return gives, takes, len(v.missing) == 0
}

// FailsEarly reports that a few seats of a build decide against it, the others being empty. Besides is what those that warm it
// bring at least.
func (v *View) FailsEarly(r *Rule, e Early, besides predict.Besides) bool {
	v.besides = besides
	defer func() { v.besides = predict.Besides{} }()
	if e.Fails != nil {
		v.rule, v.margins, v.missing = r, v.margins[:0], v.missing[:0]
		return e.Fails(v)
	}
	for _, m := range v.Run(r) {
		if !m.Advice && !m.Passes() {
			return true
		}
	}
	return false
}

// BearsEarly is what Bears says of a few seats of a build, the others being empty.
func (v *View) BearsEarly(e Early, besides predict.Besides) []float64 {
	v.besides = besides
	defer func() { v.besides = predict.Besides{} }()
	return e.Bears(v)
}

// Holds reports a build that a rule lets stand, as far as the rule has a quick way to tell. Besides is the most that may warm builds like
// it.
func (v *View) Holds(r *Rule, besides predict.Besides) bool {
	if r.Holds == nil {
		return false
	}
	v.besides = besides
	defer func() { v.besides = predict.Besides{} }()
	return r.Holds(v)
}
