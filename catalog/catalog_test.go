package catalog

import (
	"io/fs"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"slipfit/core/format"

	"github.com/stretchr/testify/require"
)

// files is a copy of the embedded catalog that a test may change.
func files(t testing.TB) fstest.MapFS {
	t.Helper()
	m := fstest.MapFS{}
	for _, name := range Names() {
		data, err := embedded.ReadFile(name + ".json")
		require.NoError(t, err)
		m[name+".json"] = &fstest.MapFile{Data: data}
	}
	return m
}

// problems is the error of a load, one format.Error a line.
func problems(t testing.TB, err error) []string {
	t.Helper()
	require.Error(t, err)
	lines := strings.Split(err.Error(), "\n")
	for _, line := range lines {
		require.Regexp(t, `^[a-z]+(\.json)?: .*want `, line)
	}
	return lines
}

func TestEmbeddedIsComplete(t *testing.T) {
	stored, err := fs.Glob(embedded, "*.json")
	require.NoError(t, err)
	require.Len(t, stored, len(Names()))
	_, err = Embedded()
	require.NoError(t, err)
}

// TestFilesAreInPrintedForm: what is stored is what format.Write prints of it, so that a shop's changes show as small differences.
func TestFilesAreInPrintedForm(t *testing.T) {
	for _, name := range Names() {
		data, err := embedded.ReadFile(name + ".json")
		require.NoError(t, err)
		file, ok := fileOf(name)
		require.True(t, ok)
		require.NoError(t, format.Read(name, data, "slipfit-"+name, Version, file))
		require.Equal(t, string(data), string(format.Write(file)), name)
	}
}

func TestLoadTakesAPartOfACatalog(t *testing.T) {
	m := files(t)
	for _, name := range Names() {
		if !slices.Contains([]string{"shop", "services", "fans"}, name) {
			delete(m, name+".json")
		}
	}
	s, err := Load(m)
	require.NoError(t, err)
	require.Empty(t, s.Cases)
	require.NotEmpty(t, s.Fans)
	require.Equal(t, "EUR", s.Shop.Currency)
}

func TestLoadRefuses(t *testing.T) {
	_, err := Load(fstest.MapFS{})
	require.EqualError(t, err, "catalog: want a directory with shop.json and files of parts such as cases.json and boards.json")

	m := files(t)
	delete(m, "shop.json")
	_, err = Load(m)
	require.Equal(t, []string{"shop.json: got no such file, want the shop's own figures: name, currency, tax, revision"}, problems(t, err))

	m = files(t)
	m["fans.json"] = &fstest.MapFile{Mode: fs.ModeDir}
	_, err = Load(m)
	require.Contains(t, problems(t, err)[0], "fans.json: got ")

	// every wrong thing of every file is told, not the first
	m = files(t)
	change(t, m, "fans", `"price_minor": 700`, `"price_minor": -700`)
	change(t, m, "ups", `"outlets": 4`, `"outlets": "four"`)
	change(t, m, "shop", `"EUR"`, `"euro"`)
	_, err = Load(m)
	require.Len(t, problems(t, err), 3)
}

// change replaces the first of one text by another in a file.
func change(t testing.TB, m fstest.MapFS, name, from, to string) {
	t.Helper()
	before := string(m[name+".json"].Data)
	after := strings.Replace(before, from, to, 1)
	require.NotEqual(t, before, after, "%s holds no %s", name, from)
	m[name+".json"] = &fstest.MapFile{Data: []byte(after)}
}

// TestChecks breaks the agreement of two figures at a time, which no schema can say.
func TestChecks(t *testing.T) {
	for _, c := range []struct{ name, file, from, to, says string }{
		{"id taken", "fans", `"id": "norbrusk-reed-80"`, `"id": "norbrusk-flat-37"`, `fans.json: parts[1].id: got "norbrusk-flat-37", want an id of its own; coolers.json: parts[0].id has this one`},
		{"labour unknown", "shop", `"pastewell-paste-4-g"`, `"pastewell-paste-5-g"`, `shop.json: shop.labour[3]: got "pastewell-paste-5-g", want the id of a part in services.json`},
		{"reference core unknown", "calibration", `"quillmar-wren-140"`, `"quillmar-wren-999"`, `calibration.json: calibration.core: got "quillmar-wren-999", want the id of a processor of 1000 single_points in processors.json`},
		{"reference card is another", "calibration", `"calderby-lantern-30"`, `"calderby-lantern-80"`, `calibration.json: calibration.card: got "calderby-lantern-80"`},
		{"fan slower than its lowest", "fans", `"speed_rpm": 2200`, `"speed_rpm": 300`, `fans.json: parts[0].speed_rpm: got 300 rpm, want no less than lowest_rpm, 550 rpm`},
		{"glass on no side", "cases", `"glazed": ["side"]`, `"glazed": ["top"]`, `cases.json: parts[1].glazed_side: got "right", want left, right or both where glazed names the side, and nothing where it does not`},
		{"volume over the box", "cases", `"volume_l": 10.2`, `"volume_l": 11.2`, `cases.json: parts[0].volume_l: got 11.2 l, want no more than its outer size holds, 10.8 l`},
		{"layout twice", "cases", `"id": "one-room"`, `"id": "sandwich"`, `cases.json: parts[1].layouts[1].id: got "sandwich", want a name used once`},
		{"standoff unknown", "cases", `"C", "F", "H", "J"`, `"C", "F", "H", "J", "Q"`, `cases.json: parts[0].layouts[0].standoffs[4]: got "Q"`},
		{"hole without standoff", "cases", `"C", "F", "H", "J"`, `"C", "F", "H", "A"`, `cases.json: parts[0].layouts[0].boards[0]: got "mini-itx", want a form whose holes CFHJ all have a standoff; J has none`},
		{"plate takes the cooler's room", "cases", `"step_mm": 5`, `"step_mm": 30`, `cases.json: parts[0].layouts[0].plate.steps: got 3, want steps that leave room for a cooler; they take 90 mm of 70 mm`},
		{"bay unknown", "cases", `"takes_bays": ["cage"]`, `"takes_bays": ["attic"]`, `got "attic", want the id of a bay of this layout`},
		{"slot wired wider than long", "boards", `"size_lanes": 16`, `"size_lanes": 8`, `boards.json: parts[0].slots[0].size_lanes: got 8, want no less than lanes, 16`},
		{"sharing with nobody", "boards", `"with": "sata4"`, `"with": "sata9"`, `boards.json: parts[0].m2[0].shares[0].with: got "sata9", want the id of another slot, socket or SATA port of this board`},
		{"sharing with itself", "boards", `"with": "sata4"`, `"with": "m2a"`, `boards.json: parts[0].m2[0].shares[0].with: got "m2a"`},
		{"sharing leaves more than there is", "boards", `"leaves_lanes": 0`, `"leaves_lanes": 8`, `boards.json: parts[0].m2[0].shares[0].leaves_lanes: got 8, want no more than the 0 lanes sata4 has`},
		{"socket named twice", "boards", `"id": "slot2"`, `"id": "slot1"`, `boards.json: parts[0].slots[1].id: got "slot1", want a name used once`},
		{"module larger than all", "boards", `"memory_limit_gib": 64`, `"memory_limit_gib": 16`, `boards.json: parts[0].memory_limit_gib: got 16 GiB, want no less than module_limit_gib, 32 GiB`},
		{"boost under sustained", "processors", `"boost_w": 77`, `"boost_w": 60`, `processors.json: parts[0].boost_w: got 60 W, want no less than sustained_w, 65 W`},
		{"threads under cores", "processors", `"threads": 4`, `"threads": 2`, `processors.json: parts[0].threads: got 2, want no less than cores, 4`},
		{"chipset twice", "processors", `"chipset": "beck-2"`, `"chipset": "beck-4"`, `processors.json: parts[0].platforms[1].chipset: got "beck-4", want a name used once`},
		{"peak under power", "graphics", `"peak_w": 560`, `"peak_w": 200`, `want no less than power_w, 225 W`},
		{"plug on no socket", "graphics", `"plug_side": "none"`, `"plug_side": "top"`, `graphics.json: parts[0].plug_side: got "top", want none exactly where the card has no power socket`},
		{"load points fall", "supplies", `"load_percent": 50`, `"load_percent": 10`, `want more than the load point before it, 20 %`},
		{"sense rating on another plug", "supplies", `"plugs": ["main-24"]`, `"plugs": ["main-24"], "rated_w": 300`, `supplies.json: parts[0].cables[0].rated_w: got 300 W, want a power only where the cable has a 12-contact plug`},
		{"endurance of a disk", "drives", `"disk": true`, `"disk": true, "endurance_tbw": 500`, `.endurance_tbw: got a figure, want nothing`},
		{"lanes on sata", "drives", `"bus": "pcie"`, `"bus": "sata"`, `drives.json: parts[0].lanes: got 4, want PCIe lanes only on bus pcie`},
		{"module with a height", "drives", `"module_length": 30`, `"module_length": 30, "height_mm": 7`, `drives.json: parts[0].height_mm: got 7 mm`},
		{"module length of a box", "drives", `"form": "m.2"`, `"form": "2.5"`, `drives.json: parts[0].module_length: got 30, want a module length only for form m.2`},
		{"disk on a module", "drives", `"bus": "pcie"`, `"disk": true, "bus": "pcie"`, `drives.json: parts[0].disk: got true`},
		{"held writing over its best", "drives", `"write_held_mb_s": 420`, `"write_held_mb_s": 4200`, `drives.json: parts[0].write_mb_s: got 2700 MB/s, want no less than write_held_mb_s, 4200 MB/s`},
		{"adapter without an end", "cards", `"to_link": "hdmi-2.0"`, `"holds_kg": 1`, `want from_link and to_link together`},
		{"holder that is none", "cards", `"use": "card-holder"`, `"use": "hub"`, `want a mass only for a card holder`},
		{"watts over volt-amperes", "ups", `"rating_va": 450`, `"rating_va": 250`, `ups.json: parts[0].rating_va: got 250, want no less than rating_w, 260`},
		{"longer at more load", "ups", `"minutes_min": 1`, `"minutes_min": 59`, `want no longer than at the smaller load before it`},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := files(t)
			change(t, m, c.file, c.from, c.to)
			_, err := Load(m)
			require.Contains(t, strings.Join(problems(t, err), "\n"), c.says)
		})
	}
}

func TestCoolerIsAirOrLiquid(t *testing.T) {
	m := files(t)
	text := string(m["coolers.json"].Data)
	from := strings.Index(text, `"air": {`)
	to := from + strings.Index(text[from:], "},") + 3
	m["coolers.json"] = &fstest.MapFile{Data: []byte(text[:from] + text[to:])}
	_, err := Load(m)
	require.Equal(t, []string{"coolers.json: parts[0]: got neither, want the figures of an air cooler or those of a liquid one"}, problems(t, err))
	m["coolers.json"] = &fstest.MapFile{Data: []byte(text[:from] + `"liquid": {}, ` + text[from:])}
	_, err = Load(m)
	require.Equal(t, []string{"coolers.json: parts[0]: got both, want the figures of an air cooler or those of a liquid one"}, problems(t, err))
}

// firstPart is a file of parts with all but its first taken out.
func firstPart(text string) string {
	if part, _, ok := strings.Cut(text, "\n    },\n"); ok {
		return part + "\n    }\n  ]\n}\n"
	}
	return text
}

func FuzzLoad(f *testing.F) {
	for i, name := range Names() {
		data, err := embedded.ReadFile(name + ".json")
		if err != nil {
			f.Fatal(err)
		}
		f.Add(uint8(i), []byte(firstPart(string(data))))
		f.Add(uint8(i), []byte(`{"kind":"slipfit-`+name+`","version":1,"parts":[]}`))
	}
	shop, err := embedded.ReadFile("shop.json")
	if err != nil {
		f.Fatal(err)
	}
	services, err := embedded.ReadFile("services.json")
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, which uint8, data []byte) {
		name := Names()[int(which)%len(Names())]
		m := fstest.MapFS{"shop.json": {Data: shop}, "services.json": {Data: services}}
		m[name+".json"] = &fstest.MapFile{Data: data}
		s, err := Load(m)
		if (s == nil) == (err == nil) {
			t.Fatalf("stock %v with error %v", s, err)
		}
		if err != nil && !strings.Contains(err.Error(), "want ") {
			t.Fatalf("error without what was expected: %v", err)
		}
	})
}

func BenchmarkEmbedded(b *testing.B) {
	for b.Loop() {
		if _, err := Embedded(); err != nil {
			b.Fatal(err)
		}
	}
}
