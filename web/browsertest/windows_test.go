//go:build !wasm

package browsertest

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// another opens one more tab of the same browser and profile.
func (b *tab) another() *tab {
	b.t.Helper()
	other := &tab{t: b.t}
	ctx, stop := chromedp.NewContext(b.ctx)
	b.t.Cleanup(stop)
	other.ctx = ctx
	require.NoError(b.t, chromedp.Do(ctx), "the tab opens")
	require.NoError(b.t, chromedp.Listen(ctx, other.hear))
	return other
}

const title = `document.querySelector('[data-field=title] dd').textContent`

// titled waits until the job of this title is on the sheet.
func (b *tab) titled(want string) {
	b.t.Helper()
	b.until(title + ` === ` + quoted(b.t, want))
}

// TestTwoWindowsKeepTwoJobs works on two jobs in two windows by turns: neither loses anything, whichever is closed or loaded anew.
func TestTwoWindowsKeepTwoJobs(t *testing.T) {
	s, one := servePage(t), newTab(t, "")
	one.visit(s.url)
	one.startFrom("family")
	one.set("title", "In the first")
	one.titled("In the first")
	require.False(t, eval[bool](one, `Boolean(document.getElementById('windows'))`))

	two := one.another()
	two.visit(s.url)
	two.until(`document.getElementById('windows')?.textContent === 'Another window has “In the first” open; this one keeps a job of its own.'`)
	require.NotEqual(t, "In the first", eval[string](two, title))
	two.pictures("two-windows")
	two.startFrom(example)
	two.set("title", "In the second")
	two.titled("In the second")
	one.set("title", "Still in the first")
	one.titled("Still in the first")

	for range 2 {
		for tab, want := range map[*tab]string{one: "Still in the first", two: "In the second"} {
			tab.do(chromedp.Reload())
			tab.until(answered)
			tab.titled(want)
		}
	}

	// Both close. Of two new windows the first has the job changed last.
	two.set("title", "Last in the second")
	two.titled("Last in the second")
	for _, tab := range []*tab{one, two} {
		tab.do(chromedp.Navigate("about:blank"))
	}
	three := one.another()
	three.visit(s.url)
	three.titled("Last in the second")
	require.Equal(t, "Kept besides: “Still in the first”. Open this page in one more window to work on it.",
		eval[string](three, `document.getElementById('windows').textContent`))
	four := one.another()
	four.visit(s.url)
	four.titled("Still in the first")
	four.clean(s.url)
}
