package verb_test

import (
	"context"
	"testing"

	"slipfit/core/format"
	"slipfit/core/verb"

	"github.com/stretchr/testify/require"
)

// What sits in a seat changes nothing, whoever it belongs to, and of the ways to fit it one is as it is.
func TestWhatSitsChangesNothing(t *testing.T) {
	w := (&job{}).fresh(t)
	asked := verb.Document{Name: "asked", Data: []byte(`{"kind": "slipfit-brief", "version": 1, "title": "x", "activities": [{"office": {}}]}`)}
	plan, err := w.Plan(context.Background(), asked, verb.PlanAsk{For: "least", Keep: []string{"case=kestrane-duo-19"}}, nil)
	require.NoError(t, err)
	file := verb.Document{Name: "build", Data: format.Write(plan.Build)}
	for _, owned := range []bool{false, true} {
		for i := range plan.Build.Seats {
			plan.Build.Seats[i].Owned = owned
		}
		file.Data = format.Write(plan.Build)
		for _, seat := range []string{"case", "processor", "memory", "boot"} {
			trial, err := w.Try(file, &asked, seat)
			require.NoError(t, err)
			for _, p := range trial.Parts {
				if p.ID == trial.Now {
					require.Zero(t, p.Change.N, "%s, owned %t", seat, owned)
				} else if owned {
					require.Equal(t, p.Price, p.Change, "%s: %s is bought in place of what costs nothing", seat, p.ID)
				}
			}
		}
		ways, err := w.Ways(file, &asked, "case")
		require.NoError(t, err)
		sits := 0
		for _, p := range ways.Parts {
			if p.Sits {
				sits++
				require.Equal(t, string(plan.Build.Layout), p.Layout)
				require.Equal(t, plan.Build.Plate, p.Plate)
			}
		}
		require.Greater(t, len(ways.Parts), 1)
		require.Equal(t, 1, sits)
	}
}

// As many go in as a change says, or as sit there.
func TestChangeFitsAsManyAsItSays(t *testing.T) {
	w := (&job{}).fresh(t)
	asked := verb.Document{Name: "asked", Data: []byte(`{"kind": "slipfit-brief", "version": 1, "title": "x", "activities": [{"office": {}}]}`)}
	plan, err := w.Plan(context.Background(), asked, verb.PlanAsk{For: "least", Keep: []string{"case=kestrane-plain-38"}}, nil)
	require.NoError(t, err)
	file := verb.Document{Name: "build", Data: format.Write(plan.Build)}
	change := func(c verb.Change) (count int, face string) {
		t.Helper()
		proof, err := w.Change(context.Background(), file, &asked, c)
		require.NoError(t, err)
		file.Data = format.Write(proof.Build)
		for _, s := range proof.Build.Seats {
			if string(s.Seat) == c.Seat {
				require.Equal(t, c.Part, s.Part)
				count, face = s.Count, string(s.Face)
			}
		}
		return max(count, 1), face
	}
	for _, c := range []struct {
		change verb.Change
		count  int
		face   string
	}{
		{verb.Change{Seat: "memory", Part: "umbriq-plain-16-gb-3200", Count: 2}, 2, ""},
		{verb.Change{Seat: "memory", Part: "umbriq-plain-8-gb-3200"}, 2, ""},
		{verb.Change{Seat: "memory", Part: "umbriq-plain-8-gb-3200", Count: 1}, 1, ""},
		{verb.Change{Seat: "fans", Part: "aerlitt-leaf-120", Face: "top"}, 1, "top"},
		{verb.Change{Seat: "fans", Part: "aerlitt-leaf-120", Count: 2, Face: "top"}, 2, "top"},
		{verb.Change{Seat: "fans", Part: "aerlitt-leaf-120", Owned: true}, 2, "top"},
		{verb.Change{Seat: "fans", Part: "aerlitt-leaf-120-x3", Count: 3, Face: "front"}, 3, "front"},
	} {
		count, face := change(c.change)
		require.Equal(t, c.count, count, "%+v", c.change)
		require.Equal(t, c.face, face, "%+v", c.change)
	}
	change(verb.Change{Seat: "fans", Part: "aerlitt-leaf-120", Count: 2, Face: "top"})
	trial, err := w.Try(file, &asked, "fans")
	require.NoError(t, err)
	require.Equal(t, "aerlitt-leaf-120", trial.Now)
	for _, p := range trial.Parts {
		if p.ID == trial.Now {
			require.Zero(t, p.Change.N)
			require.Equal(t, 2, p.Count)
		}
	}
	_, err = w.Change(context.Background(), file, &asked, verb.Change{Seat: "fans", Part: "aerlitt-leaf-120", Count: 9, Face: "top"})
	require.ErrorContains(t, err, "no part \"aerlitt-leaf-120\" that is fitted so")
}
