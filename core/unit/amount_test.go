package unit

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestAmountsAreExact(t *testing.T) {
	for typed, minor := range map[string]string{
		"2600": "260000", "2600,05": "260005", "0.32": "32", "0.29": "29", "0,3": "30", "1 200.50": "120050", "1\u202f200": "120000", " 7 ": "700", "0": "0",
		"99999999999999999999.99": "9999999999999999999999",
	} {
		got, ok := MinorOf(typed)
		require.True(t, ok, typed)
		require.Equal(t, minor, got, typed)
	}
	for _, typed := range []string{"", "1e6", "12.345", "-5", "lots", ".5", "1,200", "2.600", "1.2.3"} {
		_, ok := MinorOf(typed)
		require.False(t, ok, typed)
	}
	for minor, major := range map[string]string{"260000": "2600", "32": "0.32", "5": "0.05", "120050": "1200.50", "": "", "lots": "lots", "1e6": "1e6"} {
		require.Equal(t, major, MajorOf(minor), minor)
	}
	require.Equal(t, "an amount in EUR between 100 and 1000000", WantedInMajor("a whole number of minor units between 10000 and 100000000", "EUR"))
}
