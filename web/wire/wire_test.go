package wire

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"testing"
	"testing/synctest"
	"time"

	"github.com/stretchr/testify/require"
)

type fieldError struct{ Path, Want string }

func (e fieldError) Error() string { return e.Path + ": want " + e.Want }

func (e fieldError) MarshalJSON() ([]byte, error) {
	return json.Marshal(map[string]string{"message": e.Error(), "path": e.Path, "expected": e.Want})
}

func plainly(int) context.Context { return context.Background() }

func TestStops(t *testing.T) {
	require.Equal(t, 7, stops(Encode(Request{ID: 7, Stop: true})))
	require.Zero(t, stops(Encode(Request{ID: 7, Verb: "plan", Args: json.RawMessage(`{"stop":true}`)})))
	require.Zero(t, stops(`{"id":`))
}

// TestHearing looks at a context for a second, every millisecond: messages are let in every 50 ms, and the word to stop is heard
// at the next of these.
func TestHearing(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		from, stopped, asked := time.Now(), false, false
		var listened []time.Duration
		h := hearing{context.Background(), func() {
			listened = append(listened, time.Since(from))
			stopped = asked
		}, &from, func() bool { return stopped }}
		heard := time.Now()
		h.heard = &heard
		for range 110 {
			time.Sleep(time.Millisecond)
			select {
			case <-h.Done():
				t.Fatal("nobody asked to stop")
			default:
			}
		}
		require.Equal(t, []time.Duration{50 * time.Millisecond, 100 * time.Millisecond}, listened)
		asked = true
		for h.Err() == nil {
			time.Sleep(time.Millisecond)
		}
		require.Equal(t, 150*time.Millisecond, time.Since(from))
		require.ErrorIs(t, context.Cause(h), context.Canceled)
		<-h.Done()
	})
}

func TestServe(t *testing.T) {
	answer := func(_ context.Context, verb string, args []byte, progress func(Progress)) ([]byte, error) {
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
			Serve(c.request, answer, func(m string) { got = append(got, m) }, plainly)
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
		Serve(request, func(_ context.Context, _ string, args []byte, _ func(Progress)) ([]byte, error) { return args, nil },
			func(m string) {
				posted++
				_, err := Read(m)
				require.NoError(t, err)
			}, plainly)
		require.Equal(t, 1, posted)
	})
}
