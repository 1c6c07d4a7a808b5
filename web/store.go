package web

import "errors"

// ErrNoStore says that this browser keeps nothing for the page, for instance because the page stands in
// another site's frame and the browser blocks what such a page would store. The page must work without.
var ErrNoStore = errors.New("this browser keeps no records for this page")
