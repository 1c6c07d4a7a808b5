package media

// VC3FrameBytes is the coded frame of a VC-3 compression ID: 1235 and 1238 (1080p, 10 and 8 bit, high), 1237 (1080p 8 bit
// medium), 1253 (1080p 8 bit low), 1250 and 1251 (720p high), 1252 (720p 8 bit medium). ok is false for another ID. The
// rates printed on labels are rounded: use frame × rate for capacity.
//
// Source: SMPTE ST 2019-1, as in a public codec library's table.
func VC3FrameBytes(compressionID int) (frameBytes int64, ok bool) {
	switch compressionID {
	case 1235, 1238:
		return 917_504, true
	case 1237:
		return 606_208, true
	case 1253:
		return 188_416, true
	case 1250, 1251:
		return 458_752, true
	case 1252:
		return 303_104, true
	}
	return 0, false
}

// AVCIntraFrameBits is the frame budget of an AVC-Intra class: 50, 100 and 200 at 1080 lines for 25 or 29.97 frames per
// second, 300 at 2160 lines for any rate. ok is false for another class or rate.
//
// Source: classes, SMPTE RP 2027; budgets, public encoder source.
func AVCIntraFrameBits(class int, rate FrameRate) (frameBits int64, ok bool) {
	at25, at2997 := rate == WholeRate(25), rate == VideoRate(30)
	switch {
	case class == 50 && at25:
		return 2_196_000, true
	case class == 50 && at2997:
		return 1_820_000, true
	case class == 100 && at25:
		return 4_444_000, true
	case class == 100 && at2997:
		return 3_692_000, true
	case class == 200 && at25:
		return 8_940_000, true
	case class == 200 && at2997:
		return 7_444_000, true
	case class == 300:
		return 9_844_000, true
	}
	return 0, false
}

// FixedRate is a stream whose rate is given, not computed. Audio is not included in the video rates.
type FixedRate struct {
	Name    string
	BitPerS int64
	Source  string
}

const cameraPractice = "common practice, no standard"

// FixedRates lists line rates of serial digital interfaces (blanking included: a recording of the picture is smaller),
// broadcast and cinema streams, and classes of camera and capture streams, in a fixed order.
func FixedRates() []FixedRate {
	return []FixedRate{
		{"SD-SDI line rate", 270_000_000, "SMPTE ST 259"},
		{"HD-SDI line rate", 1_485_000_000, "SMPTE ST 292-1"},
		{"3G-SDI line rate", 2_970_000_000, "SMPTE ST 424"},
		{"6G-SDI line rate", 5_940_000_000, "SMPTE ST 2081-1, from memory"},
		{"12G-SDI line rate", 11_880_000_000, "SMPTE ST 2082-1, from memory"},
		{"MPEG-2 422P@HL long-GOP 1080 4:2:2 8-bit", 50_000_000, "broadcast delivery specifications; SMPTE RDD 9"},
		{"MPEG-2 MP@HL long-GOP 1080 4:2:0 8-bit", 35_000_000, "common broadcast acquisition rate, from memory"},
		{"DV 25 video essence", 25_000_000, "IEC 61834, SMPTE ST 314, from memory"},
		{"Digital cinema JPEG 2000 image maximum", 250_000_000, "SMPTE ST 429 series"},
		{"Digital cinema JPEG 2000 high-frame-rate maximum", 500_000_000, "high-frame-rate recommended practice, from memory"},
		{"Camera long-GOP 1080p 8-bit 4:2:0", 28_000_000, cameraPractice},
		{"Camera long-GOP 1080p high", 50_000_000, cameraPractice},
		{"Camera long-GOP 2160p30 8-bit 4:2:0", 100_000_000, cameraPractice},
		{"Camera long-GOP 2160p60 10-bit 4:2:2", 200_000_000, cameraPractice},
		{"Camera all-intra 2160p30 10-bit 4:2:2", 400_000_000, cameraPractice},
		{"Camera all-intra 2160p60 10-bit 4:2:2", 600_000_000, cameraPractice},
		{"Screen or game capture 1080p60", 50_000_000, cameraPractice},
	}
}

// FixedRateNamed finds a fixed rate by its name.
func FixedRateNamed(name string) (rate FixedRate, ok bool) {
	for _, r := range FixedRates() {
		if r.Name == name {
			return r, true
		}
	}
	return FixedRate{}, false
}
