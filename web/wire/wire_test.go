package wire

import (
	"encoding/json"
	"errors"
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
)

type fieldError struct{ Path, Want string }

func (e fieldError) Error() string { return e.Path + ": want " + e.Want }

func (e fieldError) MarshalJSON() ([]byte, error) {
	return json.Marshal(map[string]string{"message": e.Error(), "path": e.Path, "expected": e.Want})
}

func TestServe(t *testing.T) {
	answer := func(verb string, args []byte, progress func(Progress)) ([]byte, error) {
		switch verb {
		case "echo":
			return args, nil
		case "slow":
			progress(Progress{Done: 0.5, Note: "half"})
			return []byte(`1`), nil
		case "refuse":
			return nil, fmt.Errorf("plan: %w", fieldError{Path: "brief.budget", Want: "a sum above 0"})
		case "plain":
			return nil, errors.New("no")
		case "break":
			panic("out of step")
		}
		return []byte("not JSON"), nil
	}
	cases := []struct {
		name, request string
		want          []string
	}{
		{"result", `{"id":3,"verb":"echo","args":{"a":[1,2]}}`, []string{`{"id":3,"ok":true}` + "\n" + `{"a":[1,2]}`}},
		{"progress comes before the result", `{"id":4,"verb":"slow"}`,
			[]string{`{"id":4,"progress":{"done":0.5,"note":"half"}}`, `{"id":4,"ok":true}` + "\n" + `1`}},
		{"an error keeps its fields, also when wrapped", `{"id":5,"verb":"refuse"}`,
			[]string{`{"id":5,"ok":false,"error":{"expected":"a sum above 0","message":"brief.budget: want a sum above 0","path":"brief.budget"}}`}},
		{"an error without fields has its message", `{"id":6,"verb":"plain"}`, []string{`{"id":6,"ok":false,"error":{"message":"no"}}`}},
		{"a panic is an answer", `{"id":7,"verb":"break"}`,
			[]string{`{"id":7,"ok":false,"error":{"message":"internal fault in verb \"break\": out of step"}}`}},
		{"a result that is not JSON is a fault", `{"id":8,"verb":"other"}`,
			[]string{`{"id":8,"ok":false,"error":{"message":"internal fault: verb \"other\" returned no JSON"}}`}},
		{"a request without an id", `{"verb":"echo"}`, []string{`{"gone":"request id is 0, want above 0"}`}},
		{"no request at all", `{"id":`, []string{`{"gone":"request is not JSON: unexpected end of JSON input"}`}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			var got []string
			Serve(c.request, answer, func(m string) { got = append(got, m) })
			require.Equal(t, c.want, got)
			for _, m := range got {
				_, err := Read(m)
				require.NoError(t, err)
			}
		})
	}
}

func TestReadKeepsErrorDetail(t *testing.T) {
	m, err := Read(`{"id":5,"ok":false,"error":{"message":"no such part","file":"stock.json"}}`)
	require.NoError(t, err)
	require.EqualError(t, m.Error, "no such part")
	require.JSONEq(t, `{"message":"no such part","file":"stock.json"}`, string(m.Error.Detail))
	_, err = Read(`[`)
	require.ErrorContains(t, err, "message from the worker")
}

func FuzzServe(f *testing.F) {
	f.Add(`{"id":1,"verb":"echo","args":{}}`)
	f.Add(`{"id":1,"verb":"echo","args":null}`)
	f.Add(`{"id":-1}`)
	f.Fuzz(func(t *testing.T, request string) {
		posted := 0
		Serve(request, func(_ string, args []byte, _ func(Progress)) ([]byte, error) { return args, nil },
			func(m string) {
				posted++
				_, err := Read(m)
				require.NoError(t, err)
			})
		require.Equal(t, 1, posted)
	})
}
