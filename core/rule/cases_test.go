package rule

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/format"
	"slipfit/core/part"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// The cases of a rule lie in testdata/rules/ID/*.json. Each starts from the bench (testdata/rules/bench.json: a few
// parts with round figures and a build that stands), changes it, and states every margin the rule must then find.
type ruleCase struct {
	About  string                     `json:"about"`            // what the case shows, with its source where it has one
	Seats  map[string]json.RawMessage `json:"seats,omitempty"`  // seat → filled seat of a build file, a list of them, or null
	Layout string                     `json:"layout,omitempty"` // in place of the bench's
	Plate  int                        `json:"plate,omitempty"`
	Set    map[string]json.RawMessage `json:"set,omitempty"`  // "part-id.path[0].field" → value
	Drop   []string                   `json:"drop,omitempty"` // "part-id.path.field" taken off the data sheet
	Needs  json.RawMessage            `json:"needs,omitempty"`
	Want   []wantMargin               `json:"want"`
}

type wantMargin struct {
	Subject string   `json:"subject,omitempty"`
	Have    string   `json:"have,omitempty"`
	Need    string   `json:"need,omitempty"`
	Diff    string   `json:"diff,omitempty"`
	Verdict string   `json:"verdict"`
	Advice  bool     `json:"advice,omitempty"`
	Missing []string `json:"missing,omitempty"`
	Why     string   `json:"why,omitempty"` // a piece of the sentence
}

// caseNeeds is what a case says of the brief's needs.
type caseNeeds struct {
	By map[string]struct {
		Floor, Enough int64
		Weight        int
	} `json:"by"`
	Screens []brief.Screen  `json:"screens"`
	Decode  []part.Codec    `json:"decode"`
	Encode  []part.Codec    `json:"encode"`
	Loads   []brief.Load    `json:"loads"`
	ECC     bool            `json:"ecc"`
	Copies  bool            `json:"copies"`
	Written brief.Written   `json:"written"`
	Budget  int64           `json:"budget"`
	Place   json.RawMessage `json:"place"`
	Wish    json.RawMessage `json:"wish"`
}

// TestRuleCases checks every rule against its cases: each rule has one that passes to the figure, one at the exact
// limit where it has a limit, one that fails, and one with a figure missing where it reads a figure.
func TestRuleCases(t *testing.T) {
	for _, r := range All {
		t.Run(r.ID, func(t *testing.T) {
			files, err := filepath.Glob("../../testdata/rules/" + r.ID + "/*.json")
			require.NoError(t, err)
			require.NotEmpty(t, files, "rule %s has no cases", r.ID)
			var passes, fails bool
			for _, f := range files {
				t.Run(strings.TrimSuffix(filepath.Base(f), ".json"), func(t *testing.T) {
					var c ruleCase
					raw, err := os.ReadFile(f)
					require.NoError(t, err)
					d := json.NewDecoder(strings.NewReader(string(raw)))
					d.DisallowUnknownFields()
					require.NoError(t, d.Decode(&c), f)
					require.NotEmpty(t, c.About, "what does the case show?")
					b, n := bench(t, c)
					got := NewView(b, n).Run(r)
					require.Len(t, got, len(c.Want), "margins found: %v", tell(got))
					for i, w := range c.Want {
						check(t, w, got[i])
						passes = passes || w.Verdict == "snug" || w.Verdict == "loose"
						fails = fails || w.Verdict != "snug" && w.Verdict != "loose" || w.Advice && strings.HasPrefix(w.Diff, "−")
					}
				})
			}
			require.True(t, passes, "rule %s has no case that passes", r.ID)
			require.True(t, fails, "rule %s has no case that fails", r.ID)
		})
	}
}

func check(t *testing.T, w wantMargin, got Margin) {
	t.Helper()
	require.Equal(t, w.Subject, got.Subject)
	require.Equal(t, w.Verdict, got.Verdict.String(), "verdict of %q: %s", got.Subject, got.Why())
	require.Equal(t, w.Advice, got.Advice, "advice of %q", got.Subject)
	require.Equal(t, w.Missing, got.Missing)
	require.Contains(t, got.Why(), w.Why)
	require.NotEmpty(t, got.Why(), "a margin says why")
	if w.Verdict == "unknown" {
		require.NotEmpty(t, w.Missing, "an unknown margin names what is missing")
		return
	}
	require.Equal(t, w.Have, got.Have.String(), "have of %q: %s", got.Subject, got.Why())
	require.Equal(t, w.Need, got.Need.String(), "need of %q: %s", got.Subject, got.Why())
	if w.Diff != "" {
		require.Equal(t, w.Diff, got.Diff().String(), "margin of %q", got.Subject)
	}
}

func tell(list []Margin) []string {
	var out []string
	for _, m := range list {
		out = append(out, fmt.Sprintf("%q have %s need %s %s: %s", m.Subject, m.Have, m.Need, m.Verdict, m.Why()))
	}
	return out
}

// bench makes the build and the needs of a case.
func bench(t testing.TB, c ruleCase) (*build.Build, *brief.Needs) {
	t.Helper()
	raw, err := os.ReadFile("../../testdata/rules/bench.json")
	require.NoError(t, err)
	var doc struct {
		Stock map[string][]map[string]any `json:"stock"`
		Build map[string]any              `json:"build"`
	}
	require.NoError(t, json.Unmarshal(raw, &doc))
	parts := map[string]map[string]any{}
	for _, list := range doc.Stock {
		for _, p := range list {
			parts[p["id"].(string)] = p
		}
	}
	for path, v := range c.Set {
		var value any
		require.NoError(t, json.Unmarshal(v, &value))
		edit(t, parts, path, value)
	}
	for _, path := range c.Drop {
		edit(t, parts, path, nil)
	}
	var stock part.Stock
	read := func(kind string, into any) {
		data, err := json.Marshal(doc.Stock[kind])
		require.NoError(t, err)
		require.NoError(t, format.Value("bench.json "+kind, data, into))
	}
	read("cases", &stock.Cases)
	read("boards", &stock.Boards)
	read("processors", &stock.Processors)
	read("coolers", &stock.Coolers)
	read("memory", &stock.Memory)
	read("graphics", &stock.Graphics)
	read("supplies", &stock.Supplies)
	read("drives", &stock.Drives)
	read("fans", &stock.Fans)
	read("monitors", &stock.Monitors)
	read("cards", &stock.Cards)
	read("ups", &stock.UPS)
	read("services", &stock.Services)
	return benchBuild(t, doc.Build, c, &stock), benchNeeds(t, c)
}

func benchBuild(t testing.TB, file map[string]any, c ruleCase, stock *part.Stock) *build.Build {
	t.Helper()
	var seats []any
	for _, s := range file["seats"].([]any) {
		if _, changed := c.Seats[s.(map[string]any)["seat"].(string)]; !changed {
			seats = append(seats, s)
		}
	}
	for name, raw := range c.Seats {
		var v any
		require.NoError(t, json.Unmarshal(raw, &v))
		list, several := v.([]any)
		if !several && v != nil {
			list = []any{v}
		}
		for _, s := range list {
			s.(map[string]any)["seat"] = name
			seats = append(seats, s)
		}
	}
	file["seats"] = seats
	if c.Layout != "" {
		file["layout"] = c.Layout
	}
	if c.Plate != 0 {
		file["plate"] = c.Plate
	}
	data, err := json.Marshal(file)
	require.NoError(t, err)
	b, err := build.Read("bench build", data, stock)
	require.NoError(t, err)
	return b
}

func benchNeeds(t testing.TB, c ruleCase) *brief.Needs {
	t.Helper()
	var n brief.Needs
	if c.Needs == nil {
		return &n
	}
	var in caseNeeds
	d := json.NewDecoder(strings.NewReader(string(c.Needs)))
	d.DisallowUnknownFields()
	require.NoError(t, d.Decode(&in))
	for name, need := range in.By {
		found := false
		for r := range brief.Resource(brief.Resources) {
			if r.String() == name {
				n.By[r] = brief.Need{Resource: r, Floor: need.Floor, Enough: need.Enough, Weight: need.Weight, Reason: "the case asks it"}
				found = true
			}
		}
		require.True(t, found, "no resource %q", name)
	}
	for _, codec := range in.Decode {
		n.Decode = append(n.Decode, brief.CodecNeed{Codec: codec, Reason: "the case asks it"})
	}
	for _, codec := range in.Encode {
		n.Encode = append(n.Encode, brief.CodecNeed{Codec: codec, Reason: "the case asks it"})
	}
	n.Screens, n.Loads, n.ECC, n.Copies, n.Written = in.Screens, in.Loads, in.ECC, in.Copies, in.Written
	n.Budget = unit.Money(in.Budget)
	if in.Place != nil {
		require.NoError(t, format.Value("place", in.Place, &n.Place))
	}
	if in.Wish != nil {
		require.NoError(t, format.Value("wish", in.Wish, &n.Wish))
	}
	return &n
}

// edit sets a field of a part by its path, or takes it away where the value is nil.
func edit(t testing.TB, parts map[string]map[string]any, path string, value any) {
	t.Helper()
	id, rest, ok := strings.Cut(path, ".")
	require.True(t, ok, "path %q names a part and a field", path)
	p, ok := parts[id]
	require.True(t, ok, "no part %q on the bench", id)
	var at any = p
	steps := strings.Split(strings.ReplaceAll(rest, "[", ".["), ".")
	for i, step := range steps {
		last := i == len(steps)-1
		if strings.HasPrefix(step, "[") {
			n, err := strconv.Atoi(strings.Trim(step, "[]"))
			require.NoError(t, err)
			list := at.([]any)
			require.Less(t, n, len(list), "path %q", path)
			if last {
				list[n] = value
				return
			}
			at = list[n]
			continue
		}
		object := at.(map[string]any)
		switch {
		case last && value == nil:
			require.Contains(t, object, step, "path %q", path)
			delete(object, step)
			return
		case last:
			object[step] = value
			return
		}
		require.Contains(t, object, step, "path %q", path)
		at = object[step]
	}
}
