package brief

import "slipfit/core/unit"

// Games is playing games.
type Games struct {
	Class  GameClass                 `json:"class,omitempty" doc:"light, ordinary, demanding or traced (rays traced)."`
	Width  unit.Figure[unit.Whole]   `json:"width_px,omitzero" range:"640..16384" doc:"Picture width; that of the screen where not said."`
	Height unit.Figure[unit.Whole]   `json:"height_px,omitzero" range:"480..8640" doc:"Picture height; that of the screen where not said."`
	Rate   unit.Figure[unit.Whole]   `json:"frames_s,omitzero" range:"24..600" doc:"Pictures a second wanted; that of the screen where not said."`
	Games  unit.Figure[unit.Whole]   `json:"installed,omitzero" range:"0..500" doc:"Games installed at once; 6 where not said."`
	Each   unit.Figure[unit.Storage] `json:"each_gb,omitzero" range:"1..500" doc:"Size of one; 80 GB where not said."`
}

// GameClass is how much a game draws.
type GameClass string

// Classes of games.
const (
	GameLight     GameClass = "light"
	GameOrdinary  GameClass = "ordinary"
	GameDemanding GameClass = "demanding"
	GameTraced    GameClass = "traced"
)

// Values lists the accepted words.
func (GameClass) Values() []string { return []string{"light", "ordinary", "demanding", "traced"} }

func (*Games) name() string { return "games" }

// playing is what a class costs: its share of the calibration's demanding game in thousandths, the threads it fills, the memory
// of its textures, graphics memory a pixel of the picture in bytes (targets, history, finer textures on a finer picture), and
// the game's own memory.
type playing struct {
	permille, threads int64
	textures          unit.Memory
	pixelBytes        int64
	memory            unit.Memory
}

func (c GameClass) cost() playing {
	switch c {
	case GameLight:
		return playing{250, 4, unit.GiB / 2, 100, 6 * unit.GiB}
	case GameOrdinary:
		return playing{600, 6, 3 * unit.GiB, 600, 8 * unit.GiB}
	case GameDemanding:
		return playing{1000, 8, 4 * unit.GiB, 1000, 10 * unit.GiB}
	}
	return playing{1600, 8, 9 * unit.GiB / 2, 1000, 12 * unit.GiB}
}

// ask turns a game on a screen into needs. With p = width × height × pictures a second, in 10^9 pixels a second:
//
//	graphics work     p × game_points × (0.25 light, 0.6 ordinary, 1 demanding, 1.6 traced)
//	one-thread work   game_loop + game_loop_per_100_hz × pictures a second / 100: the main loop runs once a picture
//	graphics memory   textures of the class + 100 to 1000 bytes a pixel of the picture by class
//	boot              every game installed: maps and textures load from the fast tier
//
// Sources: the calibration block; 8 GB at 1080, 12 GB at 1440, 16 GB at 2160 lines is common practice.
func (g *Games) ask(a *asker) {
	class := takeWord(a, g.Class, "class", "class of game", GameOrdinary, GameDemanding)
	width, height := 2560, 1440
	if class == GameLight {
		width, height = 1920, 1080
	}
	screen := a.mode(width, height, 60, 8)
	w := take(a, g.Width, "width_px", "picture width", unit.Whole(screen.Width), unit.Whole(screen.Width))
	h := take(a, g.Height, "height_px", "picture height", unit.Whole(screen.Height), unit.Whole(screen.Height))
	rate := take(a, g.Rate, "frames_s", "pictures a second", unit.Whole(screen.Refresh), unit.Whole(screen.Refresh))
	games := take(a, g.Games, "installed", "games installed", 6, 12)
	each := take(a, g.Each, "each_gb", "size of a game", 80*unit.Gigabyte, 120*unit.Gigabyte)
	if !a.high && len(a.screens) == 0 {
		a.out.screen = Screen{Width: int(w), Height: int(h), Refresh: int(rate), Bits: 8, Count: 1}
	}
	cost := class.cost()
	draw := ceil(ceil(w*h*rate, 1000)*int64(a.cal.GameDraw)*cost.permille, 1_000_000_000)
	a.need(DrawWork, draw, ceil(draw*7, 5), 80, "calibration block", "%d × %d × %d pictures/s of a game of the class %s", w, h, rate, class)
	loop := int64(a.cal.GameLoop) + ceil(int64(a.cal.GameLoopHz)*rate, 100)
	a.need(SingleWork, loop, ceil(loop*5, 4), 50, "calibration block", "the main loop runs %d times a second: %d + %d × %d/100 points", rate, a.cal.GameLoop, a.cal.GameLoopHz, rate)
	a.need(AllWork, 4*loop, 8*loop, 15, practice, "four threads' worth of main loop: drawing lists, physics, sound")
	a.need(Threads, cost.threads, cost.threads+6, 20, practice, "a game of the class %s fills %d threads and little more", class, cost.threads)
	a.pairs(2)
	a.need(MemorySize, int64(cost.memory), 2*int64(cost.memory), 30, practice, "%s for a game of the class %s", cost.memory.Q(), class)
	picture := ceil(w*h*cost.pixelBytes, 1<<20)
	need := int64(cost.textures) + picture
	a.need(GraphicsMemory, need, ceil(need*3, 2), 40, practice, "%s of textures + %d × %d pixels × %d bytes", cost.textures.Q(), w, h, cost.pixelBytes)
	a.need(BootSize, games*each, 3*games*each/2, 25, practice, "%d games × %s: maps load from the fast tier", games, size(each))
	a.need(BootRead, 500, 5000, 15, practice, "a map loads in seconds")
	a.need(FastPorts, 1, 3, 5, practice, "a headset or a controller")
	a.writesYearly(6*each, 0, 0)
	a.load(50, 100, 60, 10)
	perHz := ceil(int64(a.cal.GameLoopHz)*rate, 100)
	a.reach("pictures a second", pictureUnit, rate, Calibrated, "calibration block",
		limit(DrawWork, 0, draw), limit(SingleWork, loop-perHz, perHz), limit(AllWork, 4*(loop-perHz), 4*perHz))
	a.reach("games installed at once", gameUnit, games, Arithmetic, "sizes as said", limit(BootSize, 0, games*each))
}
