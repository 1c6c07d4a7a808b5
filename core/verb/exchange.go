package verb

import (
	"fmt"
	"strings"

	"slipfit/core/plan"
)

// Exchanges are the forms in which a problem can be written for other solvers: linear programs and pseudo-boolean problems.
func Exchanges() []string { return []string{"lp", "opb"} }

// Exchange writes the planner's problem for a brief down for solvers that know nothing of parts, so that anyone can check an
// optimum: the least price, or for best the greatest value within the budget. The text says what its variables stand for and
// which rules it leaves out.
func (w *Bench) Exchange(file Document, ask PlanAsk, form string) ([]byte, error) {
	_, asked, err := w.asked(file, ask.Keep)
	if err != nil {
		return nil, err
	}
	var sought plan.Objective
	switch ask.For {
	case "least":
	case "best":
		sought.Worth = true
	default:
		return nil, fmt.Errorf("cannot write a problem for %q; want least or best", ask.For)
	}
	problem, err := w.pose(asked)
	if err != nil {
		return nil, err
	}
	m := problem.Model(sought.Worth)
	switch form {
	case "lp":
		return m.LP(sought), nil
	case "opb":
		return m.OPB(sought), nil
	}
	return nil, fmt.Errorf("no form %q; want %s", form, strings.Join(Exchanges(), " or "))
}
