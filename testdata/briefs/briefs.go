// Package briefs holds the example briefs, for the page to offer.
package briefs

import "embed"

// Files are the example briefs, NAME.brief.json each.
//
//go:embed *.brief.json
var Files embed.FS
