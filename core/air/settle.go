package air

import "math"

// settle finds the readings that cause themselves, by Newton's method with slopes from differences; as long as steps bring
// the gaps down by much, the slopes are only amended by what the last one came to. Where a full step
// does not help, the step is shortened as if by time: (J + µI)·d = −gap is one implicit step of length 1/µ of a machine
// whose readings drift towards what they cause, which is what a real one does. Where no such step brings the gaps down
// (the corner of a control curve can trap them), the machine is left to drift for a while, each time longer, in long
// steps and in short ones by turns.
func (s *Solver) settle() error {
	n := len(s.active)
	s.gap, s.trialGap = cleared(s.gap, n), cleared(s.trialGap, n)
	s.trial, s.step = cleared(s.trial, n), cleared(s.step, n)
	s.jac, s.lhs = cleared(s.jac, n*n), cleared(s.lhs, n*n)

	norm, err := s.try(s.x, s.gap)
	if err != nil {
		return err
	}
	driftMu := [...]float64{1, 4, 16, 64} // inverse lengths of the steps of a drift, by turns
	drift, spells, mu := 0, 0, 0.0
	known := false // whether the slopes are those of the last step, amended by it
	for range mostStep {
		if norm <= restK {
			return nil
		}
		s.iterations++
		if known {
			next, err := s.move(0)
			if err != nil {
				return err
			}
			if known = next < nearing*norm; known {
				s.amend()
				s.accept()
				norm = next
				continue
			}
		}
		if err := s.slopes(); err != nil {
			return err
		}
		if drift == 0 {
			next, err := s.advance(norm)
			if err != nil {
				return err
			}
			if next < norm {
				known = next < nearing*norm
				norm = next
				continue
			}
			drift, mu = 4+2*spells, driftMu[spells%len(driftMu)]
			spells++
		}
		drift--
		if norm, err = s.move(mu); err != nil {
			return err
		}
		s.accept()
	}
	if norm, err = s.try(s.x, s.gap); err != nil {
		return err
	}
	if norm <= restK {
		return nil
	}
	return &ConvergenceError{ResidualK: s.residual(), Iterations: s.iterations}
}

// nearing is by how much a step must bring the gaps down for the next one to do with slopes that are amended by it.
const nearing = 0.25

// amend brings the slopes in line with what the last step came to (Broyden, Mathematics of Computation 19, 1965): along it they are as
// it found them, across it as they were.
func (s *Solver) amend() {
	n := len(s.active)
	length := 0.0
	for j := range n {
		length += float64(s.step[j] * s.step[j])
	}
	for i := range n {
		off := s.trialGap[i] - s.gap[i]
		for j := range n {
			off -= float64(s.jac[i*n+j] * s.step[j])
		}
		off /= length
		for j := range n {
			s.jac[i*n+j] += float64(off * s.step[j])
		}
	}
}

// slopes fills the Jacobian of the gaps by differences, each reading moved the way its gap pushes it.
func (s *Solver) slopes() error {
	n := len(s.active)
	copy(s.trial, s.x)
	for j := range n {
		d := math.Copysign(1e-5, -s.gap[j])
		s.trial[j] = s.x[j] + d
		if _, err := s.try(s.trial, s.trialGap); err != nil {
			return err
		}
		d = s.trial[j] - s.x[j]
		for i := range n {
			s.jac[i*n+j] = (s.trialGap[i] - s.gap[i]) / d
		}
		s.trial[j] = s.x[j]
	}
	return nil
}

// advance takes the first step that brings the gaps down, from the full one to ever shorter ones, and returns their
// size; or takes none and returns norm.
func (s *Solver) advance(norm float64) (float64, error) {
	for _, mu := range [...]float64{0, 0.3, 1, 3, 10, 100} {
		next, err := s.move(mu)
		if err != nil {
			return 0, err
		}
		if next < 0.999*norm {
			s.amend()
			s.accept()
			return next, nil
		}
	}
	return norm, nil
}

// move tries the step with µ from the present readings; +Inf where there is none.
func (s *Solver) move(mu float64) (float64, error) {
	n := len(s.active)
	copy(s.lhs, s.jac)
	for i := range n {
		s.lhs[i*n+i] += mu
		s.step[i] = -s.gap[i]
	}
	if !solveDense(s.lhs, s.step, n) {
		copy(s.trial, s.x)
		copy(s.trialGap, s.gap)
		return math.Inf(1), nil
	}
	for i := range n {
		s.trial[i] = s.x[i] + s.step[i]
	}
	return s.try(s.trial, s.trialGap)
}

func (s *Solver) accept() {
	copy(s.x, s.trial)
	copy(s.gap, s.trialGap)
}
