//go:build !wasm

package web

import (
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// windows are those of one browser: which names they have taken.
type windows struct {
	t     *testing.T
	store *Store
	taken map[string]bool
	hour  int
}

func newWindows(t *testing.T) *windows {
	store, err := OpenStore()
	require.NoError(t, err)
	return &windows{t: t, store: store, taken: map[string]bool{}}
}

func (w *windows) claim(name string) (bool, error) {
	free := !w.taken[name]
	w.taken[name] = true
	return free, nil
}

func (w *windows) open(last string) drawer {
	d, err := openDrawer(w.store, last, w.claim)
	require.NoError(w.t, err)
	return d
}

// keep changes the job of a window, an hour after the last change of any.
func (w *windows) keep(d drawer, title string, pins ...string) {
	w.hour++
	brief := fmt.Sprintf(`{"kind":"slipfit-brief","version":1,"title":%q,"activities":[{"name":"work"}]}`, title)
	if title == "" {
		brief = `{"kind":"slipfit-brief","version":1,"title":"Machine to order","activities":[]}`
	}
	require.NoError(w.t, w.store.Put(d.key, Job{Brief: []byte(brief), Pins: pins}.kept(time.Date(2026, 1, 2, w.hour, 0, 0, 0, time.UTC))))
}

// title is that of the job in a drawer.
func (w *windows) title(d drawer) string {
	if d.data == nil {
		return ""
	}
	j, err := readJob(d.data)
	require.NoError(w.t, err)
	said, err := readSaid(j.Brief)
	require.NoError(w.t, err)
	return said.Text("title")
}

func TestEachWindowKeepsAJobOfItsOwn(t *testing.T) {
	w := newWindows(t)
	one := w.open("")
	require.Equal(t, drawer{key: "job"}, one)
	require.Empty(t, one.notice())
	two := w.open("")
	require.Equal(t, drawer{key: "job 2", busy: true}, two)
	require.Equal(t, "This page is open in another window too; each keeps a job of its own.", two.notice())
	w.keep(one, "First")
	w.keep(two, "Second")
	w.keep(one, "First", "case")

	three := w.open("")
	require.Equal(t, "job 3", three.key)
	require.Equal(t, "Another window has “First”, “Second” open; this one keeps a job of its own.", three.notice())

	// All close: the next window has the job changed last, the one after it the other.
	clear(w.taken)
	next := w.open("")
	require.Equal(t, "job", next.key)
	require.Equal(t, "First", w.title(next))
	require.Equal(t, "Kept besides: “Second”. Open this page in one more window to work on it.", next.notice())
	after := w.open("")
	require.Equal(t, "Second", w.title(after))
	require.Equal(t, "Another window has “First” open; this one keeps a job of its own.", after.notice())

	// A window loaded anew has its own, though another was changed later; a copy of it has not.
	delete(w.taken, "job 2")
	require.Equal(t, "Second", w.title(w.open("job 2")))
	require.Equal(t, "job 3", w.open("job 2").key)
}

func TestBlankJobsComeLast(t *testing.T) {
	w := newWindows(t)
	one, two := w.open(""), w.open("")
	w.keep(one, "First")
	w.keep(two, "")
	clear(w.taken)
	require.Equal(t, "First", w.title(w.open("")))
	again := w.open("")
	require.Equal(t, "job 2", again.key, "a blank drawer is used before there is another")
	require.Equal(t, []string{"First"}, again.opened)
}

func TestJobsOfEarlierEditionsAndOfLaterOnes(t *testing.T) {
	w := newWindows(t)
	require.NoError(t, w.store.Put("job", Job{Brief: blankBrief().JSON()}.JSON()))
	require.Equal(t, "Machine to order", w.title(w.open("")), "one without the time it was kept")
	clear(w.taken)
	require.NoError(t, w.store.Put("job", []byte(`{"kind":"slipfit-job","version":99}`)))
	d := w.open("job")
	require.Equal(t, "job 2", d.key, "what cannot be read is not written over")
	require.ErrorContains(t, d.faulty, "a newer slipfit wrote it")
}

func TestWindowsThatCannotBeToldApart(t *testing.T) {
	w := newWindows(t)
	w.keep(drawer{key: "job"}, "First")
	d, err := openDrawer(w.store, "", func(string) (bool, error) { return false, errWindows })
	require.NoError(t, err)
	require.Equal(t, "First", w.title(d))
	require.Equal(t, "This browser does not tell windows of this page apart: with two of them open, the job changed last is kept.", d.notice())
}
