package grow_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"slipfit/catalog"
	"slipfit/core/grow"
	"slipfit/core/part"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/require"
)

func embedded(t testing.TB) *part.Stock {
	t.Helper()
	s, err := catalog.Embedded()
	require.NoError(t, err)
	return s
}

func grown(t testing.TB, parts int, seed uint64) *part.Stock {
	t.Helper()
	s, err := grow.Stock(embedded(t), parts, seed)
	require.NoError(t, err)
	require.Len(t, s.Articles(), parts)
	return s
}

// printed is a stock's files one after another.
func printed(s *part.Stock) string {
	var b strings.Builder
	for _, f := range grow.Files(s) {
		b.WriteString(f.Name)
		b.Write(f.Data)
	}
	return b.String()
}

func TestSameSeedSameBytes(t *testing.T) {
	base := printed(embedded(t))
	one := printed(grown(t, 2000, 7))
	require.Equal(t, one, printed(grown(t, 2000, 7)))
	require.NotEqual(t, one, printed(grown(t, 2000, 8)))
	from := embedded(t)
	_, err := grow.Stock(from, 2000, 7)
	require.NoError(t, err)
	require.Equal(t, base, printed(from), "the stock that was grown from has changed")
}

// TestLargerBeginsWithSmaller: a growth is a prefix of a further one from the same seed, kind by kind.
func TestLargerBeginsWithSmaller(t *testing.T) {
	small, large := grown(t, 1000, 3), grown(t, 3000, 3)
	require.Equal(t, small.Cases, large.Cases[:len(small.Cases)])
	require.Equal(t, small.Boards, large.Boards[:len(small.Boards)])
	require.Equal(t, small.Processors, large.Processors[:len(small.Processors)])
	require.Equal(t, small.Coolers, large.Coolers[:len(small.Coolers)])
	require.Equal(t, small.Memory, large.Memory[:len(small.Memory)])
	require.Equal(t, small.Graphics, large.Graphics[:len(small.Graphics)])
	require.Equal(t, small.Supplies, large.Supplies[:len(small.Supplies)])
	require.Equal(t, small.Drives, large.Drives[:len(small.Drives)])
	from := embedded(t)
	require.Equal(t, from.Cases, small.Cases[:len(from.Cases)])
	require.Equal(t, from.UPS, small.UPS[:len(from.UPS)])
}

func TestStockRefuses(t *testing.T) {
	from := embedded(t)
	have := len(from.Articles())
	for _, parts := range []int{-1, have - 1, grow.Most + 1} {
		_, err := grow.Stock(from, parts, 1)
		require.EqualError(t, err, fmt.Sprintf("parts: got %d, want between %d, as many as there are, and 20000", parts, have))
	}
	same, err := grow.Stock(from, have, 1)
	require.NoError(t, err)
	require.Equal(t, from.Boards, same.Boards)
	_, err = grow.Stock(&part.Stock{Services: from.Services}, 100, 1)
	require.ErrorContains(t, err, "there is no part to vary")
}

// TestGrownIsAValidCatalog: the loader takes what is written, and reads back what was grown.
func TestGrownIsAValidCatalog(t *testing.T) {
	for _, parts := range []int{500, 2000, 10_000, 20_000} {
		s := grown(t, parts, uint64(parts))
		fsys := fstest.MapFS{}
		for _, f := range grow.Files(s) {
			fsys[f.Name] = &fstest.MapFile{Data: f.Data}
		}
		back, err := catalog.Load(fsys)
		require.NoError(t, err, "%d parts", parts)
		require.Equal(t, s, back, "%d parts", parts)
	}
}

// TestGeneralValidatorTakesGrown asks an independent validator by the stored schemas.
func TestGeneralValidatorTakesGrown(t *testing.T) {
	for _, f := range grow.Files(grown(t, 2000, 11)) {
		name := strings.TrimSuffix(f.Name, ".json")
		schema, err := jsonschema.NewCompiler().Compile(filepath.Join("../../catalog/schema", name+".schema.json"))
		require.NoError(t, err)
		value, err := jsonschema.UnmarshalJSON(bytes.NewReader(f.Data))
		require.NoError(t, err)
		require.NoError(t, schema.Validate(value), name)
	}
}

// TestGrownIsPlausible holds grown stocks to what the catalog's own tests ask of the built-in one: standards, ratings, sums
// and rank correlations. The tests run as they stand, with the grown files laid over the built-in ones. At 500 parts the rank
// correlations are left out: two or three drawn parts would decide those of the smallest groups.
func TestGrownIsPlausible(t *testing.T) {
	const asked = "Boards|MemoryKeeps|RealClashes|CaseSizes|Layouts|Radiator|Fans$|LiquidCoolers|CardPower|Supply|UPS|Modules|Drives|Monitors|ShopCarries|Counts|FiguresAreStated|FilesAreIn|GeneralValidator"
	const ranked = "|Processors$|AirCoolers|CardSizes|Prices|MassGrows"
	for parts, run := range map[int]struct {
		seed  uint64
		asked string
		least int
	}{500: {21, asked, 23}, 2000: {22, asked + ranked, 28}, 5000: {23, asked + ranked, 28}} {
		t.Run(fmt.Sprint(parts), func(t *testing.T) {
			dir := t.TempDir()
			root, err := filepath.Abs("../..")
			require.NoError(t, err)
			over := map[string]map[string]string{"Replace": {filepath.Join(root, "catalog/builds_test.go"): ""}} // left out: TestMachinesStand asks it here
			for _, f := range grow.Files(grown(t, parts, run.seed)) {
				path := filepath.Join(dir, f.Name)
				require.NoError(t, os.WriteFile(path, f.Data, 0o644))
				over["Replace"][filepath.Join(root, "catalog", f.Name)] = path
			}
			list, err := json.Marshal(over)
			require.NoError(t, err)
			overlay := filepath.Join(dir, "overlay.json")
			require.NoError(t, os.WriteFile(overlay, list, 0o644))
			cmd := exec.Command("go", "test", "./catalog", "-count=1", "-v", "-overlay", overlay, "-run", "^Test("+run.asked+")")
			cmd.Dir = root
			out, err := cmd.CombinedOutput()
			require.NoError(t, err, "%s", failures(string(out)))
			passed := strings.Count("\n"+string(out), "\n--- PASS: Test")
			require.GreaterOrEqual(t, passed, run.least, "tests of the catalog that ran")
		})
	}
}

// failures is what a test run printed, without what passed.
func failures(out string) string {
	var kept []string
	for line := range strings.Lines(out) {
		if !strings.Contains(line, "=== RUN") && !strings.Contains(line, "--- PASS") {
			kept = append(kept, line)
		}
	}
	return strings.Join(kept[:min(len(kept), 60)], "")
}

// TestSharesAreKept: kinds grow alike, and within a kind every built-in part has as many variations as any other, so that
// sockets and forms keep their shares.
func TestSharesAreKept(t *testing.T) {
	from, s := embedded(t), grown(t, 10_000, 5)
	services := len(from.Services)
	want := float64(10_000-services) / float64(len(from.Articles())-services)
	shares(t, from.Cases, s.Cases, want, func(p *part.Case) string { return fmt.Sprint(len(p.Layouts), p.Layouts[0].Boards) })
	shares(t, from.Boards, s.Boards, want, func(p *part.Board) string { return string(p.Form) + p.Socket + p.Chipset + string(p.Memory) + p.Module })
	shares(t, from.Processors, s.Processors, want, func(p *part.Processor) string { return p.Socket })
	shares(t, from.Coolers, s.Coolers, want, func(p *part.Cooler) string { return fmt.Sprint(p.Sockets, p.Air == nil) })
	shares(t, from.Memory, s.Memory, want, func(p *part.Memory) string { return fmt.Sprint(p.Type, p.Form, p.ECC, p.Modules, p.Module) })
	shares(t, from.Graphics, s.Graphics, want, func(p *part.Graphics) string { return p.Maker })
	shares(t, from.Supplies, s.Supplies, want, func(p *part.Supply) string { return string(p.Form) + string(p.Level) })
	shares(t, from.Drives, s.Drives, want, func(p *part.Drive) string { return fmt.Sprint(p.Form, p.Bus, p.Capacity) })
	shares(t, from.Fans, s.Fans, want, func(p *part.Fan) string { return fmt.Sprint(p.Size) })
	require.Equal(t, from.Services, s.Services)
}

func shares[P any](t *testing.T, from, s []P, want float64, group func(P) string) {
	t.Helper()
	before, now := map[string]int{}, map[string]int{}
	for _, p := range from {
		before[group(p)]++
	}
	for _, p := range s {
		now[group(p)]++
	}
	require.Len(t, now, len(before))
	for name, n := range before {
		require.InDelta(t, want, float64(now[name])/float64(n), 1, name)
	}
}

// TestNoClones: of the parts grown, nearly none is the same as another but for name and place.
func TestNoClones(t *testing.T) {
	s := grown(t, 10_000, 6)
	distinct(t, s.Cases, 0.99)
	distinct(t, s.Boards, 0.99)
	distinct(t, s.Processors, 0.99)
	distinct(t, s.Coolers, 0.99)
	distinct(t, s.Memory, 0.97)
	distinct(t, s.Graphics, 0.99)
	distinct(t, s.Supplies, 0.99)
	distinct(t, s.Drives, 0.99)
	distinct(t, s.Fans, 0.99)
	distinct(t, s.Monitors, 0.97)
}

func distinct[P any, A interface {
	*P
	Common() *part.Article
}](t *testing.T, list []A, least float64) {
	t.Helper()
	seen := map[string]bool{}
	for _, p := range list {
		copied := *p
		a := A(&copied).Common()
		a.ID, a.Name, a.Shelf, a.Stock, a.Lead, a.Supplier = "", "", "", 0, list[0].Common().Lead, ""
		text, err := json.Marshal(fmt.Sprintf("%+v", copied))
		require.NoError(t, err)
		seen[string(text)] = true
	}
	require.GreaterOrEqual(t, float64(len(seen)), least*float64(len(list)), "%T", list[0])
}

func BenchmarkStock20000(b *testing.B) {
	from := embedded(b)
	for b.Loop() {
		if _, err := grow.Stock(from, 20_000, 1); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkFiles20000(b *testing.B) {
	s := grown(b, 20_000, 1)
	for b.Loop() {
		grow.Files(s)
	}
}
