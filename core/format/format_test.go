package format_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slipfit/core/format"
	"slipfit/core/part"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// sheet is a small file with one field of every kind the format knows.
type sheet struct {
	format.Head
	Name   string                         `json:"name" pattern:"^[a-z ]+$" doc:"What it is called."`
	Note   string                         `json:"note,omitempty" doc:"Anything."`
	Form   part.BoardForm                 `json:"form" doc:"Form."`
	Faces  []part.Face                    `json:"faces,omitempty" doc:"Faces."`
	Long   unit.Length                    `json:"long_mm" range:"1..600" doc:"How long."`
	Wide   unit.Figure[unit.Length]       `json:"wide_mm,omitzero" range:"0.5..20" doc:"How wide."`
	Room   unit.Figure[unit.Memory]       `json:"room_gib,omitzero" range:"0..64" doc:"Memory."`
	Rate   unit.Figure[unit.TransferRate] `json:"rate_mt_s,omitzero" range:"1600..10000" doc:"Rate."`
	Later  unit.Figure[unit.Release]      `json:"later,omitzero" range:"1..3" doc:"Version."`
	Asked  unit.Figure[bool]              `json:"asked,omitzero" doc:"Whether."`
	Loud   bool                           `json:"loud,omitzero" doc:"Whether it is loud."`
	Ratio  float64                        `json:"ratio,omitempty" range:"0..1" doc:"A share."`
	Pieces []piece                        `json:"pieces,omitempty" min:"2" doc:"At least two."`
	Lid    *piece                         `json:"lid,omitzero" doc:"A lid."`
}

type piece struct {
	Count unit.Whole `json:"count" range:"1..9" doc:"How many."`
}

const known = "kind, version, name, note, form, faces, long_mm, wide_mm, room_gib, rate_mt_s, later, asked, loud, ratio, pieces, lid"

const least = `{"kind": "slipfit-sheet", "version": 1, "name": "a plate", "form": "atx", "long_mm": 120}`

// with is the least sheet with more fields.
func with(fields string) string {
	return strings.TrimSuffix(least, "}") + ", " + fields + "}"
}

func read(text string) (sheet, error) {
	var s sheet
	err := format.Read("sheet.json", []byte(text), "slipfit-sheet", 2, &s)
	return s, err
}

func TestReadTakesEveryKindOfField(t *testing.T) {
	s, err := read(with(`"note": "größer", "faces": ["front", "side"], "wide_mm": 2.675, "room_gib": 1.5, "rate_mt_s": 6400, "later": "2.14",
		"asked": false, "loud": true, "ratio": 0.25, "pieces": [{"count": 1}, {"count": 9}], "lid": {"count": 3}`))
	require.NoError(t, err)
	require.Equal(t, sheet{
		Head: format.Head{Kind: "slipfit-sheet", Version: 1}, Name: "a plate", Note: "größer", Form: part.ATX, Faces: []part.Face{part.Front, part.Side},
		Long: 120_000, Wide: unit.Known[unit.Length](2675), Room: unit.Known[unit.Memory](1536), Rate: unit.Known[unit.TransferRate](6400),
		Later: unit.Known[unit.Release](2014), Asked: unit.Known(false), Loud: true, Ratio: 0.25, Pieces: []piece{{1}, {9}}, Lid: &piece{3},
	}, s)
}

func TestMissingIsNotNought(t *testing.T) {
	for _, text := range []string{least, with(`"wide_mm": null, "asked": null, "faces": null, "lid": null`)} {
		s, err := read(text)
		require.NoError(t, err)
		_, ok := s.Wide.Get()
		require.False(t, ok)
		_, ok = s.Asked.Get()
		require.False(t, ok)
		require.Nil(t, s.Lid)
		require.Empty(t, s.Faces)
	}
	s, err := read(with(`"room_gib": 0`))
	require.NoError(t, err)
	v, ok := s.Room.Get()
	require.True(t, ok, "nought is a figure")
	require.Zero(t, v)
}

// TestDecimalsAreExact: figures land on their integer base without passing through a binary fraction.
func TestDecimalsAreExact(t *testing.T) {
	for _, c := range []struct {
		text string
		want unit.Length
	}{
		{"0.5", 500}, {"2.675", 2675}, {"1.005", 1005}, {"19.999", 19999}, {"20", 20000}, {"20.000", 20000}, {"20.0000000", 20000}, {"4.35", 4350}, {"0.7", 700},
	} {
		s, err := read(with(`"wide_mm": ` + c.text))
		require.NoError(t, err, c.text)
		require.Equal(t, unit.Known(c.want), s.Wide, c.text)
	}
	for n := range 20_000 { // every thousandth of a millimetre there is
		if n < 500 {
			continue
		}
		s, err := read(with(fmt.Sprintf(`"wide_mm": %d.%03d`, n/1000, n%1000)))
		require.NoError(t, err)
		require.Equal(t, unit.Known(unit.Length(n)), s.Wide)
	}
}

func TestErrorsSayWhereWhatAndWhatWasWanted(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{``, `sheet.json: got an empty file, want one complete JSON value`},
		{" \n\t", `sheet.json: got an empty file, want one complete JSON value`},
		{"\xff\xfe{}", `sheet.json: got bytes that are not UTF-8, want JSON text in UTF-8`},
		{`[]`, `sheet.json: kind: got nothing, want "slipfit-sheet"`},
		{"{\n  \"kind\": oops\n}", `sheet.json: got broken JSON at line 2, column 11 (invalid character 'o' looking for beginning of value), want one complete JSON value`},
		{least + "x", `sheet.json: got broken JSON at line 1, column 90 (invalid character 'x' after top-level value), want one complete JSON value`},
		{`{"kind": "slipfit-brief", "version": 1}`, `sheet.json: kind: got "slipfit-brief", want "slipfit-sheet"`},
		{`{"kind": "slipfit-sheet", "version": 3}`, `sheet.json: version: got 3, want at most 2: the file is of a newer slipfit`},
		{`{"kind": "slipfit-sheet", "version": 0, "name": "a", "form": "atx", "long_mm": 1}`, `sheet.json: version: got 0, want a whole number between 1 and 1000`},
		{`{"kind": "slipfit-sheet", "version": 1, "form": "atx", "long_mm": 1}`, `sheet.json: name: got nothing, want a text`},
		{with(`"name": "twice"`), `sheet.json: name: got "twice", want this field once`},
		{with(`"hight": 3`), `sheet.json: hight: got 3, want no such field here; known are ` + known},
		{with(`"": 3, "a\nb": 4`), "sheet.json: \"\": got 3, want no such field here; known are " + known + "\nsheet.json: \"a\\nb\": got 4, want no such field here; known are " + known},
		{with(`"wide_mm": "3"`), `sheet.json: wide_mm: got "3", want a number of mm between 0.5 and 20`},
		{with(`"wide_mm": -3`), `sheet.json: wide_mm: got -3, want a number of mm between 0.5 and 20`},
		{with(`"wide_mm": 20.001`), `sheet.json: wide_mm: got 20.001, want a number of mm between 0.5 and 20`},
		{with(`"wide_mm": 0.0005`), `sheet.json: wide_mm: got 0.0005, want a number of mm between 0.5 and 20 in steps of 1/1000 mm`},
		{with(`"wide_mm": 1e1`), `sheet.json: wide_mm: got 1e1, want a number of mm between 0.5 and 20 in steps of 1/1000 mm`},
		{with(`"wide_mm": 99999999999999999999`), `sheet.json: wide_mm: got 99999999999999999999, want a number of mm between 0.5 and 20 in steps of 1/1000 mm`},
		{with(`"rate_mt_s": 6400.5`), `sheet.json: rate_mt_s: got 6400.5, want a whole number of MT/s between 1600 and 10000`},
		{with(`"later": 2.1`), `sheet.json: later: got 2.1, want a version as a text such as "2.14" between 1 and 3`},
		{with(`"later": "2."`), `sheet.json: later: got "2.", want a version as a text such as "2.14" between 1 and 3`},
		{with(`"later": "4.0"`), `sheet.json: later: got "4.0", want a version as a text such as "2.14" between 1 and 3`},
		{with(`"asked": "yes"`), `sheet.json: asked: got "yes", want true or false`},
		{with(`"loud": 1`), `sheet.json: loud: got 1, want true or false`},
		{with(`"ratio": 1.5`), `sheet.json: ratio: got 1.5, want a number between 0 and 1`},
		{with(`"faces": "front"`), `sheet.json: faces: got "front", want a list`},
		{with(`"faces": ["front", "inside"]`), `sheet.json: faces[1]: got "inside", want one of front, rear, top, bottom, side`},
		{with(`"pieces": [{"count": 1}]`), `sheet.json: pieces: got [{"count": 1}], want a list of at least 2`},
		{with(`"pieces": [{"count": 1}, {"count": 10}]`), `sheet.json: pieces[1].count: got 10, want a whole number between 1 and 9`},
		{with(`"pieces": [{"count": 1}, {}]`), `sheet.json: pieces[1].count: got nothing, want a whole number between 1 and 9`},
		{with(`"pieces": [{"count": 1}, null]`), `sheet.json: pieces[1]: got null, want an object`},
		{with(`"lid": []`), `sheet.json: lid: got [], want an object`},
		{with(`"note": 5`), `sheet.json: note: got 5, want a text`},
		{strings.Replace(least, `"a plate"`, `"A plate"`, 1), `sheet.json: name: got "A plate", want a text of the form ^[a-z ]+$`},
		{strings.Replace(least, `"a plate"`, `""`, 1), `sheet.json: name: got "", want a text that is not empty`},
		{strings.Replace(least, `"a plate"`, `null`, 1), `sheet.json: name: got null, want a text`},
		{with(`"note": {"deep": "` + strings.Repeat("very ", 20) + `long"}`), `sheet.json: note: got {"deep": "very very very very very very very very very ve..., want a text`},
	} {
		_, err := read(c.text)
		require.EqualError(t, err, c.want)
	}
}

func TestAllErrorsAreTold(t *testing.T) {
	_, err := read(`{"kind": "slipfit-sheet", "version": 1, "name": 7, "form": "big", "long_mm": true, "pieces": [{"count": 0}, {"count": "x"}]}`)
	require.Equal(t, []string{
		`sheet.json: name: got 7, want a text`,
		`sheet.json: form: got "big", want one of atx, micro-atx, mini-itx`,
		`sheet.json: long_mm: got true, want a number of mm between 1 and 600`,
		`sheet.json: pieces[0].count: got 0, want a whole number between 1 and 9`,
		`sheet.json: pieces[1].count: got "x", want a whole number between 1 and 9`,
	}, strings.Split(err.Error(), "\n"))
}

func TestRefusedFileChangesNothing(t *testing.T) {
	s, err := read(least)
	require.NoError(t, err)
	before := s
	require.Error(t, format.Read("sheet.json", []byte(with(`"loud": true, "ratio": 2`)), "slipfit-sheet", 2, &s))
	require.Equal(t, before, s)
}

func TestNestingIsBounded(t *testing.T) {
	deep := func(n int) string { return with(`"note": ` + strings.Repeat("[", n) + strings.Repeat("]", n)) }
	_, err := read(deep(63))
	require.ErrorContains(t, err, "sheet.json: note: got [[[")
	for _, n := range []int{64, 1000, 1_000_000} {
		_, err := read(deep(n))
		require.EqualError(t, err, "sheet.json: got deeper nesting, want at most 64 levels", n)
	}
	_, err = read(with(`"note": "` + strings.Repeat("[", 100) + `\"["`))
	require.NoError(t, err, "brackets in a text do not nest")
}

// TestFileCutAnywhereIsRefused cuts a file at every byte.
func TestFileCutAnywhereIsRefused(t *testing.T) {
	text := string(format.Write(sheet{Head: format.Head{Kind: "slipfit-sheet", Version: 1}, Name: "a plate", Note: "grün", Form: part.ATX, Long: 1500,
		Later: unit.Known[unit.Release](1002), Pieces: []piece{{1}, {2}}}))
	_, err := read(text)
	require.NoError(t, err)
	whole := strings.TrimSpace(text)
	for n := range len(whole) {
		_, err := read(whole[:n])
		require.Error(t, err, "cut at byte %d", n)
		var e *format.Error
		require.ErrorAs(t, err, &e, "cut at byte %d", n)
		require.Equal(t, "sheet.json", e.File)
	}
}

func TestWritePrintsTheFormRead(t *testing.T) {
	s, err := read(with(`"wide_mm": 2.50, "room_gib": 0.5, "asked": false, "faces": ["top"], "pieces": [{"count": 1}, {"count": 2}], "lid": {"count": 4}`))
	require.NoError(t, err)
	require.Equal(t, `{
  "kind": "slipfit-sheet",
  "version": 1,
  "name": "a plate",
  "form": "atx",
  "faces": ["top"],
  "long_mm": 120,
  "wide_mm": 2.5,
  "room_gib": 0.5,
  "asked": false,
  "pieces": [
    {
      "count": 1
    },
    {
      "count": 2
    }
  ],
  "lid": {
    "count": 4
  }
}
`, string(format.Write(s)))
	require.Equal(t, string(format.Write(s)), string(format.Write(&s)))
	again, err := read(string(format.Write(s)))
	require.NoError(t, err)
	require.Equal(t, s, again)
}

func TestValueReadsWithoutAHead(t *testing.T) {
	var p piece
	require.NoError(t, format.Value("piece", []byte(`{"count": 5}`), &p))
	require.Equal(t, piece{5}, p)
	require.EqualError(t, format.Value("piece", []byte(`{"count": 50}`), &p), "piece: count: got 50, want a whole number between 1 and 9")
	require.Equal(t, piece{5}, p)
	var list []unit.Length
	require.NoError(t, format.Value("list", []byte(`[1.5, 2]`), &list))
	require.Equal(t, []unit.Length{1500, 2000}, list)
	require.EqualError(t, format.Value("list", []byte(`[1.5, "2"]`), &list), `list: [1]: got "2", want a number of mm`)
}

func TestMissingListsWhatASheetLeavesOut(t *testing.T) {
	s, err := read(with(`"wide_mm": 3, "rate_mt_s": 2400`))
	require.NoError(t, err)
	require.Equal(t, []string{"room_gib", "later", "asked"}, format.Missing(&s))
	require.Equal(t, []string{"room_gib", "later", "asked"}, format.Missing(s))
}

// TestSchemaSaysWhatReadTakes checks the schema's words; that a general validator agrees with Read by it is tested where the
// catalog's files are.
func TestSchemaSaysWhatReadTakes(t *testing.T) {
	var schema struct {
		Schema     string `json:"$schema"`
		ID         string `json:"$id"`
		Required   []string
		Properties map[string]map[string]any
		Additional *bool `json:"additionalProperties"`
	}
	text := format.Schema("urn:slipfit:sheet", "sheet", &sheet{Head: format.Head{Kind: "slipfit-sheet", Version: 2}})
	require.NoError(t, json.Unmarshal(text, &schema))
	require.Equal(t, "https://json-schema.org/draft/2020-12/schema", schema.Schema)
	require.Equal(t, "urn:slipfit:sheet", schema.ID)
	require.Equal(t, []string{"kind", "version", "name", "form", "long_mm"}, schema.Required)
	require.False(t, *schema.Additional)
	p := schema.Properties
	require.Len(t, p, 16)
	require.Equal(t, "slipfit-sheet", p["kind"]["const"])
	require.EqualValues(t, 2, p["version"]["maximum"])
	require.Equal(t, "number", p["long_mm"]["type"])
	require.Equal(t, []any{"number", "null"}, p["wide_mm"]["type"])
	require.EqualValues(t, 0.5, p["wide_mm"]["minimum"])
	require.EqualValues(t, 20, p["wide_mm"]["maximum"])
	require.Equal(t, []any{"integer", "null"}, p["rate_mt_s"]["type"])
	require.Equal(t, "unit: MT/s", p["rate_mt_s"]["$comment"])
	require.Equal(t, []any{"atx", "micro-atx", "mini-itx"}, p["form"]["enum"])
	require.EqualValues(t, 2, p["pieces"]["minItems"])
	require.Equal(t, "^[a-z ]+$", p["name"]["pattern"])
	require.Equal(t, "How wide.", p["wide_mm"]["description"])
	require.NoError(t, json.Unmarshal(format.Schema("urn:slipfit:sheet", "sheet", sheet{}), &schema))
	require.NotContains(t, schema.Properties["kind"], "const", "no head filled in, no kind asked for")
}

// roots are the catalog files, as fuzzing starts from them.
func roots(t testing.TB) []string {
	t.Helper()
	list, err := filepath.Glob("../../catalog/*.json")
	require.NoError(t, err)
	require.NotEmpty(t, list)
	return list
}

func FuzzRead(f *testing.F) {
	f.Add([]byte(least))
	f.Add([]byte(with(`"wide_mm": 2.675, "room_gib": 1.5, "later": "2.14", "asked": true, "pieces": [{"count": 1}, {"count": 2}], "lid": {"count": 3}`)))
	f.Add([]byte(with(`"name": "twice", "wide_mm": 1e400, "later": 7, "lid": null`)))
	f.Add([]byte("{\"kind\": \"slipfit-sheet\", \"\\u006eame\": \"x\\ud800\"}"))
	for _, path := range roots(f) {
		data, err := os.ReadFile(path)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data[:min(len(data), 900)])
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		var s, other sheet
		err := format.Read("sheet.json", data, "slipfit-sheet", 2, &s)
		lent := bytes.Clone(data)
		again := format.Read("sheet.json", lent, "slipfit-sheet", 2, &other)
		for i := range lent {
			lent[i] = '#'
		}
		require.Equal(t, s, other, "what was read changes with the text")
		require.Equal(t, err, again, "the error changes with the text")
		if err != nil {
			for _, line := range strings.Split(err.Error(), "\n") {
				if !strings.HasPrefix(line, "sheet.json: ") || !strings.Contains(line, "want ") {
					t.Fatalf("error does not say where and what was wanted: %q", line)
				}
			}
			require.Equal(t, sheet{}, s, "a refused file changed the value")
			return
		}
		printed := format.Write(s)
		var reread sheet
		require.NoError(t, format.Read("sheet.json", printed, "slipfit-sheet", 2, &reread))
		require.Equal(t, string(printed), string(format.Write(reread)), "printing what was read and reading it again changes it")
	})
}
