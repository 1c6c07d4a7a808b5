package web

import (
	"bytes"
	"compress/flate"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"io"
	"strings"
)

// Kind and version of a job as the page keeps and shares it.
const (
	jobKind    = "slipfit-job"
	jobVersion = 1
)

// maxJobBytes bounds a job that a link unpacks to.
const maxJobBytes = 1 << 20

// Job is the work in hand: the brief, the build, and what the title block says.
type Job struct {
	Kind     string          `json:"kind"`
	Version  int             `json:"version"`
	Number   string          `json:"number,omitempty"`
	Revision string          `json:"revision,omitempty"`
	Date     string          `json:"date,omitempty"`
	Brief    json.RawMessage `json:"brief"`
	Build    json.RawMessage `json:"build,omitempty"`
	Pins     []string        `json:"pins,omitempty"` // seats whose part is settled
}

// blank reports a job in which nothing has been done; brief is the job's, opened.
func (j *Job) blank(brief Said) bool {
	return len(j.Build) == 0 && brief.Count("activities") == 0 && brief.Count("said") == 0
}

// readJob reads a job that this page or another copy of it wrote.
func readJob(data []byte) (Job, error) {
	var j Job
	if err := json.Unmarshal(data, &j); err != nil {
		return Job{}, fmt.Errorf("job: %w", err)
	}
	switch {
	case j.Kind != jobKind:
		return Job{}, fmt.Errorf("job: kind is %q, want %q", j.Kind, jobKind)
	case j.Version < 1 || j.Version > jobVersion:
		return Job{}, fmt.Errorf("job: version is %d, want at most %d: a newer slipfit wrote it", j.Version, jobVersion)
	case len(j.Brief) == 0:
		return Job{}, fmt.Errorf("job: no brief in it")
	}
	if _, err := readSaid(j.Brief); err != nil {
		return Job{}, fmt.Errorf("job: %w", err)
	}
	return j, nil
}

// JSON is the job as one text.
func (j Job) JSON() []byte {
	j.Kind, j.Version = jobKind, jobVersion
	data, err := json.Marshal(j)
	if err != nil {
		panic(fmt.Sprintf("web: job: %v", err))
	}
	return data
}

// linkMark begins the fragment of an address that carries a job.
const linkMark = "job="

// packJob writes a job small enough for an address: deflate (RFC 1951), then base64url (RFC 4648, section 5).
func packJob(j Job) string {
	var b bytes.Buffer
	w, err := flate.NewWriter(&b, flate.BestCompression)
	if err != nil {
		panic(fmt.Sprintf("web: deflate: %v", err))
	}
	w.Write(j.JSON())
	w.Close()
	return linkMark + base64.RawURLEncoding.EncodeToString(b.Bytes())
}

// unpackJob reads the job in the fragment of an address.
func unpackJob(fragment string) (Job, error) {
	packed, err := base64.RawURLEncoding.DecodeString(strings.TrimPrefix(fragment, linkMark))
	if err != nil {
		return Job{}, fmt.Errorf("link: not base64url: %w", err)
	}
	data, err := io.ReadAll(io.LimitReader(flate.NewReader(bytes.NewReader(packed)), maxJobBytes+1))
	if err != nil {
		return Job{}, fmt.Errorf("link: cut short or damaged: %w", err)
	}
	if len(data) > maxJobBytes {
		return Job{}, fmt.Errorf("link: more than %d bytes unpacked", maxJobBytes)
	}
	return readJob(data)
}
