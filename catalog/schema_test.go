package catalog

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "write the schemas anew")

const regenerate = "go test ./catalog -run TestSchemas -update"

func TestSchemas(t *testing.T) {
	want := map[string]bool{}
	for _, name := range Names() {
		text, ok := Schema(name)
		require.True(t, ok, name)
		path := filepath.Join("schema", name+".schema.json")
		want[path] = true
		if *update {
			require.NoError(t, os.WriteFile(path, text, 0o644))
			continue
		}
		stored, err := os.ReadFile(path)
		require.NoError(t, err, "run: %s", regenerate)
		require.Equal(t, string(text), string(stored), "%s is stale; run: %s", path, regenerate)
	}
	stored, err := filepath.Glob("schema/*")
	require.NoError(t, err)
	for _, path := range stored {
		require.True(t, want[path], "%s belongs to no catalog file", path)
	}
	_, ok := Schema("hats")
	require.False(t, ok)
}

// compiled is the schema as an independent, general validator takes it.
func compiled(t testing.TB, name string) *jsonschema.Schema {
	t.Helper()
	schema, err := jsonschema.NewCompiler().Compile(filepath.Join("schema", name+".schema.json"))
	require.NoError(t, err)
	return schema
}

// valid asks the general validator about a file's bytes.
func valid(schema *jsonschema.Schema, data []byte) error {
	value, err := jsonschema.UnmarshalJSON(bytes.NewReader(data))
	if err != nil {
		return err
	}
	return schema.Validate(value)
}

func TestGeneralValidatorTakesEveryFile(t *testing.T) {
	for _, name := range Names() {
		data, err := embedded.ReadFile(name + ".json")
		require.NoError(t, err)
		require.NoError(t, valid(compiled(t, name), data), name)
	}
}

// TestValidatorAndLoaderAgree breaks one place of a sound file at a time: the general validator refuses it by the schema,
// the loader refuses it by name.
func TestValidatorAndLoaderAgree(t *testing.T) {
	sound := func(name string) string {
		data, err := embedded.ReadFile(name + ".json")
		require.NoError(t, err)
		return string(data)
	}
	cut := func(from, to string) func(string) string {
		return func(s string) string { return strings.Replace(s, from, to, 1) }
	}
	cases := []struct {
		name, file string
		change     func(string) string
		says       string
	}{
		{"price is a text", "fans", cut(`"price_minor": 700`, `"price_minor": "700"`), `fans.json: parts[0].price_minor: got "700", want a whole number of minor units between 0 and 10000000`},
		{"stock below nought", "fans", cut(`"stock": `, `"stock": -1`), "parts[0].stock: got -1"},
		{"price is a fraction", "fans", cut(`"price_minor": 700`, `"price_minor": 700.5`), "parts[0].price_minor: got 700.5"},
		{"length out of range", "graphics", cut(`"length_mm": `, `"length_mm": 9`), "parts[0].length_mm: got 9"},
		{"unknown field", "cases", cut(`"volume_l"`, `"volume"`), "parts[0].volume: got"},
		{"unknown field deep down", "cases", cut(`"breathing_mm"`, `"breathing_cm"`), "parts[0].layouts[0].card.breathing_cm: got"},
		{"field left out", "supplies", cut(`"design_guide": "2.x",`, ``), "parts[0].design_guide: got nothing, want one of 2.x, 3.0, 3.1"},
		{"word unknown", "boards", cut(`"form": "micro-atx"`, `"form": "tiny-atx"`), `parts[0].form: got "tiny-atx", want one of atx, micro-atx, mini-itx`},
		{"version is a number", "boards", cut(`"firmware": "1.8"`, `"firmware": 1.8`), `parts[0].firmware: got 1.8, want a version as a text`},
		{"list is an object", "drives", cut(`"parts": [`, `"parts": {}, "rest": [`), "parts: got {}, want a list"},
		{"list too short", "coolers", cut(`"sockets": [`, `"sockets": [], "was": [`), "parts[0].sockets: got [], want a list of at least 1"},
		{"id with a capital", "ups", cut(`"id": "dunmains`, `"id": "Dunmains`), "parts[0].id: got"},
		{"flag is a number", "memory", cut(`"ecc": false`, `"ecc": 0`), "parts[0].ecc: got 0, want true or false"},
		{"wrong kind", "memory", cut(`"slipfit-memory"`, `"slipfit-fans"`), `kind: got "slipfit-fans", want "slipfit-memory"`},
		{"later version", "memory", cut(`"version": 1`, `"version": 2`), "version: got 2, want at most 1"},
		{"null where a value must be", "cards", cut(`"use": "network"`, `"use": null`), "parts[0].use: got null"},
		{"file cut in the middle", "services", func(s string) string { return s[:len(s)/2] }, "broken JSON at line"},
		{"file cut at the last brace", "monitors", func(s string) string { return strings.TrimRight(s, "}\n") }, "broken JSON at line"},
		{"file empty", "processors", func(string) string { return "" }, "an empty file"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			before := sound(c.file)
			after := c.change(before)
			require.NotEqual(t, before, after, "the change found nothing to change")
			require.Error(t, valid(compiled(t, c.file), []byte(after)))
			_, err := Load(fstest.MapFS{"shop.json": {Data: []byte(sound("shop"))}, c.file + ".json": {Data: []byte(after)}, "services.json": {Data: []byte(orSound(c.file, after, sound))}})
			require.Error(t, err)
			require.Contains(t, err.Error(), c.file+".json")
			require.Contains(t, err.Error(), c.says)
		})
	}
}

// orSound is the services file, broken where that is the file under test.
func orSound(file, broken string, sound func(string) string) string {
	if file == "services" {
		return broken
	}
	return sound("services")
}

// TestValidatorAndLoaderAgreeOnWhatIsMissing drops every optional figure in turn: both still take the file.
func TestValidatorAndLoaderAgreeOnWhatIsMissing(t *testing.T) {
	data, err := embedded.ReadFile("ups.json")
	require.NoError(t, err)
	schema := compiled(t, "ups")
	shop, err := embedded.ReadFile("shop.json")
	require.NoError(t, err)
	services, err := embedded.ReadFile("services.json")
	require.NoError(t, err)
	lines := strings.Split(string(data), "\n")
	dropped := 0
	for i, line := range lines {
		field := strings.TrimSpace(line)
		if !strings.HasSuffix(field, ",") || !strings.HasPrefix(field, `"`) || i+1 >= len(lines) {
			continue
		}
		name := strings.Split(field, `"`)[1]
		without := strings.Join(append(append([]string{}, lines[:i]...), lines[i+1:]...), "\n")
		_, err := Load(fstest.MapFS{"shop.json": {Data: shop}, "services.json": {Data: services}, "ups.json": {Data: []byte(without)}})
		general := valid(schema, []byte(without))
		require.Equal(t, general == nil, err == nil, fmt.Sprintf("line %d, %s: validator %v, loader %v", i+1, name, general, err))
		if err == nil {
			dropped++
		}
	}
	require.Greater(t, dropped, 50)
}
