package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"syscall"
	"unsafe"
)

// pseudo is a terminal with nobody at it: a program writes to inner, the test reads at outer.
type pseudo struct {
	outer, inner *os.File
	read         strings.Builder
}

// openTerminal opens a pseudo-terminal of Linux: pts(4).
func openTerminal() (*pseudo, error) {
	outer, err := os.OpenFile("/dev/ptmx", os.O_RDWR|syscall.O_NOCTTY, 0)
	if err != nil {
		return nil, err
	}
	var unlocked, number int32
	if err := errors.Join(control(outer, syscall.TIOCSPTLCK, &unlocked), control(outer, syscall.TIOCGPTN, &number)); err != nil {
		return nil, err
	}
	inner, err := os.OpenFile(fmt.Sprintf("/dev/pts/%d", number), os.O_RDWR|syscall.O_NOCTTY, 0)
	return &pseudo{outer: outer, inner: inner}, err
}

func control(f *os.File, request uintptr, value *int32) error {
	raw, err := f.SyscallConn()
	if err != nil {
		return err
	}
	var refused syscall.Errno
	err = raw.Control(func(fd uintptr) {
		_, _, refused = syscall.Syscall(syscall.SYS_IOCTL, fd, request, uintptr(unsafe.Pointer(value)))
	})
	if err == nil && refused != 0 {
		err = refused
	}
	return err
}

// readTo reads on until text has come; what came before it is forgotten.
func (p *pseudo) readTo(text string) error {
	part := make([]byte, 4096)
	for {
		if _, after, ok := strings.Cut(p.read.String(), text); ok {
			p.read.Reset()
			p.read.WriteString(after)
			return nil
		}
		n, err := p.outer.Read(part)
		p.read.Write(part[:n])
		if err == io.EOF || errors.Is(err, syscall.EIO) { // EIO: nobody has the inner end open any more
			if strings.Contains(p.read.String(), text) {
				continue
			}
			return fmt.Errorf("%q has not come: %q", text, p.read.String())
		}
		if err != nil {
			return err
		}
	}
}
