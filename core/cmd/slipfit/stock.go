package main

import (
	"slipfit/core/verb"
)

var stockCommand = command{
	name:  "stock",
	usage: "check [DIR]",
	short: "check a catalog",
	long: `Reads a catalog, the built-in one or that in DIR, and reports everything wrong in
it: file, path in the file, what stands there and what was expected. Then it
counts the parts by kind and names every figure the data sheets lack.`,
	example: "slipfit stock check my-catalog",
	run: func(k *call) int {
		if len(k.args) < 1 || len(k.args) > 2 || k.args[0] != "check" {
			return k.usage("knows check, with one directory at most")
		}
		if len(k.args) == 2 {
			k.catalog = k.args[1]
		}
		w, err := k.bench()
		if err != nil {
			return k.fail(err)
		}
		c := w.StockCheck()
		if k.json {
			k.printf("%s", verb.JSON(c))
			return fine
		}
		k.printf("%s, revision %s, prices in %s\n\n", k.strong(c.Shop), c.Revision, c.Currency)
		for _, kind := range c.Kinds {
			k.printf("  %s %s parts, %s in stock, %s missing figures\n", cell(kind.Kind, 12), right(count(kind.Parts, ""), 5), right(count(kind.InStock, ""), 5), right(count(len(kind.Missing), ""), 4))
			for _, m := range kind.Missing {
				k.printf("      %s\n", m)
			}
		}
		k.printf("\n  %s from %s\n", count(c.Parts, "part"), count(len(c.Makers), "maker"))
		return fine
	},
}
