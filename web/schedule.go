package web

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// Schedule is the schedule of margins: how many of each verdict, then what does not hold, what is tightest, and every group
// to unfold.
type Schedule struct {
	app.Compo

	Desk  *Desk
	Proof *Proof
	Rules int // texts of rules at hand, so that one that arrives is drawn

	Prediction *Prediction

	opened map[string]bool    // groups and margins unfolded
	inside map[string]*laying // how far the margins of a group are in the page
}

// marginsSlice is how many margins of an unfolded group come in one frame.
const marginsSlice = 10

// groups of rules, in the order they are told, each with what it is about.
var groups = [...]struct{ name, about string }{
	{"fit", "does it go in"},
	{"mate", "does it connect"},
	{"feed", "is it fed"},
	{"cool", "does it stay cool and quiet"},
	{"serve", "does it do the work"},
	{"money", "what it costs"},
	{"care", "what to mind"},
}

// tightest is how many margins stand as rulers above the groups.
const tightest = 6

// OnInit begins with everything folded.
func (s *Schedule) OnInit() { s.opened, s.inside = map[string]bool{}, map[string]*laying{} }

// Render draws the schedule.
func (s *Schedule) Render() app.UI {
	if s.Proof == nil {
		return app.Div().Body(
			blankRuler(),
			blank("No margins yet. Each check will stand here as a ruler, tightest first: what the build has against what the work needs, on one scale."),
		)
	}
	var failing, tight, advice []*Margin
	others := map[string][]*Margin{}
	for i := range s.Proof.Margins {
		m := &s.Proof.Margins[i]
		switch {
		case m.fails():
			failing = append(failing, m)
		case m.Advice:
			if m.Diff.Figure < 0 {
				advice = append(advice, m)
			} else {
				others[m.Group] = append(others[m.Group], m)
			}
		default:
			if len(tight) < tightest && m.Have.measured() && m.Have.Kind != "number" && m.Group != "money" {
				tight = append(tight, m)
			}
			others[m.Group] = append(others[m.Group], m)
		}
	}
	return app.Div().Class("schedule").Body(
		s.counts(),
		app.If(len(failing) > 0, app.Div().Class("failing").Body(
			app.H3().Text("Does not hold"),
			app.Range(failing).Slice(func(i int) app.UI { return s.margin(failing[i], true) }))),
		app.Div().Class("tightest").Body(
			app.H3().Text("Tightest of those that hold"),
			app.Range(tight).Slice(func(i int) app.UI { return s.margin(tight[i], true) })),
		foretold(s.Desk, s.Prediction),
		app.Div().Class("groups").Body(
			app.H3().Text("All that hold"),
			s.group("advice", "advice and cautions", advice),
			app.Range(groups[:]).Slice(func(i int) app.UI { return s.group(groups[i].name, groups[i].about, others[groups[i].name]) }),
		),
	)
}

// counts tells the verdicts in words, each with its fill.
func (s *Schedule) counts() app.UI {
	return app.P().Class("counts").Body(
		app.Span().Text(fmt.Sprintf("%d margins:", len(s.Proof.Margins))),
		app.Range(verdicts[:]).Slice(func(i int) app.UI {
			word := verdicts[i].word
			return app.Span().Class("count").DataSet("verdict", word).Body(swatch(word), app.Span().Text(fmt.Sprintf("%d %s", s.Proof.Counts[word], word)))
		}),
	)
}

// group is the margins of one group, folded until it is opened.
func (s *Schedule) group(name, about string, margins []*Margin) app.UI {
	if len(margins) == 0 {
		return app.Div().Hidden(true)
	}
	body := []app.UI{}
	laid := true
	if l := s.inside[name]; s.opened[name] && l != nil {
		n := l.shown(len(margins), marginsSlice)
		laid = n == len(margins)
		for _, m := range margins[:n] {
			body = append(body, s.margin(m, false))
		}
	}
	return app.Details().Class("fold").ID("group-"+name).DataSet("group", name).DataSet("laid", strconv.FormatBool(laid)).Body(
		app.Summary().Body(app.Span().Class("fold-name").Text(name), app.Span().Class("fold-note").Text(fmt.Sprintf("%s: %d", about, len(margins)))),
		app.Div().Class("margins").Body(body...),
	).OnToggle(s.onToggle(name), name)
}

// margin is one margin, as a ruler where it is drawn, with its rule to unfold.
func (s *Schedule) margin(m *Margin, drawn bool) app.UI {
	key := m.key()
	if !drawn {
		key = "in " + key
	}
	open := s.opened[key]
	inside := []app.UI{}
	if open {
		inside = s.unfold(m, drawn)
	}
	line := app.Summary().Body(
		app.Span().Class("margin-name").Text(m.name()),
		app.Span().Class("margin-diff").Text(m.diff()),
		app.Span().Class("ruler-verdict").Body(swatch(m.Verdict), app.Span().Text(m.word())),
	)
	return app.Div().Class("margin").DataSet("rule", m.Rule).DataSet("subject", m.Subject).DataSet("verdict", m.Verdict).Body(
		app.If(drawn, m.ruler()),
		app.Details().Class("unfold").DataSet("drawn", fmt.Sprint(drawn)).Body(append([]app.UI{
			app.If(drawn, app.Summary().Text("why, and by which rule")).Else(line)}, inside...)...,
		).OnToggle(s.onMargin(key, m.Rule), key),
	)
}

// unfold is what a margin unfolds to: its sentence and figures where they do not stand above, and the rule.
func (s *Schedule) unfold(m *Margin, drawn bool) []app.UI {
	var all []app.UI
	if !drawn {
		all = append(all, m.ruler())
	}
	if len(m.Missing) > 0 {
		all = append(all, app.P().Text("Missing: "+strings.Join(m.Missing, ", ")+"."))
	}
	r := s.Desk.rules[m.Rule]
	if r == nil {
		return append(all, app.P().Class("hint").Text("The rule is being fetched."))
	}
	return append(all,
		app.P().Class("rule-doc").Text(r.Doc),
		app.P().Class("hint").Text("Rule "+r.ID+", "+r.Group+". Source: "+r.Source+"."))
}

func (s *Schedule) onToggle(name string) app.EventHandler {
	return func(ctx app.Context, _ app.Event) {
		open := ctx.JSSrc().Get("open").Bool()
		if open && s.inside[name] == nil {
			s.inside[name] = &laying{}
			s.inside[name].more(ctx, s.count, marginsSlice, nil)
		}
		s.opened[name] = open
	}
}

// count is as long as any group can be.
func (s *Schedule) count() int {
	if s.Proof == nil {
		return 0
	}
	return len(s.Proof.Margins)
}

func (s *Schedule) onMargin(key, rule string) app.EventHandler {
	return func(ctx app.Context, _ app.Event) {
		s.opened[key] = ctx.JSSrc().Get("open").Bool()
		if s.opened[key] {
			s.Desk.explain(rule)
		}
	}
}

// ruler draws the margin; one that is a yes or a no is told in words.
func (m *Margin) ruler() app.UI {
	if m.Have.measured() {
		r := &Ruler{Title: m.name(), Have: m.Have.mark(), Need: m.Need.mark(), Margin: m.Diff.Text, Verdict: m.Verdict, Why: sentence(m.Why)}
		if m.Band != nil && m.Band.Low.Text != m.Band.High.Text {
			r.Low, r.High = m.Band.Low.mark(), m.Band.High.mark()
		}
		return r
	}
	return app.Div().Class("ruler").DataSet("verdict", m.Verdict).Body(
		app.P().Class("ruler-title").Body(
			app.Span().Text(m.name()),
			app.Span().Class("ruler-verdict").Body(swatch(m.Verdict), app.Span().Text(m.Verdict)),
		),
		app.P().Class("ruler-figures").Body(figure("have", m.Have.Text), figure("need", m.Need.Text)),
		app.P().Class("ruler-why").Text(sentence(m.Why)),
	)
}

func sentence(why string) string {
	if why == "" {
		return ""
	}
	return why + "."
}

// diff is the margin as a person reads it: a yes or no has none.
func (m *Margin) diff() string {
	if m.Have.Kind == "yes" {
		return m.Have.Text
	}
	return m.Diff.Text
}

// word is the verdict, or that it is advice.
func (m *Margin) word() string {
	if m.Advice && m.Diff.Figure < 0 {
		return "advice"
	}
	return m.Verdict
}
