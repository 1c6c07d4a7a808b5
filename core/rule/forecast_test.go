package rule

import (
	"testing"
)

// BenchmarkCoolRules checks every rule of the group on a build never seen before, as the planner does at a leaf: one activity.
func BenchmarkCoolRules(b *testing.B) {
	for _, needs := range []string{"", `{"loads":[{"Activity":"games","Processor":50000,"Graphics":100000,"Memory":60000,"Drives":10000,"Hours":1000}],"place":{"room_c":22,"noise_dba":35}}`} {
		c := ruleCase{Needs: []byte(needs)}
		if needs == "" {
			c.Needs = nil
		}
		t := &testing.T{}
		build, n := bench(t, c)
		v := NewView(build, n)
		b.Run("one activity", func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				build.Kits = 3 - build.Kits // a build the view has not seen
				for _, r := range All {
					if r.Group == Cool {
						v.Run(r)
					}
				}
			}
		})
	}
}
