package rule

// All is every rule, in the order they are documented. Adding a rule is a file of its own, a folder of cases under
// testdata/rules and a line here.
var All = []*Rule{
	// fit
	&BoardForm,
	&GraphicsLength,
	&GraphicsThickness,
	&GraphicsHeight,
	&GraphicsBrackets,
	&GraphicsSag,
	&BoardPlate,
	&CoolerHeight,
	&CoolerRaised,
	&CoolerMemory,
	&CoolerBoard,
	&CoolerCard,
	&RadiatorMount,
	&RadiatorTubes,
	&RadiatorAir,
	&RadiatorCard,
	&RadiatorMemory,
	&RadiatorBoard,
	&SupplyForm,
	&SupplyLength,
	&SupplyReach,
	&SupplyReachCard,
	&SupplyReachDrives,
	&DriveBays,
	&DriveSlots,
	&FanPlaces,
	&CardLength,
	&Riser,
	&Desk,
	&DeskMass,

	// mate
	&Socket,
	&Platform,
	&Firmware,
	&CoolerSocket,
	&BoardPower,
	&MemoryType,
	&MemoryController,
	&MemoryCount,
	&MemorySize,
	&MemorySpeed,
	&MemoryECC,
	&Lanes,
	&DrivePorts,
	&Headers,
	&Cards,
	&AnyPicture,
	&Screens,
	&ScreenMode,
	&RearPorts,
	&Network,
	&Seats,

	// feed

	// cool

	// serve
	&ServeSingle,
	&ServeAllWork,
	&ServeThreads,
	&ServeMemory,
	&ServeMemoryRate,
	&ServeDraw,
	&ServeCompute,
	&ServeGraphicsMemory,
	&ServeEngines,
	&ServeBoot,
	&ServeBootRead,
	&ServeCache,
	&ServeCacheWrite,
	&ServeArchive,
	&ServeArchiveWrite,
	&ServeEndurance,

	// money

	// care
}
