package web

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// openFile asks the user for a file and lays it on the desk: a brief, a build, or a whole job.
func (d *Desk) openFile() {
	d.ctx.Async(func() {
		name, data, err := OpenFile(".json,application/json")
		d.ctx.Dispatch(func(app.Context) {
			if errors.Is(err, ErrNoFile) {
				return
			}
			if err == nil {
				err = d.take(name, data)
			}
			if err != nil {
				d.grieve(err)
			}
		})
	})
}

// take lays a file on the desk once the core has found it sound; until then, and for good if it is not, what lies there stays.
func (d *Desk) take(name string, data []byte) error {
	var head struct{ Kind string }
	var other *json.UnmarshalTypeError
	if err := json.Unmarshal(data, &head); err != nil && !errors.As(err, &other) {
		return fmt.Errorf("%s: not JSON: %w", name, err)
	}
	refused := func(err error) { d.trouble = name + ": " + err.Error() }
	lay := func(j Job) {
		d.replace(j)
		d.news = name + " is on the sheet."
	}
	switch head.Kind {
	case "slipfit-brief":
		ask(d, "brief", args{Brief: data}, func(*struct{}) { lay(Job{Brief: data}) }, refused)
	case "slipfit-build":
		a := d.about()
		a.Build = data
		ask(d, "prove", a, func(p *Proof) {
			d.adopt(p, nil)
			d.news = name + " is on the sheet. " + p.summary()
		}, refused)
	case jobKind:
		j, err := readJob(data)
		if err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
		// Answers that cannot be used may stand in a job that was saved so; they are told once it lies there.
		if len(j.Build) == 0 {
			lay(j)
		} else {
			ask(d, "prove", args{Build: j.Build}, func(*struct{}) { lay(j) }, refused)
		}
	default:
		return fmt.Errorf("%s: kind is %q, want slipfit-brief, slipfit-build or %s", name, head.Kind, jobKind)
	}
	return nil
}

// saveBrief hands the brief to the user in the form of its file.
func (d *Desk) saveBrief() {
	ask(d, "brief", args{Brief: d.job.Brief}, func(r *struct{ File string }) {
		SaveFile(d.fileName("brief"), "application/json", []byte(r.File))
		d.news = "The brief was handed to the browser to save."
	}, d.grieve)
}

// saveBuild hands the build to the user.
func (d *Desk) saveBuild() {
	var indented strings.Builder
	e := json.NewEncoder(&indented)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	if err := e.Encode(d.job.Build); err != nil {
		d.grieve(err)
		return
	}
	SaveFile(d.fileName("build"), "application/json", []byte(indented.String()))
	d.news = "The build was handed to the browser to save."
}

// saveJob hands the whole job to the user: brief, build and title block.
func (d *Desk) saveJob() {
	SaveFile(d.fileName("job"), "application/json", append(d.job.JSON(), '\n'))
	d.news = "The job was handed to the browser to save."
}

// fileName makes a file name of the job's title.
func (d *Desk) fileName(what string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(d.brief.Text("title")) {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	name := strings.Trim(b.String(), "-")
	if name == "" {
		name = "job"
	}
	return name + "." + what + ".json"
}

// startFrom lays an example brief on the desk.
func (d *Desk) startFrom(name string) {
	for _, e := range d.examples {
		if e.Name == name {
			d.replace(Job{Brief: e.File})
			d.news = "“" + e.Title + "” is on the sheet."
		}
	}
}

// startAfresh clears the sheet, as one change.
func (d *Desk) startAfresh() {
	d.edit(func() { d.clear() })
	d.news = "The sheet is blank."
}

// makeLink writes the job into an address.
func (d *Desk) makeLink() {
	d.link = pageAddress() + "#" + packJob(d.job)
	d.ctx.Defer(func(app.Context) { selectAll("link") })
}
