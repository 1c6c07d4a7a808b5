// Package web is the page: one drawing sheet with a front and a back, in a browser, with or without a network.
//
// The components are built both for the browser (GOOS=js GOARCH=wasm, started by wasm/page) and natively, where
// they are rendered once into the HTML that a browser shows before the program has arrived. They hold no rule
// and no formula: what they show comes from the core, through a Worker (wasm/worker), as JSON.
//
// The native half also is the site: Open reads the two built programs, and the Site it returns is served by
// Serve or written out by Export. Serving and exporting give out the same files.
package web
