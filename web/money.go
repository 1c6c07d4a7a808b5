package web

import "github.com/maxence-charriere/go-app/v9/pkg/app"

// money tells what the machine costs, and holds it against what can be spent.
func (d *Desk) money() app.UI {
	if d.proof == nil {
		return blank("No price yet. Money that buys nothing for this work will be hatched as loose.")
	}
	s := &d.proof.Sum
	rows := []app.UI{
		sumRow("Parts and work before tax", s.Net, false),
		sumRow("Sales tax, "+s.Rate.Text, s.Tax, false),
		sumRow("In all, "+d.proof.Currency, s.Gross, true),
	}
	if s.Budget == nil {
		return app.Div().Class("money").Body(app.Dl().Class("sum").Body(rows...), d.proof.Idle.view())
	}
	verdict, why := "snug", "Left of what can be spent: "+s.Left.Text+"."
	if s.Left.Figure < 0 {
		verdict, why = "short", "This is more than can be spent."
	}
	return app.Div().Class("money").Body(
		app.Dl().Class("sum").Body(append(rows, sumRow("Can be spent", *s.Budget, false))...),
		&Ruler{Title: "What can be spent, against what is asked", Have: s.Budget.mark(), Need: s.Gross.mark(), Margin: s.Left.Text, Verdict: verdict, Why: why},
		d.proof.Idle.view(),
	)
}

func sumRow(name string, q Quantity, strong bool) app.UI {
	class := "sum-row"
	if strong {
		class = "sum-row sum-all"
	}
	return app.Div().Class(class).Body(app.Dt().Text(name), app.Dd().Text(q.Text))
}
