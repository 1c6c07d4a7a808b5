package rule

import (
	"fmt"
	"strings"
)

// plural writes a count with its word: "no header", "1 header", "3 headers".
func plural[N ~int | ~int64](n N, word string) string {
	switch n {
	case 0:
		return "no " + word
	case 1:
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}

// agree is the form of a verb that a count asks for: 1 is, others are.
func agree[N ~int | ~int64](n N, one, more string) string {
	if n == 1 {
		return one
	}
	return more
}

// remain says how many of several: "none is", "1 is", "3 are".
func remain[N ~int | ~int64](n N) string {
	if n <= 0 {
		return "none is"
	}
	return fmt.Sprintf("%d %s", n, agree(n, "is", "are"))
}

// words are alternatives, as a sentence lists them: "atx, micro-atx or mini-itx".
type words[S ~string] []S

func (w words[S]) String() string {
	var b strings.Builder
	for i, word := range w {
		switch {
		case i > 0 && i == len(w)-1:
			b.WriteString(" or ")
		case i > 0:
			b.WriteString(", ")
		}
		b.WriteString(string(word))
	}
	return b.String()
}

// Text is the rule's Doc as it is read: a line a definition or a paragraph, lines that go on joined to those before.
func (r *Rule) Text() string { return strings.ReplaceAll(r.Doc, "\n\t", " ") }
