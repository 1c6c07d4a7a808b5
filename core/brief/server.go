package brief

import "slipfit/core/unit"

// Server is serving files and programs to others from a corner.
type Server struct {
	Store    unit.Figure[unit.Storage] `json:"store_gb,omitzero" range:"10..1000000" doc:"What it keeps for others; 2000 GB where not said."`
	People   unit.Figure[unit.Whole]   `json:"people,omitzero" range:"1..500" doc:"People who use it; 4 where not said."`
	Services unit.Figure[unit.Whole]   `json:"services,omitzero" range:"0..200" doc:"Programs it runs for them besides files; 3 where not said."`
	Fast     bool                      `json:"fast,omitempty" doc:"Whether large files are worked on over the network."`
}

func (*Server) name() string { return "server" }

// ask turns what others use into needs: memory and threads by service, storage, and a network that the store can fill. Nobody sits before
// it: where it does nothing else, a screen is borrowed to set it up.
//
// Sources: 2500 Mbit/s carries about 297 MB/s, IEEE 802.3; the rest common practice.
func (s *Server) ask(a *asker) {
	store := take(a, s.Store, "store_gb", "what is kept", 2000*unit.Gigabyte, 4000*unit.Gigabyte)
	people := take(a, s.People, "people", "people", 4, 8)
	services := take(a, s.Services, "services", "services", 3, 6)
	a.need(Threads, 2+ceil(services, 2), 4+services, 15, practice, "two threads for files and one for every two of %d services", services)
	a.need(AllWork, 2000+400*services, 4000+800*services, 15, practice, "2000 points for files + 400 for each of %d services", services)
	memory := int64(2*unit.GiB) + services*int64(unit.GiB) + people*128
	a.need(MemorySize, memory, 2*memory, 30, practice, "2 GiB + %d services × 1 GiB + %d people × 128 MiB", services, people)
	a.need(BootSize, int64(20*unit.Gigabyte)+services*int64(5*unit.Gigabyte), int64(40*unit.Gigabyte)+services*int64(10*unit.Gigabyte), 5, practice, "20 GB + %d services × 5 GB", services)
	a.need(ArchiveSize, store, 2*store, 40, practice, "%s kept for %d people", size(store), people)
	wired, why := int64(1000), "files are opened over the network"
	if s.Fast {
		wired, why = 2500, "large files are worked on over the network"
	}
	a.need(Wired, wired, 2*wired+500, 30, "IEEE 802.3: 1000 Mbit/s carries about 119 MB/s, 2500 about 297 MB/s", "%s", why)
	a.need(ArchiveWrite, ceil(wired, 10), ceil(wired, 8), 15, "IEEE 802.3", "the store takes what %d Mbit/s carry", wired)
	a.writesYearly(int64(unit.Terabyte), 0, store/2)
	a.load(10, 0, 30, 30)
	a.out.unseen = true
	a.reach("programs run for others at once", serviceUnit, services, Practice, practice,
		limit(MemorySize, memory-services*int64(unit.GiB), services*int64(unit.GiB)), limit(AllWork, 2000, 400*services))
	a.reach("kept for others", gigabyteUnit, ceil(store, int64(unit.Gigabyte)), Arithmetic, "sizes as said", limit(ArchiveSize, 0, store))
	a.reach("large files over the network", megabyteUnit, ceil(wired, 10), Practice, "IEEE 802.3: 1000 Mbit/s carries about 119 MB/s; a tenth reckoned, common practice",
		limit(Wired, 0, wired), limit(ArchiveWrite, 0, ceil(wired, 10)))
}
