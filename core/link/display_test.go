package link

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func displayLink(t *testing.T, name string, lanes int64) DisplayLink {
	t.Helper()
	l, err := DisplayLinkNamed(name, lanes)
	require.NoError(t, err)
	return l
}

// payloadOf finds raw and payload rates of a row of rates.csv by its name.
func payloadOf(t *testing.T, name string, lanes int64) (raw, payload int64) {
	t.Helper()
	display := func(short string) (int64, int64) {
		l := displayLink(t, short, lanes)
		return l.RawBitPerS(), l.PayloadBitPerS()
	}
	buses := map[string]Bus{
		"SATA 1.5G": SATA1500, "SATA 3G": SATA3000, "SATA 6G": SATA6000, "USB 2.0 HS": USB2HighSpeed,
		"USB 3.2 Gen1x1 (5G)": USB32Gen1x1, "USB 3.2 Gen1x2 (10G)": USB32Gen1x2, "USB 3.2 Gen2x1 (10G)": USB32Gen2x1,
		"USB 3.2 Gen2x2 (20G)": USB32Gen2x2, "USB4 20G": USB4At20G, "USB4 40G": USB4At40G,
		"Ethernet 1G (TCP/IPv4, MTU 1500)": Ethernet1G, "Ethernet 2.5G (TCP/IPv4, MTU 1500)": Ethernet2G5,
		"Ethernet 5G (TCP/IPv4, MTU 1500)": Ethernet5G, "Ethernet 10G (TCP/IPv4, MTU 1500)": Ethernet10G,
	}
	if b, ok := buses[name]; ok {
		return b.RawBitPerS(), b.PayloadBitPerS()
	}
	if short, ok := strings.CutPrefix(name, "DP "); ok {
		return display(short)
	}
	if _, step, ok := strings.Cut(name, "HDMI FRL "); ok {
		_, gbit, _ := strings.Cut(step, "x")
		return display("FRL" + strings.TrimSuffix(gbit, "G"))
	}
	if short, ok := strings.CutSuffix(name, " TMDS"); ok {
		return display(short)
	}
	generation, ok := strings.CutPrefix(name, "PCIe Gen")
	require.True(t, ok, name)
	g := int(integer(t, generation))
	payload, err := ExpressBitPerS(g, int(lanes))
	require.NoError(t, err)
	return expressGenerations[g-1].laneBitPerS * lanes, payload
}

// Source: beside each row of rates.csv (six decimals of Gbit/s, so 1 kbit/s).
func TestRateVectors(t *testing.T) {
	rows := vectors(t, "rates.csv")
	require.Len(t, rows, 73)
	for _, row := range rows {
		raw, payload := payloadOf(t, row["link"], integer(t, row["lanes"]))
		require.Equal(t, scaled(t, row["raw_gbit_s"], 1e9), raw, row)
		require.InDelta(t, scaled(t, row["payload_gbit_s"], 1e9), payload, 501, row)
	}
}

// Source: arithmetic, RB2 clock × bits per pixel against link payload; the whole table of 23 modes at two depths.
func TestFitVectors(t *testing.T) {
	columns := []struct {
		column, name string
		lanes        int64
	}{
		{"hdmi_1_4", "HDMI 1.4", 3}, {"hdmi_2_0", "HDMI 2.0", 3}, {"hbr2_x4", "HBR2", 4}, {"hbr3_x4", "HBR3", 4},
		{"uhbr10_x4", "UHBR10", 4}, {"uhbr13_5_x4", "UHBR13.5", 4}, {"uhbr20_x4", "UHBR20", 4},
		{"frl_4x10", "FRL10", 4}, {"frl_4x12", "FRL12", 4},
	}
	rows := vectors(t, "fit.csv")
	require.Len(t, rows, 46)
	for _, row := range rows {
		timing, err := ComputeTiming(integer(t, row["width"]), integer(t, row["height"]), 1000*integer(t, row["refresh_hz"]), BlankingRB2)
		require.NoError(t, err)
		mode := Mode{ClockKHz: timing.ClockKHz, BitsPerColour: integer(t, row["bpc"])}
		for _, c := range columns {
			fit, err := FitMode(displayLink(t, c.name, c.lanes), mode)
			require.NoError(t, err)
			require.InDelta(t, scaled(t, row["gbit_s"], 1e9), fit.NeedBitPerS, 5e5, row)
			require.Equal(t, row[c.column] == "yes", fit.Carriage == Fits || fit.Carriage == Doubtful, "%s: %v", c.column, row)
			if fit.Carriage == Doubtful {
				require.True(t, strings.HasPrefix(c.column, "frl"))
			}
		}
		mode.Compression = true
		for _, name := range []string{"HBR2", "HBR3", "UHBR10"} {
			fit, err := FitMode(displayLink(t, name, 4), mode)
			require.NoError(t, err)
			if fit.Carriage == Fits || fit.Carriage == NeedsCompression {
				require.Equal(t, row["lowest_dp_compressed"], name+" x4", row)
				break
			}
		}
	}
}

func fitOf(t *testing.T, l DisplayLink, w, h, f int64, m Mode) Fit {
	t.Helper()
	timing, err := ComputeTiming(w, h, f, BlankingRB2)
	require.NoError(t, err)
	m.ClockKHz = timing.ClockKHz
	fit, err := FitMode(l, m)
	require.NoError(t, err)
	return fit
}

// Edge cases of the published table, and television clocks on HDMI.
func TestFitEdges(t *testing.T) {
	hbr3, uhbr10, uhbr13 := displayLink(t, "HBR3", 4), displayLink(t, "UHBR10", 4), displayLink(t, "UHBR13.5", 4)
	hdmi20, frl12 := displayLink(t, "HDMI 2.0", 3), displayLink(t, "FRL12", 4)

	fit := fitOf(t, hbr3, 3840, 2160, 120_000, Mode{BitsPerColour: 8})
	require.Equal(t, Fits, fit.Carriage) // 0.4 % to spare
	require.Equal(t, Fit{Fits, 25_819_296_000, 25_920_000_000}, fit)
	fit = fitOf(t, uhbr10, 3840, 2160, 144_000, Mode{BitsPerColour: 10})
	require.Equal(t, No, fit.Carriage)
	fit = fitOf(t, uhbr10, 3840, 2160, 144_000, Mode{BitsPerColour: 10, Compression: true})
	require.Equal(t, NeedsCompression, fit.Carriage)
	require.Equal(t, int64(1_306_206_000*8), fit.NeedBitPerS)
	require.Equal(t, Fits, fitOf(t, uhbr13, 7680, 4320, 60_000, Mode{BitsPerColour: 8}).Carriage)
	require.Equal(t, No, fitOf(t, frl12, 7680, 4320, 60_000, Mode{BitsPerColour: 8}).Carriage)
	require.Equal(t, NeedsCompression, fitOf(t, frl12, 7680, 4320, 60_000, Mode{BitsPerColour: 8, Compression: true}).Carriage)

	// HDMI 2.0 with CTA-861 clocks: 2160p60 at 594 of 600 MHz.
	tv, ok := TelevisionTiming(3840, 2160, 60_000)
	require.True(t, ok)
	carriageOf := func(l DisplayLink, m Mode) Carriage {
		m.ClockKHz = tv.ClockKHz
		fit, err := FitMode(l, m)
		require.NoError(t, err)
		return fit.Carriage
	}
	require.Equal(t, Fits, carriageOf(hdmi20, Mode{BitsPerColour: 8}))
	require.Equal(t, No, carriageOf(hdmi20, Mode{BitsPerColour: 10}))
	require.Equal(t, No, carriageOf(hdmi20, Mode{BitsPerColour: 10, Compression: true})) // TMDS never compresses
	require.Equal(t, Fits, carriageOf(hdmi20, Mode{BitsPerColour: 10, Sampling: Sampling422}))
	require.Equal(t, Fits, carriageOf(hdmi20, Mode{BitsPerColour: 12, Sampling: Sampling422}))
	require.Equal(t, No, carriageOf(displayLink(t, "HDMI 1.4", 3), Mode{BitsPerColour: 8}))
	require.Equal(t, Fits, carriageOf(displayLink(t, "HDMI 1.4", 3), Mode{BitsPerColour: 8, Sampling: Sampling420}))

	// Within 3 % under an FRL limit: doubtful; at 97 % and at the limit to the bit.
	frl3 := displayLink(t, "FRL3", 3) // payload 8 Gbit/s
	for clock, want := range map[int64]Carriage{323_333: Fits, 323_334: Doubtful, 333_333: Doubtful, 333_334: No} {
		fit, err := FitMode(frl3, Mode{ClockKHz: clock, BitsPerColour: 8})
		require.NoError(t, err)
		require.Equal(t, want, fit.Carriage, clock)
	}
	// A doubtful fit becomes a sure one by compression.
	fit, err := FitMode(frl3, Mode{ClockKHz: 330_000, BitsPerColour: 8, Compression: true})
	require.NoError(t, err)
	require.Equal(t, Fit{NeedsCompression, 330_000 * 8000, 8_000_000_000}, fit)
	// TMDS at the limit to the kHz.
	for clock, want := range map[int64]Carriage{600_000: Fits, 600_001: No} {
		fit, err := FitMode(hdmi20, Mode{ClockKHz: clock, BitsPerColour: 8})
		require.NoError(t, err)
		require.Equal(t, want, fit.Carriage, clock)
	}
}

func TestDisplayLinkRefusals(t *testing.T) {
	_, err := DisplayLinkNamed("HBR3", 3)
	require.ErrorContains(t, err, "expected one of [1 2 4]")
	_, err = DisplayLinkNamed("HBR9", 4)
	require.ErrorContains(t, err, "not a known rate")
	_, err = FitMode(DisplayLink{}, Mode{ClockKHz: 1, BitsPerColour: 9})
	require.ErrorContains(t, err, "expected 6, 8, 10, 12 or 16")
	_, err = FitMode(DisplayLink{}, Mode{BitsPerColour: 8})
	require.ErrorContains(t, err, "expected above zero")
	_, err = BitsPerPixel(Sampling(7), 8)
	require.ErrorContains(t, err, "colour sampling 7")
	require.Equal(t, "carriage 9", Carriage(9).String())
	require.Equal(t, []string{"no", "doubtful", "needs compression", "fits"},
		[]string{No.String(), Doubtful.String(), NeedsCompression.String(), Fits.String()})
}

// Source: arithmetic; VESA DP 2.0, Table 2-157 for the compressed targets.
func TestBitsPerPixel(t *testing.T) {
	for _, c := range []struct {
		s          Sampling
		bpc, wants int64
	}{{Sampling444, 8, 24}, {Sampling444, 10, 30}, {Sampling444, 12, 36}, {Sampling422, 8, 16}, {Sampling420, 8, 12}, {Sampling420, 10, 15}} {
		got, err := BitsPerPixel(c.s, c.bpc)
		require.NoError(t, err)
		require.Equal(t, c.wants, got)
	}
	require.Equal(t, int64(8), CompressedBitsPerPixel(Sampling444))
	require.Equal(t, int64(6), CompressedBitsPerPixel(Sampling420))
}

// Source: public display-driver source: MST efficiency 0.7875, FEC overhead 2.4015625 %.
func TestDisplayPortOverheads(t *testing.T) {
	hbr3 := displayLink(t, "HBR3", 4)
	require.Equal(t, int64(25_515_000_000), hbr3.MultiStreamPayloadBitPerS())
	require.InDelta(t, 25_920_000_000/1.024015625, hbr3.CompressedPayloadBitPerS(), 1)
	uhbr := displayLink(t, "UHBR10", 4)
	require.Equal(t, uhbr.PayloadBitPerS(), uhbr.MultiStreamPayloadBitPerS())
	require.Equal(t, uhbr.PayloadBitPerS(), uhbr.CompressedPayloadBitPerS())
}

// A higher refresh rate never needs less rate, and never fits better.
func TestHigherRefreshNeverNeedsLess(t *testing.T) {
	links := []DisplayLink{displayLink(t, "HBR2", 4), displayLink(t, "HBR3", 4), displayLink(t, "UHBR20", 4),
		displayLink(t, "HDMI 2.0", 3), displayLink(t, "FRL12", 4)}
	for _, l := range links {
		for _, compression := range []bool{false, true} {
			for _, size := range [][2]int64{{1920, 1080}, {2560, 1440}, {3840, 2160}, {5120, 2880}} {
				last, lastNeed := Fits, int64(0)
				for f := int64(30_000); f <= 480_000; f += 5_000 {
					fit := fitOf(t, l, size[0], size[1], f, Mode{BitsPerColour: 10})
					require.GreaterOrEqual(t, fit.NeedBitPerS, lastNeed)
					lastNeed = fit.NeedBitPerS
					fit = fitOf(t, l, size[0], size[1], f, Mode{BitsPerColour: 10, Compression: compression})
					if !compression {
						require.LessOrEqual(t, fit.Carriage, last)
					}
					if last == No {
						require.Equal(t, No, fit.Carriage)
					}
					last = fit.Carriage
				}
			}
		}
	}
}
