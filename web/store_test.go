//go:build !wasm

package web

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// The store in memory does what browsertest asks of the one in the browser.
func TestStoreInMemory(t *testing.T) {
	s, err := OpenStore()
	require.NoError(t, err)
	_, found, err := s.Get("job/1")
	require.NoError(t, err)
	require.False(t, found)
	value := []byte("first")
	for _, key := range []string{"job/2", "job/1", "stock"} {
		require.NoError(t, s.Put(key, value))
	}
	value[0] = 'x'
	got, found, err := s.Get("job/1")
	require.NoError(t, err)
	require.True(t, found)
	require.Equal(t, "first", string(got), "the store keeps a copy")
	keys, err := s.List("job/")
	require.NoError(t, err)
	require.Equal(t, []string{"job/1", "job/2"}, keys)
	require.NoError(t, s.Delete("job/1"))
	require.NoError(t, s.Delete("job/1"))
	keys, err = s.List("job/")
	require.NoError(t, err)
	require.Equal(t, []string{"job/2"}, keys)
}
