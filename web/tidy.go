//go:build !wasm

package web

import (
	"fmt"
	"html"
	"slices"
	"strconv"
	"strings"
)

// tidy sets right what go-app's HTML leaves amiss: attributes in random order, values in Go's quoting, a
// viewport that forbids zooming, the address of the machine it was generated on, a loader picture without a
// text, and true written as an empty value, which for ARIA means nothing. It also puts the policy first, so
// that it holds for everything after it.
func tidy(document string) (string, error) {
	const charset = `<meta charset="UTF-8">`
	var b strings.Builder
	rest := document
	for {
		i := strings.IndexByte(rest, '<')
		if i < 0 || i+1 == len(rest) {
			b.WriteString(rest)
			break
		}
		b.WriteString(rest[:i])
		rest = rest[i:]
		if c := rest[1]; c < 'a' || c > 'z' {
			b.WriteByte('<')
			rest = rest[1:]
			continue
		}
		t, after, err := readTag(rest)
		if err != nil {
			return "", err
		}
		b.WriteString(t.correct())
		rest = after
	}
	out := b.String()
	if strings.Count(out, charset) != 1 {
		return "", fmt.Errorf("page: generated HTML holds no %s to put the policy after", charset)
	}
	return strings.Replace(out, charset, charset+"\n<meta content=\""+policy+"\" http-equiv=\"Content-Security-Policy\">", 1), nil
}

// tag is one opening tag. A value is unescaped; an attribute without one is bare.
type tag struct {
	name       string
	attributes []attribute
	closes     bool // ends in "/>"
}

type attribute struct {
	name, value string
	bare        bool
}

func (t *tag) value(name string) string {
	for _, a := range t.attributes {
		if a.name == name {
			return a.value
		}
	}
	return ""
}

// correct returns the tag as it is to be shipped; nothing, if it is not to be.
func (t *tag) correct() string {
	switch {
	case t.name == "meta" && t.value("property") == "og:url",
		t.name == "meta" && t.value("property") == "og:image",
		t.name == "meta" && t.value("content") == "" && t.value("name") != "":
		return ""
	case t.name == "meta" && t.value("name") == "viewport":
		t.attributes = []attribute{{name: "content", value: "width=device-width, initial-scale=1, viewport-fit=cover"},
			{name: "name", value: "viewport"}}
	case t.name == "img" && t.value("id") == "app-wasm-loader-icon":
		t.attributes = append(t.attributes, attribute{name: "alt", bare: true})
	}
	slices.SortFunc(t.attributes, func(a, b attribute) int { return strings.Compare(a.name, b.name) })
	var b strings.Builder
	b.WriteString("<" + t.name)
	for _, a := range t.attributes {
		switch {
		case a.bare && (strings.HasPrefix(a.name, "aria-") || strings.HasPrefix(a.name, "data-") || a.name == "focusable"):
			b.WriteString(" " + a.name + `="true"`)
		case a.bare:
			b.WriteString(" " + a.name + `=""`)
		default:
			b.WriteString(" " + a.name + `="` + html.EscapeString(a.value) + `"`)
		}
	}
	if t.closes {
		b.WriteByte('/')
	}
	b.WriteByte('>')
	return b.String()
}

// readTag reads the opening tag that s begins with, and returns what follows it.
func readTag(s string) (t tag, rest string, err error) {
	fail := func(why string) (tag, string, error) {
		return tag{}, "", fmt.Errorf("page: generated HTML: %s in %.80q", why, s)
	}
	end := strings.IndexAny(s, " \n\t/>")
	if end < 0 {
		return fail("no end of tag")
	}
	t.name, rest = s[1:end], s[end:]
	for {
		rest = strings.TrimLeft(rest, " \n\t")
		switch {
		case rest == "":
			return fail("no end of tag")
		case rest[0] == '>':
			return t, rest[1:], nil
		case strings.HasPrefix(rest, "/>"):
			t.closes = true
			return t, rest[2:], nil
		}
		end := strings.IndexAny(rest, "= \n\t>/")
		if end < 0 {
			return fail("no end of tag")
		}
		if end == 0 {
			return fail("no attribute name")
		}
		a := attribute{name: rest[:end]}
		rest = rest[end:]
		if rest[0] != '=' {
			a.bare = true
			t.attributes = append(t.attributes, a)
			continue
		}
		quoted, err := strconv.QuotedPrefix(rest[1:])
		if err != nil {
			return fail("attribute " + a.name + " is not quoted")
		}
		a.value, err = strconv.Unquote(quoted)
		if err != nil {
			return fail("attribute " + a.name + ": " + err.Error())
		}
		a.value = html.UnescapeString(a.value)
		rest = rest[1+len(quoted):]
		t.attributes = append(t.attributes, a)
	}
}
