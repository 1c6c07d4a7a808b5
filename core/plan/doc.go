// Package plan is the exact planner: it finds builds in a stock by the rules themselves and says what it has proven.
//
// A Problem is a stock under an Ask: every seat becomes a column of options, the rules that read one column filter it,
// those that read two become tables of allowed pairs, those that read more are checked as soon as their last column is
// decided. No rule is written down a second time: every table and bound comes from calling rule.Rule.Check, or from the
// terms of a rule declared as a sum. Search is depth first with an admissible bound, so an answer is the best there is,
// or says how far from it it may be.
package plan

//go:generate go test -run TestFields -update
