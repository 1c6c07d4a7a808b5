//go:build !wasm

package browsertest

import (
	"encoding/json"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"
)

// widths of a desk and of a phone.
var widths = []int64{1280, 390}

// pictures shows the page to somebody at both widths, and to the checks of access.
func (b *tab) pictures(name string) {
	b.t.Helper()
	b.keepsInside(name)
	for _, width := range widths {
		b.do(chromedp.EmulateViewport(width, 844))
		require.Empty(b.t, eval[[]string](b, access), "%s at %d", name, width)
		b.picture(fmt.Sprintf("%s-%d.png", name, width))
	}
	b.do(chromedp.EmulateViewport(1280, 844))
}

func TestPlansForTheQuietestAndTheSmallest(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.visit(s.url)
	b.startFrom("silent-studio")
	for aim, says := range map[string]string{"quiet": "Proven: the least heard at the chair, ", "small": "Proven: the smallest case, "} {
		want := native[struct {
			Reached quantity
			Proof   proof
		}](t, "plan", map[string]any{"brief": brief(t, "silent-studio"), "for": aim})
		b.press("plan-" + aim)
		b.until(`document.getElementById('proven')?.textContent.startsWith(` + quoted(t, says+want.Reached.Text) + `)`)
		b.until(fmt.Sprintf(`document.querySelector('.count[data-verdict=loose]')?.textContent === '%d loose'`, want.Proof.Counts["loose"]))
		b.sameAs(want.Proof)
	}
	b.clean(s.url)
}

func TestWhatEveryPriceBuysIsDrawnAndWorked(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.visit(s.url)
	b.startFrom("bird-sound")
	want := native[struct {
		Full   int64
		Points []struct {
			Price quantity
			Worth int64
		}
	}](t, "frontier", map[string]any{"brief": brief(t, "bird-sound")})
	b.press("plan-frontier")
	b.until(`document.getElementById('stairs')`)
	n := len(want.Points)
	require.Greater(t, n, 5)
	require.Equal(t, fmt.Sprint(n), eval[string](b, `document.getElementById('stairs').dataset.points`))
	require.Equal(t, n, eval[int](b, `document.querySelectorAll('.stairs-drawn[data-size=wide] .chart-point').length`))
	at := func(i int) string {
		return fmt.Sprintf("%s before tax serves %.1f %% of all that is asked for.", want.Points[i].Price.Text, float64(want.Points[i].Worth)*100/float64(want.Full))
	}
	reads := func(i int) {
		t.Helper()
		b.until(`document.getElementById('stairs-text').textContent === ` + quoted(t, at(i)))
	}
	reads(n - 1)

	// By keyboard: the slider reaches every point, and the button lays its machine on the sheet.
	b.do(chromedp.Focus(chromedp.CSS("#stairs-at")))
	for i := n - 2; i >= 0; i-- {
		b.do(chromedp.KeyEvent(kb.ArrowLeft))
		reads(i)
	}
	require.Equal(t, at(0), eval[string](b, `document.getElementById('stairs-at').getAttribute('aria-valuetext')`))
	b.do(chromedp.KeyEvent(kb.ArrowRight), chromedp.KeyEvent(kb.Tab))
	require.Equal(t, "stairs-lay", eval[string](b, `document.activeElement.id`))
	b.do(chromedp.KeyEvent(kb.Enter))
	b.drawn()
	laidOn := func(i int) {
		t.Helper()
		b.until(`document.querySelector('.sum-row dd')?.textContent === ` + quoted(t, want.Points[i].Price.Text))
	}
	laidOn(1)

	// By pointer: a press on a point lays its machine on the sheet, and can be taken back.
	for _, width := range widths {
		b.do(chromedp.EmulateViewport(width, 844))
		for _, i := range []int{3, n - 1} {
			place := eval[[]float64](b, fmt.Sprintf(`(() => { const p = [...document.querySelectorAll('.stairs-drawn')].find(e => e.checkVisibility()).querySelector('[data-point="%d"]');
				p.scrollIntoView({block: 'center'}); const r = p.getBoundingClientRect(); return [r.left + r.width / 2, r.top + r.height / 2] })()`, i))
			b.do(chromedp.MouseClickXY(place[0], place[1]))
			laidOn(i)
			reads(i)
		}
	}
	b.press("undo")
	laidOn(3)
	reads(3)
	b.drawn()
	b.pictures("stairs")
	paper, err := chromedp.Run(b.ctx, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize()))
	require.NoError(t, err)
	keep(t, "stairs.pdf", paper)
	text := pdfText(t, paper)
	require.Contains(t, text, at(3), "the machine on the sheet is the one that is rung")
	require.NotContains(t, text, "Put the drawing away", "no controls on paper")

	// The drawing is of this brief alone.
	b.set("budget_minor", "1500")
	b.until(`!document.getElementById('stairs')`)
	b.press("undo")
	b.until(`document.getElementById('stairs')`)
	b.press("stairs-close")
	b.until(`!document.getElementById('stairs') && document.activeElement.id === 'plan-frontier'`)
	b.clean(s.url)
}

// stillOpen opens the list of a seat and holds what it says of every part to the core's own answer, which it returns.
func (b *tab) stillOpen(name, seat string) (parts []struct {
	Part, State string
	Price       *quantity
}) {
	b.t.Helper()
	err := json.Unmarshal(native[struct {
		Seats []struct{ Parts json.RawMessage }
	}](b.t, "choices", map[string]any{"brief": brief(b.t, name), "seat": seat}).Seats[0].Parts, &parts)
	require.NoError(b.t, err)
	b.press("change-" + seat)
	b.until(`document.getElementById('open-settled') || document.getElementById('open-unsettled')`)
	if eval[bool](b, `!!document.getElementById('look-longer')`) {
		b.press("look-longer")
	}
	b.until(`document.getElementById('open-settled')`)
	eval[bool](b, `document.getElementById('trial-fails').open = true`)
	b.until(fmt.Sprintf(`document.querySelectorAll('#trial .tried:not([data-way])').length === %d && %s`, len(parts), laid))
	shown := eval[map[string]string](b, `Object.fromEntries([...document.querySelectorAll('#trial .tried:not([data-way])')].map(e => [e.dataset.part, e.querySelector('.tried-whole').textContent]))`)
	for _, p := range parts {
		if p.State == "infeasible" {
			require.Equal(b.t, "in no machine", shown[p.Part])
		} else {
			require.Equal(b.t, "from "+p.Price.Text, shown[p.Part])
		}
	}
	return parts
}

func TestWhatIsStillOpenInASeat(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.visit(s.url)
	b.startFrom("family")
	b.plan()
	closed, open := "", 0
	for _, p := range b.stillOpen("family", "memory") {
		if p.State == "infeasible" {
			closed = p.Part
		} else {
			open++
		}
	}
	require.Greater(t, open, 3)
	require.NotEmpty(t, closed, "some kit of the stock can be in no machine for this brief")

	// Why it cannot, on demand, in sentences.
	row := `document.querySelector('.tried[data-part=` + quoted(t, closed) + `]')`
	eval[bool](b, `(`+row+`.querySelector('.tried-do button').click(), true)`)
	b.until(row + `.querySelector('[data-reason] li')`)
	why := native[struct{ Asks []string }](t, "why", map[string]any{"brief": brief(t, "family"), "keep": []string{"memory=" + closed}})
	require.Equal(t, why.Asks, eval[[]string](b, `[...`+row+`.querySelectorAll('[data-reason] li')].map(e => e.textContent)`))
	b.pictures("open")
	b.clean(s.url)
}

func TestConflictIsToldAndMended(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.visit(s.url)
	b.startFrom("family")
	b.set("budget_minor", "700")
	b.until(`document.querySelector('.need')`)
	b.press("plan-least")
	b.until(`document.querySelector('#conflict .repair')`)
	said := b.job().Brief
	want := native[struct {
		Asks    []string
		Repairs []struct {
			Drops        []struct{ Asks, Path string }
			Price, Above quantity
		}
	}](t, "why", map[string]any{"brief": said})
	require.Equal(t, want.Asks, eval[[]string](b, `[...document.querySelectorAll('#conflict > ul li')].map(e => e.textContent)`))
	require.Len(t, want.Repairs, eval[int](b, `document.querySelectorAll('#conflict .repair').length`))
	b.pictures("conflict")
	money := -1
	for i, r := range want.Repairs {
		text := eval[string](b, fmt.Sprintf(`document.querySelectorAll('#conflict .repair p')[%d].textContent`, i))
		require.True(t, strings.HasPrefix(text, "Give up "+strings.Split(r.Drops[0].Asks, ": ")[0]), text)
		require.Regexp(t, regexp.QuoteMeta(": a machine for "+r.Price.Text+" before tax"), text)
		if len(r.Drops) == 1 && r.Drops[0].Path == "budget_minor" {
			money = i
		}
	}
	require.GreaterOrEqual(t, money, 0, "more money is one way out")
	b.press(fmt.Sprintf("repair-%d", money))
	b.drawn()
	b.until(`!document.getElementById('conflict')`)
	now := b.job()
	mended := native[proof](t, "prove", map[string]any{"brief": now.Brief, "build": now.Build})
	require.True(t, mended.Stands)
	b.sameAs(mended)
	b.press("undo")
	b.until(`!document.querySelector('.part')`)
	require.JSONEq(t, string(said), string(b.job().Brief))
	b.clean(s.url)
}

func TestStepsUpAndDown(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.visit(s.url)
	b.startFrom("game-maker")
	b.press("plan-best")
	b.until(`document.getElementById('proven')`)
	b.drawn()
	now := b.job()
	want := native[struct {
		Seats []struct {
			Seat     string
			Up, Down *struct {
				Costs quantity
				Build json.RawMessage
			}
		}
	}](t, "steps", map[string]any{"brief": now.Brief, "build": now.Build})
	b.press("change-graphics")
	b.until(`document.getElementById('trial')`)
	b.press("steps")
	b.until(`document.getElementById('steps-told')`)
	b.pictures("steps")
	for _, seat := range want.Seats {
		if seat.Seat != "graphics" {
			continue
		}
		require.NotNil(t, seat.Up)
		require.NotNil(t, seat.Down)
		require.Contains(t, eval[string](b, `document.querySelector('[data-step=up] p').textContent`), "+"+seat.Up.Costs.Text)
		require.Contains(t, eval[string](b, `document.querySelector('[data-step=down] p').textContent`), seat.Down.Costs.Text)
		b.press("step-up")
		b.until(`document.getElementById('steps')`)
		b.sameAs(native[proof](t, "prove", map[string]any{"brief": now.Brief, "build": seat.Up.Build}))
		require.JSONEq(t, string(seat.Up.Build), string(b.job().Build))
	}
	b.clean(s.url)
}

func TestFansAreAddedAndFitted(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.visit(s.url)
	b.startFrom("game-maker")
	b.plan()
	b.stillOpen("game-maker", "fans")

	// One is put in, then two on a face with room for them.
	fans := func() (count int, face string) {
		var build struct {
			Seats []struct {
				Seat, Face string
				Count      int
			}
		}
		require.NoError(t, json.Unmarshal(b.job().Build, &build))
		for _, seat := range build.Seats {
			if seat.Seat == "fans" {
				count, face = seat.Count, seat.Face
			}
		}
		return count, face
	}
	eval[bool](b, `(document.querySelector('#trial .tried[data-stands="true"]:not([data-part=""]) button').click(), true)`)
	b.until(`document.querySelector('.part[data-seat="fans"]')`)
	b.drawn()
	count, _ := fans()
	require.Equal(t, 1, count)
	b.until(`document.querySelector('#trial .tried[data-way^="2 on the "]')`)
	way := eval[string](b, `document.querySelector('#trial .tried[data-way^="2 on the "][data-stands="true"]').dataset.way`)
	b.pictures("fans")
	eval[bool](b, `(document.querySelector('#trial .tried[data-way=`+quoted(t, way)+`] button').click(), true)`)
	b.until(`document.querySelector('.part[data-seat="fans"] .part-name').textContent.startsWith('2 × ')`)
	b.drawn()
	count, face := fans()
	require.Equal(t, 2, count)
	require.Equal(t, way, "2 on the "+face)

	// Where they have them already, they have both.
	b.press("own-fans")
	b.until(`document.querySelector('.part[data-seat="fans"] .part-price').textContent === 'theirs'`)
	b.drawn()
	var said struct {
		Owned []struct {
			Seat  string
			Count int
		}
	}
	require.NoError(t, json.Unmarshal(b.job().Brief, &said))
	require.Len(t, said.Owned, 1)
	require.Equal(t, 2, said.Owned[0].Count)
	require.Contains(t, eval[string](b, `document.querySelector('#around-owned .row p').textContent`), ", 2 of it")
	b.clean(s.url)
}
