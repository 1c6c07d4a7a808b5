package verb

import (
	"fmt"

	"slipfit/core/format"
	"slipfit/core/rule"
)

// Rule is a rule as a person reads it.
type Rule struct {
	ID     string   `json:"id"`
	Group  string   `json:"group"`
	Title  string   `json:"title"`
	Doc    string   `json:"doc"`
	Source string   `json:"source"`
	Reads  []string `json:"reads"`
}

// Rules is the schedule of rules.
type Rules struct {
	format.Head
	Rules []Rule `json:"rules"`
}

// Rules lists every rule, or the one with the id.
func (w *Bench) Rules(id string) (*Rules, error) {
	out := &Rules{Head: head("slipfit-rules")}
	for _, r := range rule.All {
		if id != "" && r.ID != id {
			continue
		}
		reads := make([]string, len(r.Reads))
		for i, s := range r.Reads {
			reads[i] = s.String()
		}
		out.Rules = append(out.Rules, Rule{r.ID, r.Group.String(), r.Title, r.Text(), r.Source, reads})
	}
	if id != "" && len(out.Rules) == 0 {
		return nil, fmt.Errorf("no rule %q; `slipfit rules` lists them", id)
	}
	return out, nil
}
