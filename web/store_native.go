//go:build !wasm

package web

import (
	"slices"
	"strings"
	"sync"
)

// Store keeps records under keys in memory: outside a browser, for components under test.
type Store struct {
	mu      sync.Mutex
	records map[string][]byte
}

// OpenStore returns an empty store.
func OpenStore() (*Store, error) { return &Store{records: map[string][]byte{}}, nil }

// Put keeps value under key, in place of what was there.
func (s *Store) Put(key string, value []byte) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.records[key] = slices.Clone(value)
	return nil
}

// Delete removes the record under key. It is no error when there is none.
func (s *Store) Delete(key string) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	delete(s.records, key)
	return nil
}

// Get returns the record under key, and whether there is one.
func (s *Store) Get(key string) ([]byte, bool, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	value, ok := s.records[key]
	return slices.Clone(value), ok, nil
}

// List returns the keys that begin with prefix, in order.
func (s *Store) List(prefix string) ([]string, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	var keys []string
	for key := range s.records {
		if strings.HasPrefix(key, prefix) {
			keys = append(keys, key)
		}
	}
	slices.Sort(keys)
	return keys, nil
}
