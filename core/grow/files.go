package grow

import (
	"slipfit/core/format"
	"slipfit/core/part"
)

// File is a file of a catalog: its name, such as boards.json, and its bytes.
type File struct {
	Name string
	Data []byte
}

// version of the catalog files that are written.
const version = 1

// Files prints a stock as the files of a catalog, one a kind of part, with the shop's and the calibration's.
func Files(s *part.Stock) []File {
	files := []File{
		file("shop", struct {
			format.Head
			Shop part.Shop `json:"shop"`
		}{head("shop"), s.Shop}),
	}
	if s.Calibration != (part.Calibration{}) {
		files = append(files, file("calibration", struct {
			format.Head
			Calibration part.Calibration `json:"calibration"`
		}{head("calibration"), s.Calibration}))
	}
	return append(files,
		parts("cases", s.Cases), parts("boards", s.Boards), parts("processors", s.Processors), parts("coolers", s.Coolers),
		parts("memory", s.Memory), parts("graphics", s.Graphics), parts("supplies", s.Supplies), parts("drives", s.Drives),
		parts("fans", s.Fans), parts("monitors", s.Monitors), parts("cards", s.Cards), parts("ups", s.UPS),
		parts("services", s.Services))
}

func head(name string) format.Head { return format.Head{Kind: "slipfit-" + name, Version: version} }

func file(name string, v any) File { return File{name + ".json", format.Write(v)} }

func parts[P any](name string, list []*P) File {
	var f struct {
		format.Head
		Parts []P `json:"parts"`
	}
	f.Head = head(name)
	for _, p := range list {
		f.Parts = append(f.Parts, *p)
	}
	return file(name, f)
}
