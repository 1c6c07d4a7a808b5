package rule

import (
	"slipfit/core/link"
	"slipfit/core/part"
)

// carryMode is how a link carries a picture in full colour.
func carryMode(over part.LinkKind, p *picture, packs bool) carried {
	l, ok := displayLink(over)
	if !ok {
		return carried{}
	}
	fit, err := link.FitMode(l, link.Mode{ClockKHz: pixelClock(over, p), Sampling: link.Sampling444, BitsPerColour: (p.bits + 1) / 2 * 2, Compression: packs})
	if err != nil {
		return carried{}
	}
	return carried{fit.Carriage, fit.HaveBitPerS, fit.NeedBitPerS}
}

// pixelClock is the clock of a picture's timing on a link, kHz; 0 where no timing has it.
func pixelClock(over part.LinkKind, p *picture) int64 {
	if over.Family() == "hdmi" {
		if t, ok := link.TelevisionTiming(p.width, p.height, p.refresh*1000); ok {
			return t.ClockKHz
		}
	}
	t, err := link.ComputeTiming(p.width, p.height, p.refresh*1000, link.BlankingRB2)
	if err != nil {
		return 0
	}
	return t.ClockKHz
}

// displayLink is the link of a data sheet with the lanes its socket has.
func displayLink(k part.LinkKind) (l link.DisplayLink, ok bool) {
	switch k {
	case part.DPHBR2:
		return link.DisplayLink{Kind: link.DisplayPort8b10b, Lanes: 4, LaneBitPerS: link.LaneHBR2}, true
	case part.DPHBR3:
		return link.DisplayLink{Kind: link.DisplayPort8b10b, Lanes: 4, LaneBitPerS: link.LaneHBR3}, true
	case part.DPUHBR10:
		return link.DisplayLink{Kind: link.DisplayPort128b132b, Lanes: 4, LaneBitPerS: link.LaneUHBR10}, true
	case part.DPUHBR135:
		return link.DisplayLink{Kind: link.DisplayPort128b132b, Lanes: 4, LaneBitPerS: link.LaneUHBR13}, true
	case part.DPUHBR20:
		return link.DisplayLink{Kind: link.DisplayPort128b132b, Lanes: 4, LaneBitPerS: link.LaneUHBR20}, true
	case part.HDMI14:
		return link.DisplayLink{Kind: link.HDMITMDS, Lanes: 3, LaneBitPerS: link.LaneHDMI14}, true
	case part.HDMI20:
		return link.DisplayLink{Kind: link.HDMITMDS, Lanes: 3, LaneBitPerS: link.LaneHDMI20}, true
	case part.HDMI21F40:
		return link.DisplayLink{Kind: link.HDMIFRL, Lanes: 4, LaneBitPerS: link.LaneFRL10}, true
	case part.HDMI21F48:
		return link.DisplayLink{Kind: link.HDMIFRL, Lanes: 4, LaneBitPerS: link.LaneFRL12}, true
	}
	return link.DisplayLink{}, false
}

func faster(a, b part.LinkKind) bool {
	first, _ := displayLink(a)
	second, _ := displayLink(b)
	return first.PayloadBitPerS() > second.PayloadBitPerS()
}

func slower(a, b part.LinkKind) part.LinkKind {
	if faster(a, b) {
		return b
	}
	return a
}
