//go:build !wasm

package web

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestTidyTags(t *testing.T) {
	cases := []struct{ name, in, want string }{
		{"attributes in order", `<p id="b" class="a">`, `<p class="a" id="b">`},
		{"Go quoting becomes HTML quoting", `<p title="say \"a & b\"">`, `<p title="say &#34;a &amp; b&#34;">`},
		{"bare ARIA means true", `<p aria-hidden hidden>`, `<p aria-hidden="true" hidden="">`},
		{"the viewport may be zoomed", `<meta name="viewport" content="width=device-width, user-scalable=0">`,
			`<meta content="width=device-width, initial-scale=1, viewport-fit=cover" name="viewport">`},
		{"the address of the generating machine goes", `<meta property="og:url" content="http://127.0.0.1:1/">x`, `x`},
		{"the loader's picture says nothing", `<img id="app-wasm-loader-icon" src="a.png">`, `<img alt="" id="app-wasm-loader-icon" src="a.png">`},
		{"what closes itself stays closed", `<path d="M0 0"/>`, `<path d="M0 0"/>`},
		{"text stays as it is", `a < b </p>`, `a < b </p>`},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			const head = `<meta charset="UTF-8">`
			got, err := tidy(head + c.in)
			require.NoError(t, err)
			require.Equal(t, head+"\n<meta content=\""+policy+"\" http-equiv=\"Content-Security-Policy\">"+c.want, got)
		})
	}
}

func TestTidyRefuses(t *testing.T) {
	for in, want := range map[string]string{
		`<p>`:            "no <meta charset",
		`<p class=a>`:    "attribute class is not quoted",
		`<p class="a`:    "attribute class is not quoted",
		`<p class`:       "no end of tag",
		`<p`:             "no end of tag",
		`<p ="a">`:       "no attribute name",
		`<p class="\q">`: "attribute class is not quoted",
	} {
		_, err := tidy(in)
		require.ErrorContains(t, err, want, in)
	}
}

func FuzzTidy(f *testing.F) {
	f.Add(`<meta charset="UTF-8"><p a="b" c>x</p>`)
	f.Fuzz(func(t *testing.T, in string) {
		out, err := tidy(in)
		if err == nil {
			require.Contains(t, out, policy)
		}
	})
}
