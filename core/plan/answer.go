package plan

import (
	"math/big"

	"slipfit/core/build"
	"slipfit/core/rule"
	"slipfit/core/unit"
)

// Status is what an answer has proven.
type Status uint8

// Statuses.
const (
	Unknown    Status = iota // ended before a build was found; there may be one
	Infeasible               // proven: no build stands
	Feasible                 // a build that stands; the gap says how much better another may be
	Optimal                  // a build that stands, proven the best
)

var statusNames = [...]string{"unknown", "infeasible", "feasible", "optimal"}

// String is the status's word.
func (s Status) String() string { return statusNames[s] }

// Answer is the planner's answer to one question.
type Answer struct {
	Status      Status
	Build       *build.Build // nil where none was found
	Price       unit.Money   // of the build, before tax
	Worth       int64        // value points the build serves
	Certificate Certificate
	Cuts        []Cut // where the status is infeasible: what the rules took away, heaviest first

	found *leaf // what the build is made of
}

// Certificate is what stands behind an answer.
type Certificate struct {
	Combinations *big.Int // ways of filling the seats that the answer speaks for
	Nodes        int64    // partial builds looked at
	Checks       int64    // times a rule was asked
	Root         Bound    // before anything was decided
	Final        Bound    // when the search ended: nothing is better than this
	Gap          Bound    // how much better than the build another might still be; nought where proven
}

// Bound is a bound in the terms of the question asked.
type Bound struct {
	Price unit.Money // for the least price: no build costs less
	Worth int64      // for the greatest value: no build within the budget serves more

	Volume unit.Millilitre // for the smallest: no build stands in a smaller case
	Noise  unit.Sound      // for the quietest: no build is heard at less, in whole tenths of a dB(A)
}

// Cut is what one rule, or the pairing of two seats, took away before any search.
type Cut struct {
	Rule    *rule.Rule // nil where options of the first seat fell because nothing in the second stands with them
	Seats   build.Set
	Options int  // options or pairs taken away; 0 where the rule fails on what is settled
	Empties bool // whether it left a seat without any option
}

// certify notes what an answer speaks for and what it took to come to.
func (p *Problem) certify(c *Certificate) {
	c.Combinations, c.Nodes, c.Checks = p.combinations(), p.watch.course.Nodes, p.index.checks-p.asked
}

// combinations is how many ways the open seats can be filled before any rule looks.
func (p *Problem) combinations() *big.Int {
	n := big.NewInt(1)
	for _, c := range p.cols {
		n.Mul(n, big.NewInt(int64(c.offered)))
	}
	return n
}

// leaf is a choice of an option for every column, with what it costs and serves.
type leaf struct {
	pick  []int
	price int64
	worth int64
}

// leaf reads the choice a search stands on.
func (s *search) leaf() leaf {
	l := leaf{pick: append([]int(nil), s.pick...), price: s.p.fixed, worth: s.p.settled}
	for c, o := range s.pick {
		l.price += s.p.cols[c].price[o]
		l.worth += s.p.cols[c].worth[o]
	}
	for _, f := range s.p.many {
		l.worth += f.ask(s.p, s.choice(f))
	}
	return l
}

// build makes the build of a choice.
func (p *Problem) build(l *leaf) *build.Build {
	b := p.base
	for c, o := range l.pick {
		b.Set(p.cols[c].options[o])
	}
	return &b
}
