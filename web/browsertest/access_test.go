//go:build !wasm

package browsertest

import (
	_ "embed"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"
)

//go:embed access.js
var access string

var sides = []string{"#front", "#back"}

// keep writes a picture of the page for somebody to look at, where the environment says to.
func keep(t *testing.T, name string, picture []byte) {
	t.Helper()
	if dir := os.Getenv("SLIPFIT_PICTURES"); dir != "" {
		require.NoError(t, os.MkdirAll(dir, 0o755))
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), picture, 0o644))
	}
}

func (b *tab) picture(name string) {
	b.t.Helper()
	if os.Getenv("SLIPFIT_PICTURES") == "" {
		return
	}
	picture, err := chromedp.Run(b.ctx, chromedp.FullScreenshot(100))
	require.NoError(b.t, err)
	keep(b.t, name, picture)
}

func TestAccess(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	for _, width := range []int64{360, 1280} {
		b.do(chromedp.EmulateViewport(width, 800))
		for _, side := range sides {
			b.visit(s.url + "/" + side)
			require.Empty(t, eval[[]string](b, access), "%s at %d", side, width)
		}
	}
}

// The checks must be able to find something.
func TestAccessFindsFaults(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.visit(s.url)
	for _, fault := range []struct{ make, want string }{
		{`document.documentElement.lang = ''`, "3.1.1 "},
		{`document.getElementById('print').textContent = ''`, "4.1.2 button#print: no name"},
		{`document.querySelector('.blank').setAttribute('class', 'faint'); document.styleSheets[1].insertRule('.faint { color: #a9a293 }')`, "1.4.3 p: contrast"},
		{`document.querySelector('main').insertAdjacentHTML('beforeend', '<h4>x</h4>')`, "1.3.1 h4"},
		{`document.querySelector('main').insertAdjacentHTML('beforeend', '<img src="web/icon.svg">')`, "1.1.1 img"},
		{`document.querySelector('main').insertAdjacentHTML('beforeend', '<i id="turn"></i>')`, "4.1.2 a#turn: its id stands twice"},
	} {
		eval[bool](b, `((() => { `+fault.make+` })(), true)`)
		require.Regexp(t, regexp.QuoteMeta(fault.want), fmt.Sprint(eval[[]string](b, access)))
	}
}

func TestNoSidewaysScrolling(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	for _, side := range sides {
		b.visit(s.url + "/" + side)
		b.keepsInside(side)
	}
}

func TestFilesAreInViewAndFoldAway(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.visit(s.url)
	for _, width := range []int64{320, 390, 768, 960, 1280} {
		b.do(chromedp.EmulateViewport(width, 780))
		b.do(chromedp.Click(chromedp.CSS(".files > summary")))
		require.Empty(t, eval[[]string](b, `[...document.querySelectorAll('.files-list button')].filter(e => { const r = e.getBoundingClientRect();
			return r.width === 0 || r.left < 0 || r.right > innerWidth }).map(e => e.id)`), "out of view at %d", width)
		b.do(chromedp.Click(chromedp.CSS("#share")))
		b.until(`!document.querySelector('.files').open && document.activeElement.id === 'link'`)
	}
}

// keepsInside asserts at every width that nothing has to be scrolled sideways and nothing stands outside the frame.
func (b *tab) keepsInside(what string) {
	b.t.Helper()
	for _, width := range []int64{320, 360, 390, 600, 768, 960, 1280, 1920} {
		b.do(chromedp.EmulateViewport(width, 780))
		require.LessOrEqual(b.t, eval[int64](b, `document.documentElement.scrollWidth`), width, "%s", what)
		require.Equal(b.t, "[]", fmt.Sprint(eval[[]string](b, `[...document.querySelectorAll('.field *')]
			.filter(e => e.checkVisibility() && !e.closest('.views-drawn svg') &&
				e.getBoundingClientRect().right > (e.parentElement.closest('.region') ?? document.querySelector('.field')).getBoundingClientRect().right + 1)
			.map(e => e.tagName + '.' + e.className)`)), "%s at %d: outside its area", what, width)
	}
}

func TestAccessWithAJob(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.visit(s.url)
	b.startFrom("museum-pottery") // the longest words beside the longest units
	b.plan()
	b.press("change-cooler")
	b.until(`document.getElementById('trial')`)
	b.until(`document.querySelector('.outcome')`)
	eval[bool](b, `(document.querySelectorAll('.field details').forEach(e => e.open = true), true)`)
	b.until(`document.querySelectorAll('#group-fit .margin').length > 3`)
	b.keepsInside("front")
	for _, width := range []int64{360, 1280} {
		b.do(chromedp.EmulateViewport(width, 800))
		require.Empty(t, eval[[]string](b, access), "front at %d", width)
	}
	b.press("turn")
	b.until(`document.querySelector('.leaf')`)
	b.keepsInside("back")
	b.do(chromedp.EmulateViewport(360, 800))
	require.Empty(t, eval[[]string](b, access), "back")
}

func TestKeyboardReachesEveryControl(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	for _, side := range sides {
		b.do(chromedp.Navigate("about:blank"))
		b.visit(s.url + "/" + side)
		// Turning to the back moves the focus to the sheet; begin at the top of the document.
		if side == "#back" {
			b.until(`document.activeElement.id === 'sheet'`)
		}
		eval[bool](b, `(() => { const top = document.querySelector('.desk'); top.tabIndex = -1; top.focus(); scrollTo(0, 0); return true })()`)
		const controls = `[...document.querySelectorAll('a[href],button,input,select,textarea,summary,[tabindex="0"]')].filter(e => e.checkVisibility() && !e.disabled).length`
		want := eval[int](b, controls)
		require.Positive(t, want)
		seen := map[string]bool{}
		for range want {
			b.do(chromedp.KeyEvent(kb.Tab))
			focus := eval[struct {
				Name, Style string
				Width       float64
				InView      bool
			}](b, `(() => { const e = document.activeElement, s = getComputedStyle(e), r = e.getBoundingClientRect(); return {
				Name: e.tagName + ' ' + e.id + ' ' + e.textContent, Style: s.outlineStyle, Width: parseFloat(s.outlineWidth),
				InView: r.top >= 0 && r.left >= 0 && r.bottom <= innerHeight && r.right <= innerWidth && r.width > 0 } })()`)
			require.False(t, seen[focus.Name], "%s: %s comes twice before every control has been reached", side, focus.Name)
			seen[focus.Name] = true
			require.Equal(t, "solid", focus.Style, "%s: %s shows that it has the keyboard", side, focus.Name)
			require.GreaterOrEqual(t, focus.Width, 2.0)
			require.True(t, focus.InView, "%s: %s is in view while it has the keyboard", side, focus.Name)
		}
		require.Len(t, seen, want)
	}
}

func TestSkipLinkAndTurningByKeyboard(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.visit(s.url + "/#back")
	b.until(`document.querySelector('.sheet').dataset.side === 'back'`)
	b.do(chromedp.Focus(chromedp.CSS(".skip")), chromedp.KeyEvent(kb.Enter))
	b.until(`document.activeElement.id === 'sheet'`)
	require.Equal(t, s.url+"/#back", eval[string](b, `location.href`), "skipping does not turn the sheet")
	b.do(chromedp.Focus(chromedp.CSS("#turn")), chromedp.KeyEvent(kb.Enter))
	b.until(`document.querySelector('.sheet').dataset.side === 'front' && document.activeElement.id === 'sheet'`)
	require.Equal(t, "The drawing", eval[string](b, `document.getElementById(document.activeElement.getAttribute('aria-labelledby')).textContent`))
	b.do(chromedp.NavigateBack())
	b.until(`document.querySelector('.sheet').dataset.side === 'back'`)
	b.do(chromedp.NavigateForward())
	b.until(`document.querySelector('.sheet').dataset.side === 'front'`)
}

func TestMotionOnlyWhereItIsWelcome(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	const moves = `getComputedStyle(document.querySelector('.sheet')).animationName`
	for _, c := range []struct{ wish, back string }{{"no-preference", "turn-back"}, {"reduce", "none"}} {
		b.media("", "prefers-reduced-motion", c.wish)
		b.visit(s.url + "/#front")
		require.Equal(t, "none", eval[string](b, moves), "nothing moves as the page opens")
		b.do(chromedp.Click(chromedp.CSS("#turn")))
		b.until(`document.querySelector('.sheet').dataset.side === 'back'`)
		require.Equal(t, c.back, eval[string](b, moves))
		b.do(chromedp.Navigate("about:blank"))
	}
}

func TestMoreContrast(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.media("", "prefers-contrast", "more")
	b.visit(s.url)
	require.Equal(t, "rgb(0, 0, 0) on rgb(255, 255, 255)", eval[string](b,
		`getComputedStyle(document.querySelector('.blank')).color + ' on ' + getComputedStyle(document.querySelector('.sheet')).backgroundColor`))
	require.Empty(t, eval[[]string](b, access))
	b.picture("contrast.png")
}

func (b *tab) media(medium, feature, value string) {
	b.t.Helper()
	_, err := chromedp.Call(b.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: medium,
		Features: []*emulation.MediaFeature{{Name: feature, Value: value}}})
	require.NoError(b.t, err)
}

func TestPrintsOnOneA4Page(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	for _, side := range sides {
		b.visit(s.url + "/" + side)
		paper, err := chromedp.Run(b.ctx, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize()))
		require.NoError(t, err)
		keep(t, side[1:]+".pdf", paper)
		require.Len(t, regexp.MustCompile(`/Type\s*/Page\b`).FindAll(paper, -1), 1, side)
		// ISO 216: A4 is 210 mm × 297 mm; in points of 1/72 inch, to the whole point, 595 × 842.
		require.Regexp(t, `/MediaBox \[0 0 59[45]\.?\d* 84[12]\.?\d*\]`, string(paper))
	}
	b.media("print", "prefers-reduced-motion", "reduce")
	require.Equal(t, "none", eval[string](b, `getComputedStyle(document.querySelector('.rail')).display`), "no controls on paper")
	require.Equal(t, "rgb(255, 255, 255)", eval[string](b, `getComputedStyle(document.querySelector('.sheet')).backgroundColor`))
}

func TestPictures(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	probe := serveSite(t, probeDir)
	for _, width := range []int64{1280, 390} {
		b.do(chromedp.EmulateViewport(width, 844))
		for _, side := range sides {
			b.visit(s.url + "/" + side)
			b.picture(fmt.Sprintf("%s-%d.png", side[1:], width))
		}
		b.do(chromedp.Navigate(probe.url))
		b.until(`window.probe && !document.getElementById('app-wasm-loader')`)
		// A fill that is not found is painted as nothing: each address must lead to a pattern.
		require.Equal(t, 10, eval[int](b, `[...document.querySelectorAll('[fill^="url(#"]')]
			.filter(e => document.querySelector(e.getAttribute('fill').slice(4, -1))?.tagName === 'pattern').length`))
		b.picture(fmt.Sprintf("rulers-%d.png", width))
	}
}
