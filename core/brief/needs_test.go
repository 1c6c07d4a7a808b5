package brief

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"slipfit/core/media"
	"slipfit/core/part"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// kinds is one of every kind of activity, with nothing said.
func kinds() []Activity {
	return []Activity{
		{Video: &Video{}}, {Modelling: &Modelling{}}, {Photogrammetry: &Photogrammetry{}}, {Photography: &Photography{}},
		{Games: &Games{}}, {Software: &Software{}}, {Sound: &Sound{}}, {Statistics: &Statistics{}}, {LocalModels: &LocalModels{}},
		{Drafting: &Drafting{}}, {Live: &Live{}}, {Guests: &Guests{}}, {Office: &Office{}}, {Server: &Server{}},
	}
}

func TestEveryKindIsGiven(t *testing.T) {
	pointers := 0
	for i := range reflect.TypeFor[Activity]().NumField() {
		if reflect.TypeFor[Activity]().Field(i).Type.Kind() == reflect.Pointer {
			pointers++
		}
	}
	list := kinds()
	require.Len(t, list, pointers)
	names := map[string]bool{}
	for _, a := range list {
		require.Len(t, a.given(), 1)
		require.NotEmpty(t, a.Name())
		names[a.Name()] = true
	}
	require.Len(t, names, pointers, "every kind has a name of its own")
}

// raises requires that every need of more is at least that of less.
func raises(t *testing.T, less, more *Needs, what string) {
	t.Helper()
	for r := range Resource(Resources) {
		require.GreaterOrEqual(t, more.By[r].Floor, less.By[r].Floor, "floor of %s: %s", r, what)
		require.GreaterOrEqual(t, more.By[r].Enough, less.By[r].Enough, "enough of %s: %s", r, what)
	}
	for _, c := range less.Decode {
		require.True(t, slices.ContainsFunc(more.Decode, func(m CodecNeed) bool { return m.Codec == c.Codec }), what)
	}
	require.GreaterOrEqual(t, more.Written.Cache, less.Written.Cache, what)
}

// TestNothingSaid requires that a brief in which nothing is said of the work is answered, every default named.
func TestNothingSaid(t *testing.T) {
	stock := workshop(t)
	for _, a := range kinds() {
		n := (&Brief{Activities: []Activity{a}}).Needs(stock)
		require.Contains(t, fmt.Sprint(n.Assumed), a.Name()+": hours a week not said")
		require.Len(t, n.Screens, 1)
		for r := range Resource(Resources) {
			need, ok := n.Get(r)
			if !ok {
				continue
			}
			require.GreaterOrEqual(t, need.Enough, need.Floor, "%s of %s", r, a.Name())
			require.NotEmpty(t, need.Reason)
			require.NotEmpty(t, need.Source)
			require.NotEmpty(t, need.From)
		}
		for _, r := range []Resource{SingleWork, AllWork, Threads, MemorySize, BootSize, BootRead, Endurance, GraphicsMemory} {
			_, ok := n.Get(r)
			require.True(t, ok, "%s asks for %s", a.Name(), r)
		}
	}
}

// TestSayingNarrows requires that an answer, even the usual one, never widens what is enough: "I don't know" is the widest.
func TestSayingNarrows(t *testing.T) {
	stock := workshop(t)
	unsaid := (&Brief{Activities: []Activity{{Statistics: &Statistics{}}}}).Needs(stock)
	said := (&Brief{Activities: []Activity{{Statistics: &Statistics{
		Rows: unit.Known[unit.Whole](10), Columns: unit.Known[unit.Whole](50), Passes: unit.Known[unit.Whole](200),
		Wait: unit.Known[unit.Duration](60), Kept: unit.Known(500 * unit.Gigabyte)}}}}).Needs(stock)
	require.Less(t, len(said.Assumed), len(unsaid.Assumed))
	narrower := 0
	for r := range Resource(Resources) {
		require.Equal(t, unsaid.By[r].Floor, said.By[r].Floor, r.String())
		require.LessOrEqual(t, said.By[r].Enough, unsaid.By[r].Enough, r.String())
		if said.By[r].Enough < unsaid.By[r].Enough {
			narrower++
		}
	}
	require.Positive(t, narrower)
}

// TestAddingNeverLowers adds activities, random ones in random ways, to random briefs.
func TestAddingNeverLowers(t *testing.T) {
	stock := workshop(t)
	r := rand.New(rand.NewPCG(4, 19))
	all := kinds()
	for range 400 {
		var b Brief
		if r.IntN(2) == 0 {
			b.Screens = []Screen{{Width: 2560, Height: 1440, Refresh: 60 + 12*r.IntN(10), Bits: 8, Count: 1}}
		}
		less := b.Needs(stock)
		for range 1 + r.IntN(5) {
			a := all[r.IntN(len(all))]
			a.AtOnce = r.IntN(2) == 0
			b.Activities = append(b.Activities, a)
			more := b.Needs(stock)
			raises(t, less, more, "adding "+a.Name())
			less = more
		}
	}
}

// TestAtOnceNeverLowers turns "one at a time" into "at once".
func TestAtOnceNeverLowers(t *testing.T) {
	stock := workshop(t)
	all := kinds()
	for i := range all {
		for j := range all {
			b := Brief{Activities: []Activity{all[i], all[j]}}
			apart := b.Needs(stock)
			b.Activities[1].AtOnce = true
			raises(t, apart, b.Needs(stock), all[i].Name()+" with "+all[j].Name())
		}
	}
}

// TestWhatAddsAndWhatIsMost checks the kinds of sharing on a build of software and a desk, one at a time and at once.
func TestWhatAddsAndWhatIsMost(t *testing.T) {
	stock := workshop(t)
	alone := (&Brief{Activities: []Activity{{Software: &Software{}}}}).Needs(stock)
	two := (&Brief{Activities: []Activity{{Software: &Software{}}, {Office: &Office{}}}}).Needs(stock)
	at := (&Brief{Activities: []Activity{{Software: &Software{}}, {Office: &Office{Tabs: unit.Known[unit.Whole](200)}, AtOnce: true}}}).Needs(stock)
	require.Equal(t, alone.By[MemorySize].Floor, two.By[MemorySize].Floor, "one at a time: the larger program sets memory")
	require.Greater(t, at.By[MemorySize].Floor, two.By[MemorySize].Floor, "at once: memory adds")
	require.Equal(t, alone.By[AllWork].Floor+2500, at.By[AllWork].Floor, "at once: threads are competed for")
	require.Equal(t, alone.By[SingleWork].Floor, at.By[SingleWork].Floor, "one thread serves one click")
	require.Greater(t, two.By[BootSize].Floor, alone.By[BootSize].Floor, "programs stay on the drive")
	require.Equal(t, at.Screens, alone.Screens, "the screen is the larger of those that suit")
}

// TestOrderChangesNothing shuffles the activities of the briefs under testdata and of one with every kind twice.
func TestOrderChangesNothing(t *testing.T) {
	stock := workshop(t)
	r := rand.New(rand.NewPCG(7, 7))
	all := briefs(t)
	twice := append(kinds(), kinds()...)
	twice[len(twice)-1].Server = &Server{Store: unit.Known(9 * unit.Terabyte)}
	twice[0].AtOnce = true
	all["every kind twice"] = &Brief{Activities: twice}
	for name, b := range all {
		want := table(b.Needs(stock))
		for range 10 {
			r.Shuffle(len(b.Activities), func(i, j int) { b.Activities[i], b.Activities[j] = b.Activities[j], b.Activities[i] })
			require.Equal(t, string(want), string(table(b.Needs(stock))), name)
		}
	}
}

// TestMoreAsksMore raises one figure at a time and requires that no need falls: more footage never needs less storage, a
// higher frame rate never a weaker card.
func TestMoreAsksMore(t *testing.T) {
	stock := workshop(t)
	whole := func(n int64) unit.Figure[unit.Whole] { return unit.Known(unit.Whole(n)) }
	ladder := []int64{12, 16, 24, 25, 30, 50, 60, 120, 200}
	for _, c := range []struct {
		what string
		make func(n int64) Activity
	}{
		{"hours of footage kept", func(n int64) Activity { return Activity{Video: &Video{Kept: whole(n)}} }},
		{"hours of footage in hand", func(n int64) Activity { return Activity{Video: &Video{InHand: whole(n)}} }},
		{"new footage", func(n int64) Activity { return Activity{Video: &Video{New: whole(n)}} }},
		{"frame rate of footage", func(n int64) Activity { return Activity{Video: &Video{Rate: whole(n)}} }},
		{"frame rate of editing-format footage", func(n int64) Activity { return Activity{Video: &Video{Rate: whole(n), Format: FootageVC3}} }},
		{"width of footage", func(n int64) Activity { return Activity{Video: &Video{Width: whole(80 * n)}} }},
		{"streams", func(n int64) Activity { return Activity{Video: &Video{Streams: whole(n / 12)}} }},
		{"frame rate of a game", func(n int64) Activity { return Activity{Games: &Games{Rate: whole(2 * n)}} }},
		{"width of a game", func(n int64) Activity { return Activity{Games: &Games{Width: whole(40 * n)}} }},
		{"games installed", func(n int64) Activity { return Activity{Games: &Games{Games: whole(n)}} }},
		{"photographs of an object", func(n int64) Activity { return Activity{Photogrammetry: &Photogrammetry{Pictures: whole(10 * n)}} }},
		{"photographs of a large object", func(n int64) Activity { return Activity{Photogrammetry: &Photogrammetry{Pictures: whole(40 * n)}} }},
		{"megapixels of an object", func(n int64) Activity { return Activity{Photogrammetry: &Photogrammetry{Mpx: whole(n)}} }},
		{"objects kept", func(n int64) Activity { return Activity{Photogrammetry: &Photogrammetry{Kept: whole(n)}} }},
		{"photographs", func(n int64) Activity { return Activity{Photography: &Photography{Year: whole(1000 * n)}} }},
		{"photographs in one go", func(n int64) Activity { return Activity{Photography: &Photography{Batch: whole(5 * n)}} }},
		{"megapixels of a photograph", func(n int64) Activity { return Activity{Photography: &Photography{Mpx: whole(n)}} }},
		{"sample libraries", func(n int64) Activity {
			return Activity{Sound: &Sound{Libraries: unit.Known(unit.Storage(20*n) * unit.Gigabyte)}}
		}},
		{"layers", func(n int64) Activity { return Activity{Photography: &Photography{Layers: whole(n)}} }},
		{"triangles", func(n int64) Activity { return Activity{Modelling: &Modelling{Triangles: whole(10 * n)}} }},
		{"samples", func(n int64) Activity { return Activity{Modelling: &Modelling{Samples: whole(20 * n)}} }},
		{"samples on the processor", func(n int64) Activity {
			return Activity{Modelling: &Modelling{Samples: whole(20 * n), On: OnProcessor}}
		}},
		{"source files", func(n int64) Activity { return Activity{Software: &Software{Files: whole(500 * n)}} }},
		{"tracks", func(n int64) Activity { return Activity{Sound: &Sound{Tracks: whole(n)}} }},
		{"plug-ins", func(n int64) Activity { return Activity{Sound: &Sound{PlugIns: whole(n / 6)}} }},
		{"channels", func(n int64) Activity { return Activity{Sound: &Sound{Channels: whole(n)}} }},
		{"hours searched", func(n int64) Activity { return Activity{Sound: &Sound{Search: whole(40 * n)}} }},
		{"rows", func(n int64) Activity { return Activity{Statistics: &Statistics{Rows: whole(n)}} }},
		{"rows on one thread", func(n int64) Activity { return Activity{Statistics: &Statistics{Rows: whole(n), Single: true}} }},
		{"parameters", func(n int64) Activity { return Activity{LocalModels: &LocalModels{Parameters: whole(1000 * n)}} }},
		{"context", func(n int64) Activity { return Activity{LocalModels: &LocalModels{Context: whole(1000 * n)}} }},
		{"tokens a second", func(n int64) Activity {
			return Activity{LocalModels: &LocalModels{Speed: whole(n), Runs: RunsOnMemory}}
		}},
		{"source files of templates", func(n int64) Activity {
			return Activity{Software: &Software{Files: whole(500 * n), Class: CodeHeavy}}
		}},
		{"parts of a large assembly", func(n int64) Activity { return Activity{Drafting: &Drafting{Parts: whole(500 * n)}} }},
		{"parts of an assembly", func(n int64) Activity { return Activity{Drafting: &Drafting{Parts: whole(50 * n)}} }},
		{"cameras", func(n int64) Activity { return Activity{Live: &Live{Cameras: whole(n / 12)}} }},
		{"guests", func(n int64) Activity { return Activity{Guests: &Guests{Count: whole(n)}} }},
		{"web pages", func(n int64) Activity { return Activity{Office: &Office{Tabs: whole(n)}} }},
		{"films", func(n int64) Activity { return Activity{Office: &Office{Films: whole(n)}} }},
		{"people served", func(n int64) Activity { return Activity{Server: &Server{People: whole(n)}} }},
		{"services", func(n int64) Activity { return Activity{Server: &Server{Services: whole(n)}} }},
	} {
		t.Run(c.what, func(t *testing.T) {
			first := (&Brief{Activities: []Activity{c.make(ladder[0])}}).Needs(stock)
			less := first
			for _, n := range ladder[1:] {
				more := (&Brief{Activities: []Activity{c.make(n)}}).Needs(stock)
				raises(t, less, more, fmt.Sprintf("%s %d", c.what, n))
				less = more
			}
			require.NotEqual(t, floors(first), floors(less), "%s changes nothing", c.what)
		})
	}
}

func floors(n *Needs) (list [Resources]int64) {
	for r := range list {
		list[r] = n.By[r].Floor
	}
	return list
}

// TestAFasterAnswerAsksMore shortens what the customer will wait.
func TestAFasterAnswerAsksMore(t *testing.T) {
	stock := workshop(t)
	for _, make := range []func(m unit.Figure[unit.Duration]) Activity{
		func(m unit.Figure[unit.Duration]) Activity { return Activity{Photogrammetry: &Photogrammetry{Wait: m}} },
		func(m unit.Figure[unit.Duration]) Activity { return Activity{Modelling: &Modelling{Wait: m}} },
		func(m unit.Figure[unit.Duration]) Activity {
			return Activity{Modelling: &Modelling{Wait: m, On: OnProcessor}}
		},
		func(m unit.Figure[unit.Duration]) Activity { return Activity{Software: &Software{Wait: m}} },
		func(m unit.Figure[unit.Duration]) Activity { return Activity{Statistics: &Statistics{Wait: m}} },
	} {
		var less *Needs
		for _, minutes := range []unit.Duration{900, 600, 300, 120, 60, 30, 10, 5} {
			more := (&Brief{Activities: []Activity{make(unit.Known(minutes))}}).Needs(stock)
			if less != nil {
				raises(t, less, more, fmt.Sprintf("in %d minutes", minutes))
			}
			less = more
		}
	}
}

// TestPoints holds the points asked for against the time they take: what allPoints asks brings the job into its time by
// Amdahl's law as package media has it.
func TestPoints(t *testing.T) {
	for _, c := range []struct {
		coreMS          int64
		parallel        unit.Share
		seconds, single int64
	}{
		{1_000_000, 90_000, 600, 1000}, {50_000_000, 99_000, 3600, 1500}, {15_120_000, 90_000, 2700, 1200}, {10_000, 0, 600, 1000},
	} {
		all := allPoints(c.coreMS, c.parallel, c.seconds, c.single)
		workers := max(1, float64(all)/float64(c.single))
		takes := float64(c.coreMS) / float64(c.single) / media.Amdahl(float64(c.parallel)/float64(fullLoad), workers)
		require.LessOrEqual(t, takes, float64(c.seconds)+1, "%+v with %d points", c, all)
	}
}

// TestFreeSpaceIsKept holds the capacity asked for against the usable-capacity chain of package media.
func TestFreeSpaceIsKept(t *testing.T) {
	for _, r := range []Resource{BootSize, CacheSize, ArchiveSize} {
		for _, size := range []int64{1, 999, 200_000, 1_458_000, 12_345_678} {
			capacity := withFree(size, headroom(r))
			usable, err := media.UsableBytes(capacity*media.MB, 0, headroom(r))
			require.NoError(t, err)
			require.GreaterOrEqual(t, usable, size*media.MB)
			less, err := media.UsableBytes((capacity-2*int64(unit.Gigabyte))*media.MB, 0, headroom(r))
			require.NoError(t, err)
			require.Less(t, less, size*media.MB, "and no more than a gigabyte's rounding")
		}
	}
}

func TestBudgetIsNetOfTax(t *testing.T) {
	require.Equal(t, unit.Money(100_000), net(121_000, 21_000))
	require.Equal(t, unit.Money(99_999), net(120_999, 21_000), "rounded down")
	require.Equal(t, unit.Money(5000), net(5000, 0))
}

func TestNoCalibration(t *testing.T) {
	n := (&Brief{Activities: kinds()}).Needs(&part.Stock{})
	for r := range Resource(Resources) {
		if r.Kind() == unit.Work {
			_, ok := n.Get(r)
			require.False(t, ok, r.String())
		}
	}
	require.Contains(t, fmt.Sprint(n.Assumed), "the catalog says nothing of what work a point is")
	for _, m := range n.Aims {
		require.NotEqual(t, Calibrated, m.Basis, "%s: %s", m.Activity, m.What)
	}
	require.Positive(t, n.By[MemorySize].Floor)
}

// TestAlone requires that an activity alone asks no more than the brief, and that what goes on meanwhile is in it.
func TestAlone(t *testing.T) {
	stock := workshop(t)
	b := briefs(t)["local-models"]
	all := b.Needs(stock)
	list := b.Alone(stock)
	require.Len(t, list, 3)
	for _, a := range list {
		raises(t, a.Needs, all, a.Activity)
	}
	require.Contains(t, list[0].Needs.By[MemorySize].Reason, "virtual machines", "the guests run meanwhile")
	require.Zero(t, list[2].Needs.By[ComputeWork].Floor, "writing software asks no graphics computing")
}
