package verb_test

import (
	"context"
	"strings"
	"testing"

	"slipfit/core/format"
	"slipfit/core/verb"

	"github.com/stretchr/testify/require"
)

// TestFrontierProves proves every point of a job's frontier: it stands at the price and value told, the parts that come in are in
// it, and its ends are the plans for the least price and for the most value.
func TestFrontierProves(t *testing.T) {
	for _, j := range jobs(t) {
		if j.name != "bird-sound" {
			continue
		}
		f, err := j.bench.Frontier(t.Context(), j.brief, nil, nil)
		require.NoError(t, err)
		require.Equal(t, "optimal", f.Status)
		require.Greater(t, len(f.Points), 5)
		for i, p := range f.Points {
			proof, err := j.bench.Prove(t.Context(), verb.Document{Name: j.name, Data: format.Write(p.Build)}, &j.brief)
			require.NoError(t, err)
			require.True(t, proof.Stands)
			require.Equal(t, p.Price, proof.Price)
			require.Equal(t, p.Worth, proof.Worth)
			require.LessOrEqual(t, p.Worth, f.Full)
			require.Subset(t, proof.Parts, p.Parts)
			if i > 0 {
				require.Greater(t, p.Price.N, f.Points[i-1].Price.N)
				require.Greater(t, p.Worth, f.Points[i-1].Worth)
			}
		}
		require.Equal(t, j.plan.Proof.Price, f.Points[0].Price)
		best, err := j.bench.Plan(context.Background(), j.brief, verb.PlanAsk{For: "best"}, nil)
		require.NoError(t, err)
		require.Equal(t, best.Build, &f.Points[len(f.Points)-1].Build)
	}
}

// TestPlansReachWhatTheySeek holds the quiet and the small plan to their own proofs.
func TestPlansReachWhatTheySeek(t *testing.T) {
	for _, j := range jobs(t) {
		if j.name != "silent-studio" && j.name != "bird-sound" {
			continue
		}
		quiet, err := j.bench.Plan(t.Context(), j.brief, verb.PlanAsk{For: "quiet"}, nil)
		require.NoError(t, err)
		require.Equal(t, "optimal", quiet.Status)
		require.Zero(t, quiet.Certificate.GapNoise.N)
		loudest := int64(0)
		for _, m := range quiet.Proof.Margins {
			if m.Rule == "noise" {
				loudest = max(loudest, m.Need.N)
			}
		}
		require.LessOrEqual(t, loudest, quiet.Reached.N)
		require.Greater(t, loudest, quiet.Reached.N-100, "told to a tenth")

		small, err := j.bench.Plan(t.Context(), j.brief, verb.PlanAsk{For: "small"}, nil)
		require.NoError(t, err)
		require.Equal(t, "optimal", small.Status)
		require.LessOrEqual(t, j.plan.Proof.Price.N, small.Proof.Price.N)
		require.True(t, strings.HasSuffix(small.Reached.String(), " l"))
	}
}
