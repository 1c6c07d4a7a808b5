//go:build !wasm

package browsertest

import (
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// pdfText is the lettering of a PDF, as pdftotext (poppler-utils) reads it.
func pdfText(t *testing.T, pdf []byte) string {
	t.Helper()
	cmd := exec.Command("pdftotext", "-layout", "-", "-")
	cmd.Stdin = strings.NewReader(string(pdf))
	out, err := cmd.Output()
	require.NoError(t, err, "pdftotext reads what was printed")
	return string(out)
}
