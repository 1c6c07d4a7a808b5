package main

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"slipfit/core/brief"
	"slipfit/core/format"
	"slipfit/core/part"
	"slipfit/core/sheet"
)

var askCommand = command{
	name:  "ask",
	usage: "[-out FILE]",
	short: "talk a brief through, question by question, and write it down",
	long: `Asks what the customer does, in words a customer knows, and writes a brief file.
Enter alone always answers "I don't know": what is then taken is shown with the
question, and the brief allows for more. A wrong answer is asked again. Where the
answers end early the rest counts as not known. Without -out the brief is printed
and the questions go to the terminal's other channel.`,
	example: "slipfit ask -out customer.brief.json",
	setup: func(k *call) {
		k.flags.String("out", "", "write the brief to `FILE`")
	},
	run: func(k *call) int {
		if len(k.args) != 0 {
			return k.usage("takes no arguments")
		}
		t := &talk{in: bufio.NewScanner(k.in), out: k.out}
		if k.text("out") == "" {
			t.out = k.err
		}
		w, err := k.bench()
		if err != nil {
			return k.fail(err)
		}
		d := t.hold(w.Stock)
		if d.Activities() == 0 {
			return k.fail(fmt.Errorf("nothing to do was named, so there is no brief"))
		}
		b, err := d.Brief()
		if err != nil {
			return k.fail(err)
		}
		text := format.Write(b)
		t.say("")
		for _, a := range b.Needs(w.Stock).Assumed {
			t.say("Not said: " + a)
		}
		if path := k.text("out"); path != "" {
			if err := write(path, text); err != nil {
				return k.fail(err)
			}
			t.say("\nWritten to " + path + ".")
			return fine
		}
		k.printf("%s", text)
		return fine
	},
}

// talk is a conversation at a terminal.
type talk struct {
	in       *bufio.Scanner
	out      io.Writer
	currency string
	ended    bool
}

// hold goes through everything there is to ask.
func (t *talk) hold(stock *part.Stock) *brief.Draft {
	t.currency = stock.Shop.Currency
	t.say("Enter alone means: I don't know. What is taken then is shown behind the question.\n")
	title := t.line("What is the job called?", "A machine")
	if title == "" {
		title = "A machine"
	}
	d := brief.NewDraft(title, stock)
	who := t.line("Who is it for?", "not said")
	var said []string
	for {
		words := t.line("What do they say of it, in their own words? One sentence a line; Enter ends.", "")
		if words == "" {
			break
		}
		said = append(said, words)
	}
	d.Say(who, said)
	for _, topic := range brief.Topics() {
		if !t.yes(topic.Opens) {
			continue
		}
		d.Does(topic)
		for _, q := range topic.Questions {
			t.put(q, d.AnswerWork)
		}
	}
	if d.Activities() == 0 {
		return d
	}
	for _, q := range brief.Surroundings() {
		if q.Field != "screens" {
			t.put(q, d.Answer)
			continue
		}
		for _, half := range brief.Screens() {
			t.put(half, d.Answer)
		}
	}
	return d
}

// put asks a question until the answer is taken, or there is none.
func (t *talk) put(q brief.Question, take func(brief.Question, string) error) {
	asks := q.Asks
	if q.YesNo {
		asks += " (yes or no)"
	}
	for i, c := range q.Choices {
		asks += fmt.Sprintf("\n    %d  %s", i+1, c)
	}
	if how := brief.HowToWrite(q, t.currency); how != "" {
		asks += " (" + how + ")"
	}
	usual := q.Usual
	if q.High != q.Usual {
		usual += ", with room for " + q.High
	}
	for {
		answer := t.line(asks, usual)
		if answer == "" {
			return
		}
		err := take(q, answer)
		if err == nil {
			return
		}
		t.say("  Not understood: " + err.Error() + ".")
	}
}

// yes asks whether something is done; Enter alone is no.
func (t *talk) yes(asks string) bool {
	for {
		answer := t.line("\n"+asks+" (yes or no)", "no")
		if answer == "" {
			return false
		}
		if is, err := brief.YesOrNo(answer); err == nil {
			return is
		}
		t.say("  Please say yes or no.")
	}
}

// line asks one line; empty where the customer does not know or the answers have ended.
func (t *talk) line(asks, usual string) string {
	if t.ended {
		return ""
	}
	first, rest, more := strings.Cut(asks, "\n    ")
	for _, l := range sheet.Wrap(first, columns) {
		if strings.HasPrefix(first, "\n") {
			fmt.Fprintln(t.out)
			first = strings.TrimPrefix(first, "\n")
		}
		t.say(l)
	}
	if more {
		t.say("    " + rest)
	}
	if usual != "" {
		t.say("  [" + usual + "]")
	}
	fmt.Fprint(t.out, "> ")
	if !t.in.Scan() {
		t.ended = true
		t.say("")
		return ""
	}
	answer := strings.TrimSpace(t.in.Text())
	if low := strings.ToLower(answer); low == "?" || low == "i don't know" || low == "don't know" {
		return ""
	}
	return answer
}

func (t *talk) say(text string) { fmt.Fprintln(t.out, text) }
