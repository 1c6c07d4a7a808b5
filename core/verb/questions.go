package verb

import (
	"slipfit/core/brief"
	"slipfit/core/format"
)

// Questions is the conversation: the kinds of work with their questions, and the questions about everything else.
type Questions struct {
	format.Head
	Currency     string     `json:"currency"`
	Topics       []Topic    `json:"topics"`
	Surroundings []Question `json:"surroundings"`
}

// Topic is a kind of work with the questions that size it.
type Topic struct {
	Field     string     `json:"field"`
	Name      string     `json:"name"`
	Opens     string     `json:"opens"`
	Questions []Question `json:"questions"`
}

// Question is one question in words a customer knows. Usual is what is taken when it is not answered, High what there is
// then room for.
type Question struct {
	Field   string   `json:"field"`
	Asks    string   `json:"asks"`
	Choices []string `json:"choices,omitempty"`
	YesNo   bool     `json:"yes_no,omitempty"`
	Usual   string   `json:"usual"`
	High    string   `json:"high"`
}

// Questions lists what to ask a customer.
func (w *Bench) Questions() *Questions {
	out := &Questions{Head: head("slipfit-questions"), Currency: w.Stock.Shop.Currency, Surroundings: questionsOf(brief.Surroundings())}
	for _, t := range brief.Topics() {
		out.Topics = append(out.Topics, Topic{t.Field, t.Name, t.Opens, questionsOf(t.Questions)})
	}
	return out
}

func questionsOf(list []brief.Question) []Question {
	out := make([]Question, len(list))
	for i, q := range list {
		out[i] = Question(q)
	}
	return out
}

// Reading is a brief as it is kept: read, found sound, and printed in the form of its file.
type Reading struct {
	format.Head
	File string `json:"file"`
}

// Brief reads a brief and prints it as it is kept.
func (w *Bench) Brief(file Document) (*Reading, error) {
	said, err := brief.Read(file.Name, file.Data)
	if err != nil {
		return nil, err
	}
	return &Reading{head("slipfit-reading"), string(format.Write(said))}, nil
}
