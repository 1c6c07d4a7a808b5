package main

var exportCommand = command{
	name:  "export",
	usage: "DIR [-prefix PATH] [-site DIR]",
	short: "write the page as plain files for any web server",
	long: `Writes the page, its programs and the catalog into DIR. Any web server can give
the files out; with -prefix they are made for that path of the site.`,
	example: "slipfit export public -prefix /shop/fit",
	setup: func(k *call) {
		k.flags.String("prefix", "", "the page will be mounted under `PATH`, like /shop/fit")
		siteFlag(k)
	},
	run: func(k *call) int {
		if len(k.args) != 1 {
			return k.usage("needs one directory")
		}
		site, err := k.site()
		if err != nil {
			return k.fail(err)
		}
		if err := site.Export(k.args[0], k.text("prefix")); err != nil {
			return k.fail(err)
		}
		k.printf("wrote the page to %s\n", k.args[0])
		return fine
	},
}
