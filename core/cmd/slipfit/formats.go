package main

import (
	"slipfit/core/verb"
)

var formatsCommand = command{
	name:  "formats",
	usage: "brief|build",
	short: "what stands in a brief or a build file",
	long: `Prints every field of a kind of file with what it takes: type, unit, range, what it
means. With -json it is the file's JSON Schema (2020-12). The schemas of the
catalog's files lie in catalog/schema.`,
	example: "slipfit formats brief",
	run: func(k *call) int {
		if len(k.args) != 1 {
			return k.usage("needs the kind of file, brief or build")
		}
		f, err := (&verb.Bench{}).FileFormat(k.args[0])
		if err != nil {
			return k.fail(err)
		}
		if k.json {
			k.printf("%s", f.Schema)
			return fine
		}
		for _, field := range f.Fields {
			name := field.Path
			if field.Optional {
				name += " (may be left out)"
			}
			k.printf("%s\n", k.strong(name))
			k.paragraph("    ", field.Doc)
			k.paragraph("    ", "takes "+field.Takes)
		}
		return fine
	},
}
