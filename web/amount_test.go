package web

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestMoneyIsTypedInWholeUnits(t *testing.T) {
	for typed, minor := range map[string]any{
		"2600": json.Number("260000"), "2600,05": json.Number("260005"), "0.32": json.Number("32"), "0,3": json.Number("30"), "1 200.50": json.Number("120050"),
		"1\u202f200": json.Number("120000"), " 7 ": json.Number("700"), "0": json.Number("0"), "": nil,
		// What is no amount is refused by the core, never taken for another one.
		"1e6": "1e6", "12.345": "12.345", "-5": "-5", "lots": "lots", ".5": ".5", "1,200": "1,200", "2.600": "2.600",
	} {
		require.Equal(t, minor, minorOf(typed), typed)
	}
}
