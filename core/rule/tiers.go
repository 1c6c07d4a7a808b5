package rule

import (
	"slices"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
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

// Tier is one tier of a brief's storage as a build holds it.
type Tier struct {
	Size     brief.Resource // boot, cache or archive size
	On       build.Seat     // seat whose drives hold it; the boot seat where its own is empty
	Drive    *part.Drive    // nil where even the boot seat is empty
	Count    int
	Capacity unit.Storage // of those drives, decimal MB
	Left     unit.Storage // of it for this tier, when the other tiers on the same drives have their floors
	Yearly   unit.Storage // what all tiers on the same drives write in a year
	Rated    int64        // TB those drives are rated for, JESD218; 0 for disks, which have no such rating
	Years    int64        // until that is spent, thousandths; only where Rated and Yearly are above 0
	Missing  []string     // figures the drive's sheet lacks
}

// Tiers tells where the three tiers of a brief lie on a build, with what is left for each and how long the drives last.
func Tiers(b *build.Build, n *brief.Needs) []Tier {
	v := NewView(b, n)
	var list []Tier
	for _, t := range tiers {
		v.missing = v.missing[:0]
		out := Tier{Size: t.size, On: t.seat}
		if v.onBoot(t) {
			out.On = build.Boot
		}
		if d := v.carrier(t.seat); d.Drive != nil {
			out.Drive, out.Count = d.Drive, d.Count
			out.Capacity = v.capacity(out.On)
			out.Left = out.Capacity
			for _, other := range tiers {
				if other != t && (other.seat == out.On || out.On == build.Boot && v.onBoot(other)) {
					out.Left -= unit.Storage(v.Needs.By[other.size].Floor)
				}
			}
			out.Left = max(out.Left, 0)
			if !d.Drive.Disk {
				s := v.spent(out.On, d)
				out.Yearly, out.Rated, out.Years = s.yearly, s.rated, s.years
			}
		}
		out.Missing = slices.Clone(v.missing)
		list = append(list, out)
	}
	return list
}
