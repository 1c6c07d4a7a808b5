package web

// NextTask waits for another task of the page's thread, so that the browser draws and listens before what follows. It must not
// be called in a handler of the browser's events: no other event comes in before that returns.
func NextTask() {
	begun := make(chan struct{})
	inTaskOfItsOwn(func() { close(begun) })
	<-begun
}
