//go:build !wasm

package browsertest

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slipfit/catalog"
	"slipfit/core/verb"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// native answers a verb as the command line does, to hold the page's figures against.
func native[T any](t *testing.T, name string, args map[string]any) T {
	t.Helper()
	stock, err := catalog.Embedded()
	require.NoError(t, err)
	data, err := json.Marshal(args)
	require.NoError(t, err)
	answer, err := (&verb.Bench{Stock: stock}).Do(context.Background(), name, data, nil)
	require.NoError(t, err)
	var out T
	require.NoError(t, json.Unmarshal(answer, &out))
	return out
}

// The parts of answers that the tests compare.
type quantity struct{ Text string }

type proof struct {
	Stands bool
	Counts map[string]int
	Sum    struct{ Gross quantity }
	Parts  []struct {
		Seat, Part string
		Price      quantity
	}
	Margins []struct {
		Rule, Subject, Verdict, Why string
		Have, Need, Diff            quantity
	}
	Build json.RawMessage
}

func brief(t *testing.T, name string) json.RawMessage {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "briefs", name+".brief.json"))
	require.NoError(t, err)
	return data
}

// set answers a question of the page: it puts a value into the control at a path and leaves it.
func (b *tab) set(path, value string) {
	b.t.Helper()
	id := "said-" + strings.NewReplacer(".", "-", "[", "-", "]", "-").Replace(path)
	b.setByID(id, value)
}

func (b *tab) setByID(id, value string) {
	b.t.Helper()
	eval[bool](b, `(document.querySelectorAll('.conversation details:not([open])').forEach(e => e.open = true), true)`)
	b.until(fmt.Sprintf(`document.getElementById(%q)`, id))
	eval[bool](b, fmt.Sprintf(`(() => { const e = document.getElementById(%q); e.value = %q;
		e.dispatchEvent(new Event('change', {bubbles: true})); return e.value === %q })()`, id, value, value))
}

func (b *tab) press(id string) {
	b.t.Helper()
	b.until(fmt.Sprintf(`document.getElementById(%q) && !document.getElementById(%q).disabled`, id, id))
	eval[bool](b, fmt.Sprintf(`(document.getElementById(%q).click(), true)`, id))
}

// example is the brief that the tests begin with where it matters little which.
const example, exampleTitle = "silent-studio", "Nothing but the music"

// drawn waits until the drawing, the parts and the margins are of one build.
func (b *tab) drawn() {
	b.t.Helper()
	b.until(`document.querySelector('.views-drawn svg') && document.querySelector('.counts') && ` + laid)
}

func (b *tab) startFrom(name string) {
	b.t.Helper()
	b.setByID("example", name)
	b.until(`document.querySelector('.need')`)
}

func (b *tab) plan() {
	b.t.Helper()
	b.press("plan-least")
	b.until(`document.getElementById('proven')`)
	b.drawn()
}

// job is the job as the page keeps it in the browser.
func (b *tab) job() (job struct {
	Brief, Build json.RawMessage
	Pins         []string
	Number       string
}) {
	b.t.Helper()
	text := eval[string](b, `new Promise((done, fail) => { const r = indexedDB.open('slipfit-records', 1); r.onerror = fail;
		r.onsuccess = () => { const g = r.result.transaction('slipfit-records').objectStore('slipfit-records').get('job');
			g.onerror = fail; g.onsuccess = () => { r.result.close(); done(g.result ? new TextDecoder().decode(g.result) : '{}') } } })`)
	require.NoError(b.t, json.Unmarshal([]byte(text), &job))
	return job
}

// sameAs holds what the page shows against the core's own answer.
func (b *tab) sameAs(want proof) {
	b.t.Helper()
	b.until(fmt.Sprintf(`document.querySelector('.sum-all dd')?.textContent === %q && document.querySelector('.counts') && %s`, want.Sum.Gross.Text, laid))
	for word, n := range want.Counts {
		require.Equal(b.t, fmt.Sprintf("%d %s", n, word), eval[string](b, `document.querySelector('.count[data-verdict="`+word+`"]').textContent`))
	}
	require.Equal(b.t, fmt.Sprintf("%d margins:", len(want.Margins)), eval[string](b, `document.querySelector('.counts span').textContent`))
	shown := eval[[][]string](b, `[...document.querySelectorAll('.part')].map(e => [e.dataset.seat, e.dataset.part, e.querySelector('.part-price').textContent])`)
	require.Len(b.t, shown, len(want.Parts))
	for i, l := range want.Parts {
		require.Equal(b.t, []string{l.Seat, l.Part, l.Price.Text}, shown[i])
	}
	type row struct{ Rule, Subject, Verdict, Have, Need, Margin string }
	rows := eval[[]row](b, `[...document.querySelectorAll('.margin')].filter(e => e.querySelector('.ruler')).map(e => { const f = [...e.querySelectorAll('.figure')].map(x => x.textContent);
		return {Rule: e.dataset.rule, Subject: e.dataset.subject, Verdict: e.dataset.verdict, Have: f[0], Need: f[1], Margin: f[2]} })`)
	require.NotEmpty(b.t, rows)
	byKey := map[string]row{}
	for _, m := range want.Margins {
		byKey[m.Rule+" "+m.Subject] = row{m.Rule, m.Subject, m.Verdict, m.Have.Text, m.Need.Text, m.Diff.Text}
	}
	for _, r := range rows {
		require.Equal(b.t, byKey[r.Rule+" "+r.Subject], r)
	}
}

func TestFromABriefToAQuote(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.visit(s.url)

	// What the customer says, by hand; what they do not know stays empty.
	b.set("title", "Songs")
	b.set("said", "I record songs.\nIt must be quiet.")
	b.setByID("topic", "sound")
	b.press("add-work")
	b.until(`document.querySelector('#activity-0[open]')`)
	b.set("activities[0].sound.tracks", "32")
	b.until(`document.querySelector('[data-path="activities[0].sound.sample_hz"] .hint')?.textContent.includes('48')`)
	b.set("activities[0].sound.plug_ins", "ordinary")
	b.set("budget_minor", "2600")
	b.set("place.noise_dba", "loud")
	b.until(`document.querySelector('[data-path="place.noise_dba"] .fault')?.textContent.startsWith('want a number of dB(A) between 10 and 70')`)
	b.set("place.noise_dba", "30")
	b.until(`!document.querySelector('.fault:not([hidden])') && document.querySelector('.need')`)
	said := map[string]any{"kind": "slipfit-brief", "version": 1, "title": "Songs", "said": []string{"I record songs.", "It must be quiet."},
		"activities": []any{map[string]any{"sound": map[string]any{"tracks": 32, "plug_ins": "ordinary"}}},
		"place":      map[string]any{"noise_dba": 30}, "budget_minor": 260000}
	data, err := json.Marshal(said)
	require.NoError(t, err)
	require.JSONEq(t, string(data), string(b.job().Brief))

	b.plan()
	want := native[struct{ Proof proof }](t, "plan", map[string]any{"brief": said}).Proof
	b.sameAs(want)
	b.picture("job-planned.png")

	// The papers carry the same sum.
	b.press("turn")
	b.until(`document.querySelector('.leaf')`)
	require.Contains(t, eval[string](b, `document.querySelector('.leaf').textContent`), want.Sum.Gross.Text)
	paper, err := chromedp.Run(b.ctx, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize()))
	require.NoError(t, err)
	keep(t, "quote.pdf", paper)
	text := pdfText(t, paper)
	require.Contains(t, text, want.Sum.Gross.Text)
	require.Contains(t, text, "I record songs.")
	require.NotContains(t, text, "Turn the sheet over", "no controls on paper")
	b.clean(s.url)
}

func TestSwapFailsByTheRightRuleAndIsTakenBack(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.visit(s.url)
	b.startFrom(example)
	b.plan()
	before := b.job()
	was := eval[string](b, `document.querySelector('.views-drawn svg').outerHTML`)

	trial := native[struct {
		Parts []struct {
			Part, Fails, Why string
			Stands           bool
			Change           quantity
		}
	}](t, "try", map[string]any{"brief": before.Brief, "build": before.Build, "seat": "cooler"})
	tallest := -1
	for i, p := range trial.Parts {
		if p.Fails == "cooler-height" {
			tallest = i
		}
	}
	require.GreaterOrEqual(t, tallest, 0, "some cooler of the stock is too tall for this case")
	want := trial.Parts[tallest]

	b.press("change-cooler")
	b.until(`document.getElementById('trial')`)
	eval[bool](b, `document.getElementById('trial-fails').open = true`)
	b.until(`document.querySelector('#trial-fails .tried') && ` + laid)
	row := fmt.Sprintf(`document.querySelector('.tried[data-part=%q]')`, want.Part)
	require.Equal(t, "false cooler-height", eval[string](b, row+`.dataset.stands + ' ' + `+row+`.dataset.fails`))
	require.Equal(t, "cooler-height: "+want.Why+".", eval[string](b, row+`.querySelector('.tried-why').textContent`))
	require.Len(t, trial.Parts, eval[int](b, `document.querySelectorAll('#trial .tried').length - document.querySelectorAll('#trial .ways .tried').length`))
	b.picture("job-trial.png")
	eval[bool](b, `(`+row+`.querySelector('button').click(), true)`)
	b.until(`document.querySelector('.failing [data-rule="cooler-height"]')`)
	b.until(`document.querySelector('.views-drawn svg').outerHTML !== ` + quoted(t, was))
	b.until(fmt.Sprintf(`document.querySelector('.part[data-seat=cooler]').dataset.part === %q`, want.Part))
	swapped := b.job()
	proven := native[proof](t, "prove", map[string]any{"brief": swapped.Brief, "build": swapped.Build})
	require.False(t, proven.Stands)
	b.sameAs(proven)
	b.picture("job-failing.png")

	b.press("undo")
	b.until(`!document.querySelector('.failing')`)
	b.until(`document.querySelector('.views-drawn svg').outerHTML === ` + quoted(t, was))
	require.JSONEq(t, string(before.Build), string(b.job().Build))
	b.press("redo")
	b.until(`document.querySelector('.failing [data-rule="cooler-height"]')`)
	b.clean(s.url)
}

func TestPinnedPartStaysAndOwnedPartCostsNothing(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.visit(s.url)
	b.startFrom(example)
	b.plan()
	const processor = `document.querySelector('.part[data-seat=processor]')`
	settled := eval[string](b, processor+`.dataset.part`)

	// Another processor that stands, pinned: the planner keeps it.
	b.press("change-processor")
	b.until(`document.getElementById('trial')`)
	other := eval[string](b, `[...document.querySelectorAll('.tried[data-stands=true]')].map(e => e.dataset.part).find(p => p !== `+quoted(t, settled)+`)`)
	eval[bool](b, `(document.querySelector('.tried[data-part="`+other+`"] button').click(), true)`)
	b.until(processor + `.dataset.part === ` + quoted(t, other))
	b.unfold("processor")
	b.press("pin-processor")
	b.until(`document.getElementById('pin-processor').getAttribute('aria-pressed') === 'true'`)
	b.plan()
	b.until(processor + `.dataset.part === ` + quoted(t, other))

	b.unfold("processor")
	b.press("own-processor")
	b.until(processor + `.querySelector('.part-price').textContent === 'theirs'`)
	require.Contains(t, string(b.job().Brief), `"owned":[{"part":"`+other+`","seat":"processor"}]`)
	now := b.job()
	b.sameAs(native[proof](t, "prove", map[string]any{"brief": now.Brief, "build": now.Build}).withOwned("theirs", now.Build))
	b.clean(s.url)
}

// unfold opens what can be done about the part in a seat, where it is not open yet.
func (b *tab) unfold(seat string) {
	b.t.Helper()
	if !eval[bool](b, `document.getElementById('own-`+seat+`') !== null`) {
		b.press("change-" + seat)
		b.until(`document.getElementById('own-` + seat + `')`)
	}
}

// withOwned tells the price of owned parts as the page does.
func (p proof) withOwned(word string, build json.RawMessage) proof {
	var file struct {
		Seats []struct {
			Seat  string
			Owned bool
		}
	}
	if json.Unmarshal(build, &file) == nil {
		for _, f := range file.Seats {
			for i := range p.Parts {
				if f.Owned && p.Parts[i].Seat == f.Seat {
					p.Parts[i].Price.Text = word
				}
			}
		}
	}
	return p
}

func TestJobIsFoundAgainWithTheServerStopped(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.visit(s.url)
	b.startFrom(example)
	b.plan()
	b.setByID("block-job", "2041")
	b.until(`document.querySelector('#block-job').value === '2041'`)
	kept := b.job()
	require.Equal(t, "2041", kept.Number)
	want := native[proof](t, "prove", map[string]any{"brief": kept.Brief, "build": kept.Build})
	b.kept()
	s.stop()
	b.do(chromedp.Navigate("about:blank"))
	b.visit(s.url)
	b.drawn()
	b.sameAs(want)
	require.Equal(t, "2041", eval[string](b, `document.querySelector('#block-job').value`))
	require.Equal(t, exampleTitle, eval[string](b, `document.querySelector('[data-field=title] dd').textContent`))
	// It can be worked with, too.
	b.press("change-memory")
	b.until(`document.querySelectorAll('#trial .tried').length > 10`)
	b.clean(s.url)
}

func TestLinkCarriesTheJobAndAsksBeforeItReplaces(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.visit(s.url)
	b.startFrom(example)
	b.plan()
	b.press("share")
	b.until(`document.getElementById('link')?.value.includes('#job=')`)
	link := eval[string](b, `document.getElementById('link').value`)
	require.Less(t, len(link), 2500, "an address that mail and chat take whole")
	gross := eval[string](b, `document.querySelector('.sum-all dd').textContent`)

	other := newTab(t, "")
	other.visitLink(link)
	other.drawn()
	require.Equal(t, gross, eval[string](other, `document.querySelector('.sum-all dd').textContent`))

	// Work in hand is not replaced without a word.
	b.press("afresh")
	b.until(`document.querySelector('#example')`)
	b.set("title", "Mine")
	b.setByID("topic", "office")
	b.press("add-work")
	b.until(`document.querySelector('#activity-0')`)
	b.do(chromedp.Navigate("about:blank"))
	b.visitLink(link)
	b.until(`document.getElementById('leave-offer')`)
	require.Equal(t, "Mine", eval[string](b, `document.querySelector('[data-field=title] dd').textContent`))
	b.press("take-offer")
	b.drawn()
	require.Equal(t, gross, eval[string](b, `document.querySelector('.sum-all dd').textContent`))
	b.press("undo")
	b.until(`document.querySelector('[data-field=title] dd').textContent === 'Mine'`)

	damaged := link[:len(link)-40]
	b.do(chromedp.Navigate("about:blank"))
	b.visitLink(damaged)
	b.until(`document.getElementById('trouble').textContent.startsWith('The address carries no whole job')`)
	require.Equal(t, "Mine", eval[string](b, `document.querySelector('[data-field=title] dd').textContent`))
}

// visitLink is visit for an address that carries a job.
func (b *tab) visitLink(address string) {
	b.t.Helper()
	b.do(chromedp.Navigate(address))
	b.until(answered)
	b.until(`!document.getElementById('app-wasm-loader')`)
}

func quoted(t *testing.T, text string) string {
	t.Helper()
	var buffer bytes.Buffer
	e := json.NewEncoder(&buffer)
	e.SetEscapeHTML(false)
	require.NoError(t, e.Encode(text))
	return strings.TrimSpace(buffer.String())
}

func TestPartTheyHaveIsNamed(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.visit(s.url)
	eval[bool](b, `document.getElementById('around-owned').open = true`)
	const add = `document.getElementById('add-owned')`
	b.until(add + ` && ` + add + `.disabled && document.getElementById('owned-part').options.length > 100`)
	b.setByID("owned-part", "board=mistrand-plain-t40")
	b.press("add-owned")
	b.until(add + `.disabled && document.querySelector('#around-owned .row p')`)
	require.Equal(t, "main board: Mistrand Plain T40", eval[string](b, `document.querySelector('#around-owned .row p').textContent`))
	require.Equal(t, "1 part", eval[string](b, `document.querySelector('#around-owned .fold-note').textContent`))
	b.clean(s.url)
}

func TestBadAnswersAreTold(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.visit(s.url)
	b.startFrom("family")
	b.set("budget_minor", "5")
	const fault = `document.querySelector('.asked[data-path="budget_minor"] .fault')`
	b.until(fault)
	require.Equal(t, "want an amount in EUR between 100 and 1000000", eval[string](b, fault+`.textContent`))
	require.Equal(t, "1 answer cannot be used: it says there what is wanted.", eval[string](b, `document.getElementById('trouble').textContent`))
	b.set("budget_minor", "1200")
	b.until(`!` + fault)

	// An amount is typed as it is told, and kept in minor units.
	b.set("place.kwh_minor", "0.32")
	b.until(`document.getElementById('said-place-kwh_minor').value === '0.32' && document.getElementById('trouble').textContent === ''`)
	var said struct {
		Place struct {
			KWh int `json:"kwh_minor"`
		}
	}
	require.NoError(t, json.Unmarshal(b.job().Brief, &said))
	require.Equal(t, 32, said.Place.KWh)

	// What is wrong in a fold shows on it, also once the page is loaded anew and nothing is unfolded.
	b.set("place.chair_mm", "near")
	b.set("place.room_c", "hot")
	b.set("activities[0].office.people", "-1")
	b.until(`document.getElementById('trouble').textContent === '3 answers cannot be used: each says what is wanted.'`)
	b.visit(s.url)
	b.until(`document.querySelector('#around-place .fold-note')?.textContent === '2 answers cannot be used'`)
	require.Equal(t, "1 answer cannot be used", eval[string](b, `document.querySelector('#activity-0 .fold-note').textContent`))
	b.press("plan-least")
	b.until(`document.getElementById('trouble').textContent === '3 answers cannot be used: each says what is wanted.'`)
	b.clean(s.url)
}
