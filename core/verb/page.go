package verb

import (
	"context"
	"encoding/json"
	"fmt"
)

// Ask is what the page asks of a verb: files as their JSON stands, and what the verb needs beside them.
type Ask struct {
	Build json.RawMessage `json:"build,omitempty"`
	Brief json.RawMessage `json:"brief,omitempty"`
	For   string          `json:"for,omitempty"`  // what a plan seeks
	Keep  []string        `json:"keep,omitempty"` // seat=part
	Seat  string          `json:"seat,omitempty"`
	Rule  string          `json:"rule,omitempty"`
	Do    Change          `json:"do,omitzero"` // what to do otherwise
	Stamp Stamp           `json:"stamp,omitzero"`
}

// Do answers one verb for the page, as JSON. Progress, which may be nil, is told what a long answer has come to.
func (w *Bench) Do(ctx context.Context, name string, args []byte, progress Progress) ([]byte, error) {
	var a Ask
	if len(args) > 0 {
		if err := json.Unmarshal(args, &a); err != nil {
			return nil, fmt.Errorf("arguments of %s: %w", name, err)
		}
	}
	answer, err := w.answer(ctx, name, &a, progress)
	if err != nil {
		return nil, err
	}
	return JSON(answer), nil
}

func (w *Bench) answer(ctx context.Context, name string, a *Ask, progress Progress) (any, error) {
	file := Document{"build", a.Build}
	asked := Document{"brief", a.Brief}
	var maybe *Document
	if len(a.Brief) > 0 {
		maybe = &asked
	}
	switch name {
	case "questions":
		return w.Questions(), nil
	case "brief":
		return w.Brief(asked)
	case "needs":
		return w.Needs(asked)
	case "plan":
		return w.Plan(ctx, asked, PlanAsk{For: a.For, Keep: a.Keep}, progress)
	case "frontier":
		return w.Frontier(ctx, asked, a.Keep, progress)
	case "why":
		return w.Why(ctx, asked, a.Keep, progress)
	case "choices":
		return w.Choices(ctx, asked, a.Seat, a.Keep, progress)
	case "prove":
		return w.Prove(ctx, file, maybe)
	case "outcome":
		return w.Outcome(file, asked)
	case "balance":
		return w.Balance(ctx, file, asked, progress)
	case "steps":
		return w.Steps(ctx, file, asked, progress)
	case "equals":
		return w.Equals(ctx, file, maybe, a.Seat, progress)
	case "try":
		return w.Try(file, maybe, a.Seat)
	case "ways":
		return w.Ways(file, maybe, a.Seat)
	case "change":
		return w.Change(ctx, file, maybe, a.Do)
	case "predict":
		return w.Predict(file, maybe)
	case "draw":
		return w.Draw(file, maybe)
	case "quote":
		return w.Sheet("quote", file, maybe, a.Stamp)
	case "forecast":
		return w.Sheet("forecast", file, maybe, a.Stamp)
	case "rules":
		return w.Rules(a.Rule)
	case "shop":
		return w.StockCheck(), nil
	case "shelf":
		return w.Shelf(), nil
	}
	return nil, fmt.Errorf("no verb %q", name)
}
