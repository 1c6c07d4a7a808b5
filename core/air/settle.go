package air

import "math"

// settle finds the readings that cause themselves, by Newton's method with slopes from differences. Where a full step
// does not help the step is shortened as if by time: (J + µI)·d = −gap is one implicit step of length 1/µ of a machine
// whose readings drift towards what they cause, which is what a real one does.
func (s *Solver) settle() error {
	n := len(s.active)
	s.gap, s.trialGap = cleared(s.gap, n), cleared(s.trialGap, n)
	s.trial, s.step = cleared(s.trial, n), cleared(s.step, n)
	s.jac, s.lhs = cleared(s.jac, n*n), cleared(s.lhs, n*n)

	norm, err := s.try(s.x, s.gap)
	if err != nil {
		return err
	}
	mu := 0.0
	for range mostStep {
		if norm <= restK {
			return nil
		}
		if err := s.slopes(); err != nil {
			return err
		}
		next, err := s.advance(norm, &mu)
		if err != nil {
			return err
		}
		norm = next
		s.iterations++
	}
	if norm, err = s.try(s.x, s.gap); err != nil {
		return err
	}
	if norm <= restK {
		return nil
	}
	return &ConvergenceError{ResidualK: s.residual(), Iterations: s.iterations}
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

// advance takes the first step that brings the gaps down, shortening it as needed; after a dozen vain tries it drifts
// one short step whatever the gaps do.
func (s *Solver) advance(norm float64, mu *float64) (float64, error) {
	n := len(s.active)
	for try := range 12 {
		copy(s.lhs, s.jac)
		for i := range n {
			s.lhs[i*n+i] += *mu
			s.step[i] = -s.gap[i]
		}
		ok := solveDense(s.lhs, s.step, n)
		if ok {
			for i := range n {
				s.trial[i] = s.x[i] + s.step[i]
			}
			next, err := s.try(s.trial, s.trialGap)
			if err != nil {
				return 0, err
			}
			if next < 0.9999*norm || try == 11 {
				copy(s.x, s.trial)
				copy(s.gap, s.trialGap)
				if *mu /= 10; *mu < 0.1 || try == 11 {
					*mu = 0
				}
				return next, nil
			}
		}
		*mu = max(0.3, 3**mu)
	}
	return norm, nil
}
