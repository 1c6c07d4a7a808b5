package predict

import (
	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/part"
	"slipfit/core/sound"
)

// assigned is what a drive's place depends on.
var assigned = build.SetOf(build.Case, build.Graphics, build.Cards, build.Boot, build.Cache, build.Archive)

// loose adds the drives as their sheets state them, wherever they sit.
func (m *model) loose() {
	for _, t := range m.b.Tiers() {
		m.drives = append(m.drives, drive{
			seat: t.Seat, part: t.Drive, count: t.Count,
			rest: thousandth(&m.sheet, t.Drive.Idle, &t.Drive.Article, "idle_w"),
			most: thousandth(&m.sheet, t.Drive.Power, &t.Drive.Article, "power_w"),
		})
		m.disk(t)
	}
}

// storage adds the drives where they sit. Their heat goes to the board's chamber; they have no say in fan speeds, so their
// temperatures are read once the machine is at rest.
func (m *model) storage() {
	m.loose()
	var places []build.DrivePlace
	for i := range m.drives {
		d := &m.drives[i]
		d.beta = betaBay
		d.resistance = thousandth(&d.sheet, d.part.SinkAir, &d.part.Article, "sink_k_w")
		d.limit = thousandth(&d.sheet, d.part.Limit, &d.part.Article, "limit_c")
		if d.part.Form == part.FormM2 {
			d.beta = betaModule
			if places == nil {
				places = m.b.Assign(assigned).Drives
			}
			m.onBoard(d, places)
		}
	}
}

// Bare is what sockets come to for modules without a heat-sink of their own.
type Bare int

// What they come to.
const (
	Sunk   Bare = iota // each has one
	Naked              // one has none
	Unsaid             // of one the board does not say it
)

// BareIn is what the sockets come to that the modules of a tier sit in.
func BareIn(b *build.Build, tier build.Seat) Bare {
	bare := Sunk
	for _, p := range b.Assign(assigned).Drives {
		if p.Seat != tier || p.Socket == nil {
			continue
		}
		switch sink, stated := p.Socket.Sink.Get(); {
		case !stated:
			return Unsaid
		case !sink:
			bare = Naked
		}
	}
	return bare
}

// onBoard finds the worst socket of a tier's modules: without a heat-sink of its own or the board's a module is bare.
func (m *model) onBoard(d *drive, places []build.DrivePlace) {
	if own, ok := d.part.Sink.Get(); ok && own {
		return
	}
	for i := range places {
		p := &places[i]
		if p.Seat != d.seat || p.Socket == nil {
			continue
		}
		sink := read(&d.sheet, p.Socket.Sink, &m.b.Board.Article, "m2."+p.Socket.ID+".heat_sink")
		if !sink && d.resistance < bareModule {
			d.resistance, d.onModule = bareModule, p.Socket.ID
		}
	}
}

// disk adds a tier's turning disks as sources; they turn at rest too.
func (m *model) disk(t build.Tier) {
	if t.Drive.Disk {
		m.always(t.Drive.Name, t.Count, thousandth(&m.unheard, t.Drive.Sound, &t.Drive.Article, "sound_dba"))
	}
}

// always adds sources that do not follow speed, by their sheet's pressure level at 1 m.
func (m *model) always(name string, count int, dba float64) {
	m.steady = append(m.steady, sound.Running{Source: sound.Source{
		Name: name, Count: count, UDB: sourceUDB, RatedDBA: sound.PowerFromHemisphere(dba, 1),
	}})
}

// risenK is how much warmer than its air a drive is at a load.
func (d *drive) risenK(l *brief.Load) float64 {
	return between(d.rest, d.most, l.Drives) * d.resistance
}
