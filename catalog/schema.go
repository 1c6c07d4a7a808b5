package catalog

import (
	"slipfit/core/format"
	"slipfit/core/part"
)

// Names lists the files a catalog may hold, without .json.
func Names() []string {
	return []string{"shop", "calibration", "cases", "boards", "processors", "coolers", "memory", "graphics", "supplies", "drives", "fans", "monitors", "cards", "ups", "services"}
}

// fileOf is an empty catalog file of a name, with its head filled in.
func fileOf(name string) (file any, ok bool) {
	head := format.Head{Kind: "slipfit-" + name, Version: Version}
	switch name {
	case "shop":
		return &shopFile{Head: head}, true
	case "calibration":
		return &calibrationFile{Head: head}, true
	case "cases":
		return &kindFile[part.Case]{Head: head}, true
	case "boards":
		return &kindFile[part.Board]{Head: head}, true
	case "processors":
		return &kindFile[part.Processor]{Head: head}, true
	case "coolers":
		return &kindFile[part.Cooler]{Head: head}, true
	case "memory":
		return &kindFile[part.Memory]{Head: head}, true
	case "graphics":
		return &kindFile[part.Graphics]{Head: head}, true
	case "supplies":
		return &kindFile[part.Supply]{Head: head}, true
	case "drives":
		return &kindFile[part.Drive]{Head: head}, true
	case "fans":
		return &kindFile[part.Fan]{Head: head}, true
	case "monitors":
		return &kindFile[part.Monitor]{Head: head}, true
	case "cards":
		return &kindFile[part.Card]{Head: head}, true
	case "ups":
		return &kindFile[part.UPS]{Head: head}, true
	case "services":
		return &kindFile[part.Service]{Head: head}, true
	}
	return nil, false
}

// Schema is the JSON Schema of a catalog file, by its name without .json; false where there is no such file.
func Schema(name string) ([]byte, bool) {
	file, ok := fileOf(name)
	if !ok {
		return nil, false
	}
	return format.Schema("urn:slipfit:catalog:"+name, "slipfit catalog: "+name, file), true
}
