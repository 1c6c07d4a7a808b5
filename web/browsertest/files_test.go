//go:build !wasm

package browsertest

import (
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/page"
	js "github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// openInPage has the page ask for a file and gives it this one.
func (b *tab) openInPage(file string) {
	b.t.Helper()
	file, err := filepath.Abs(file)
	require.NoError(b.t, err)
	_, err = chromedp.Call(b.ctx, page.SetInterceptFileChooserDialog, page.SetInterceptFileChooserDialogParams{Enabled: true})
	require.NoError(b.t, err)
	ctx, cancel := context.WithTimeout(b.ctx, patience)
	defer cancel()
	opened, err := chromedp.Run(ctx, chromedp.WaitEvent(page.FileChooserOpened, nil, chromedp.Evaluate[chromedp.Void](
		`document.getElementById('open-file').click()`, func(p *js.EvaluateParams) { gesture := true; p.UserGesture = &gesture })))
	require.NoError(b.t, err)
	_, err = chromedp.Call(b.ctx, dom.SetFileInputFiles, dom.SetFileInputFilesParams{Files: []string{file}, BackendNodeID: opened.BackendNodeID})
	require.NoError(b.t, err)
}

func TestFilesAreSavedAndOpened(t *testing.T) {
	s, b := servePage(t), newTab(t, "")
	b.visit(s.url)
	dir := t.TempDir()
	_, err := chromedp.CallBrowser(b.ctx, browser.SetDownloadBehavior, browser.SetDownloadBehaviorParams{
		Behavior: browser.SetDownloadBehaviorBehaviorAllow, DownloadPath: dir, BrowserContextID: chromedp.FromContext(b.ctx).BrowserContextID})
	require.NoError(t, err)
	saved := func(id, name string) []byte {
		b.press(id)
		file := filepath.Join(dir, name)
		require.Eventually(t, func() bool { _, err := os.Stat(file); return err == nil }, patience, 20*1e6)
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		return data
	}

	b.openInPage(filepath.Join("..", "..", "testdata", "briefs", example+".brief.json"))
	b.until(`document.querySelector('.need')`)
	require.JSONEq(t, string(brief(t, example)), string(saved("save-brief", "nothing-but-the-music.brief.json")))
	b.plan()
	build := saved("save-build", "nothing-but-the-music.build.json")
	want := native[proof](t, "prove", map[string]any{"brief": brief(t, example), "build": json.RawMessage(build)})
	job := filepath.Join(dir, "nothing-but-the-music.job.json")
	saved("save-job", filepath.Base(job))

	b.press("afresh")
	b.until(`!document.querySelector('.part')`)
	b.openInPage(job)
	b.sameAs(want)

	// What cannot be read is refused by name, and the job in hand stays.
	broken := filepath.Join(dir, "broken.json")
	require.NoError(t, os.WriteFile(broken, build[:len(build)/2], 0o644))
	b.openInPage(broken)
	b.until(`document.getElementById('trouble').textContent.startsWith('broken.json: not JSON')`)
	unsound := filepath.Join(dir, "unsound.json")
	require.NoError(t, os.WriteFile(unsound, []byte(`{"kind":"slipfit-job","version":1,"brief":`+string(brief(t, example))+
		`,"build":{"kind":"slipfit-build","version":1,"title":"t","seats":[{"seat":"case","part":"no-such-case"}]}}`), 0o644))
	b.openInPage(unsound)
	b.until(`document.getElementById('trouble').textContent.startsWith('unsound.json: build: seats[0].part')`)
	listed := filepath.Join(dir, "listed.json")
	require.NoError(t, os.WriteFile(listed, []byte(`[1, 2]`), 0o644))
	b.openInPage(listed)
	b.until(`document.getElementById('trouble').textContent.startsWith('listed.json: kind is ""')`)
	later := filepath.Join(dir, "later.json")
	require.NoError(t, os.WriteFile(later, []byte(`{"kind":"slipfit-brief","version":99,"title":"x","activities":[{"office":{}}]}`), 0o644))
	b.openInPage(later)
	b.until(`document.getElementById('trouble').textContent.includes('version')`)
	b.sameAs(want)
	b.clean(s.url)
}
