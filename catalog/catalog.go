// Package catalog holds a generic stock of invented makers, good enough to plan real machines with, and the loader a shop
// uses for its own. A catalog is a directory of JSON files, one a kind of part (cases.json, boards.json ...), shop.json and
// calibration.json; the schemas of the files are under schema/.
//
// Work is stated in points, so that parts of one catalog compare with one another and with nothing else:
//
//   - 1000 single_points is one thread of the calibration core, quillmar-wren-140, at its highest sustained clock; all_points is
//     what all threads do together at the processor's sustained power.
//   - 1000 draw_points and 1000 compute_points is what the calibration cards, those of 115 W and 8 GiB such as
//     calderby-lantern-30, do in picture work and in compute work.
//
// A shop that measures its own machines replaces the points by its own measurements of the same two references.
package catalog

import (
	"embed"
	"errors"
	"io/fs"

	"slipfit/core/format"
	"slipfit/core/part"
)

// Version is the version of the catalog files this package reads.
const Version = 1

//go:embed *.json
var embedded embed.FS

// Embedded is the generic stock that comes with slipfit.
func Embedded() (*part.Stock, error) { return Load(embedded) }

// kindFile is a file of parts of one kind.
type kindFile[P any] struct {
	format.Head
	Parts []P `json:"parts" doc:"The parts, in the order the shop lists them."`
}

// shopFile is the file of the shop's own figures.
type shopFile struct {
	format.Head
	Shop part.Shop `json:"shop" doc:"The shop's own figures."`
}

// calibrationFile is the file of the work that activities are on the references.
type calibrationFile struct {
	format.Head
	Calibration part.Calibration `json:"calibration" doc:"How much work the activities of a brief are."`
}

// loader reads the files of one catalog and gathers what is wrong.
type loader struct {
	fsys  fs.FS
	found int
	errs  []error
}

// Load reads the catalog files of a directory. A kind whose file is absent has no parts, a catalog without calibration.json
// states no work; shop.json must be there. The error joins a format.Error for everything wrong in any file.
func Load(fsys fs.FS) (*part.Stock, error) {
	l := &loader{fsys: fsys}
	s := &part.Stock{
		Cases:      parts[part.Case](l, "cases"),
		Boards:     parts[part.Board](l, "boards"),
		Processors: parts[part.Processor](l, "processors"),
		Coolers:    parts[part.Cooler](l, "coolers"),
		Memory:     parts[part.Memory](l, "memory"),
		Graphics:   parts[part.Graphics](l, "graphics"),
		Supplies:   parts[part.Supply](l, "supplies"),
		Drives:     parts[part.Drive](l, "drives"),
		Fans:       parts[part.Fan](l, "fans"),
		Monitors:   parts[part.Monitor](l, "monitors"),
		Cards:      parts[part.Card](l, "cards"),
		UPS:        parts[part.UPS](l, "ups"),
		Services:   parts[part.Service](l, "services"),
	}
	var shop shopFile
	there := l.read("shop", &shop)
	s.Shop = shop.Shop
	var calibration calibrationFile
	l.read("calibration", &calibration)
	s.Calibration = calibration.Calibration
	switch {
	case l.found == 0:
		return nil, &format.Error{File: "catalog", Want: "a directory with shop.json and files of parts such as cases.json and boards.json"}
	case !there:
		l.errs = append(l.errs, &format.Error{File: "shop.json", Value: "no such file", Want: "the shop's own figures: name, currency, tax, revision"})
	}
	if len(l.errs) == 0 {
		l.errs = check(s)
	}
	if len(l.errs) > 0 {
		return nil, errors.Join(l.errs...)
	}
	return s, nil
}

// parts reads the file of one kind.
func parts[P any](l *loader, name string) []*P {
	var f kindFile[P]
	l.read(name, &f)
	list := make([]*P, len(f.Parts))
	for i := range f.Parts {
		list[i] = &f.Parts[i]
	}
	return list
}

// read reads name.json of kind slipfit-name into v and reports whether the file is there.
func (l *loader) read(name string, v any) bool {
	file := name + ".json"
	data, err := fs.ReadFile(l.fsys, file)
	if errors.Is(err, fs.ErrNotExist) {
		return false
	}
	l.found++
	if err != nil {
		l.errs = append(l.errs, &format.Error{File: file, Value: err.Error(), Want: "a file that can be read"})
		return true
	}
	if err := format.Read(file, data, "slipfit-"+name, Version, v); err != nil {
		l.errs = append(l.errs, err)
	}
	return true
}
