package outcome

import (
	"fmt"
	"math"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/media"
	"slipfit/core/rule"
	"slipfit/core/unit"
)

// Storage is what belongs on which tier, how large each is to be, and whether one drive will do.
type Storage struct {
	Tiers  []Tier   `json:"tiers"`
	One    string   `json:"one_drive"` // whether one drive will do, in a sentence
	Copies []string `json:"copies"`    // the usual advice
}

// Tier is one tier of a brief; Drive says how a build holds it and is left out where there is no build.
type Tier struct {
	Tier    string        `json:"tier"`
	Holds   string        `json:"holds"`
	Kind    string        `json:"kind"`  // what sort of drive does
	Floor   unit.Quantity `json:"floor"` // decimal, the share kept free included
	Binary  string        `json:"floor_binary"`
	Bought  unit.Quantity `json:"bought"` // next size sold
	Free    unit.Quantity `json:"kept_free"`
	Yearly  unit.Quantity `json:"written_a_year"`
	Writers string        `json:"written_by,omitempty"` // which activity writes how much of that
	Why     string        `json:"why"`
	Drive   *TierDrive    `json:"drive,omitempty"`
}

// TierDrive is how a build holds a tier.
type TierDrive struct {
	On       string         `json:"on"` // title of the seat whose drives hold it
	Part     string         `json:"name"`
	Count    int            `json:"count"`
	Capacity unit.Quantity  `json:"capacity"`
	Binary   string         `json:"capacity_binary"`
	Left     unit.Quantity  `json:"left"`            // for this tier beside the others on the same drives
	Fill     unit.Quantity  `json:"fill"`            // share of that taken from the first day
	Years    *unit.Quantity `json:"years,omitempty"` // until the rated writing is spent; left out for disks
	Missing  []string       `json:"missing,omitempty"`
}

// tierWords says what belongs on a tier and what sort of drive does. Common practice.
var tierWords = map[brief.Resource][3]string{
	brief.BootSize:    {"boot and programs", "the system, programs, maps of games and sample libraries: what is read all day", "solid state"},
	brief.CacheSize:   {"cache", "work in hand, previews and scratch files: what is written all day and could be made again", "solid state; a drive of its own where it is written hard"},
	brief.ArchiveSize: {"archive", "what is kept and read now and then: footage, photographs, films", "a hard disk will do"},
}

// written is what goes to a tier in a year.
func written(w *brief.Written, r brief.Resource) unit.Storage {
	switch r {
	case brief.CacheSize:
		return w.Cache
	case brief.ArchiveSize:
		return w.Archive
	}
	return w.Boot
}

// usualOne is up to where everything is put on one solid-state drive without a thought, largestOne up to where it can be.
// Common practice.
const (
	usualOne   = 2 * unit.Terabyte
	largestOne = 4 * unit.Terabyte
)

// slowest is the writing that a hard disk holds, MB/s. Common practice.
const slowest = 150

// StorageOf tells the tiers of needs, and of a build where there is one.
func StorageOf(n *brief.Needs, b *build.Build) *Storage {
	out := &Storage{}
	var held []rule.Tier
	if b != nil {
		held = rule.Tiers(b, n)
	}
	var sum int64
	for i, r := range []brief.Resource{brief.BootSize, brief.CacheSize, brief.ArchiveSize} {
		need, asked := n.Get(r)
		if !asked {
			continue
		}
		sum += need.Floor
		words := tierWords[r]
		t := Tier{Tier: words[0], Holds: words[1], Kind: words[2], Floor: need.FloorQ(), Binary: binary(need.Floor),
			Bought: unit.Storage(brief.Sold(r, need.Floor)).Q(), Free: unit.Share(r.Free() * 100).Q(), Yearly: written(&n.Written, r).Q(), Writers: writers(n, r), Why: need.Reason}
		if speed := n.By[brief.ArchiveWrite].Floor; r == brief.ArchiveSize && speed > slowest {
			t.Kind = fmt.Sprintf("solid state: %d MB/s are to be written without a break, which a disk does not hold", speed)
		}
		if held != nil && held[i].Drive != nil {
			t.Drive = tierDrive(&held[i], need.Floor)
		}
		out.Tiers = append(out.Tiers, t)
	}
	bought := unit.Storage(brief.Sold(brief.BootSize, sum))
	switch {
	case sum <= int64(usualOne):
		out.One = fmt.Sprintf("One solid-state drive will do: everything together is %s, and drives of %s are common.", unit.Storage(sum).Q(), bought.Q())
	case sum <= int64(largestOne):
		out.One = fmt.Sprintf("One solid-state drive of %s could hold everything, %s together; a smaller one with a disk for what is read now and then costs less.", bought.Q(), unit.Storage(sum).Q())
	default:
		out.One = fmt.Sprintf("One drive will not do: everything together is %s, more than the %s of a usual solid-state drive; a disk keeps what is read now and then for less.", unit.Storage(sum).Q(), largestOne.Q())
	}
	out.Copies = []string{
		"Three copies of what must not be lost, on two kinds of medium, one of them in another building.",
		"Two drives that hold the same in one machine outlive a drive and nothing else: they are no copy against theft, fire, a wrong key or a program that encrypts.",
		"The cache tier needs no copy, since what is on it can be made again; look after what is in hand at the end of the day.",
	}
	if n.Copies {
		out.Copies = append(out.Copies, "The brief asks for two drives of the machine to hold what is kept: the archive's drives stand in pairs.")
	}
	return out
}

func tierDrive(t *rule.Tier, floor int64) *TierDrive {
	d := &TierDrive{On: t.On.Title(), Part: t.Drive.Title(), Count: t.Count, Capacity: t.Capacity.Q(), Binary: binary(int64(t.Capacity)), Left: t.Left.Q(), Missing: t.Missing}
	if t.Left > 0 {
		// the floor keeps its share free: what is filled is the rest
		taken := floor * (1000 - t.Size.Free()) / 1000
		d.Fill = unit.Share(taken * 100_000 / int64(t.Left)).Q()
	}
	if t.Rated > 0 && t.Yearly > 0 {
		years := unit.Quantity{N: t.Years, Kind: unit.Year}
		d.Years = &years
	}
	return d
}

// binary says decimal megabytes as a system shows them: 2 TB is 1.82 TiB (IEC 80000-13).
func binary(mb int64) string {
	bytes := float64(mb) * media.MB
	if bytes >= media.TiB {
		return fmt.Sprintf("%.2f TiB", bytes/media.TiB)
	}
	return fmt.Sprintf("%d GiB", int64(math.Round(bytes/media.GiB)))
}
