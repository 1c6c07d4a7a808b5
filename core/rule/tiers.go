package rule

import (
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/unit"
)

// A brief sizes three tiers: boot (system and programs), cache (work in hand) and archive (what is kept). One drive will
// do for several: a tier whose seat is empty lies on the boot drive, which then owes its size, its speed and its writing.
// The boot drive is what a machine starts from, so its seat is never left empty.

// tier is a storage seat with what the brief calls it and its size.
type tier struct {
	seat build.Seat
	size brief.Resource
}

var tiers = [...]tier{{build.Boot, brief.BootSize}, {build.Cache, brief.CacheSize}, {build.Archive, brief.ArchiveSize}}

// holds is the storage in a tier's seat.
func (v *View) holds(s build.Seat) build.Storage {
	switch s {
	case build.Cache:
		return v.Cache
	case build.Archive:
		return v.Archive
	}
	return v.Boot
}

// onBoot reports a tier that lies on the boot drive.
func (v *View) onBoot(t tier) bool { return t.seat == build.Boot || !v.Filled(t.seat) }

// carrier is the drive a tier lies on, nil where the boot seat is empty too.
func (v *View) carrier(s build.Seat) build.Storage {
	if d := v.holds(s); d.Drive != nil {
		return d
	}
	return v.Boot
}

// capacity is what a tier's drives hold: all of them together, or half where every archive drive has a twin.
func (v *View) capacity(s build.Seat) unit.Storage {
	d := v.holds(s)
	one := figure(v, d.Drive.Capacity, &d.Drive.Article, "capacity_gb")
	return one * unit.Storage(v.counted(s, d.Count))
}

// counted is how many of a tier's drives count for capacity: with copies asked for, the archive's drives stand in pairs
// that hold the same.
func (v *View) counted(s build.Seat, count int) int {
	if s == build.Archive && v.Needs.Copies && count > 1 {
		return count / 2
	}
	return count
}

// pooled is one need made of several tiers' sizes that lie on one drive.
func (v *View) pooled(in func(tier) bool) (brief.Need, bool) {
	var sum brief.Need
	asked := false
	for _, t := range tiers {
		n, ok := v.Needs.Get(t.size)
		if !ok || !in(t) {
			continue
		}
		if !asked {
			sum, asked = n, true
			continue
		}
		sum.Floor += n.Floor
		sum.Enough += n.Enough
		sum.Weight += n.Weight
		sum.Reason += "; " + n.Reason
	}
	sum.Enough = brief.Sold(sum.Resource, sum.Enough)
	return sum, asked
}
