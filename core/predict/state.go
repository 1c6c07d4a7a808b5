package predict

// state is what a core comes to with so much heat besides in the board's chamber.
type state struct {
	rests        bool      // it came to rest, and no figure is missing
	steady       bool      // it rests, and more heat leads to air no cooler
	free         bool      // no part is at its limit
	airC, freshC float64   // in the board's chamber, and as it comes in
	warmsFrom    float64   // see Run
	cardC        float64   // in the card's, where there is one
	kept         float64   // the least share of speed that a part keeps
	coolsKPerW   float64   // by which a watt more may cool the air, at most, in one chamber, as long as no part comes to its limit
	heldW        float64   // by the processor
	dcW          float64   // that the supply gives
	asksW        float64   // that all but fans ask of it
	turns        bool      // the supply's fan
	powerDBA     float64   // of all but turning disks
	leastDBA     float64   // the same with any more heat, at least
	heard        bool      // no level is missing, on an ordinary day: on the hottest nobody asks
	rpm          []float64 // in two chambers, of the fans on the faces, the parts' own and the supply's
}

// coolsKPerW is by how much a watt more in one chamber may cool its air, by what it brings through the supply's fan at most.
func (r *Run) coolsKPerW() float64 {
	return r.blown() / r.inM3PerS() * r.Zones[boardZone].RiseK.Expected
}

// inletC is the air that a drive breathes, of which a share is mixed air.
func (s *state) inletC(beta float64) float64 { return s.freshC + float64(beta*(s.airC-s.freshC)) }

// stateKey says which state of a core.
type stateKey struct {
	load   int
	day    Day
	extraW float64
	supply supplyState
}

// supplyState is what is taken of a supply besides its figures.
type supplyState uint8

const (
	asItIs   supplyState = iota
	turning              // its fan never stands still
	standing             // its fan never turns
	closed               // no air comes through it
)

// state solves the core with so much heat besides.
func (f *Forecast) state(k stateKey) *state {
	if s := f.states[k]; s != nil {
		return s
	}
	of := f
	switch k.supply {
	case turning:
		of = f.turning()
	case standing:
		of = f.standing()
	case closed:
		of = f.closed()
	}
	r := of.run(f.loads[k.load], roomC(f.needs, k.day), f.besides.at(k.load)+k.extraW, f.besides.mostW(k.load))
	s := &state{}
	if r.Err == nil && len(r.Missing) == 0 {
		*s = state{
			rests: true, steady: r.steady(), free: r.free(), airC: r.Zones[boardZone].AirC.Expected, freshC: r.freshC, warmsFrom: r.warmsFrom(), kept: 1,
			coolsKPerW: r.coolsKPerW(), heldW: r.Parts[0].HeldW.Expected, dcW: r.DCW.Expected, asksW: r.asksW(), turns: r.Cooling[len(r.Cooling)-1].RPM.Expected > 0,
		}
		if s.heard = k.day == Ordinary && len(r.Unheard) == 0; s.heard {
			s.powerDBA, s.leastDBA = r.PowerDBA.Expected, r.leastDBA()
		}
		for i := range r.Parts {
			s.kept = min(s.kept, r.Parts[i].Kept.Expected)
		}
		if len(r.Zones) > 1 {
			s.cardC = r.Zones[cardZone].AirC.Expected
		}
		for _, list := range [...][]Fan{r.Fans, r.Cooling} {
			for i := range list {
				s.rpm = append(s.rpm, list[i].RPM.Expected)
			}
		}
	}
	if f.states == nil {
		f.states = map[stateKey]*state{}
	}
	f.states[k] = s
	return s
}

// steady reports a run from which more heat in the board's chamber leads to air there no cooler, in one chamber to fans that follow
// it no slower and parts that hold no more.
//
// Why, in one chamber: suppose that more heat came to cooler air. Every part reads its own temperature, which falls with the air
// at it, so that no fan of a part or of the case would turn faster, no part would hold less, and draughts would be weaker: no less heat
// into no more air, which is then no cooler. Limits change nothing, for what a part at its limit calls for is taken
// back as the air grows cooler. Two things go the other way and are looked at: a supply's fan, which turns faster for more load,
// and a radiator that warms what comes in.
//
// In two chambers, as long as no part is at its limit, the air of either follows the other's by less than one for one, for most of
// it comes from outside: were the board's cooler, so would the card's be or hardly warmer, and it comes to the same. The card's may
// well grow cooler, and fans slower that follow the warmer of the two.
func (r *Run) steady() bool {
	return r.warmsFaster() && r.warmsFrom() <= r.forecast.model.mixed()
}
