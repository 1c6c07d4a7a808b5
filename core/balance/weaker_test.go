package balance

import (
	"testing"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/rule"

	"github.com/stretchr/testify/require"
)

// sheet is what a part's data sheet alone gives of the resources of its seat, worked out beside the rules.
func sheet(o build.Option, n *brief.Needs) map[brief.Resource]int64 {
	switch p := o.Part.(type) {
	case *part.Processor:
		return map[brief.Resource]int64{brief.SingleWork: int64(p.Single.Or(0)), brief.AllWork: int64(p.All.Or(0)), brief.Threads: int64(p.Threads.Or(0))}
	case *part.Memory:
		return map[brief.Resource]int64{brief.MemorySize: int64(p.Module.Or(0)) * int64(p.Modules.Or(0)) * int64(o.Count)}
	case *part.Graphics:
		return map[brief.Resource]int64{brief.DrawWork: int64(p.Draw.Or(0)), brief.ComputeWork: int64(p.Compute.Or(0)),
			brief.GraphicsMemory: int64(p.Memory.Or(0)), brief.GraphicsRate: 1000 * int64(p.MemoryRate.Or(0))}
	case *part.Drive:
		count := int64(o.Count)
		if n.Copies && o.Seat == build.Archive && count > 1 {
			count /= 2
		}
		size := int64(p.Capacity.Or(0)) * count
		switch o.Seat {
		case build.Boot:
			return map[brief.Resource]int64{brief.BootSize: size, brief.BootRead: int64(p.Read.Or(0))}
		case build.Cache:
			return map[brief.Resource]int64{brief.CacheSize: size, brief.CacheWrite: int64(p.Held.Or(0))}
		case build.Archive:
			return map[brief.Resource]int64{brief.ArchiveSize: size, brief.ArchiveWrite: int64(p.Held.Or(0))}
		}
	}
	return nil
}

// asks is what an activity asks of a resource on a build: its floor, of the boot drive with the tiers that have no drive of their
// own.
func asks(r brief.Resource, b *build.Build, n *brief.Needs) int64 {
	floor := n.By[r].Floor
	if r == brief.BootSize {
		if !b.Filled(build.Cache) {
			floor += n.By[brief.CacheSize].Floor
		}
		if !b.Filled(build.Archive) {
			floor += n.By[brief.ArchiveSize].Floor
		}
	}
	return floor
}

// TestWeakerTurnsTheRightActivityShort puts every part of the stock into its seat of every planned build and holds the balance
// against the data sheet and each activity's own needs: exactly the activities that ask more than the part gives turn short, by
// exactly what is lacking, at the ratio of the two.
func TestWeakerTurnsTheRightActivityShort(t *testing.T) {
	short, served := map[brief.Resource]int{}, map[brief.Resource]int{}
	list := jobs(t)
	store, err := brief.Read("store", []byte(`{"kind":"slipfit-brief","version":1,"title":"A store that is worked on over the network",
"activities":[{"server":{"store_gb":6000,"people":6,"services":2,"fast":true}}]}`))
	require.NoError(t, err)
	for _, j := range append(list[:len(list):len(list)], planned(t, "store", store, list[0].stock)) {
		t.Run(j.name, func(t *testing.T) {
			alone := j.said.Alone(j.stock)
			for _, s := range []build.Seat{build.Processor, build.Memory, build.Graphics, build.Boot, build.Cache, build.Archive} {
				if !j.build.Filled(s) {
					continue
				}
				for _, o := range options(j.stock, j.build, s) {
					if o.Part == nil {
						continue
					}
					b := with(j.build, o)
					for _, a := range alone {
						rows := rows(b, a.Needs)
						for r, gives := range sheet(o, a.Needs) {
							row := rowFor(rows, r)
							if _, asked := a.Needs.Get(r); !asked {
								require.Nil(t, row, "%s does not ask for %s", a.Activity, r)
								continue
							}
							require.NotNil(t, row, "%s asks for %s", a.Activity, r)
							need := asks(r, b, a.Needs)
							require.Equal(t, gives, row.Have.N, "%s: %s of %s", a.Activity, r, o.ID())
							require.Equal(t, need, row.Need.N, "%s: %s", a.Activity, r)
							require.Equal(t, s, row.Seat, "%s", r)
							require.Equal(t, min(gives*1000/need, 1_000_000), row.Ratio)
							require.Equal(t, gives < need, row.Verdict == rule.Short, "%s asks %d of %s and has %d", a.Activity, need, r, gives)
							if gives >= need {
								served[r]++
								continue
							}
							short[r]++
							tightest, ok := rule.Tightest(b, a.Needs)
							require.True(t, ok)
							require.Negative(t, tightest.Diff().N, "what limits it is something short")
						}
					}
				}
			}
		})
	}
	for _, r := range []brief.Resource{brief.SingleWork, brief.AllWork, brief.Threads, brief.MemorySize, brief.DrawWork, brief.ComputeWork,
		brief.GraphicsMemory, brief.GraphicsRate, brief.BootSize, brief.BootRead, brief.CacheSize, brief.CacheWrite, brief.ArchiveSize, brief.ArchiveWrite} {
		require.Positive(t, short[r], "%s never turned short", r)
		require.Positive(t, served[r], "%s was never served", r)
	}
}

// rowFor is the row of a resource; nil where there is none.
func rowFor(rows []Row, r brief.Resource) *Row {
	for i := range rows {
		if rows[i].Resource == r {
			return &rows[i]
		}
	}
	return nil
}
