package brief

import (
	"fmt"
	"slices"
	"testing"

	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// TestJudgement holds the floors of thirteen briefs of our own against what a practitioner would put in, written down before the
// model was asked: common practice. Each must be within one size sold.
func TestJudgement(t *testing.T) {
	for _, c := range []struct {
		who        string
		activities string
		screens    string // empty where none is named
		memoryGiB  int64
		threads    int64
		cardGiB    int64
		bootGB     int64
		archiveTB  int64 // 0 where nothing is kept
	}{
		{"letters, the web and bills", `{"office":{"web_pages":20,"people":1,"files_gb":200}}`, "", 16, 8, 1, 500, 1},
		{"a pupil with block games", `{"office":{"web_pages":15,"people":1,"files_gb":50}},{"games":{"class":"light","installed":3,"each_gb":30}}`, "1920x1080 at 60", 16, 8, 2, 500, 1},
		{"demanding games at 1440 lines", `{"games":{"class":"demanding","installed":8,"each_gb":100}}`, "2560x1440 at 144", 16, 12, 10, 2000, 0},
		{"traced games at 2160 lines", `{"games":{"class":"traced","installed":6,"each_gb":120}}`, "3840x2160 at 60", 32, 12, 16, 1000, 0},
		{"a wedding photographer", `{"photography":{"megapixels":45,"pictures_year":20000,"years_kept":3,"pictures_at_once":600,"layers":10}}`, "", 32, 16, 4, 500, 6},
		{"a podcast at a kitchen table", `{"sound":{"tracks":4,"plug_ins_a_track":4,"libraries_gb":5,"zones":0,"channels_recorded":4,"hours_kept":300}}`, "", 16, 8, 1, 500, 1},
		{"an orchestra of samples", `{"sound":{"tracks":100,"plug_ins_a_track":5,"libraries_gb":1500,"zones":200000,"channels_recorded":2,"hours_kept":100}}`, "", 48, 16, 1, 2000, 1},
		{"a writer of compiled programs", `{"software":{"source_files":3000,"language":"compiled","wait_min":5,"projects_gb":200}}`, "", 32, 12, 1, 500, 0},
		{"a writer of template-heavy programs", `{"software":{"source_files":5000,"language":"heavy","wait_min":30,"projects_gb":400}}`, "", 64, 16, 1, 1000, 0},
		{"tables of a hundred million rows", `{"statistics":{"million_rows":100,"columns":40,"passes":50,"wait_min":60,"kept_gb":1500}}`, "", 128, 12, 1, 250, 2},
		{"a language model of eight thousand million", `{"local_models":{"million_parameters":8000,"bits":4,"context_tokens":8192,"kept_gb":100}}`, "", 16, 8, 8, 250, 0},
		{"a server in the cupboard", `{"server":{"store_gb":8000,"people":5,"services":4}}`, "", 16, 8, 1, 250, 10},
		{"assemblies of two thousand parts", `{"drafting":{"parts":2000}}`, "2560x1440 at 60", 32, 12, 8, 250, 1},
	} {
		t.Run(c.who, func(t *testing.T) {
			b, err := Read("brief", []byte(fmt.Sprintf(`{"kind":"slipfit-brief","version":1,"title":"x","activities":[%s]}`, c.activities)))
			require.NoError(t, err)
			if c.screens != "" {
				d := NewDraft("x", workshop(t))
				d.activities = []draftActivity{{"office", map[string]any{}, map[string]any{}}}
				require.NoError(t, d.Answer(Question{Field: "screens"}, c.screens))
				with, err := d.Brief()
				require.NoError(t, err)
				b.Screens = with.Screens
			}
			n := b.Needs(workshop(t))
			near := func(r Resource, want int64) {
				t.Helper()
				sizes := sold(r)
				got := slices.Index(sizes, Sold(r, n.By[r].Floor))
				judged := slices.Index(sizes, want)
				require.GreaterOrEqual(t, judged, 0, "%d is not a size of %s", want, r)
				require.InDelta(t, judged, got, 1, "%s: the model says %s (%s), a practitioner %s", r, n.By[r].FloorQ(), n.By[r].Reason, unit.Quantity{N: want, Kind: r.Kind()})
			}
			near(MemorySize, c.memoryGiB*int64(unit.GiB))
			near(Threads, c.threads)
			near(GraphicsMemory, c.cardGiB*int64(unit.GiB))
			near(BootSize, c.bootGB*int64(unit.Gigabyte))
			if c.archiveTB == 0 {
				require.Zero(t, n.By[ArchiveSize].Floor)
			} else {
				near(ArchiveSize, c.archiveTB*int64(unit.Terabyte))
			}
			if two := n.By[Channels].Floor; len(c.activities) > 0 && b.Activities[0].Office == nil && b.Activities[0].Server == nil {
				require.EqualValues(t, 2, two, "two modules for anything past letters and the web")
			}
		})
	}
}
