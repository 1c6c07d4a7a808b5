package rule

import (
	"cmp"
	"slices"

	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// headersOf counts the headers of a kind on the board and on the cards. Where the board has too few for the hubs that hang on
// them, what the hubs give does not count.
func headersOf(v *View, kind part.HeaderKind) unit.Whole {
	sum := countHeaders(v, v.Board.Headers, kind, &v.Board.Article, "headers.count")
	if cardLeads(v, kind) > sum {
		return sum
	}
	return sum + cardHeaders(v, kind)
}

// cardHeaders counts the headers of a kind that cards and hubs give.
func cardHeaders(v *View, kind part.HeaderKind) unit.Whole {
	var sum unit.Whole
	for i := range v.Cards {
		c := &v.Cards[i]
		sum += countHeaders(v, c.Card.Gives, kind, &c.Card.Article, "gives_headers.count") * unit.Whole(c.Count)
	}
	return sum
}

// cardLeads counts the headers of a kind that cards and hubs hang on.
func cardLeads(v *View, kind part.HeaderKind) unit.Whole {
	var sum unit.Whole
	for i := range v.Cards {
		c := &v.Cards[i]
		sum += countHeaders(v, c.Card.Takes, kind, &c.Card.Article, "takes_headers.count") * unit.Whole(c.Count)
	}
	return sum
}

func countHeaders(v *View, list []part.Header, kind part.HeaderKind, owner *part.Article, field string) unit.Whole {
	var sum unit.Whole
	for i := range list {
		if list[i].Kind == kind {
			sum += figure(v, list[i].Count, owner, field)
		}
	}
	return sum
}

// fanLeads appends the current of every fan that hangs on a header: those of the case, the cooler and the added ones.
func fanLeads(v *View, list []unit.Current) []unit.Current {
	if v.Case != nil {
		for i := range v.Case.Fans {
			f := &v.Case.Fans[i]
			list = repeat(list, figure(v, f.Current, &v.Case.Article, "fans.current_a"), figure(v, f.Count, &v.Case.Article, "fans.count"))
		}
	}
	if v.Cooler != nil {
		if n := figure(v, v.Cooler.Fans, &v.Cooler.Article, "fans"); n > 0 {
			list = repeat(list, figure(v, v.Cooler.Fan.Current, &v.Cooler.Article, "fan.current_a"), n)
		}
	}
	for i := range v.Fans {
		f := &v.Fans[i]
		list = repeat(list, figure(v, f.Fan.Current, &f.Fan.Article, "current_a"), unit.Whole(f.Count))
	}
	return list
}

// lightLeads appends the current of every lighting lead of a kind: of the case, the cooler and the added fans.
func lightLeads(v *View, kind part.HeaderKind, list []unit.Current) []unit.Current {
	for _, s := range [...]build.Seat{build.Case, build.Cooler, build.Fans} {
		list = lightLeadsOf(v, s, kind, list)
	}
	return list
}

// lightLeadsOf appends those of one seat.
func lightLeadsOf(v *View, s build.Seat, kind part.HeaderKind, list []unit.Current) []unit.Current {
	switch {
	case s == build.Case && v.Case != nil:
		list = lights(v, kind, v.Case.Lights, &v.Case.Article, 1, list)
	case s == build.Cooler && v.Cooler != nil:
		list = lights(v, kind, v.Cooler.Lights, &v.Cooler.Article, 1, list)
	case s == build.Fans:
		for i := range v.Fans {
			f := &v.Fans[i]
			list = lights(v, kind, f.Fan.Lights, &f.Fan.Article, unit.Whole(f.Count), list)
		}
	}
	return list
}

func lights(v *View, kind part.HeaderKind, leads []part.Lead, owner *part.Article, times unit.Whole, list []unit.Current) []unit.Current {
	for i := range leads {
		if leads[i].Kind == kind {
			list = repeat(list, figure(v, leads[i].Current, owner, "lighting_leads.current_a"), times)
		}
	}
	return list
}

func repeat(list []unit.Current, each unit.Current, times unit.Whole) []unit.Current {
	for range times {
		list = append(list, each)
	}
	return list
}

// pin is one header with the current it may give and what hangs on it.
type pin struct{ limit, load unit.Current }

// over is by how much the header is overloaded, negative while it has room.
func (p pin) over() unit.Current { return p.load - p.limit }

// pinsOf appends every header of a kind on the board and on cards that the supply feeds itself. A hub that the supply does
// not feed only splits the header it hangs on; one that it feeds takes nothing from that header but the signal.
func pinsOf(v *View, kind part.HeaderKind, list []pin) []pin {
	list = pins(v, v.Board.Headers, kind, &v.Board.Article, 1, "headers", list)
	for i := range v.Cards {
		c := &v.Cards[i]
		if len(c.Card.Fed) > 0 {
			list = pins(v, c.Card.Gives, kind, &c.Card.Article, c.Count, "gives_headers", list)
			// the signal of a fed hub keeps a board header busy
			for range countHeaders(v, c.Card.Takes, kind, &c.Card.Article, "takes_headers.count") * unit.Whole(c.Count) {
				if len(list) > 0 {
					list = list[1:]
				}
			}
		}
	}
	return list
}

func pins(v *View, headers []part.Header, kind part.HeaderKind, owner *part.Article, times int, field string, list []pin) []pin {
	for i := range headers {
		h := &headers[i]
		if h.Kind != kind {
			continue
		}
		n := figure(v, h.Count, owner, field+".count") * unit.Whole(times)
		limit := figure(v, h.Current, owner, field+".current_a")
		for range n {
			list = append(list, pin{limit: limit})
		}
	}
	return list
}

// spread hangs leads on headers so that none is overloaded, one on each while there are headers left; it returns the header
// that is nearest to its limit or most over it, and whether all leads hang within the limits. It sorts both slices.
//
// Method: the heaviest lead first, each on the emptiest header with most room. Where that overloads a header, every way is
// tried before it says no.
func spread(leads []unit.Current, headers []pin) (worst pin, ok bool) {
	if len(headers) == 0 {
		return pin{}, len(leads) == 0
	}
	slices.SortFunc(leads, func(a, b unit.Current) int { return cmp.Compare(b, a) })
	slices.SortStableFunc(headers, func(a, b pin) int { return cmp.Compare(b.limit, a.limit) })
	var sum, room unit.Current
	for i, lead := range leads {
		sum += lead
		if i < len(headers) {
			headers[i].load += lead
			continue
		}
		roomiest := 0
		for h := range headers {
			if headers[h].over() < headers[roomiest].over() {
				roomiest = h
			}
		}
		headers[roomiest].load += lead
	}
	for _, h := range headers {
		room += h.limit
	}
	worst = tightest(headers)
	if worst.over() <= 0 || sum > room {
		return worst, worst.over() <= 0
	}
	trial := slices.Clone(headers)
	for i := range trial {
		trial[i].load = 0
	}
	if pack(leads, trial, 0) {
		return tightest(trial), true
	}
	return worst, false
}

func tightest(headers []pin) pin {
	worst := headers[0]
	for _, h := range headers[1:] {
		if h.over() > worst.over() {
			worst = h
		}
	}
	return worst
}

// pack tries to hang the leads, heaviest first, on the headers within their limits; a lead like the one before it looks
// only from that one's header on, and headers with the same room are tried once.
func pack(leads []unit.Current, headers []pin, from int) bool {
	if len(leads) == 0 {
		return true
	}
	for h := from; h < len(headers); h++ {
		if headers[h].over()+leads[0] > 0 || h > from && headers[h].over() == headers[h-1].over() && headers[h].limit == headers[h-1].limit {
			continue
		}
		headers[h].load += leads[0]
		next := 0
		if len(leads) > 1 && leads[1] == leads[0] {
			next = h
		}
		if pack(leads[1:], headers, next) {
			return true
		}
		headers[h].load -= leads[0]
	}
	return false
}
