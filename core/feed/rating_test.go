package feed

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Source: PCIe CEM as set out in encyclopaedia article "PCI Express"; ATX 3.0 guide, Table 3-5.
func TestCardCeilings(t *testing.T) {
	slot, ok := SlotPower(16, true)
	require.True(t, ok)
	require.Equal(t, SlotRating{75_000, 5_500, 3_000}, slot)
	require.Equal(t, int64(375_000), CardCeilingMW(slot.TotalMW, Card8MW, Card8MW))
	require.Equal(t, int64(150_000), CardCeilingMW(slot.TotalMW, Card6MW))
	require.Equal(t, int64(300_000), CardCeilingMW(slot.TotalMW, Card8MW, Card6MW))
	require.Equal(t, int64(CardCeilingCEM51MW), CardCeilingMW(slot.TotalMW, Card12MW))

	for _, lanes := range []int{4, 8} {
		slot, ok = SlotPower(lanes, false)
		require.True(t, ok)
		require.Equal(t, int64(25_000), slot.TotalMW)
	}
	slot, _ = SlotPower(1, false)
	require.Equal(t, int64(10_000), slot.TotalMW)
	slot, _ = SlotPower(1, true)
	require.Equal(t, int64(25_000), slot.TotalMW)
	_, ok = SlotPower(3, true)
	require.False(t, ok)
}

// Source: ATX 3.0 guide § 5.2.2.4.3 and § 5.2.2.4 contact ratings: 662.4 W against 600 W, 288 W against 150 W.
func TestContactMargins(t *testing.T) {
	require.Equal(t, int64(1104), ContactMarginPermille(6, Card12PinMA, Card12MW))
	require.Equal(t, int64(1920), ContactMarginPermille(3, Card6PinMA, Card8MW))
}

// Source: beside each row of sense.csv.
func TestSenseVectors(t *testing.T) {
	pins := map[string]SensePin{"ground": SenseGround, "open": SenseOpen, "joined": SenseJoined}
	for _, row := range vectors(t, "sense.csv") {
		sense0, sense1 := pins[row["sense0"]], pins[row["sense1"]]
		var start, sustained int64
		var ok bool
		switch row["plug"] {
		case "2x4":
			sustained, ok = Card8SenseMW(sense1, sense0)
		case "12VHPWR", "12V-2x6":
			kind := Card12CEM50
			if row["plug"] == "12V-2x6" {
				kind = Card12CEM51
			}
			var power Card12Sense
			power, ok = Card12SensePower(sense0, sense1, kind)
			start, sustained = power.StartMW, power.SustainedMW
		default:
			require.Fail(t, "plug of unknown kind", row["plug"])
		}
		require.Equal(t, row["sustained_w"] != "reserved", ok, row)
		if !ok {
			continue
		}
		require.Equal(t, milli(t, row["sustained_w"]), sustained, row)
		if row["start_w"] != "" {
			require.Equal(t, milli(t, row["start_w"]), start, row)
		}
	}
}

// Source: published answer on the SATA specification (4.5 A a rail): four disks of 2.0 A at start on one plug are refused,
// two are not.
func TestSATASplitter(t *testing.T) {
	require.Equal(t, HeaderLoad{8_000, -3_500}, SumHeader(SATARailMA, 2_000, 2_000, 2_000, 2_000))
	require.Equal(t, HeaderLoad{4_000, 500}, SumHeader(SATARailMA, 2_000, 2_000))
	require.Equal(t, HeaderLoad{4_500, 0}, SumHeader(SATARailMA, 4_500))
	require.Equal(t, int64(SATA12MW), int64(SATARailMA*12))
	require.Equal(t, int64(SATA5MW), int64(SATARailMA*5))
	require.Equal(t, int64(SATA3V3MW), int64(SATARailMA*33/10))
}

// Source: ATX12V guide 2.0, Table 2; ATX 3.0 guide, Table 3-5.
func TestVoltageWindows(t *testing.T) {
	require.False(t, Window12V(Revision2).Holds(11_100))
	require.True(t, WindowCard().Holds(11_100))
	require.False(t, WindowCard().Holds(11_039))
	require.True(t, WindowCard().Holds(12_600))
	require.False(t, WindowCard().Holds(12_601))
	require.True(t, Window12VPeak().Holds(11_100))
	require.Equal(t, Window12V(Revision2), Window12V(RevisionUnknown))
	require.Equal(t, Window{11_200, 12_600}, Window12V(Revision31))
	require.True(t, Window5V().Holds(4_750))
	require.False(t, Window3V3().Holds(3_139))
}

// Source: 4-Wire PWM Controlled Fans Specification § 2.1.3; common practice for the headers.
func TestHeaders(t *testing.T) {
	require.Equal(t, int64(1500), FanRPM(50_000))
	require.Equal(t, HeaderLoad{900, 100}, SumHeader(FanHeaderMA, 300, 300, 300))
	require.Equal(t, HeaderLoad{1_200, -200}, SumHeader(FanHeaderMA, 400, 400, 400))
	require.Equal(t, HeaderLoad{0, 1_000}, SumHeader(FanHeaderMA))
	require.Equal(t, int64(50), LEDsWithin(LightHeader5VMA))
	require.Equal(t, int64(1_000), int64(USB2HeaderMA))
	require.Equal(t, int64(1_800), int64(USB3HeaderMA))
}
