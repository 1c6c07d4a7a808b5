package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"

	"slipfit/catalog"
	"slipfit/core/verb"
)

var stockCommand = command{
	name:  "stock",
	usage: "check [DIR] | grow -parts N -out DIR [-seed S] [-from DIR]",
	short: "check a catalog, or grow a large one for measuring",
	long: `check reads a catalog, the built-in one or that in DIR, and reports everything
wrong in it: file, path in the file, what stands there and what was expected.
Then it counts the parts by kind and names every figure the data sheets lack.

grow makes a catalog of N parts, up to 20000, for measuring: to the parts there
are it adds variations of them, whose sizes, powers, work and prices hang together
as theirs do. The same catalog, N and S give the same bytes. The files are
written to a directory beside DIR, read back and checked, and moved to DIR as a
whole; a DIR that holds anything is refused.`,
	example: `slipfit stock check my-catalog
  slipfit stock grow -parts 10000 -seed 1 -out large
  slipfit plan testdata/briefs/family.brief.json -catalog large`,
	setup: func(k *call) {
		k.flags.Int("parts", 0, "grow: make a catalog of `N` parts")
		k.flags.Uint64("seed", 1, "grow: draw the variations from seed `S`")
		k.flags.String("from", "", "grow: vary the parts of the catalog in `DIR` in place of the built-in one")
		k.flags.String("out", "", "grow: write the catalog to `DIR`")
	},
	run: func(k *call) int {
		switch {
		case len(k.args) > 0 && k.args[0] == "check" && len(k.args) <= 2:
			return k.checkStock()
		case len(k.args) == 1 && k.args[0] == "grow":
			return k.growStock()
		}
		return k.usage("knows check, with one directory at most, and grow")
	},
}

func (k *call) checkStock() int {
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
}

func (k *call) growStock() int {
	parts := k.flags.Lookup("parts").Value.(flag.Getter).Get().(int)
	seed := k.flags.Lookup("seed").Value.(flag.Getter).Get().(uint64)
	dir := k.text("out")
	if parts == 0 || dir == "" {
		return k.usage("grow needs -parts and -out")
	}
	if from := k.text("from"); from != "" {
		k.catalog = from
	}
	w, err := k.bench()
	if err != nil {
		return k.fail(err)
	}
	grown, err := w.Grow(parts, seed)
	if err != nil {
		return k.fail(err)
	}
	if err := writeCatalog(dir, grown.Files); err != nil {
		return k.fail(err)
	}
	if k.json {
		k.printf("%s", verb.JSON(grown))
		return fine
	}
	for _, kind := range grown.Kinds {
		k.printf("  %s %s → %s parts\n", cell(kind.Kind, 12), right(fmt.Sprint(kind.From), 5), right(fmt.Sprint(kind.To), 5))
	}
	k.printf("\n  %s from seed %d, written to %s.\n", count(grown.Parts, "part"), grown.Seed, dir)
	return fine
}

// writeCatalog keeps a catalog whole: its files are written to a directory beside its place, read back and checked, and moved
// there together. A place that holds anything is left as it is.
func writeCatalog(dir string, files []verb.Document) (err error) {
	held, err := os.ReadDir(dir)
	switch {
	case err == nil && len(held) > 0:
		return fmt.Errorf("%s: got a directory that holds %s, want a new or an empty one", dir, held[0].Name())
	case err != nil && !errors.Is(err, os.ErrNotExist):
		return err
	}
	tmp, err := os.MkdirTemp(filepath.Dir(filepath.Clean(dir)), ".slipfit-*")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, os.RemoveAll(tmp))
		}
	}()
	for _, f := range files {
		if err := write(filepath.Join(tmp, f.Name), f.Data); err != nil {
			return err
		}
	}
	if _, err := catalog.Load(os.DirFS(tmp)); err != nil {
		return err
	}
	if err := os.Chmod(tmp, 0o755); err != nil {
		return err
	}
	if err := os.Remove(dir); err != nil && !errors.Is(err, os.ErrNotExist) {
		return err
	}
	return os.Rename(tmp, dir)
}
