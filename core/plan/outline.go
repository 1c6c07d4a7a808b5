package plan

// outline is a frame in which no column hangs on another, and of each column the options that cost least by themselves at some price
// of value, which is all that it takes to find the root of a bound.
type outline struct {
	*frame
	p     *Problem
	edges [][]int32 // by column: those options, the cheapest first
}

func (p *Problem) outline() *outline {
	l := &outline{p.blankFrame(p.usual(-1)), p, make([][]int32, len(p.cols))}
	for c, col := range p.cols {
		p.watch.poll(len(col.options))
		l.edges[c] = edge(col.rising, p.able(c), col.price, l.top[c])
	}
	return l
}

// edge lists, of some options in order of price where their prices differ, those that cost least at some price of value: the upper hull of
// worth over price.
func edge(list []int32, of set, price, worth []int64) []int32 {
	var edge []int32
	for _, o := range list {
		n := len(edge)
		if !of.has(int(o)) || n > 0 && worth[o] <= worth[edge[n-1]] {
			continue
		}
		for ; n > 0; n-- {
			last := edge[n-1]
			if price[o] > price[last] && (n == 1 || (worth[o]-worth[last])*(price[last]-price[edge[n-2]]) < (worth[last]-worth[edge[n-2]])*(price[o]-price[last])) {
				break
			}
		}
		edge = append(edge[:n], o)
	}
	return edge
}

// bound is a bound of which nothing may be asked but its root.
func (l *outline) bound(w weights) *bound {
	b := l.p.blankBound(l.frame, w)
	for c, edge := range l.edges {
		least := int64(never)
		for _, o := range edge {
			least = min(least, b.own(c, int(o)))
		}
		b.tells[c] = []int64{least}
	}
	return b
}

// tightest is the bound whose root is tightest by a gauge, and the price of value, as a power of two, at which it was found.
func (l *outline) tightest(g gauge) (*bound, float64) { return tightest(g, g.from, g.to, l.bound) }
