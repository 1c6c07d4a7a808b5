package verb_test

import (
	"encoding/json"
	"strings"
	"testing"

	"slipfit/core/verb"

	"github.com/stretchr/testify/require"
)

// TestRepairsNameWhatAsks asks for one thing that cannot be: some repair gives up just the answer or the choice that asks it, and
// once that is taken out of the brief or left open a build stands at the repair's price.
func TestRepairsNameWhatAsks(t *testing.T) {
	all := jobs(t)
	for _, ask := range []struct {
		job, path string
		value     any
		keep      string
	}{
		{"family", "place.width_mm", 60, ""},
		{"family", "budget_minor", 60_000, ""},
		{"bird-sound", "place.noise_dba", 10, ""},
		{"museum-pottery", "", nil, "graphics=none"},
	} {
		for _, j := range all {
			if j.name != ask.job {
				continue
			}
			var keep []string
			seat := ""
			if ask.keep != "" {
				keep = []string{ask.keep}
				seat, _, _ = strings.Cut(ask.keep, "=")
			}
			y, err := j.bench.Why(t.Context(), answering(t, j.brief, ask.path, ask.value), keep, nil)
			require.NoError(t, err)
			require.False(t, y.Stands)
			found := false
			for _, r := range y.Repairs {
				if len(r.Drops) != 1 || r.Drops[0].Path != ask.path || r.Drops[0].Seat != seat {
					continue
				}
				found = true
				p, err := j.bench.Plan(t.Context(), answering(t, j.brief, ask.path, nil), verb.PlanAsk{For: "least"}, nil)
				require.NoError(t, err)
				require.Equal(t, "optimal", p.Status)
				require.Equal(t, p.Proof.Price, r.Price)
			}
			require.True(t, found, "%+v: no repair gives it up: %+v", ask, y.Repairs)
		}
	}
}

// answering is a brief with another answer at a path such as "place.width_mm", or without one.
func answering(t *testing.T, file verb.Document, path string, value any) verb.Document {
	t.Helper()
	if path == "" {
		return file
	}
	var said map[string]any
	require.NoError(t, json.Unmarshal(file.Data, &said))
	at := said
	name, rest, nested := strings.Cut(path, ".")
	if nested {
		if at, _ = said[name].(map[string]any); at == nil {
			at = map[string]any{}
			said[name] = at
		}
		name = rest
	}
	if delete(at, name); value != nil {
		at[name] = value
	} else if nested && len(at) == 0 {
		delete(said, path[:strings.IndexByte(path, '.')])
	}
	data, err := json.Marshal(said)
	require.NoError(t, err)
	return verb.Document{Name: file.Name, Data: data}
}
