package brief

import (
	"reflect"
	"strings"
	"testing"

	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// jsonFields lists the names of a struct's fields in files.
func jsonFields(t reflect.Type) []string {
	var list []string
	for i := range t.NumField() {
		name, _, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
		if name != "" {
			list = append(list, name)
		}
	}
	return list
}

// TestEveryFieldIsAsked requires a question for every field of every activity, and none for a field that is not there.
func TestEveryFieldIsAsked(t *testing.T) {
	activity := reflect.TypeFor[Activity]()
	topics := map[string]Topic{}
	for _, topic := range Topics() {
		topics[topic.Field] = topic
	}
	for i := range activity.NumField() {
		f := activity.Field(i)
		if f.Type.Kind() != reflect.Pointer {
			continue
		}
		key, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		topic, ok := topics[key]
		require.True(t, ok, "no topic %s", key)
		require.True(t, strings.HasSuffix(topic.Opens, "?"), key)
		var asked []string
		for _, q := range topic.Questions {
			asked = append(asked, q.Field)
			require.True(t, strings.HasSuffix(q.Asks, "?") || strings.HasSuffix(q.Asks, "."), "%s.%s: %s", key, q.Field, q.Asks)
			require.NotEmpty(t, q.Usual, "%s.%s: I don't know must be an answer", key, q.Field)
			require.NotEmpty(t, q.High, "%s.%s", key, q.Field)
			if len(q.Choices) > 0 {
				require.Contains(t, q.Choices, q.Usual, "%s.%s", key, q.Field)
			}
		}
		require.ElementsMatch(t, append(jsonFields(f.Type.Elem()), "hours_week", "at_once"), asked, "questions of %s", key)
		delete(topics, key)
	}
	require.Empty(t, topics)
}

// TestSurroundingsAreFields requires that every question about the place, the wishes and the money fills a field of a brief.
func TestSurroundingsAreFields(t *testing.T) {
	known := jsonFields(reflect.TypeFor[Brief]())
	for _, name := range jsonFields(reflect.TypeFor[Place]()) {
		known = append(known, "place."+name)
	}
	for _, name := range jsonFields(reflect.TypeFor[Wish]()) {
		known = append(known, "wishes."+name)
	}
	for _, q := range Surroundings() {
		require.Contains(t, known, q.Field)
		require.NotEmpty(t, q.Usual)
	}
}

// TestUsualAnswersAreTheAssumptions requires that what a question gives for "I don't know" is what the proof says was taken.
func TestUsualAnswersAreTheAssumptions(t *testing.T) {
	for _, topic := range Topics() {
		if topic.Field != "video" {
			continue
		}
		for _, q := range topic.Questions {
			if q.Field == "streams" {
				require.Equal(t, "2", q.Usual)
				require.Equal(t, "3", q.High)
			}
		}
	}
	n := (&Brief{Activities: []Activity{{Video: &Video{}}}}).Needs(workshop(t))
	require.Contains(t, n.Assumed, "video: streams at once not said: 2 taken, with room for 3")
}

// TestWhatIsTakenOfTheSurroundingsIsSaid requires that every usual answer that is a figure stands among what was taken.
func TestWhatIsTakenOfTheSurroundingsIsSaid(t *testing.T) {
	taken := strings.Join((&Brief{Activities: []Activity{{Office: &Office{}}}}).Needs(workshop(t)).Assumed, "\n")
	figures := 0
	for _, q := range Surroundings() {
		if strings.ContainsAny(q.Usual, "0123456789") {
			require.Contains(t, taken, q.Usual, q.Field)
			figures++
		}
	}
	require.Equal(t, 8, figures)
	require.Contains(t, taken, "budget not said: no limit taken")
	require.Contains(t, taken, "network not said: a cable taken")

	told := &Brief{Activities: []Activity{{Office: &Office{}}}, Place: Place{Room: unit.Known(unit.Temperature(25_000)), Chair: unit.Known(unit.Length(900_000))}}
	taken = strings.Join(told.Needs(workshop(t)).Assumed, "\n")
	require.NotContains(t, taken, "22 °C")
	require.NotContains(t, taken, "700 mm")
	require.Contains(t, taken, "30 °C on the hottest day")
}

// TestDifferingScreensAreSaid requires that a plan that buys one kind of screen for several modes says so.
func TestDifferingScreensAreSaid(t *testing.T) {
	large, small := Screen{3840, 2160, 60, 10, 1, false, ""}, Screen{1920, 1080, 60, 8, 2, false, ""}
	owned := small
	owned.Owned = true
	taken := func(list ...Screen) string {
		return strings.Join((&Brief{Activities: []Activity{{Office: &Office{}}}, Screens: list}).Needs(workshop(t)).Assumed, "\n")
	}
	require.Contains(t, taken(large, small), "one kind that shows 3840 × 2160 at 60 Hz with 10 bits and 1920 × 1080 at 60 Hz with 8 bits taken for all")
	for _, list := range [][]Screen{{large}, {small, small}, {large, owned}} {
		require.NotContains(t, taken(list...), "differ")
	}
}
