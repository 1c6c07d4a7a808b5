package web

import "errors"

// MaxFileBytes is the size of the largest file the page opens. A stock list of ten thousand parts is below a
// quarter of it.
const MaxFileBytes = 64 << 20

// ErrNoFile says that the user chose no file.
var ErrNoFile = errors.New("no file chosen")
