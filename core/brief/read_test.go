package brief

import (
	"os"
	"path/filepath"
	"testing"

	"slipfit/core/format"

	"github.com/stretchr/testify/require"
)

func TestReadRefuses(t *testing.T) {
	head := `{"kind":"slipfit-brief","version":1,"title":"x",`
	for _, c := range []struct{ body, want string }{
		{`"activities":[]}`, "activities: got [], want a list of at least 1"},
		{`"activities":[{}]}`, "activities[0]: got 0 kinds of work"},
		{`"activities":[{"video":{},"games":{}}]}`, "activities[0]: got 2 kinds of work"},
		{`"activities":[{"video":{"streams":0}}]}`, "activities[0].video.streams: got 0, want a whole number between 1 and 16"},
		{`"activities":[{"knitting":{}}]}`, "activities[0].knitting"},
		{`"activities":[{"games":{"class":"hard"}}]}`, "want one of light, ordinary, demanding, traced"},
		{`"budget_minor":-1,"activities":[{"office":{}}]}`, "budget_minor"},
	} {
		_, err := Read("b.json", []byte(head+c.body))
		require.ErrorContains(t, err, c.want)
		require.ErrorContains(t, err, "b.json: ")
	}
}

// TestEveryKindReads writes a brief of every kind and reads it again.
func TestEveryKindReads(t *testing.T) {
	for _, a := range kinds() {
		raw := string(format.Write(&Brief{Head: format.Head{Kind: Kind, Version: Version}, Title: "x", Activities: []Activity{a}}))
		_, err := Read("b.json", []byte(raw))
		require.NoError(t, err, raw)
	}
}

func TestWriteReads(t *testing.T) {
	for name, b := range briefs(t) {
		again, err := Read(name, format.Write(b))
		require.NoError(t, err)
		require.Equal(t, b, again)
	}
}

func FuzzBrief(f *testing.F) {
	files, err := filepath.Glob("../../testdata/briefs/*.brief.json")
	require.NoError(f, err)
	for _, name := range files {
		raw, err := os.ReadFile(name)
		require.NoError(f, err)
		f.Add(raw)
	}
	stock := workshop(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		b, err := Read("fuzz", data)
		if err != nil {
			return
		}
		n := b.Needs(stock)
		for r := range Resource(Resources) {
			if need := n.By[r]; need.Floor < 0 || need.Enough < need.Floor {
				t.Fatalf("%s: floor %d, enough %d", r, need.Floor, need.Enough)
			}
		}
		if string(table(n)) != string(table(b.Needs(stock))) {
			t.Fatal("the same brief gave different needs")
		}
	})
}
