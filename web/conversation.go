package web

import (
	"fmt"
	"slices"
	"strings"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
)

// Conversation is what the customer said: the brief, question by question. The questions and the usual answers are the
// core's.
type Conversation struct {
	app.Compo

	Desk *Desk
	Turn int // counts what was heard, so that a change of the brief is drawn

	topic string // kind of work chosen to be added
	has   string // part chosen as one they have, with its seat
}

// Render draws the conversation.
func (c *Conversation) Render() app.UI {
	d := c.Desk
	if d.asked == nil {
		return blank("Ask what they do in a working day, how large the work is, where the machine will stand, and what it may cost.")
	}
	return app.Div().Class("conversation").Body(
		c.begin(),
		d.heldBy("title", "What is the job called?", "", d.words("title")),
		d.heldBy("who", "Who is it for?", "", d.words("who")),
		d.heldBy("said", "What did they say? A line for each sentence, in their words.", "", d.lines("said", 3)),
		c.work(),
		c.around("The place", "place.", "screens", "network"),
		c.around("What they would like", "wishes.", "copies", "error_correcting"),
		c.owned(),
		c.budget(),
	)
}

// begin offers the examples while nothing has been said.
func (c *Conversation) begin() app.UI {
	d := c.Desk
	if len(d.examples) == 0 || !d.blank() {
		return app.Div().Class("begin").Hidden(true)
	}
	return app.Div().Class("begin").Body(
		app.Label().For("example").Text("Begin with an example, or answer below."),
		app.Select().ID("example").Body(
			app.Option().Value("").Text("Choose an example"),
			app.Range(d.examples).Slice(func(i int) app.UI {
				return app.Option().Value(d.examples[i].Name).Text(d.examples[i].Title + ": " + d.examples[i].Who)
			}),
		).OnChange(c.onExample),
	)
}

func (c *Conversation) onExample(ctx app.Context, _ app.Event) {
	c.Desk.startFrom(ctx.JSSrc().Get("value").String())
}

// work lists the kinds of work, each with its questions.
func (c *Conversation) work() app.UI {
	d := c.Desk
	count := d.brief.Count("activities")
	return app.Div().Class("work").Body(
		app.H3().Text("What they do"),
		app.If(count == 0, blank("Nothing yet. Add a kind of work; no answer in it is compulsory.")),
		app.Range(make([]struct{}, count)).Slice(func(i int) app.UI { return c.activity(i) }),
		app.Div().Class("add").Body(
			app.Label().For("topic").Text("What else do they do?"),
			app.Select().ID("topic").Body(
				app.Option().Value("").Text("Choose a kind of work").Selected(c.topic == ""),
				app.Range(d.asked.Topics).Slice(func(i int) app.UI {
					t := d.asked.Topics[i]
					return app.Option().Value(t.Field).Text(t.Opens).Selected(c.topic == t.Field)
				}),
			).OnChange(c.onTopic),
			app.Button().ID("add-work").Type("button").Text("Add it").Disabled(c.topic == "").OnClick(c.onAdd),
		),
		c.fault("activities"),
	)
}

// fault says what is wrong with a list as a whole.
func (c *Conversation) fault(path string) app.UI {
	fault := c.Desk.fault(path)
	return app.P().Class("fault").Hidden(fault == "").Text(fault)
}

func (c *Conversation) onTopic(ctx app.Context, _ app.Event) {
	c.topic = ctx.JSSrc().Get("value").String()
}

func (c *Conversation) onAdd(ctx app.Context, _ app.Event) {
	topic, d := c.topic, c.Desk
	c.topic = ""
	d.edit(func() { d.brief.Add("activities", map[string]any{topic: map[string]any{}}) })
	at := d.brief.Count("activities") - 1
	ctx.Defer(func(app.Context) { openFold(fmt.Sprintf("activity-%d", at)) })
}

// activity draws one kind of work as a fold-out.
func (c *Conversation) activity(at int) app.UI {
	d := c.Desk
	path := fmt.Sprintf("activities[%d]", at)
	t := d.brief.topicOf(at, d.asked.Topics)
	if t == nil {
		return app.P().Class("fault").Text(fmt.Sprintf("The brief’s %s is no kind of work this page knows.", path))
	}
	frame := func() app.HTMLDetails {
		return app.Details().ID(fmt.Sprintf("activity-%d", at)).DataSet("topic", t.Field)
	}
	return fold(frame, t.Name, c.gist(path, t), func() []app.UI {
		return []app.UI{app.Div().Class("questions").Body(
			d.heldBy(path+".said", "What did they say of it?", "", d.words(path+".said")),
			app.Range(t.Questions).Slice(func(i int) app.UI {
				q := t.Questions[i]
				return d.question(path+"."+q.path(t), q)
			}),
			app.Button().Type("button").Text("Take this work out").OnClick(c.onRemove("activities", at), path),
		)}
	})
}

// gist is what was said of a kind of work, in short, or that something of it cannot be used.
func (c *Conversation) gist(path string, t *Topic) string {
	if n := c.Desk.faultsIn(path); n > 0 {
		return unusable(n)
	}
	if said := c.Desk.brief.Text(path + ".said"); said != "" {
		return "“" + said + "”"
	}
	answered := 0
	for _, q := range t.Questions {
		if c.Desk.brief.Get(path+"."+q.path(t)) != nil {
			answered++
		}
	}
	return fmt.Sprintf("%d of %d answered", answered, len(t.Questions))
}

func (c *Conversation) onRemove(list string, at int) app.EventHandler {
	return func(app.Context, app.Event) {
		d := c.Desk
		d.edit(func() { d.brief.Remove(list, at) })
	}
}

// around draws the questions about everything else: those whose field begins with the prefix, or is one of the names.
func (c *Conversation) around(title, prefix string, names ...string) app.UI {
	d := c.Desk
	var mine []Question
	answered, faulty := 0, 0
	for _, q := range d.asked.Surroundings {
		if !strings.HasPrefix(q.Field, prefix) && !slices.Contains(names, q.Field) {
			continue
		}
		mine = append(mine, q)
		faulty += d.faultsIn(q.Field)
		if d.brief.Get(q.Field) != nil {
			answered++
		}
	}
	frame := func() app.HTMLDetails { return app.Details().ID("around-" + strings.TrimSuffix(prefix, ".")) }
	note := fmt.Sprintf("%d of %d answered", answered, len(mine))
	if faulty > 0 {
		note = unusable(faulty)
	}
	return fold(frame, title, note, func() []app.UI {
		return []app.UI{app.Div().Class("questions").Body(
			app.Range(mine).Slice(func(i int) app.UI { return c.surrounding(mine[i]) }))}
	})
}

// surrounding draws one question about everything else.
func (c *Conversation) surrounding(q Question) app.UI {
	switch q.Field {
	case "screens":
		return c.screens(q)
	case "wishes.prefer_makers", "wishes.avoid_makers":
		return c.Desk.heldBy(q.Field, q.Asks+" Part several by commas.", "", c.Desk.list(q.Field))
	}
	return c.Desk.question(q.Field, q)
}

// budget asks for what can be spent.
func (c *Conversation) budget() app.UI {
	d := c.Desk
	for _, q := range d.asked.Surroundings {
		if q.Field == "budget_minor" {
			hint := ""
			if d.brief.Get(q.Field) == nil {
				hint = "Not said: no limit is taken."
			}
			return d.amount(q.Field, q, hint)
		}
	}
	return app.Div()
}
