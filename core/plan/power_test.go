package plan

import (
	"testing"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/rule"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// TestPowerSparedElsewhere has the cheaper of two coolers, which draws more, fail beside a board that takes no thrifty drive: the supply
// does not feed it and a drive that the board takes. The other cooler is to be tried with that board all the same.
func TestPowerSparedElsewhere(t *testing.T) {
	all := generic(t)
	tried := 0
	for _, b := range anchors(t, all) {
		if b.Boot.Drive.Form != part.FormM2 || b.Cooler == nil || b.Cooler.Fans.Or(0) == 0 || b.Graphics != nil {
			continue
		}
		vary := func(a *part.Article, name string, price unit.Money) { a.ID, a.Price = a.ID+name, price }
		near, far := *b.Board, *b.Board
		vary(&near.Article, "-near", 10_000)
		vary(&far.Article, "-far", 40_000)
		near.M2, far.M2 = []part.M2Slot{b.Board.M2[0]}, []part.M2Slot{b.Board.M2[0]}
		near.M2[0].Lengths, far.M2[0].Lengths = []unit.Whole{80}, []unit.Whole{30, 80}
		thrifty, hungry := *b.Boot.Drive, *b.Boot.Drive
		vary(&thrifty.Article, "-thrifty", 5_000)
		vary(&hungry.Article, "-hungry", 5_000)
		thrifty.Module.Set(30)
		thrifty.Power.Set(2 * unit.Watts)
		hungry.Module.Set(80)
		hungry.Power.Set(7 * unit.Watts)
		warm, cool := *b.Cooler, *b.Cooler
		vary(&warm.Article, "-a", 3_000)
		vary(&cool.Article, "-b", 4_000)
		warm.Fan.Current.Set(900)
		cool.Fan.Current.Set(50)
		processor := *b.Processor
		processor.Boost.Set(processor.Sustained.Or(0) / 4) // so that peaks do not decide
		draws := func(c *part.Cooler, d *part.Drive) int64 {
			one := *b
			one.Board, one.Cooler, one.Boot.Drive, one.Boot.Count = &near, c, d, 1
			one.Cache, one.Archive = build.Storage{}, build.Storage{}
			return rule.NewView(&one, nil).Run(&rule.SupplySteady)[0].Need.N
		}
		supply := *b.Supply
		supply.Rating.Set(unit.Power(max(draws(&cool, &hungry), draws(&warm, &thrifty))*100/90) + 2*unit.Watts)
		if int64(supply.Rating.Or(0))*90/100 >= draws(&warm, &hungry) {
			continue
		}
		stock := &part.Stock{
			Shop: all.Shop, Services: all.Services, Cases: []*part.Case{b.Case}, Boards: []*part.Board{&near, &far},
			Processors: []*part.Processor{&processor}, Coolers: []*part.Cooler{&warm, &cool}, Memory: []*part.Memory{b.Memory},
			Supplies: []*part.Supply{&supply}, Drives: []*part.Drive{&thrifty, &hungry},
		}
		stock.Graphics = with(stock.Graphics, b.Graphics)
		ask := Ask{Needs: order(0, brief.SingleWork, 1, 1, 1)}
		if !bruteAgrees(t, stock, ask) {
			continue
		}
		p, err := New(stock, ask)
		require.NoError(t, err)
		a := p.Least(t.Context())
		if a.Build.Board == &near && a.Build.Cooler == &cool && a.Build.Boot.Drive == &hungry {
			tried++
		}
	}
	require.Greater(t, tried, 1)
}
