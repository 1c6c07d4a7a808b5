package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"time"

	"slipfit/catalog"
	"slipfit/core/part"
	"slipfit/core/plan"
)

// solver is a general solver that may be installed, and how it is asked.
type solver struct {
	name   string
	opb    bool // reads OPB, not LP
	args   func(in, out string, seconds int) []string
	proven *regexp.Regexp // of what it says where the optimum is proven: the optimum
}

// yardsticks are the solvers that are tried, each as it comes: no setting but the time it has and that nothing short of the optimum will do.
var yardsticks = [...]solver{
	{
		name: "glpsol",
		args: func(in, out string, seconds int) []string {
			return []string{"--lp", in, "-o", out, "--tmlim", strconv.Itoa(seconds)}
		},
		proven: regexp.MustCompile(`(?s)Status: +INTEGER OPTIMAL\s.*?Objective: .* = ([0-9.e+-]+) \(`),
	},
	{
		name: "cbc",
		args: func(in, out string, seconds int) []string {
			return []string{in, "-sec", strconv.Itoa(seconds), "-ratio", "0", "-allow", "0", "-solve", "-solution", out}
		},
		proven: regexp.MustCompile(`^Optimal - objective value +([0-9.e+-]+)`),
	},
	{
		name: "clasp", opb: true,
		args: func(in, out string, seconds int) []string {
			return []string{"--time-limit=" + strconv.Itoa(seconds), "--outf=1", "--quiet=2,2", in}
		},
		proven: regexp.MustCompile(`Optimum +: yes\s+c Optimization +: +(-?[0-9]+)`),
	},
}

// solved is how the solvers did.
type solved struct {
	missing []string // solvers that are not installed
	columns []int
	samples []yard
	lifted  []string // rules no rows can hold, which neither side was asked, besides those that predict air and sound
}

// yard is one question put to the planner and to a solver.
type yard struct {
	solver, question string
	column           int
	ours, theirs     int64 // nanoseconds
	proven           bool  // both
	equal            bool
}

// questions put to the solvers.
const (
	leastOutside = "least price"
	bestOutside  = "best, then its price"
)

// solvers puts the orders to every solver installed: of the catalog, and of the grown stocks that are small enough.
func (set *setting) solvers(progress io.Writer) (*solved, error) {
	found := &solved{}
	var list []*solver
	for i := range yardsticks {
		if _, err := exec.LookPath(yardsticks[i].name); err != nil {
			found.missing = append(found.missing, yardsticks[i].name)
			continue
		}
		list = append(list, &yardsticks[i])
	}
	if len(list) == 0 {
		return found, nil
	}
	dir, err := os.MkdirTemp("", "slipfit-bench-*")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	generic, err := catalog.Embedded()
	if err != nil {
		return nil, err
	}
	for _, column := range set.sizes {
		if column > set.outside {
			continue
		}
		found.columns = append(found.columns, column)
		stock, err := sized(generic, column, 1)
		if err != nil {
			return nil, err
		}
		orders, err := orders(stock)
		if err != nil {
			return nil, err
		}
		end := time.Now().Add(set.patience)
		for _, o := range orders {
			if time.Now().After(end) {
				break
			}
			fmt.Fprintf(progress, "\rother solvers, %d parts, %-40s", len(stock.Articles()), o.name)
			r := &rival{setting: set, found: found, stock: stock, column: column, dir: dir, solvers: list}
			if err := r.put(o); err != nil {
				return nil, fmt.Errorf("%s: %w", o.name, err)
			}
		}
	}
	fmt.Fprintf(progress, "\r%70s\r", "")
	return found, nil
}

// rival puts one order of one stock to the solvers.
type rival struct {
	*setting
	found   *solved
	stock   *part.Stock
	column  int
	dir     string
	solvers []*solver
}

// put asks the planner and every solver for the least price and for the best. Nothing is put to them that no build meets.
func (r *rival) put(o order) error {
	ask := plan.Ask{Needs: o.needs, Lift: predictions()}
	if least, _, err := r.ours(ask, (*plan.Problem).Least); err != nil || least.Build == nil {
		return err
	}
	p, ask, valued, err := r.exact(ask)
	if err != nil {
		return err
	}
	least, took, err := r.ours(ask, (*plan.Problem).Least)
	if err != nil || least.Build == nil {
		return err
	}
	m, err := p.Model(context.Background(), false)
	if err != nil {
		return err
	}
	for _, s := range r.solvers {
		price, spent, proven, err := r.theirs(s, m, plan.Objective{})
		if err != nil {
			return err
		}
		r.note(s, leastOutside, took, spent, proven && least.Status == plan.Optimal, price == int64(least.Price))
	}
	best, took, err := r.ours(ask, (*plan.Problem).Best)
	if err != nil || best.Build == nil {
		return err
	}
	for _, s := range r.solvers {
		worth, spent, proven, err := r.theirs(s, valued, plan.Objective{Worth: true})
		if err != nil {
			return err
		}
		price := int64(0)
		if proven {
			more := time.Duration(0)
			if price, more, proven, err = r.theirs(s, valued, plan.Objective{AtLeast: worth}); err != nil {
				return err
			}
			spent += more
		}
		r.note(s, bestOutside, took, spent, proven && best.Status == plan.Optimal, worth == best.Worth && price == int64(best.Price))
	}
	return nil
}

func (r *rival) note(s *solver, question string, ours, theirs time.Duration, proven, equal bool) {
	r.found.samples = append(r.found.samples, yard{s.name, question, r.column, int64(ours), int64(theirs), proven, equal})
}

// exact is an ask without the rules that no rows can hold, its problem, and its model with the value of every choice, which leaves
// nothing out.
func (r *rival) exact(ask plan.Ask) (*plan.Problem, plan.Ask, *plan.Model, error) {
	x := plan.NewIndex(r.stock)
	for {
		p, err := x.Problem(ask)
		if err != nil {
			return nil, ask, nil, err
		}
		m, err := p.Model(context.Background(), true)
		if err != nil {
			return nil, ask, nil, err
		}
		left := m.Left()
		if len(left) == 0 {
			return p, ask, m, nil
		}
		for _, l := range left {
			ask.Lift = append(ask.Lift, l.ID)
			if !slices.Contains(r.found.lifted, l.ID) {
				r.found.lifted = append(r.found.lifted, l.ID)
			}
		}
	}
}

// ours is the planner's answer on a new index.
func (r *rival) ours(ask plan.Ask, question func(*plan.Problem, context.Context) plan.Answer) (plan.Answer, time.Duration, error) {
	start := time.Now()
	p, err := plan.NewIndex(r.stock).Problem(ask)
	if err != nil {
		return plan.Answer{}, 0, err
	}
	a := question(p, within(r.deadline))
	return a, time.Since(start), nil
}

// added is how a written model says its optimum is to be read.
var added = regexp.MustCompile(`(?m)^[\\*] (?:(?:Price|Value) = the optimum of this file \+ (-?\d+)|Value = (-?\d+) - the optimum)`)

// theirs is a solver's answer to a model: the price or the value, and whether it is proven within the deadline. Writing the file is
// not counted, the whole process is.
func (r *rival) theirs(s *solver, m *plan.Model, o plan.Objective) (optimum int64, took time.Duration, proven bool, err error) {
	text, name := m.LP(o), "model.lp"
	if s.opb {
		text, name = m.OPB(o), "model.opb"
	}
	in, out := filepath.Join(r.dir, name), filepath.Join(r.dir, "optimum.txt")
	if err := errors.Join(os.WriteFile(in, text, 0o600), os.RemoveAll(out)); err != nil {
		return 0, 0, false, err
	}
	reads := added.FindSubmatch(text)
	if reads == nil {
		return 0, 0, false, errors.New("a written model does not say how its optimum is to be read")
	}
	ctx, cancel := context.WithTimeout(context.Background(), r.deadline+time.Second)
	defer cancel()
	start := time.Now()
	said, failed := exec.CommandContext(ctx, s.name, s.args(in, out, max(1, int(r.deadline/time.Second)))...).Output()
	took = time.Since(start)
	if !s.opb {
		if said, err = os.ReadFile(out); err != nil {
			if ctx.Err() != nil {
				return 0, took, false, nil
			}
			return 0, 0, false, errors.Join(fmt.Errorf("%s wrote no answer", s.name), failed)
		}
	}
	answer := s.proven.FindSubmatch(said)
	if answer == nil {
		return 0, took, false, nil
	}
	v, err := strconv.ParseFloat(string(answer[1]), 64)
	if err != nil {
		return 0, 0, false, fmt.Errorf("%s: %w", s.name, err)
	}
	read := func(i int) int64 {
		n, _ := strconv.ParseInt(string(reads[i]), 10, 64)
		return n
	}
	if len(reads[2]) > 0 {
		return read(2) - int64(math.Round(v)), took, true, nil
	}
	return read(1) + int64(math.Round(v)), took, true, nil
}
