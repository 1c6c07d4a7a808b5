package balance

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// TestEveryNumberUnfolds requires of every row of every planned build's balance that it tells where its have comes from and the whole
// arithmetic of its need, and of every outcome its arithmetic, what its band rests on and its source.
func TestEveryNumberUnfolds(t *testing.T) {
	rows := 0
	for _, j := range jobs(t) {
		alone := j.said.Alone(j.stock)
		for i, a := range Of(t.Context(), j.build, j.said, j.stock).Activities {
			for _, row := range a.Rows {
				rows++
				need := alone[i].Needs.By[row.Resource]
				require.Contains(t, row.Why, need.Reason, "%s: %s", a.Name, row.Resource)
				require.Greater(t, len(row.Why), len(need.Reason), "%s: %s tells nothing of what there is", a.Name, row.Resource)
				require.NotEmpty(t, need.Source, "%s: %s", a.Name, row.Resource)
			}
			for _, f := range a.Figures {
				require.NotEmpty(t, f.Why, f.What)
				require.NotEmpty(t, f.Band, f.What)
				require.NotEmpty(t, f.Source, f.What)
			}
		}
	}
	require.Greater(t, rows, 300)
}
