package web

import "github.com/maxence-charriere/go-app/v9/pkg/app"

// laying lets a long list into the page piece by piece, so many a frame: the browser draws and listens in between. A
// component that embeds it shows the pieces before shown and calls more when it is mounted and when its list changes.
type laying struct {
	laid int
	busy bool
}

// shown is how many of all pieces are in the page.
func (l *laying) shown(all, slice int) int { return min(all, l.laid+slice) }

// more lets the next slice in after this frame, until all are in; then is called, where it is not nil, when they are.
func (l *laying) more(ctx app.Context, all func() int, slice int, then func(app.Context)) {
	if l.busy {
		return
	}
	if l.laid+slice >= all() {
		if then != nil {
			then(ctx)
		}
		return
	}
	l.busy = true
	next := func(ctx app.Context) {
		l.busy = false
		l.laid += slice
		l.more(ctx, all, slice, then)
	}
	ctx.Defer(func(ctx app.Context) {
		inTaskOfItsOwn(func() { ctx.Dispatch(next) })
	})
}
