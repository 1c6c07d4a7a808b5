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
	"bytes"
	"embed"
	"errors"
	"io/fs"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

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
	Parts []*P `json:"parts" doc:"The parts, in the order the shop lists them."`
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

// source is one file of a catalog: its name without .json and what takes it in.
type source struct {
	name string
	take func(file string, text []byte) error
}

// sources lists the files of a catalog, in the order what is wrong in them is told, each to be taken into s.
func sources(s *part.Stock) []source {
	return []source{
		taken("cases", func(f *kindFile[part.Case]) { s.Cases = f.Parts }),
		taken("boards", func(f *kindFile[part.Board]) { s.Boards = f.Parts }),
		taken("processors", func(f *kindFile[part.Processor]) { s.Processors = f.Parts }),
		taken("coolers", func(f *kindFile[part.Cooler]) { s.Coolers = f.Parts }),
		taken("memory", func(f *kindFile[part.Memory]) { s.Memory = f.Parts }),
		taken("graphics", func(f *kindFile[part.Graphics]) { s.Graphics = f.Parts }),
		taken("supplies", func(f *kindFile[part.Supply]) { s.Supplies = f.Parts }),
		taken("drives", func(f *kindFile[part.Drive]) { s.Drives = f.Parts }),
		taken("fans", func(f *kindFile[part.Fan]) { s.Fans = f.Parts }),
		taken("monitors", func(f *kindFile[part.Monitor]) { s.Monitors = f.Parts }),
		taken("cards", func(f *kindFile[part.Card]) { s.Cards = f.Parts }),
		taken("ups", func(f *kindFile[part.UPS]) { s.UPS = f.Parts }),
		taken("services", func(f *kindFile[part.Service]) { s.Services = f.Parts }),
		taken(shopName, func(f *shopFile) { s.Shop = f.Shop }),
		taken("calibration", func(f *calibrationFile) { s.Calibration = f.Calibration }),
	}
}

// shopName is the file that must be there.
const shopName = "shop"

// taken is the file of a name, read as F and taken in.
func taken[F any](name string, in func(f *F)) source {
	return source{name, func(file string, text []byte) error {
		var f F
		err := format.Read(file, text, "slipfit-"+name, Version, &f)
		in(&f)
		return err
	}}
}

// Load reads the catalog files of a directory, several at a time. A kind whose file is absent has no parts, a catalog without
// calibration.json states no work; shop.json must be there. The error joins a format.Error for everything wrong in any file.
func Load(fsys fs.FS) (*part.Stock, error) {
	s := &part.Stock{}
	files := sources(s)
	there, errs := make([]bool, len(files)), make([]error, len(files), len(files)+1)
	var next atomic.Int64
	var all sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(files)) {
		all.Go(func() {
			var text bytes.Buffer // of one file after another: fresh memory for each takes longer than reading it
			for i := next.Add(1) - 1; i < int64(len(files)); i = next.Add(1) - 1 {
				there[i], errs[i] = files[i].read(fsys, &text)
			}
		})
	}
	all.Wait()
	switch {
	case !slices.Contains(there, true):
		return nil, &format.Error{File: "catalog", Want: "a directory with shop.json and files of parts such as cases.json and boards.json"}
	case !there[slices.IndexFunc(files, func(f source) bool { return f.name == shopName })]:
		errs = append(errs, &format.Error{File: "shop.json", Value: "no such file", Want: "the shop's own figures: name, currency, tax, revision"})
	}
	if err := errors.Join(errs...); err != nil {
		return nil, err
	}
	if err := errors.Join(check(s)...); err != nil {
		return nil, err
	}
	return s, nil
}

// read reads the file by way of text and reports whether it is there.
func (f source) read(fsys fs.FS, text *bytes.Buffer) (there bool, err error) {
	name := f.name + ".json"
	file, err := fsys.Open(name)
	if errors.Is(err, fs.ErrNotExist) {
		return false, nil
	}
	if err == nil {
		text.Reset()
		err = errors.Join(fill(text, file), file.Close())
	}
	if err != nil {
		return true, &format.Error{File: name, Value: err.Error(), Want: "a file that can be read"}
	}
	return true, f.take(name, text.Bytes())
}

// fill reads a whole file into text, with room for it made at one go.
func fill(text *bytes.Buffer, file fs.File) error {
	about, err := file.Stat()
	if err != nil {
		return err
	}
	text.Grow(int(about.Size()) + bytes.MinRead)
	_, err = text.ReadFrom(file)
	return err
}
