package verb

import (
	"fmt"
	"strings"

	"slipfit/core/brief"
	"slipfit/core/build"
	"slipfit/core/format"
)

// FileFormat is a kind of file that slipfit reads and writes.
type FileFormat struct {
	format.Head
	Name   string             `json:"name"`
	Schema []byte             `json:"-"` // JSON Schema, 2020-12
	Fields []format.Described `json:"fields"`
}

// fileNames lists the files that go between slipfit and people; those of a catalog have schemas beside the catalog.
var fileNames = []string{"brief", "build"}

// FileFormat describes a kind of file from the tags it is read by.
func (w *Bench) FileFormat(name string) (*FileFormat, error) {
	out := &FileFormat{Head: head("slipfit-format"), Name: name}
	switch name {
	case "brief":
		empty := &brief.Brief{Head: format.Head{Kind: brief.Kind, Version: brief.Version}}
		out.Schema, out.Fields = format.Schema("urn:slipfit:brief", "slipfit brief", empty), format.Describe(empty)
	case "build":
		empty := &build.File{Head: format.Head{Kind: build.Kind, Version: build.Version}}
		out.Schema, out.Fields = format.Schema("urn:slipfit:build", "slipfit build", empty), format.Describe(empty)
	default:
		return nil, fmt.Errorf("no file %q; there are %s, and those of a catalog in its schema folder", name, strings.Join(fileNames, ", "))
	}
	return out, nil
}
