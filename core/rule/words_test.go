package rule

import (
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"
	"unicode"

	"slipfit/catalog"
	"slipfit/core/brief"

	"github.com/stretchr/testify/require"
)

// illCounted are a count of one with words of several, a count of several with words of one, a count below nothing, and a list
// as the language prints it.
var illCounted = regexp.MustCompile(`(^|[a-z,;:] )1 ([a-zA-Z]+ )?(bracket openings|sockets|slots|modules|lanes|places|openings|fans|sections|ports|leads|headers|` +
	`splitters|parts|suppliers|days|hours|screens|outputs|channels|copies|drives|cards)\b` +
	`|\b1 (are|hold|carry|make|lie|come|show|keep)\b|(^|[^f] )[2-9] ([a-z]+ )?[a-z]+s (of the machine )?(is|holds|carries|makes|lies|comes|shows|keeps)\b|, -|\[[a-z]`)

// TestSentencesCountWell reads every sentence that the rules say of random builds, most of which cannot be built.
func TestSentencesCountWell(t *testing.T) {
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	r := rand.New(rand.NewPCG(11, 11))
	for range 400 {
		needs := &brief.Needs{Copies: r.IntN(2) == 0}
		needs.Wish.InStock = r.IntN(2) == 0
		v := NewView(randomBuild(r, stock), needs)
		for _, rule := range All {
			if rule.Group == Cool {
				continue
			}
			for _, m := range v.Run(rule) {
				require.NotRegexp(t, illCounted, m.Why(), rule.ID)
			}
		}
	}
}

// TestDocsFlow holds the texts of the rules to their lines: one that begins no sentence and no definition goes on from the one
// before, and so does one that follows a full line that ends within its sentence.
func TestDocsFlow(t *testing.T) {
	for _, r := range All {
		require.NotContains(t, r.Text(), "\t", r.ID)
		lines := strings.Split(r.Doc, "\n")
		for i, line := range lines {
			begins := unicode.IsUpper([]rune(line)[0]) || strings.ContainsAny(line, "=:")
			require.True(t, begins || i > 0 && line[0] == '\t', "%s: %q goes on from the line before: begin it with a tab", r.ID, line)
		}
		for line := range strings.SplitSeq(r.Text(), "\n") {
			require.NotRegexp(t, `\b(a|an|the|and|or|of|by|to|what|that|its)$`, line, "%s: a paragraph ends within its sentence", r.ID)
		}
	}
}
