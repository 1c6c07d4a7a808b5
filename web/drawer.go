package web

import (
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"
)

// drawer is where a window keeps its job: a record of the store that no other window writes. A window takes the one that it
// had before it was loaded anew, else the job changed last that no other window has open.
type drawer struct {
	key    string   // of the record; empty where none could be taken
	data   []byte   // the job that lies in it, nil where none does
	busy   bool     // another window has this page open
	opened []string // titles of the jobs that other windows have open
	closed []string // titles of other jobs, which no window has open
	shared bool     // windows cannot be told apart: another one may write it too
	faulty error    // of a record that cannot be read, which is left as it is
}

// drawerOfWindow is where the session of a window keeps the key of its drawer.
const drawerOfWindow = "slipfit-drawer"

// errWindows says that this browser does not tell the windows of this page apart, for instance because the page came over a
// network without encryption.
var errWindows = errors.New("this browser does not tell windows apart for this page")

// keptJob is a job as it lies in a drawer.
type keptJob struct {
	Job
	Kept time.Time `json:"kept,omitzero"` // when it was last changed
}

// kept is the job as it is to lie in a drawer from now on.
func (j Job) kept(now time.Time) []byte {
	j.Kind, j.Version = jobKind, jobVersion
	data, err := json.Marshal(keptJob{j, now})
	if err != nil {
		panic(fmt.Sprintf("web: job: %v", err))
	}
	return data
}

// filled is a drawer with something in it.
type filled struct {
	key   string
	title string
	kept  time.Time
	blank bool
}

// openDrawer takes a drawer: that named last, if no other window has it. Claim takes a name for this window until it closes, and
// reports whether no other window has it.
func openDrawer(store *Store, last string, claim func(name string) (bool, error)) (d drawer, err error) {
	list, err := d.look(store)
	if err != nil {
		return d, err
	}
	slices.SortStableFunc(list, func(a, b filled) int {
		return cmp.Or(first(a.key == last, b.key == last), first(!a.blank, !b.blank), b.kept.Compare(a.kept))
	})
	take := func(key string) error {
		free, err := claim(key)
		switch {
		case errors.Is(err, errWindows):
			d.shared = true
		case err != nil:
			return err
		}
		if free || d.shared {
			d.key = key
		}
		d.busy = d.busy || d.key == ""
		return nil
	}
	for _, f := range list {
		was := d.key
		if was == "" {
			if err := take(f.key); err != nil {
				return d, err
			}
		}
		switch {
		case was == "" && d.key != "", f.blank: // it is ours, or there is nothing to tell of it
		case was == "":
			d.opened = append(d.opened, f.title)
		default:
			d.closed = append(d.closed, f.title)
		}
	}
	for n := 1; d.key == ""; n++ {
		key := storedJob
		if n > 1 {
			key = fmt.Sprintf("%s %d", storedJob, n)
		}
		if _, used, err := store.Get(key); err != nil {
			return d, err
		} else if used {
			continue
		}
		if err := take(key); err != nil {
			return d, err
		}
	}
	d.data, _, err = store.Get(d.key) // anew: the window that had it may have written it until it closed
	return d, err
}

// first orders what has a property before what has not.
func first(a, b bool) int {
	switch {
	case a == b:
		return 0
	case a:
		return -1
	}
	return 1
}

// look lists the drawers whose job can be read.
func (d *drawer) look(store *Store) ([]filled, error) {
	keys, err := store.List(storedJob)
	if err != nil {
		return nil, err
	}
	var list []filled
	for _, key := range keys {
		data, found, err := store.Get(key)
		if err != nil {
			return nil, err
		}
		if !found {
			continue
		}
		j, err := readJob(data)
		if err != nil {
			d.faulty = err
			continue
		}
		said, err := readSaid(j.Brief)
		if err != nil {
			d.faulty = err
			continue
		}
		var when keptJob
		if err := json.Unmarshal(data, &when); err != nil {
			d.faulty = err
			continue
		}
		list = append(list, filled{key, said.Text("title"), when.Kept, j.blank(said)})
	}
	return list, nil
}

// notice tells what other windows and other jobs there were when the drawer was taken.
func (d *drawer) notice() string {
	var say []string
	switch {
	case d.shared:
		say = append(say, "This browser does not tell windows of this page apart: with two of them open, the job changed last is kept.")
	case len(d.opened) > 0:
		say = append(say, "Another window has "+quotedTitles(d.opened)+" open; this one keeps a job of its own.")
	case d.busy:
		say = append(say, "This page is open in another window too; each keeps a job of its own.")
	}
	if len(d.closed) > 0 && !d.shared {
		say = append(say, "Kept besides: "+quotedTitles(d.closed)+". Open this page in one more window to work on it.")
	}
	return strings.Join(say, " ")
}

func quotedTitles(list []string) string {
	quoted := make([]string, len(list))
	for i, title := range list {
		quoted[i] = "“" + title + "”"
	}
	return strings.Join(quoted, ", ")
}
