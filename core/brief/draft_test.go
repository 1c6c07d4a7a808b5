package brief

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestDraftTakesEveryQuestion answers every question of every topic and of the surroundings and reads the brief back.
func TestDraftTakesEveryQuestion(t *testing.T) {
	sample := map[string]string{
		"screens": "2 of 3840x2160 at 60, 2560×1440 at 144 mine", "owned": "graphics=some-card", "budget_minor": "2600.50",
		"place.hottest_c": "30", "place.room_c": "21", "place.noise_dba": "30", "place.chair_mm": "700", "wishes.volume_l": "25",
		"wishes.prefer_makers": "Calderby, Hexmoor", "wishes.avoid_makers": "Dravane", "wishes.upgrade_years": "4", "wishes.ups_min": "10",
		"bits": "8", "place.kwh_minor": "0.30", "buffer_frames": "128", "sample_hz": "48000", "width_px": "2560", "height_px": "1440", "frames_s": "60", "hours_week": "20",
	}
	answer := func(q Question) string {
		switch {
		case sample[q.Field] != "":
			return sample[q.Field]
		case q.YesNo:
			return "yes"
		case len(q.Choices) > 0:
			return q.Choices[len(q.Choices)-1]
		}
		return "12"
	}
	d := NewDraft("Everything")
	d.Say("Somebody", []string{"All of it."})
	for _, topic := range Topics() {
		d.Does(topic)
		for _, q := range topic.Questions {
			require.True(t, takes(q, answer(q), d.AnswerWork), "%s.%s", topic.Field, q.Field)
		}
	}
	for _, q := range Surroundings() {
		require.True(t, takes(q, answer(q), d.Answer), q.Field)
	}
	b, err := d.Brief()
	require.NoError(t, err)
	require.Len(t, b.Activities, len(Topics()))
	require.Equal(t, []Screen{{3840, 2160, 60, 8, 2, false, ""}, {2560, 1440, 144, 8, 1, true, ""}}, b.Screens)
	require.Equal(t, []Owned{{"graphics", "some-card"}}, b.Owned)
	require.EqualValues(t, 260_050, b.Budget.Or(0))
	require.Equal(t, []string{"Calderby", "Hexmoor"}, b.Wish.Prefer)
	for _, a := range b.Needs(workshop(t)).Assumed {
		require.Contains(t, a, "calibration", "everything was said: %s", a)
	}
	text, err := d.File()
	require.NoError(t, err)
	again, err := Read("again", text)
	require.NoError(t, err)
	require.Equal(t, b.Activities, again.Activities)
}

// takes tries an answer, then larger numbers.
func takes(q Question, text string, take func(Question, string) error) bool {
	for _, t := range []string{text, "200", "1000"} {
		if take(q, t) == nil {
			return true
		}
	}
	return false
}

// TestDraftRefuses requires that a wrong answer says what would be taken and leaves the brief as it was.
func TestDraftRefuses(t *testing.T) {
	d := NewDraft("x")
	topic := Topics()[0]
	d.Does(topic)
	before, err := d.File()
	require.NoError(t, err)
	ask := func(field string) Question {
		for _, q := range append(topic.Questions, Surroundings()...) {
			if q.Field == field {
				return q
			}
		}
		t.Fatal(field)
		return Question{}
	}
	require.ErrorContains(t, d.AnswerWork(ask("format"), "9"), "none of h264-8bit-420")
	require.ErrorContains(t, d.AnswerWork(ask("streams"), "99"), "between 1 and 16")
	require.ErrorContains(t, d.AnswerWork(ask("streams"), "a few"), "not a number")
	require.ErrorContains(t, d.AnswerWork(ask("at_once"), "perhaps"), "neither yes nor no")
	require.ErrorContains(t, d.Answer(ask("screens"), "a big one"), "not a screen")
	require.ErrorContains(t, d.Answer(ask("screens"), "10x10"), "want")
	require.ErrorContains(t, d.Answer(ask("owned"), "sofa=red"), "seat=part")
	require.ErrorContains(t, d.Answer(ask("place.noise_dba"), "900"), "between 10 and 70")
	after, err := d.File()
	require.NoError(t, err)
	require.Equal(t, strings.TrimSpace(string(before)), strings.TrimSpace(string(after)))
	require.NoError(t, d.AnswerWork(ask("format"), "2"))
	require.NoError(t, d.AnswerWork(ask("streams"), "3 streams"))
}
