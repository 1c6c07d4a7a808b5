package verb

import (
	"context"
	"fmt"
	"strings"

	"slipfit/core/plan"
)

// Exchanges are the forms in which a problem can be written for other solvers: linear programs and pseudo-boolean problems.
func Exchanges() []string { return []string{"lp", "opb"} }

// Exchange writes the planner's problem for a brief down for solvers that know nothing of parts, so that anyone can check an
// optimum: the least price, or for best the greatest value within the budget. The text says what its variables stand for and
// which rules it leaves out. The error is the context's where that ends before all is written.
func (w *Bench) Exchange(ctx context.Context, file Document, ask PlanAsk, form string, progress Progress) ([]byte, error) {
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
	progress.tell(0, "laying out the stock")
	problem, err := w.pose(asked)
	if err != nil {
		return nil, err
	}
	problem.Told = progress.counting("writing the rules down", "")
	m, err := problem.Model(ctx, sought.Worth)
	if err != nil {
		return nil, fmt.Errorf("the problem is not written: %w", err)
	}
	switch form {
	case "lp":
		return m.LP(sought), nil
	case "opb":
		return m.OPB(sought), nil
	}
	return nil, fmt.Errorf("no form %q; want %s", form, strings.Join(Exchanges(), " or "))
}
