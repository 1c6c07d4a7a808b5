package catalog

import (
	"strings"
	"testing"

	"slipfit/core/part"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

func TestBoardsFollowTheirFormFactors(t *testing.T) {
	for _, b := range stock(t).Boards {
		depth := mm(b.Depth)
		places := map[part.BoardForm]int64{part.ATX: 7, part.MicroATX: 4, part.MiniITX: 1}[b.Form]
		switch b.Form {
		case part.MiniITX: // Mini-ITX addendum 1.1, table 1
			require.Equal(t, 170.0, depth, b.ID)
		case part.MicroATX: // microATX 1.2, table 3: at most 244
			require.LessOrEqual(t, depth, 244.0, b.ID)
			require.Greater(t, depth, 170.0, b.ID)
		default: // full-size ATX is 244 deep; deeper boards are sold by depth, not by label (common practice)
			require.GreaterOrEqual(t, depth, 220.0, b.ID)
			require.LessOrEqual(t, depth, 330.0, b.ID)
		}
		last := int64(0)
		for _, s := range b.Cards {
			place := int64(known(t, s.Place, b.ID+" "+s.ID))
			require.Greater(t, place, last, "%s: slots are listed nearest the processor first", b.ID)
			last = place
			require.LessOrEqual(t, place, places, "%s %s: bracket places of the form (microATX 1.2, figure 2)", b.ID, s.ID)
			require.Contains(t, []unit.Whole{1, 4, 8, 16}, s.Size.Or(0), "%s %s: slot lengths of the card specification", b.ID, s.ID)
		}
		// hole C lies 163.65 mm from the edge away from the slots, slot 1 at u = +1.57 mm, pitch 20.32 mm (CAD models)
		first := float64(b.Cards[0].Place.Or(0))
		require.InDelta(t, 163.65-1.57+20.32*(first-1), mm(b.SocketAt.Card)+mm(b.SocketAt.TopEdge), 0.2, "%s: the socket lies between slot and edge", b.ID)
		// DIMM sockets stand 7.6 to 9.5 mm apart (common practice)
		require.GreaterOrEqual(t, mm(b.SocketAt.Pitch), 7.6, b.ID)
		require.LessOrEqual(t, mm(b.SocketAt.Pitch), 9.5, b.ID)
		slots := int64(b.Slots.Or(0))
		require.LessOrEqual(t, mm(b.SocketAt.Memory)+mm(b.SocketAt.Pitch)*float64(slots-1), depth, b.ID)
	}
}

func TestBoardsFeedTheirProcessors(t *testing.T) {
	for _, b := range stock(t).Boards {
		watts := 0.0
		mains := 0
		for _, s := range b.PowerPlugs {
			n := float64(s.Count.Or(0))
			switch s.Kind { // 8 A a pin at 12 V: EPS 2x4 has four live pins, 2x2 two (design guide 3.0, tables 5-8; EPS12V practice)
			case part.SocketProcessor8:
				watts += 384 * n
			case part.SocketProcessor4:
				watts += 192 * n
			case part.SocketMain24:
				mains += int(n)
			}
		}
		require.Equal(t, 1, mains, b.ID)
		require.GreaterOrEqual(t, watts, w(b.Sustained), "%s: the processor sockets carry what the converters hold", b.ID)
		for _, h := range b.Headers {
			a := float64(h.Current.Or(0)) / 1000
			switch h.Kind { // steady current of a fan at most 1.5 A (4-Wire PWM fan specification 2.1.2); ports 0.5 and 0.9 A (USB)
			case part.HeaderFan:
				require.True(t, a >= 0.9 && a <= 1.5, "%s fan header %v A", b.ID, a)
			case part.HeaderPump:
				require.True(t, a >= 2 && a <= 3, b.ID)
			case part.HeaderUSB2:
				require.Equal(t, 1.0, a, b.ID)
			case part.HeaderUSB19:
				require.Equal(t, 1.8, a, b.ID)
			case part.HeaderUSBC:
				require.LessOrEqual(t, a, 3.0, b.ID)
			}
		}
	}
}

// TestMemoryKeepsToItsGeneration checks rates and sizes against JESD79-4 (DDR4, standard rates to 3200 MT/s) and JESD79-5
// (DDR5, 3200 to 8800 MT/s), from memory; faster profiles are overclocks, which error-correcting modules do not carry.
func TestMemoryKeepsToItsGeneration(t *testing.T) {
	s := stock(t)
	for _, m := range s.Memory {
		rate := int64(m.Speed.Or(0))
		gib := int64(m.Module.Or(0)) / int64(unit.GiB)
		switch m.Type {
		case part.DDR4:
			require.True(t, rate >= 2133 && rate <= 4400, m.ID)
			require.Contains(t, []int64{4, 8, 16, 32}, gib, "%s: DDR4 chips end at 16 Gbit", m.ID)
			require.True(t, !m.ECC.Or(false) || rate <= 3200, m.ID)
		case part.DDR5:
			require.True(t, rate >= 4800 && rate <= 8800, m.ID)
			require.Contains(t, []int64{8, 16, 24, 32, 48, 64, 128}, gib, m.ID)
			require.True(t, !m.ECC.Or(false) || rate <= 6400, m.ID)
		}
		// latency in time stays in the band the chips allow: CL / (rate / 2), about 9 to 17 ns (common practice)
		ns := float64(m.Latency.Or(0)) / (float64(rate) / 2) * 1000
		require.True(t, ns >= 8.5 && ns <= 17.5, "%s: %.1f ns", m.ID, ns)
		if m.Form == "udimm" || m.Form == "rdimm" { // bare module 31.25 mm (MO-309 as a module sheet states it)
			require.GreaterOrEqual(t, mm(m.Height), 31.25, m.ID)
			require.LessOrEqual(t, mm(m.Height), 60.0, m.ID)
		}
		require.Equal(t, m.Form == "rdimm" && !m.ECC.Or(false), false, "%s: registered modules are error-correcting", m.ID)
		fits := keep(s.Boards, func(b *part.Board) bool {
			return b.Memory == m.Type && b.Module == m.Form && b.Slots.Or(0) >= m.Modules.Or(0) && b.ModuleTo.Or(0) >= m.Module.Or(0) &&
				b.MemoryTo.Or(0) >= m.Module.Or(0)*unit.Memory(m.Modules.Or(0))
		})
		require.NotEmpty(t, fits, "%s fits no board", m.ID)
	}
	for _, b := range s.Boards {
		require.LessOrEqual(t, b.MemoryTo.Or(0), b.ModuleTo.Or(0)*unit.Memory(b.Slots.Or(0)), b.ID)
		require.Equal(t, b.Slots.Or(0) > channels(b), b.SpeedTwo.Or(0) > 0, "%s: a second rate exactly where a channel has two slots", b.ID)
		top := map[part.MemoryType]unit.TransferRate{part.DDR4: 4400, part.DDR5: 8800}[b.Memory]
		require.LessOrEqual(t, b.Speed.Or(0), top, b.ID)
	}
}

func TestProcessors(t *testing.T) {
	s := stock(t)
	for _, p := range s.Processors {
		require.LessOrEqual(t, float64(p.All.Or(0)), float64(p.Single.Or(0))*float64(p.Cores.Or(0))*1.35, "%s: all threads do no more than every core at its best and a third", p.ID)
		require.GreaterOrEqual(t, float64(p.All.Or(0)), float64(p.Single.Or(0))*float64(p.Cores.Or(0))*0.4, p.ID)
		// 12V2 continuous amperes by TDP, at 11.2 V (ATX 3.0 guide, table 2-1 and section 3.1.1): 35, 65, 125, 165 W
		tdp, boost := w(p.TDP), w(p.Boost)
		for _, row := range []struct{ tdp, amps float64 }{{35, 11}, {65, 23}, {125, 26}, {165, 37.5}} {
			if tdp <= row.tdp {
				require.LessOrEqual(t, boost, row.amps*11.2, "%s: more than table 2-1 allows a %v W processor for over a second", p.ID, row.tdp)
				break
			}
		}
		require.LessOrEqual(t, w(p.Idle), 0.25*w(p.Sustained), p.ID)
		// junction to lid 0.10 to 0.35 K/W including spreading, small dies high (common practice); below for lids over 3000 mm2
		spread := float64(p.Spread.Or(0)) / 1000
		low := 0.10
		if p.Lid.Or(0) > 3000 {
			low = 0.06
		}
		require.True(t, spread >= low && spread <= 0.35, "%s: %v K/W", p.ID, spread)
		require.True(t, p.Limit.Or(0) >= 85_000 && p.Limit.Or(0) <= 105_000, p.ID)
		boards := keep(s.Boards, func(b *part.Board) bool {
			for _, f := range p.Platforms {
				if b.Socket == p.Socket && f.Chipset == b.Chipset && b.Firmware.Or(0) >= f.Firmware.Or(0) && b.Sustained.Or(0) >= p.Sustained.Or(0) {
					return true
				}
			}
			return false
		})
		require.NotEmpty(t, boards, "%s: no board in the catalog runs it as delivered", p.ID)
		coolers := keep(s.Coolers, func(c *part.Cooler) bool {
			return c.Rated.Or(0) >= p.Sustained.Or(0) && contains(c.Sockets, p.Socket)
		})
		require.NotEmpty(t, coolers, "%s: no cooler in the catalog holds it", p.ID)
	}
	correlate(t, "junction to lid falls as the die grows", keep(s.Processors, func(p *part.Processor) bool { return p.Channels.Or(0) == 2 }), -0.8,
		func(p *part.Processor) float64 { return float64(p.Cores.Or(0)) }, func(p *part.Processor) float64 { return float64(p.Spread.Or(0)) })

	base, ok := part.Find(s.Processors, "quillmar-wren-140")
	require.True(t, ok)
	require.EqualValues(t, 1000, base.Single.Or(0), "the calibration core")
	card, ok := part.Find(s.Graphics, "calderby-lantern-30")
	require.True(t, ok)
	require.EqualValues(t, 1000, card.Draw.Or(0), "the calibration card")
	require.EqualValues(t, 1000, card.Compute.Or(0), "the calibration card")
}

func contains(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}

// TestRealClashes proves that the catalog holds the clashes a workshop meets, so that the rules have something to find.
func TestRealClashes(t *testing.T) {
	s := stock(t)
	tooOld, stuck := 0, 0
	for _, b := range s.Boards {
		for _, p := range s.Processors {
			for _, f := range p.Platforms {
				if b.Socket == p.Socket && b.Chipset == f.Chipset && b.Firmware.Or(0) < f.Firmware.Or(0) {
					tooOld++
					if !b.FlashAlone.Or(false) {
						stuck++
					}
				}
			}
		}
	}
	require.Greater(t, tooOld, 20, "firmware too old for a processor")
	require.Greater(t, stuck, 8, "and no renewing it without another processor")

	noChipset, weak := 0, 0
	for _, b := range s.Boards {
		for _, p := range s.Processors {
			if b.Socket != p.Socket {
				continue
			}
			listed := false
			for _, f := range p.Platforms {
				listed = listed || f.Chipset == b.Chipset
			}
			if !listed {
				noChipset++
			}
			if b.Sustained.Or(0) < p.Boost.Or(0) {
				weak++
			}
		}
	}
	require.Positive(t, noChipset, "socket fits, chipset does not run it")
	require.Greater(t, weak, 20, "converters too weak for the boost")

	switched := map[string]int{}
	for _, b := range s.Boards {
		for _, m := range b.M2 {
			for _, x := range m.Shares {
				switch {
				case strings.HasPrefix(x.With, "sata") && x.Only != "":
					switched["port, by a SATA module only"]++
				case strings.HasPrefix(x.With, "sata"):
					switched["port, by any module"]++
				case x.Lanes == 0:
					switched["slot off"]++
				default:
					switched["slot halved"]++
				}
			}
		}
	}
	for _, kind := range []string{"port, by a SATA module only", "port, by any module", "slot off", "slot halved"} {
		require.GreaterOrEqual(t, switched[kind], 3, kind)
	}
}
