package predict

import (
	"slices"
	"testing"

	"slipfit/catalog"
	"slipfit/core/air"
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"

	"github.com/stretchr/testify/require"
)

// What a case draws in for its supply's fan, step by step from its lowest speed to its full one, is no more than is counted for it; in one
// chamber all that it draws in grows by no larger a share than that speed, but for what a draught makes of it.
func TestThrough(t *testing.T) {
	s, err := catalog.Embedded()
	require.NoError(t, err)
	var p Predictor
	half, all, most, nearest := 0, 0, 0.0, 0.0
	for _, c := range s.Cases {
		for i := range c.Layouts {
			b := build.Build{Case: c, Layout: &c.Layouts[i]}
			b.Board, b.Processor, b.Cooler = within(s, b.Layout)
			if b.Board == nil {
				continue
			}
			for _, supply := range s.Supplies {
				if !slices.Contains(b.Layout.Supply.Forms, supply.Form) {
					continue
				}
				b.Supply = supply
				f := p.Core(&b, &brief.Needs{}, Besides{})
				if f == nil || f.model.supply.duct >= 0 || len(f.Run(0, Ordinary).Missing) > 0 {
					continue
				}
				m := &f.model
				share := m.through()
				if share == 1 {
					all++
				} else {
					half++
				}
				fan := m.supply.fan
				draws := func(rpm, own float64) float64 {
					machine := m.air
					machine.Paths = slices.Clone(m.air.Paths)
					machine.Paths[m.supply.path].Fans.Speed = air.Speed{FixedRPM: rpm}
					for j := range machine.Paths {
						if len(machine.Paths[j].Fans.Speed.Curves) > 0 { // fans of the case, of a radiator
							machine.Paths[j].Fans.Speed = air.Speed{FixedRPM: turned(&machine.Paths[j].Fans.Speed, own)}
						}
					}
					var solver air.Solver
					var r air.Result
					require.NoError(t, solver.Solve(&machine, &r))
					flow := 0.0
					for _, z := range r.Zones {
						flow += z.InM3PerS
					}
					for _, x := range r.Partitions {
						flow -= max(x.FlowM3PerS, -x.FlowM3PerS)
					}
					return flow
				}
				low := max(m.supply.low, leastTurning*fan.RatedRPM)
				const steps = 5
				step := (fan.RatedRPM - low) / steps
				for _, own := range [...]float64{0, 0.3, 1} { // of the way to full speed
					before := draws(low, own)
					for k := 1; k <= steps; k++ {
						now := draws(low+float64(k)*step, own)
						counted := share * fan.FreeM3PerS * step / fan.RatedRPM
						require.LessOrEqual(t, now-before, counted*1.001+1e-9, "%s in layout %s with %s", c.ID, b.Layout.ID, supply.ID)
						if share < 1 {
							most = max(most, (now-before)/counted)
						}
						if m.chambers() == 1 {
							faster := step / (low + float64(k-1)*step)
							require.LessOrEqual(t, now/before-1, faster*1.01, "%s in layout %s with %s", c.ID, b.Layout.ID, supply.ID)
							nearest = max(nearest, (now/before-1)/faster)
						}
						before = now
					}
				}
			}
		}
	}
	require.Greater(t, half, 40)
	require.Greater(t, all, 100)
	require.Greater(t, most, 0.7, "what is counted is no idle figure")
	require.Greater(t, nearest, 0.7, "nor is that share")
	t.Logf("%v of what is counted, %v of the share", most, nearest)
}

// within is a board, a processor and an air cooler that a layout takes; none where there are none.
func within(s *part.Stock, l *part.Layout) (*part.Board, *part.Processor, *part.Cooler) {
	for _, board := range s.Boards {
		for _, processor := range s.Processors {
			for _, cooler := range s.Coolers {
				if slices.Contains(l.Boards, board.Form) && processor.Socket == board.Socket && slices.Contains(cooler.Sockets, board.Socket) &&
					cooler.Air != nil && cooler.Air.Height.Or(0) <= l.Cooler.Or(0) {
					return board, processor, cooler
				}
			}
		}
	}
	return nil, nil, nil
}
