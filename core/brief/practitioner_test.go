package brief

import (
	"fmt"
	"slices"
	"testing"

	"slipfit/core/part"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// step is a floor and an enough as a practitioner would buy them, both in the sizes sold; a zero asks nothing.
type step struct{ floor, enough int64 }

// TestCustomers holds every resource that is sold by size against what a practitioner of 2024 to 2026 would put in for
// twenty customers of our own: floor and enough each within one size sold. All of it is common practice, as are the figures of
// the speeds, which are held to a range.
func TestCustomers(t *testing.T) {
	const (
		wide  = `"screens":[{"width_px":2560,"height_px":1440,"refresh_hz":60,"bits_per_colour":8,"count":2}]`
		deep  = `"screens":[{"width_px":2560,"height_px":1440,"refresh_hz":60,"bits_per_colour":10,"count":1}]`
		fine  = `"screens":[{"width_px":3840,"height_px":2160,"refresh_hz":60,"bits_per_colour":10,"count":2}]`
		fast  = `"screens":[{"width_px":2560,"height_px":1440,"refresh_hz":120,"bits_per_colour":8,"count":2}]`
		plain = `"screens":[{"width_px":1920,"height_px":1080,"refresh_hz":60,"bits_per_colour":8,"count":1}]`
		quick = `"screens":[{"width_px":1920,"height_px":1080,"refresh_hz":144,"bits_per_colour":8,"count":2}]`
		desk  = `{"at_once":true,"office":{"web_pages":20,"files_gb":100}}`
	)
	stock := stocked(t)
	for _, c := range []struct {
		who, activities, more string
		memory, threads, card step // GiB, threads, GiB
		boot, cache, archive  step // GB, GB, TB
		all, draw             step // points, from and to for the floor
		ports                 int64
		wired                 int64
		bits                  int // a colour, of the screen
	}{
		{who: "a photographer of events", more: deep,
			activities: `{"photography":{"megapixels":33,"pictures_year":30000,"years_kept":4,"pictures_at_once":800,"layers":6}},` + desk,
			memory:     step{32, 64}, threads: step{16, 24}, card: step{8, 12}, boot: step{500, 1000}, cache: step{500, 1000}, archive: step{8, 10},
			all: step{6000, 14000}, draw: step{80, 600}, ports: 4, wired: 1000, bits: 10},
		{who: "an architect who renders stills", more: wide,
			activities: `{"drafting":{"parts":3000}},{"modelling":{"million_triangles":40,"textures":80,"pictures":6,"width_px":3840,"height_px":2160,
				"samples":512,"wait_min":60,"kept_gb":600}},` + desk,
			memory: step{64, 96}, threads: step{16, 24}, card: step{16, 24}, boot: step{500, 1000}, cache: step{500, 1000}, archive: step{1, 2},
			all: step{8000, 16000}, draw: step{1000, 2500}, ports: 3, wired: 1000, bits: 8},
		{who: "an editor of 2160 lines at 50 frames", more: fine,
			activities: `{"hours_week":40,"video":{"format":"h265-10bit-422","width_px":3840,"height_px":2160,"frames_s":50,"streams":2,"finish":"grade",
				"hours_kept":60,"hours_in_hand":8,"new_hours_week":4}}`,
			memory: step{64, 96}, threads: step{16, 24}, card: step{8, 12}, boot: step{500, 1000}, cache: step{2000, 2000}, archive: step{6, 8},
			all: step{13000, 20000}, draw: step{100, 1000}, ports: 4, wired: 1000, bits: 10},
		{who: "a maker of games with heavy builds", more: fast,
			activities: `{"software":{"source_files":6000,"language":"heavy","wait_min":30,"projects_gb":700}},
				{"modelling":{"million_triangles":15,"textures":60,"pictures":1,"wait_min":30,"kept_gb":500}},{"games":{"class":"demanding","installed":4,"each_gb":90}}`,
			memory: step{64, 96}, threads: step{24, 32}, card: step{12, 16}, boot: step{2000, 4000}, cache: step{500, 1000}, archive: step{1, 2},
			all: step{18000, 30000}, draw: step{2000, 3500}, ports: 3, wired: 1000, bits: 8},
		{who: "a student who plays a little", more: plain + `,"network":"radio"`,
			activities: `{"office":{"web_pages":25,"files_gb":100}},{"hours_week":6,"games":{"class":"light","installed":5,"each_gb":20}}`,
			memory:     step{16, 16}, threads: step{8, 12}, card: step{2, 4}, boot: step{500, 1000}, archive: step{1, 1},
			all: step{4000, 7500}, draw: step{100, 400}, ports: 3, bits: 8},
		{who: "a sender of demanding games", more: quick,
			activities: `{"games":{"class":"demanding","installed":8,"each_gb":100}},{"at_once":true,"hours_week":20,"live":{"cameras":2,"hours_kept":100}}`,
			memory:     step{32, 32}, threads: step{16, 24}, card: step{8, 12}, boot: step{2000, 2000}, cache: step{500, 1000}, archive: step{4, 4},
			all: step{7000, 14000}, draw: step{1300, 2500}, ports: 6, wired: 1000, bits: 8},
		{who: "a composer with 2.5 TB of instruments",
			activities: `{"hours_week":35,"sound":{"tracks":80,"plug_ins_a_track":5,"libraries_gb":2500,"hours_kept":200,"channels_recorded":4}},` + desk,
			memory:     step{64, 96}, threads: step{16, 24}, card: step{2, 2}, boot: step{4000, 4000}, cache: step{250, 500}, archive: step{1, 1},
			all: step{11000, 20000}, draw: step{40, 200}, ports: 5, wired: 1000, bits: 8},
		{who: "an analyst with tables of 60 GB",
			activities: `{"hours_week":35,"statistics":{"million_rows":150,"columns":50,"passes":30,"wait_min":60,"kept_gb":2000}},` + desk,
			memory:     step{192, 256}, threads: step{16, 32}, card: step{1, 2}, boot: step{500, 500}, cache: step{1000, 2000}, archive: step{4, 4},
			all: step{4500, 14000}, draw: step{40, 200}, ports: 3, wired: 1000, bits: 8},
		{who: "a small office's store", more: `"copies":true,"error_correcting":true`,
			activities: `{"at_once":true,"hours_week":100,"server":{"store_gb":10000,"people":12,"services":5,"fast":true}}`,
			memory:     step{16, 32}, threads: step{8, 12}, card: step{1, 1}, boot: step{250, 500}, archive: step{12, 20},
			all: step{4000, 8000}, draw: step{0, 50}, ports: 2, wired: 2500, bits: 8},
		{who: "a tinkerer with models of thirty thousand million",
			activities: `{"local_models":{"million_parameters":30000,"bits":4,"context_tokens":8192,"tokens_s":15,"kept_gb":500}},
				{"software":{"language":"scripted","source_files":500,"projects_gb":100}}`,
			memory: step{32, 64}, threads: step{8, 16}, card: step{24, 32}, boot: step{1000, 2000},
			all: step{4000, 9000}, draw: step{40, 500}, ports: 2, wired: 1000, bits: 8},
		{who: "a surveyor who flies",
			activities: `{"photogrammetry":{"pictures":1200,"megapixels":20,"wait_min":720,"objects_week":2,"objects_kept":60}},{"drafting":{"parts":800}}`,
			memory:     step{64, 96}, threads: step{16, 24}, card: step{8, 12}, boot: step{500, 500}, cache: step{500, 1000}, archive: step{2, 2},
			all: step{6000, 14000}, draw: step{400, 1000}, ports: 3, wired: 1000, bits: 8},
		{who: "ordinary games at 1080 lines for little", more: plain + `,"network":"radio"`,
			activities: `{"games":{"class":"ordinary","installed":5,"each_gb":60}},{"hours_week":5,"office":{"web_pages":15,"files_gb":50}}`,
			memory:     step{16, 32}, threads: step{12, 12}, card: step{8, 8}, boot: step{1000, 1000}, archive: step{1, 1},
			all: step{5000, 10000}, draw: step{400, 800}, ports: 3, bits: 8},
		{who: "a maker of wedding films and albums",
			activities: `{"video":{"format":"h264-8bit-420","frames_s":25,"streams":3,"finish":"cuts","hours_kept":30,"hours_in_hand":6,"new_hours_week":3}},
				{"photography":{"pictures_year":2000,"megapixels":24,"years_kept":5,"pictures_at_once":150,"layers":3}},` + desk,
			memory: step{32, 64}, threads: step{16, 24}, card: step{8, 12}, boot: step{500, 1000}, cache: step{1000, 1000}, archive: step{2, 4},
			all: step{9000, 16000}, draw: step{100, 600}, ports: 5, wired: 1000, bits: 8},
		{who: "a sculptor who renders a few stills",
			activities: `{"modelling":{"million_triangles":5,"textures":10,"pictures":3,"wait_min":60,"kept_gb":200}},` + desk,
			memory:     step{32, 64}, threads: step{16, 24}, card: step{6, 8}, boot: step{500, 1000}, cache: step{250, 500}, archive: step{1, 2},
			all: step{7000, 13000}, draw: step{400, 1000}, ports: 3, wired: 1000, bits: 8},
		{who: "a keeper of six virtual machines",
			activities: `{"virtual_machines":{"guests":6,"threads_each":4,"memory_each_gib":6,"disk_each_gb":80}},{"software":{"language":"scripted","source_files":800}}`,
			memory:     step{64, 64}, threads: step{16, 24}, card: step{1, 2}, boot: step{500, 1000}, cache: step{1000, 1000},
			all: step{8000, 14000}, draw: step{20, 200}, ports: 2, wired: 1000, bits: 8},
		{who: "a player of light games at 240 pictures a second",
			more:       `"screens":[{"width_px":1920,"height_px":1080,"refresh_hz":240,"bits_per_colour":8,"count":1}]`,
			activities: `{"games":{"class":"light","installed":5,"each_gb":50}},{"office":{"web_pages":20,"files_gb":100}}`,
			memory:     step{16, 32}, threads: step{12, 12}, card: step{4, 6}, boot: step{500, 1000}, archive: step{1, 1},
			all: step{6000, 11000}, draw: step{500, 1000}, ports: 3, wired: 1000, bits: 8},
		{who: "an engineer who computes strength",
			activities: `{"drafting":{"parts":1500,"analysis":true}},` + desk,
			memory:     step{48, 96}, threads: step{16, 32}, card: step{6, 8}, boot: step{500, 500}, cache: step{250, 250}, archive: step{1, 1},
			all: step{12000, 18000}, draw: step{600, 1500}, ports: 3, wired: 1000, bits: 8},
		{who: "a family's server",
			activities: `{"at_once":true,"server":{"store_gb":6000,"people":5,"services":4}}`,
			memory:     step{16, 32}, threads: step{8, 12}, card: step{1, 1}, boot: step{250, 500}, archive: step{8, 12},
			all: step{4000, 8000}, draw: step{0, 50}, ports: 2, wired: 1000, bits: 8},
		{who: "two who talk before a camera",
			activities: `{"sound":{"tracks":6,"plug_ins_a_track":3,"plug_ins":"light","libraries_gb":5,"zones":0,"channels_recorded":4,"hours_kept":200}},
				{"video":{"width_px":1920,"height_px":1080,"format":"h264-8bit-420","streams":2,"finish":"cuts","hours_kept":20,"hours_in_hand":4,"new_hours_week":2}}`,
			memory: step{16, 32}, threads: step{12, 20}, card: step{4, 4}, boot: step{500, 1000}, cache: step{250, 500}, archive: step{1, 2},
			all: step{2000, 8000}, draw: step{100, 400}, ports: 4, wired: 1000, bits: 8},
		{who: "a student of architecture",
			activities: `{"drafting":{"parts":800}},{"modelling":{"million_triangles":10,"textures":25,"pictures":3,"width_px":3840,"height_px":2160,
				"samples":256,"wait_min":60,"kept_gb":300}},` + desk,
			memory: step{32, 64}, threads: step{16, 24}, card: step{8, 12}, boot: step{500, 1000}, cache: step{500, 1000}, archive: step{1, 2},
			all: step{8000, 14000}, draw: step{500, 1200}, ports: 3, wired: 1000, bits: 8},
	} {
		t.Run(c.who, func(t *testing.T) {
			more := c.more
			if more != "" {
				more = "," + more
			}
			b, err := Read("brief", fmt.Appendf(nil, `{"kind":"slipfit-brief","version":1,"title":"x","activities":[%s]%s}`, c.activities, more))
			require.NoError(t, err)
			n := b.Needs(stock)
			same := func(r Resource, what string, judged, says int64) {
				t.Helper()
				sizes := sold(r)
				at, is := slices.Index(sizes, judged), slices.Index(sizes, Sold(r, says))
				require.GreaterOrEqual(t, at, 0, "%d is no size of %s", judged, r)
				require.GreaterOrEqual(t, is, 0, "%s of %s is past what is sold", what, r)
				require.InDelta(t, at, is, 1, "%s of %s: the model says %s, a practitioner %s: %s", what, r,
					unit.Quantity{N: says, Kind: r.Kind()}, unit.Quantity{N: judged, Kind: r.Kind()}, n.By[r].Reason)
			}
			near := func(r Resource, judged step, base int64) {
				t.Helper()
				need, asked := n.Get(r)
				require.Equal(t, judged.floor > 0, asked, "%s: %s", r, need.Reason)
				if asked {
					same(r, "floor", judged.floor*base, need.Floor)
					same(r, "enough", judged.enough*base, need.Enough)
				}
			}
			near(MemorySize, c.memory, int64(unit.GiB))
			same(Threads, "fewest of a processor that serves the floors", c.threads.floor, fewestThreads(stock, n))
			same(Threads, "enough", c.threads.enough, n.By[Threads].Enough)
			near(GraphicsMemory, c.card, int64(unit.GiB))
			near(BootSize, c.boot, int64(unit.Gigabyte))
			near(CacheSize, c.cache, int64(unit.Gigabyte))
			near(ArchiveSize, c.archive, int64(unit.Terabyte))
			within := func(r Resource, from, to int64) {
				t.Helper()
				require.GreaterOrEqual(t, n.By[r].Floor, from, "%s: %s", r, n.By[r].Reason)
				require.LessOrEqual(t, n.By[r].Floor, to, "%s: %s", r, n.By[r].Reason)
			}
			within(AllWork, c.all.floor, c.all.enough)
			within(DrawWork, c.draw.floor, c.draw.enough)
			within(SingleWork, 900, 1700)
			within(BootRead, 400, 1000)
			within(FastPorts, c.ports-1, c.ports+1)
			require.Equal(t, c.wired, n.By[Wired].Floor)
			require.Equal(t, c.wired == 0, n.By[Wireless].Floor > 0)
			require.Equal(t, c.bits, n.Screens[0].Bits)
			require.Equal(t, b.Activities[0].Server != nil, n.Screens[0].Owned, "no screen is bought for what nobody sits before")
		})
	}
}

// fewestThreads is the threads of the processor with fewest in the catalog that serves the floors of its work.
func fewestThreads(stock *part.Stock, n *Needs) int64 {
	fewest := int64(0)
	for _, p := range stock.Processors {
		threads := int64(p.Threads.Or(0))
		if threads < n.By[Threads].Floor || int64(p.All.Or(0)) < n.By[AllWork].Floor || int64(p.Single.Or(0)) < n.By[SingleWork].Floor {
			continue
		}
		if fewest == 0 || threads < fewest {
			fewest = threads
		}
	}
	return fewest
}

// TestEnoughIsWithinReach requires that what is enough where nothing is said can be bought: the high answers multiply, and their
// product must not be more than the strongest parts sold. Common practice: 32 cores, a card of 32 GB, 128 GB of memory.
func TestEnoughIsWithinReach(t *testing.T) {
	stock := workshop(t)
	for _, a := range kinds() {
		n := (&Brief{Activities: []Activity{a}}).Needs(stock)
		for r, most := range map[Resource]int64{
			AllWork: 58_000, SingleWork: 2000, Threads: 64, ComputeWork: 6500, DrawWork: 5500,
			MemorySize: 128 * int64(unit.GiB), GraphicsMemory: 32 * int64(unit.GiB), BootSize: 4 * int64(unit.Terabyte),
			CacheSize: 4 * int64(unit.Terabyte), ArchiveSize: 10 * int64(unit.Terabyte),
		} {
			require.LessOrEqual(t, n.By[r].Enough, most, "%s asks %s of %s", a.Name(), n.By[r].EnoughQ(), r)
		}
	}
}

// TestEnoughThreads holds the points past which threads buy little against Amdahl's law: twice as many take a fifth off the time.
func TestEnoughThreads(t *testing.T) {
	for _, parallel := range []unit.Share{50_000, 90_000, 95_000, 99_000} {
		const single = 1500
		points := float64(enoughPoints(1<<40, parallel, 1, single))
		p := float64(parallel) / float64(fullLoad)
		time := func(points float64) float64 { return 1 - p + p*single/points }
		require.InEpsilon(t, 0.8, time(2*points)/time(points), 0.001, "%v in parallel", parallel)
	}
	require.Equal(t, allPoints(1_000_000, 90_000, 600, 1000), enoughPoints(1_000_000, 90_000, 600, 1000), "where less brings the job into its time, less is enough")
}

// TestModules says how much memory is bought: no module is larger than 64 GiB. Common practice.
func TestModules(t *testing.T) {
	for gib, says := range map[int64]string{16: "2 × 8 GiB", 128: "2 × 64 GiB", 192: "4 × 48 GiB", 256: "4 × 64 GiB", 384: "8 × 48 GiB"} {
		require.Contains(t, bought(MemorySize, gib*int64(unit.GiB)), says)
	}
}

// TestNoDiskHoldsWorkInHand requires more of the drive for work in hand than any disk of the catalog writes, where streams, guests,
// scenes or depth maps are read and written here and there. Common practice: they lie on solid state.
func TestNoDiskHoldsWorkInHand(t *testing.T) {
	stock := stocked(t)
	fastest := int64(0)
	for _, d := range stock.Drives {
		if d.Disk {
			fastest = max(fastest, int64(d.Held.Or(0)))
		}
	}
	require.Greater(t, fastest, int64(200))
	for _, a := range []Activity{{Video: &Video{}}, {Video: &Video{Width: unit.Known[unit.Whole](1920), Height: unit.Known[unit.Whole](1080)}},
		{Guests: &Guests{}}, {Modelling: &Modelling{}}, {Photogrammetry: &Photogrammetry{}}} {
		require.Greater(t, (&Brief{Activities: []Activity{a}}).Needs(stock).By[CacheWrite].Floor, fastest, a.Name())
	}
}
