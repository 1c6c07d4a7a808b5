package brief

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"slipfit/core/media"
	"slipfit/core/part"
	"slipfit/core/unit"
)

// How several activities share a resource.
type sharing uint8

const (
	most     sharing = iota // the one that asks most sets it
	running                 // what goes on at once adds up; otherwise the one that asks most
	standing                // everything adds up: it stays on the drive when the program is closed
)

var shared = [Resources]sharing{
	SingleWork: most, AllWork: running, Threads: running, MemorySize: running, MemoryRate: running, Channels: most,
	DrawWork: running, ComputeWork: running, GraphicsMemory: running, GraphicsRate: most,
	BootSize: standing, BootRead: most, CacheSize: standing, CacheWrite: running, ArchiveSize: standing, ArchiveWrite: most,
	Endurance: most, Wired: most, Wireless: most, FastPorts: running,
}

// headroom is the share of a tier's drive that is kept free, in thousandths.
func headroom(r Resource) int64 {
	switch r {
	case BootSize:
		return media.HeadroomSolidStatePermille
	case CacheSize:
		return media.HeadroomScratchPermille
	case ArchiveSize:
		return media.HeadroomDiskPermille
	}
	return 0
}

// gather makes one need of what all activities ask of a resource.
func gather(r Resource, all []demand) Need {
	var at []Need
	var top, topEnough Need
	for _, d := range all {
		n := d.by[r]
		if n.Floor == 0 && n.Enough == 0 {
			continue
		}
		if shared[r] == standing || shared[r] == running && d.atOnce {
			at = append(at, n)
			continue
		}
		if n.Floor > top.Floor || top.Source == "" {
			top = n
		}
		topEnough.Enough = max(topEnough.Enough, n.Enough)
	}
	if top.Source != "" {
		top.Enough = topEnough.Enough
		at = append(at, top)
	}
	if len(at) == 0 {
		return Need{}
	}
	slices.SortStableFunc(at, func(a, b Need) int { return cmp.Compare(b.Floor, a.Floor) })
	sum := Need{Resource: r, From: at[0].From}
	var terms, sources []string
	for _, n := range at {
		sum.Floor += n.Floor
		sum.Enough += n.Enough
		sum.Weight = max(sum.Weight, n.Weight)
		if n.Floor > 0 || len(at) == 1 {
			terms = append(terms, term(n, len(at) > 1))
		}
		if !slices.Contains(sources, n.Source) {
			sources = append(sources, n.Source)
		}
	}
	raw := sum.Floor
	sum.finish(headroom(r))
	sum.Reason, sum.Source = strings.Join(terms, " + "), strings.Join(sources, "; ")
	if len(at) > 1 {
		sum.Reason += " = " + unit.Quantity{N: raw, Kind: r.Kind()}.String()
	}
	if h := headroom(r); h > 0 {
		sum.Reason += fmt.Sprintf(", %s of a drive kept free", unit.Share(h*100).Q())
	}
	if s := Sold(r, sum.Floor); s > raw {
		sum.Reason += fmt.Sprintf(": %s", bought(r, s))
	}
	return sum
}

// finish turns what the work takes into what is to be bought: the share kept free is added, sizes that are sold in steps are
// rounded up. The floor of a drive is not rounded, so that several tiers on one drive are not rounded several times.
func (n *Need) finish(headroomPermille int64) {
	if headroomPermille > 0 {
		n.Floor = withFree(n.Floor, headroomPermille)
		n.Enough = Sold(n.Resource, withFree(n.Enough, headroomPermille))
		return
	}
	n.Floor, n.Enough = Sold(n.Resource, n.Floor), Sold(n.Resource, n.Enough)
}

// withFree is the capacity of which size is left when a share in thousandths is kept free, up to a whole gigabyte.
func withFree(size, permille int64) int64 {
	whole := ceil(size*1000, 1000-permille)
	return ceil(whole, int64(unit.Gigabyte)) * int64(unit.Gigabyte)
}

// term is one activity's share of a need, with its arithmetic.
func term(n Need, amount bool) string {
	if !amount {
		return fmt.Sprintf("%s: %s", n.From, n.Reason)
	}
	return fmt.Sprintf("%s %s (%s)", n.From, n.FloorQ(), n.Reason)
}

// bought says how an amount is bought.
func bought(r Resource, n int64) string {
	q := unit.Quantity{N: n, Kind: r.Kind()}
	switch r {
	case MemorySize:
		modules := int64(2)
		for n/modules > largestModule {
			modules *= 2
		}
		return fmt.Sprintf("bought as %s, %d × %s", q, modules, unit.Memory(n/modules).Q())
	case Threads:
		return fmt.Sprintf("bought as %s threads", q)
	}
	return fmt.Sprintf("bought as %s", q)
}

// Needs turns the brief into what it asks of a build from the given stock: its calibration says what work is in points, its
// tax what is left of the budget for parts and labour. The same brief and stock always give the same needs, in whatever
// order the activities stand.
func (b *Brief) Needs(stock *part.Stock) *Needs {
	n := &Needs{ECC: b.ECC, Copies: b.Copies, Place: b.Place, Wish: b.Wish}
	if gross, ok := b.Budget.Get(); ok {
		n.Budget, n.Named = net(gross, stock.Shop.Tax), gross
	}
	all := []demand{b.machine(&stock.Calibration)}
	for i := range b.Activities {
		a := &b.Activities[i]
		for _, k := range a.given() {
			all = append(all, b.hear(k, a, &stock.Calibration))
		}
	}
	slices.SortStableFunc(all, before)
	for r := range Resource(Resources) {
		n.By[r] = gather(r, all)
	}
	for i := range all {
		all[i].settle(all)
		for _, m := range all[i].aims {
			if !m.Usual.empty() {
				n.Aims = append(n.Aims, m)
			}
		}
	}
	n.Screens = b.Screens
	var suits Screen
	for _, d := range all {
		n.Decode = addCodecs(n.Decode, d.decode)
		n.Encode = addCodecs(n.Encode, d.encode)
		if d.written != (Written{}) {
			n.Writes = append(n.Writes, Writes{d.name, d.written})
		}
		n.Written.Boot += d.written.Boot
		n.Written.Cache += d.written.Cache
		n.Written.Archive += d.written.Archive
		n.Assumed = append(n.Assumed, d.assumed...)
		if d.load.Activity != "" {
			n.Loads = append(n.Loads, d.load)
		}
		suits = larger(suits, d.screen)
	}
	n.Loads = append(n.Loads, together(all)...)
	if len(n.Screens) == 0 {
		suits.Count, suits.Owned = 1, !slices.ContainsFunc(all, func(d demand) bool { return !d.unseen })
		n.Screens = []Screen{suits}
		taken := "taken"
		if suits.Owned {
			taken = "borrowed to set it up, none bought"
		}
		n.Assumed = append(n.Assumed, fmt.Sprintf("screens not said: one of %d × %d at %d Hz with %d bits a colour %s",
			suits.Width, suits.Height, suits.Refresh, suits.Bits, taken))
	}
	if differ := b.differing(); differ != "" {
		n.Assumed = append(n.Assumed, differ)
	}
	n.Assumed = append(n.Assumed, b.unsaid()...)
	if stock.Calibration.Tolerance == 0 {
		n.Assumed = append(n.Assumed, "the catalog says nothing of what work a point is: speed is not compared")
	}
	return n
}

// hear asks one activity for its floors and for what is enough.
func (b *Brief) hear(k kind, act *Activity, cal *part.Calibration) demand {
	d := demand{name: k.name(), atOnce: act.AtOnce}
	a := asker{cal: cal, screens: b.Screens, out: &d}
	a.hours = take(&a, act.Hours, "hours_week", "hours a week", 20, 20)
	k.ask(&a)
	a.high = true
	k.ask(&a)
	return d
}

// net is what is left of a sum that includes a tax, rounded down.
func net(gross unit.Money, tax unit.Share) unit.Money {
	return gross * 100_000 / (100_000 + unit.Money(tax))
}

// before orders activities by what they are and ask, so that their order in the brief changes nothing.
func before(a, b demand) int {
	if c := cmp.Compare(a.name, b.name); c != 0 {
		return c
	}
	for r := range a.by {
		if c := cmp.Or(cmp.Compare(b.by[r].Floor, a.by[r].Floor), cmp.Compare(b.by[r].Enough, a.by[r].Enough),
			cmp.Compare(a.by[r].Reason, b.by[r].Reason)); c != 0 {
			return c
		}
	}
	return cmp.Or(strings.Compare(strings.Join(a.assumed, "\n"), strings.Join(b.assumed, "\n")), cmp.Compare(a.load.Hours, b.load.Hours))
}

// addCodecs adds formats that are not asked for yet.
func addCodecs(list, more []CodecNeed) []CodecNeed {
	for _, m := range more {
		if !slices.ContainsFunc(list, func(c CodecNeed) bool { return c.Codec == m.Codec }) {
			list = append(list, m)
		}
	}
	return list
}

// together is the heaviest load when some activities go on while others do: their sum with the heaviest of the others.
func together(all []demand) []Load {
	sum, rest := Load{Activity: "all at once"}, Load{}
	count := 0
	for _, d := range all {
		switch l := d.load; {
		case l.Activity == "":
		case d.atOnce:
			count++
			sum.add(l)
		default:
			rest.heaviest(l)
		}
	}
	if count == 0 || count == 1 && rest == (Load{}) {
		return nil
	}
	sum.add(rest)
	return []Load{sum}
}

// add adds another load, up to all that the parts can draw.
func (l *Load) add(m Load) {
	l.Processor, l.Graphics = min(l.Processor+m.Processor, fullLoad), min(l.Graphics+m.Graphics, fullLoad)
	l.Memory, l.Drives = min(l.Memory+m.Memory, fullLoad), min(l.Drives+m.Drives, fullLoad)
}

// heaviest is the heavier of two loads in every part.
func (l *Load) heaviest(m Load) {
	l.Processor, l.Graphics = max(l.Processor, m.Processor), max(l.Graphics, m.Graphics)
	l.Memory, l.Drives = max(l.Memory, m.Memory), max(l.Drives, m.Drives)
}

const fullLoad unit.Share = 100_000

// larger is the screen that suits both: the larger picture, the faster refresh, the deeper colour.
func larger(a, b Screen) Screen {
	if int64(b.Width)*int64(b.Height) > int64(a.Width)*int64(a.Height) {
		a.Width, a.Height = b.Width, b.Height
	}
	a.Refresh, a.Bits = max(a.Refresh, b.Refresh), max(a.Bits, b.Bits)
	return a
}

// ceil is a/b rounded up, for a not below 0.
func ceil(a, b int64) int64 { return (a + b - 1) / b }

// Alone is what one activity asks when it is done: its own needs with the system's and those of what goes on meanwhile.
type Alone struct {
	Activity string
	Needs    *Needs
}

// Alone turns each activity of the brief into needs by itself, in the brief's order, so that a build can be told what holds
// each of them back.
func (b *Brief) Alone(stock *part.Stock) []Alone {
	var list []Alone
	for i := range b.Activities {
		one := *b
		one.Activities = nil
		for j, a := range b.Activities {
			if i == j || a.AtOnce {
				one.Activities = append(one.Activities, a)
			}
		}
		list = append(list, Alone{b.Activities[i].Name(), one.Needs(stock)})
	}
	return list
}
