package rule

import "slipfit/core/part"

// lacks notes a figure a sheet does not state, as figure does.
func (v *View) lacks(owner *part.Article, field string) {
	v.missing = append(v.missing, owner.ID+": "+field)
}
