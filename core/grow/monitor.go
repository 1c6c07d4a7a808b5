package grow

import (
	"fmt"

	"slipfit/core/part"
)

// monitor varies a monitor: draw and mass, and at times a slower refresh, which its inputs carry all the better. Panel size,
// picture size, inputs and colour stay: panels are made in few sizes.
func (g *grower) monitor(p *part.Monitor) string {
	was := *p
	slower := factor(1000)
	if g.IntN(3) == 0 {
		for _, hz := range []int64{200, 165, 144, 120, 100, 75, 60} {
			if int64(p.Refresh.Or(0)) > hz {
				vary(&p.Refresh, 1, 24, 600, of(hz, int64(p.Refresh.Or(0)))+1)
				slower = change(p.Refresh, was.Refresh)
				break
			}
		}
	}
	bright := g.about(100)
	vary(&p.Power, w, 3*w, 400*w, slower.lean(40), bright)
	mass(&p.Article, g.about(35))
	price(&p.Article, slower.lean(60), bright.lean(30), g.about(70))
	if d, ok := p.Diagonal.Get(); ok {
		return fmt.Sprintf("%d", (d*10+127*mm)/(254*mm))
	}
	return ""
}
