package plan

// corner is what a search looks for: choices that cost no more than a price and are worth no less than so much.
type corner struct {
	price, worth int64   // at most, what is settled left out; at least
	rival        *leaf   // where only choices before it in tie order count
	cost         []int64 // the most that such a choice costs by each bound of the search, its own first
}

// seek holds a search to choices in one of some corners.
func (s *search) seek(corners ...corner) {
	for i := range corners {
		k := &corners[i]
		k.cost = []int64{s.costFor(k.price, k.worth)}
		for _, g := range s.guards {
			k.cost = append(k.cost, g.costFor(k.price, k.worth))
		}
	}
	s.corners = corners
	s.nearest(0, s.root())
}

// nearest sets the limits of all bounds to what choices in the corners may cost where none costs less than so much by the search's
// own bound, nor less than the guards say at depth d; false where there is no such choice.
func (s *search) nearest(d int, least int64) bool {
	s.limit = -never
	for i := range s.guards {
		s.guards[i].limit = -never
	}
	for i := range s.corners {
		if k := &s.corners[i]; s.allows(k, d, least) {
			s.limit = max(s.limit, k.cost[0])
			for j := range s.guards {
				s.guards[j].limit = max(s.guards[j].limit, k.cost[j+1])
			}
		}
	}
	return s.limit >= least
}

// allows reports a corner that neither a bound nor tie order excludes for what is decided at depth d.
func (s *search) allows(k *corner, d int, least int64) bool {
	if least > k.cost[0] {
		return false
	}
	for j := range s.guards {
		if s.guards[j].value[d] > k.cost[j+1] {
			return false
		}
	}
	return k.rival == nil || !s.after(k.rival, d)
}

// after reports that what is decided at depth d comes later in tie order than a choice, whatever is decided after it.
func (s *search) after(l *leaf, d int) bool {
	for _, c := range s.order[:d] {
		if s.pick[c] != l.pick[c] {
			return s.pick[c] > l.pick[c]
		}
	}
	return false
}
