//go:build !wasm

package web

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestSaidByPath(t *testing.T) {
	s := blankBrief()
	s.Add("activities", map[string]any{"sound": map[string]any{}})
	s.Set("activities[0].sound.tracks", number("32"))
	s.Set("place.noise_dba", number("loud"))
	s.Set("wishes.glass", false)
	require.Equal(t, "32", s.Text("activities[0].sound.tracks"))
	require.Equal(t, "false", s.Text("wishes.glass"))
	require.JSONEq(t, `{"kind":"slipfit-brief","version":1,"title":"Machine to order","activities":[{"sound":{"tracks":32}}],
		"place":{"noise_dba":"loud"},"wishes":{"glass":false}}`, string(s.JSON()))
	s.Set("activities[0].sound.tracks", number(" "))
	require.Nil(t, s.Get("activities[0].sound.tracks"))
	s.Set("activities[3].sound.tracks", number("1"))
	require.Equal(t, 1, s.Count("activities"), "a place that is not there is not made")
	require.Equal(t, "sound", s.topicOf(0, []Topic{{Field: "video"}, {Field: "sound"}}).Field)
	s.Remove("activities", 0)
	require.JSONEq(t, `[]`, string(must(json.Marshal(s.Get("activities")))))
	s.Add("screens", map[string]any{})
	s.Remove("screens", 0)
	require.Nil(t, s.Get("screens"), "an empty list is left out")
}

func must(data []byte, err error) []byte {
	if err != nil {
		panic(err)
	}
	return data
}

func TestNumbersAreKeptAsTyped(t *testing.T) {
	for typed, want := range map[string]any{"": nil, "12": json.Number("12"), " 3.50 ": json.Number("3.50"), "-4": json.Number("-4"),
		"1,5": "1,5", "true": "true", "null": "null", "0x10": "0x10", "12 mm": "12 mm"} {
		require.Equal(t, want, number(typed), "%q", typed)
	}
}

func TestJobInALink(t *testing.T) {
	j := Job{Number: "2041", Date: "2026-11-24", Brief: json.RawMessage(`{"title":"Töpfe"}`), Build: json.RawMessage(`{"seats":[]}`), Pins: []string{"case"}}
	link := packJob(j)
	require.Regexp(t, `^job=[A-Za-z0-9_-]+$`, link)
	back, err := unpackJob(link)
	require.NoError(t, err)
	require.Equal(t, string(j.JSON()), string(back.JSON()))
	for cut := len(linkMark); cut < len(link); cut += 7 {
		_, err := unpackJob(link[:cut])
		require.Error(t, err, "cut at %d", cut)
	}
	_, err = unpackJob("job=%%%")
	require.ErrorContains(t, err, "base64url")
	_, err = unpackJob(packJob(Job{Brief: json.RawMessage(`"` + strings.Repeat("x", maxJobBytes) + `"`)}))
	require.ErrorContains(t, err, "more than")
}

func TestJobOfANewerSlipfitIsRefused(t *testing.T) {
	for text, want := range map[string]string{
		`{"kind":"slipfit-job","version":2,"brief":{}}`:    "version is 2, want at most 1",
		`{"kind":"slipfit-build","version":1}`:             `kind is "slipfit-build"`,
		`{"kind":"slipfit-job","version":1}`:               "no brief",
		`{"kind":"slipfit-job","version":1,"brief":"x"}`:   "brief",
		`{"kind":"slipfit-job","version":1,"brief":{"a":1`: "unexpected end",
	} {
		_, err := readJob([]byte(text))
		require.ErrorContains(t, err, want)
	}
}

func TestTakingBack(t *testing.T) {
	d := newDesk()
	d.say("title", "First")
	d.say("title", "First")
	d.say("who", "Ada")
	require.Len(t, d.past, 2, "what changes nothing is no change")
	d.undo()
	require.Equal(t, "First", d.brief.Text("title"))
	require.Empty(t, d.brief.Text("who"))
	d.redo()
	require.Equal(t, "Ada", d.brief.Text("who"))
	d.undo()
	d.undo()
	d.undo()
	require.Equal(t, "Machine to order", d.brief.Text("title"))
	d.say("title", "Second")
	require.Empty(t, d.future)
}
