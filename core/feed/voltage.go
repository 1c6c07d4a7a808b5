package feed

// Window is the range in which a supply rail must stay, in mV.
type Window struct {
	MinMV, MaxMV int64
}

// Holds says whether a reading in mV is inside the window.
func (w Window) Holds(readingMV int64) bool {
	return readingMV >= w.MinMV && readingMV <= w.MaxMV
}

// Window5V is the range of +5 V and +5 VSB: ±5 %. Source: ATX12V guide 2.0, Table 2.
func Window5V() Window { return Window{4_750, 5_250} }

// Window3V3 is the range of +3.3 V: ±5 %. Source: ATX12V guide 2.0, Table 2.
func Window3V3() Window { return Window{3_140, 3_470} }

// WindowCard is the range of +12 V at a card plug under ATX 3.x: +5 % / −8 %. Source: ATX 3.0 guide, Table 3-5.
func WindowCard() Window { return Window{11_040, 12_600} }

// Window12V is the range of +12 V at the main and processor plugs. ATX12V 2.x: ±5 % (ATX12V guide 2.0, Table 2). ATX 3.x:
// +5 % / −7 %, of which the guide prints the lower end as 11.20 V (Table 4-2, from memory). An unknown edition gets the
// narrower window.
func Window12V(revision Revision) Window {
	if revision == Revision30 || revision == Revision31 {
		return Window{11_200, 12_600}
	}
	return Window{11_400, 12_600}
}

// Window12VPeak is the wider range the 2.x guide allows at peak load: ±10 % (ATX12V guide 2.0, Table 2, note 1).
func Window12VPeak() Window { return Window{10_800, 13_200} }
