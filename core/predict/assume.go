package predict

import "slipfit/core/part"

// What no data sheet states, and what is taken in its place. All of it is common practice unless another source is named.
const (
	// An opening of free area A loses Δp = ζ·ρ/2·(Q/A)², so K = ζ·ρ/(2·A²). ζ = 2.8 is a sharp-edged opening with a
	// coefficient of discharge of 0.6 (handbooks of flow resistance, from memory); a dust filter adds half as much again. A
	// front panel of 300 cm² with a filter then loses 7 Pa at 0.05 m³/s; 3 to 15 Pa is the trade's range.
	openingLoss = 2.8
	filterLoss  = 1.4

	// Seams, slot covers and cable holes: free area for each square metre of outer surface. A mid-tower of 0.9 m² then has
	// K = 20 000 Pa·s²/m⁶ all told.
	seamsM2PerM2 = 0.0102

	// grilleShare is the free share of a fan's swept area behind a stamped or wire grille, where the sheet lists a fan on a
	// face and no opening.
	grilleShare = 0.6

	// Films of air on the walls, W/(m²·K): inside, outside with radiation, and on either side of the plate between chambers.
	innerFilm = 6.0
	outerFilm = 8.0

	// plateGaps is the open share of the plate between two chambers: cable holes, the riser's slot, its edges.
	plateGaps = 0.05

	// Share of its own warm air that a machine takes in again: on an open desk or floor, and on a shelf.
	openRecirculation  = 0.04
	shelfRecirculation = 0.10

	// Where a part breathes: 0 is air as it enters the chamber, 1 the mixed air of the chamber.
	betaCooler   = 0.7 // a cooler behind the front fans, beside the card
	betaGraphics = 0.6
	betaModule   = 0.8 // a storage module on the board
	betaBay      = 0.5 // a drive in a bay by the front
	betaPanel    = 0.2 // a sink whose fans lie behind a grille of their own chamber

	// sinkFixed is the share of an air cooler's resistance that fan speed does not change: base, pipes and fins. The rest goes
	// as speed to the power −0.6, as for the worked example's card.
	sinkFixed    = 0.4
	flowExponent = 0.6

	// Paste: 50 µm of 5 W/(m·K), as in the worked example.
	pasteM      = 50e-6
	pasteWPerMK = 5.0

	// A radiator section of 120 mm and 27 mm depth loses K·q² with K = 40 000 Pa·s²/m⁶, as in the worked example; deeper ones
	// in proportion, wider ones by the square of the area. Its UA holds at 0.015 m³/s and goes as the square root of flow.
	sectionImpedance = 40_000.0
	sectionSideM     = 0.120
	sectionDepthM    = 0.027
	sectionFlow      = 0.015
	sectionExponent  = 0.5

	// Coolant is taken as water near 30 °C (Çengel, Heat Transfer, Table A-9); glycol mixtures carry up to 7 % less.
	coolantKgPerM3  = 995.0
	coolantJPerKgK  = 4179.0
	packImpedance   = 3.0 // of a fin pack or a supply's inside, in units of its fan's own: half the free flow gets through
	cardFanM3PerH   = 48.0
	cardFanPa       = 16.0
	cardFanRatedRPM = 2300.0 // a card's fan is taken as a slim one of 92 mm: 48 m³/h and 16 Pa at 2300 turns a minute

	// topFlowMM is the height up to which an air cooler blows down on the board and draws from the side panel.
	topFlowMM = 100

	// bareModule is a storage module without any heat-sink, K/W (range 12 to 25).
	bareModule = 20.0

	// Converters of the board: their temperature over the case air at the power they hold without end, and what they are
	// held under. The board's figure is taken to hold in case air of 40 °C.
	converterRiseK  = 65.0
	converterLimitC = 105.0

	// memoryRest is what memory draws at rest, as a share of its draw at work; devicesW is keyboard, mouse and sticks,
	// whose heat stays outside the case. Both as in the rules of the group feed.
	memoryRest = 0.30
	devicesW   = 10.0

	// The least speed a fan that may stand still turns at once it turns: 30 % of full speed (4-Wire PWM Controlled Fans
	// Specification).
	leastTurning = 0.30

	// speedOfPower is how speed goes with power where voltage follows frequency: as its cube root.
	speedOfPower = 1.0 / 3
)

// Control curves, when nobody has set others: fans turn at their lowest speed up to the first temperature and at full
// speed from the second on; a part at its limit calls for full speed. Common practice.
const (
	caseAirLowC  = 28.0 // case fans follow the case air
	caseAirFullC = 45.0
	coolantLowC  = 28.0 // a radiator's fans follow the coolant; 28 to 40 °C is the worked example's curve
	coolantFullC = 40.0
	sinkLowC     = 45.0 // an air cooler's fans follow the processor
	sinkFullK    = 8.0  // under its limit
	cardLowC     = 50.0 // a card's fans follow its core
	cardFullK    = 3.0  // under its limit
)

// Standard uncertainties of what is not an input of the air network. Common practice.
const (
	sourceUDB   = 1.5  // of a sheet's level
	speedUShare = 0.05 // of a speed
	meterUDB    = 2.0  // of a sound level meter in a furnished room
	efficiencyU = 0.005
)

// intakes says which faces take air in, whatever blows there; the others let it out.
func intakes(f part.Face) bool { return f == part.Front || f == part.Bottom || f == part.Side }
