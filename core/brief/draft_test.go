package brief

import (
	"strings"
	"testing"

	"slipfit/catalog"
	"slipfit/core/part"
	"slipfit/core/unit"

	"github.com/stretchr/testify/require"
)

// stocked is the built-in catalog.
func stocked(t *testing.T) *part.Stock {
	t.Helper()
	s, err := catalog.Embedded()
	require.NoError(t, err)
	return s
}

// TestDraftTakesEveryQuestion answers every question of every topic and of the surroundings and reads the brief back.
func TestDraftTakesEveryQuestion(t *testing.T) {
	sample := map[string]string{
		"screens": "2 of 3840x2160 at 60, 2560×1440 at 144 mine", "owned": "Calderby Lantern 30, archive=archivane-shelf-4-tb", "budget_minor": "2600.50",
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
	d := NewDraft("Everything", stocked(t))
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
	require.Equal(t, []Owned{{Seat: "graphics", Part: "calderby-lantern-30"}, {Seat: "archive", Part: "archivane-shelf-4-tb"}}, b.Owned)
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
	d := NewDraft("x", stocked(t))
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
	require.ErrorContains(t, d.Answer(ask("owned"), "sofa=red"), "names no seat")
	require.ErrorContains(t, d.Answer(ask("owned"), "a red one"), "no part of the catalog")
	require.ErrorContains(t, d.Answer(ask("owned"), "Lantern 50"), "could be 2 parts, such as graphics=calderby-lantern-50, ")
	require.ErrorContains(t, d.Answer(ask("owned"), "Archivane Shelf 4 TB"), "could be 3 parts, such as boot=archivane-shelf-4-tb, cache=")
	require.ErrorContains(t, d.Answer(ask("place.noise_dba"), "900"), "between 10 and 70")
	after, err := d.File()
	require.NoError(t, err)
	require.Equal(t, strings.TrimSpace(string(before)), strings.TrimSpace(string(after)))
	require.NoError(t, d.AnswerWork(ask("format"), "2"))
	require.NoError(t, d.AnswerWork(ask("streams"), "3 streams"))
}

// TestScreensInTwoTurns asks for the screens that are there and for those to be bought: each answer leaves the other, a second
// answer replaces the first, and not knowing either takes one that suits the work and says so.
func TestScreensInTwoTurns(t *testing.T) {
	d := NewDraft("x", stocked(t))
	d.Does(Topics()[0])
	have, buy := Screens()[0], Screens()[1]
	require.NoError(t, d.Answer(buy, "3840x2160 at 60 with 10 bits"))
	require.NoError(t, d.Answer(have, "1920x1080"))
	require.NoError(t, d.Answer(have, "2 of 2560x1440 at 75 by hdmi"))
	require.ErrorContains(t, d.Answer(have, "2560x1440 by string"), "hdmi")
	b, err := d.Brief()
	require.NoError(t, err)
	require.ElementsMatch(t, []Screen{{3840, 2160, 60, 10, 1, false, ""}, {2560, 1440, 75, 8, 2, true, "hdmi"}}, b.Screens)
	require.NotContains(t, strings.Join(b.Needs(workshop(t)).Assumed, "\n"), "screens not said")

	silent := NewDraft("x", stocked(t))
	silent.Does(Topics()[0])
	b, err = silent.Brief()
	require.NoError(t, err)
	require.Contains(t, strings.Join(b.Needs(workshop(t)).Assumed, "\n"), "screens not said: one of 3840 × 2160")
}

// TestMoneyIsAskedInWholeUnits answers with amounts that no binary fraction holds, and with such as are refused: in the units
// they were asked in.
func TestMoneyIsAskedInWholeUnits(t *testing.T) {
	stock := stocked(t)
	draft := func() *Draft {
		d := NewDraft("money", stock)
		d.Does(Topics()[0])
		return d
	}
	for typed, minor := range map[string]unit.Money{"0.29": 29, "0,3": 30, "1.13 " + stock.Shop.Currency: 113, strings.ToLower(stock.Shop.Currency) + "1.5": 150, "2.05€": 205, "0": 0} {
		d := draft()
		require.NoError(t, d.Answer(Question{Field: "place.kwh_minor"}, typed), typed)
		b, err := d.Brief()
		require.NoError(t, err)
		require.Equal(t, unit.Known(minor), b.Place.Energy, typed)
	}
	currency := stock.Shop.Currency
	for typed, refused := range map[string]string{
		"lots": `"lots" is no amount`, "0.295": `"0.295" is no amount`, "-5": `"-5" is no amount`, "2k": `"2k" is no amount`, "3 pints": `"3 pints" is no amount`,
		"12.50": "got 12.50, want an amount in " + currency + " between 0 and 10",
	} {
		require.EqualError(t, draft().Answer(Question{Field: "place.kwh_minor"}, typed), refused)
	}
	require.EqualError(t, draft().Answer(Question{Field: "budget_minor"}, "70"), "got 70, want an amount in "+currency+" between 100 and 1000000")
	require.Equal(t, "an amount in "+currency, HowToWrite(Question{Field: "budget_minor"}, currency))
}
