package brief

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slipfit/core/format"
	"slipfit/core/part"

	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "write the golden needs anew")

// workshop is a stock that holds what a brief reads of one: the calibration that comes with the catalog, and a tax.
func workshop(t testing.TB) *part.Stock {
	t.Helper()
	raw, err := os.ReadFile("../../catalog/calibration.json")
	require.NoError(t, err)
	var f struct {
		format.Head
		Calibration part.Calibration `json:"calibration"`
	}
	require.NoError(t, format.Read("calibration.json", raw, "slipfit-calibration", 1, &f))
	return &part.Stock{Shop: part.Shop{Tax: 21_000}, Calibration: f.Calibration}
}

func briefs(t testing.TB) map[string]*Brief {
	t.Helper()
	files, err := filepath.Glob("../../testdata/briefs/*.brief.json")
	require.NoError(t, err)
	require.Len(t, files, 8)
	all := map[string]*Brief{}
	for _, f := range files {
		raw, err := os.ReadFile(f)
		require.NoError(t, err)
		b, err := Read(f, raw)
		require.NoError(t, err)
		all[strings.TrimSuffix(filepath.Base(f), ".brief.json")] = b
	}
	return all
}

// TestGoldenNeeds holds the needs of the briefs under testdata against what was read through and found right.
func TestGoldenNeeds(t *testing.T) {
	stock := workshop(t)
	for name, b := range briefs(t) {
		t.Run(name, func(t *testing.T) {
			got := table(b.Needs(stock))
			path := "../../testdata/briefs/" + name + ".needs.golden"
			if *update {
				require.NoError(t, os.WriteFile(path, got, 0o644))
			}
			want, err := os.ReadFile(path)
			require.NoError(t, err)
			require.Equal(t, string(want), string(got))
		})
	}
}

// table prints needs as a person reads them through.
func table(n *Needs) []byte {
	var b bytes.Buffer
	for r := range Resource(Resources) {
		if need, ok := n.Get(r); ok {
			fmt.Fprintf(&b, "%-18s floor %-12s enough %-12s weight %d\n    %s\n    source: %s\n", r.Title(), need.FloorQ(), need.EnoughQ(), need.Weight, need.Reason, need.Source)
		}
	}
	for _, s := range n.Screens {
		fmt.Fprintf(&b, "screen  %d × %d × %d Hz × %d bits, %d of it, owned %v\n", s.Width, s.Height, s.Refresh, s.Bits, s.Count, s.Owned)
	}
	for _, c := range n.Decode {
		fmt.Fprintf(&b, "reads   %s: %s\n", c.Codec, c.Reason)
	}
	for _, c := range n.Encode {
		fmt.Fprintf(&b, "writes  %s: %s\n", c.Codec, c.Reason)
	}
	for _, l := range n.Loads {
		fmt.Fprintf(&b, "load    %s: processor %s, graphics %s, memory %s, drives %s, %d h a year\n", l.Activity, l.Processor.Q(), l.Graphics.Q(), l.Memory.Q(), l.Drives.Q(), l.Hours)
	}
	for _, m := range n.Aims {
		fmt.Fprintf(&b, "aim     %s: %s; wanted %g %s\n", m.Activity, m.What, float64(m.Want)/1000, m.Unit)
	}
	fmt.Fprintf(&b, "written boot %s, cache %s, archive %s a year\n", n.Written.Boot.Q(), n.Written.Cache.Q(), n.Written.Archive.Q())
	fmt.Fprintf(&b, "budget  %s before tax; error correcting %v; copies %v\n", n.Budget, n.ECC, n.Copies)
	for _, a := range n.Assumed {
		fmt.Fprintf(&b, "assumed %s\n", a)
	}
	return b.Bytes()
}
