package catalog

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestEmbeddedLoads(t *testing.T) {
	s, err := Embedded()
	require.NoError(t, err)
	require.Greater(t, len(s.Articles()), 400)
}

func BenchmarkEmbedded(b *testing.B) {
	for b.Loop() {
		if _, err := Embedded(); err != nil {
			b.Fatal(err)
		}
	}
}
