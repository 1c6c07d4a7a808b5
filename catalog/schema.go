package catalog

import (
	"slipfit/core/format"
	"slipfit/core/part"
)

// Names lists the files a catalog may hold, without .json, in the order they are read.
func Names() []string {
	return []string{"shop", "cases", "boards", "processors", "coolers", "memory", "graphics", "supplies", "drives", "fans", "monitors", "cards", "ups", "services"}
}

// Schema is the JSON Schema of a catalog file, by its name without .json; false where there is no such file.
func Schema(name string) ([]byte, bool) {
	head := format.Head{Kind: "slipfit-" + name, Version: Version}
	var file any
	switch name {
	case "shop":
		file = shopFile{Head: head}
	case "cases":
		file = kindFile[part.Case]{Head: head}
	case "boards":
		file = kindFile[part.Board]{Head: head}
	case "processors":
		file = kindFile[part.Processor]{Head: head}
	case "coolers":
		file = kindFile[part.Cooler]{Head: head}
	case "memory":
		file = kindFile[part.Memory]{Head: head}
	case "graphics":
		file = kindFile[part.Graphics]{Head: head}
	case "supplies":
		file = kindFile[part.Supply]{Head: head}
	case "drives":
		file = kindFile[part.Drive]{Head: head}
	case "fans":
		file = kindFile[part.Fan]{Head: head}
	case "monitors":
		file = kindFile[part.Monitor]{Head: head}
	case "cards":
		file = kindFile[part.Card]{Head: head}
	case "ups":
		file = kindFile[part.UPS]{Head: head}
	case "services":
		file = kindFile[part.Service]{Head: head}
	default:
		return nil, false
	}
	return format.Schema("urn:slipfit:catalog:"+name, "slipfit catalog: "+name, file), true
}
