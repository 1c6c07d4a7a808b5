// Package wire is what the page and its worker say to each other. Every message is one line of JSON; the result of an answer
// follows it as a text of its own, which the page reads when it has the time.
//
// Page to worker:
//
//	{"id":7,"verb":"plan","args":{...}}
//	{"id":7,"stop":true}
//
// Worker to page: first {"ready":true}, once; then for each request any number of
//
//	{"id":7,"progress":{"done":0.4,"note":"..."}}
//
// and exactly one of
//
//	{"id":7,"ok":true} and, after a line feed, the result as JSON
//	{"id":7,"ok":false,"error":{"message":"...", ...}}
//
// A request that is to stop is answered with what is found so far; {"id":7,"stopping":true} says that the worker has heard.
// A worker that ends sends {"gone":"why"}. One that does not hear the page ends, and starts another.
package wire

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"strings"
)

// Request asks the worker for one verb, or to stop one. ID is the caller's, above zero, and is returned in every answer.
type Request struct {
	ID   int             `json:"id"`
	Verb string          `json:"verb,omitempty"`
	Args json.RawMessage `json:"args,omitempty"`
	Stop bool            `json:"stop,omitempty"` // the request with this ID is to end
}

// stops is the ID of the request that a message is to stop, nought where it is another message.
func stops(message string) int {
	var r Request
	if json.Unmarshal([]byte(message), &r) != nil || !r.Stop {
		return 0
	}
	return r.ID
}

// Progress tells how far a request has come. Done is a share, 0 to 1.
type Progress struct {
	Done float64 `json:"done"`
	Note string  `json:"note,omitempty"`
}

// Message is what a worker sends: readiness, its end, progress, that it has heard to stop, or an answer.
type Message struct {
	Ready    bool            `json:"ready,omitempty"`
	Gone     string          `json:"gone,omitempty"`
	ID       int             `json:"id,omitempty"`
	Progress *Progress       `json:"progress,omitempty"`
	Stopping bool            `json:"stopping,omitempty"`
	OK       *bool           `json:"ok,omitempty"`
	Result   json.RawMessage `json:"-"`
	Error    *Error          `json:"error,omitempty"`
}

// Error is a refusal that crossed from the worker. Detail is the whole error object as it was sent, with
// whatever fields its maker gave it beside the message.
type Error struct {
	Message string
	Detail  json.RawMessage
}

// Error returns the message.
func (e *Error) Error() string { return e.Message }

// MarshalJSON returns the object as its maker sent it, or one that holds the message alone.
func (e *Error) MarshalJSON() ([]byte, error) {
	if len(e.Detail) > 0 {
		return e.Detail, nil
	}
	return json.Marshal(map[string]string{"message": e.Message})
}

// UnmarshalJSON keeps the object and reads its message.
func (e *Error) UnmarshalJSON(data []byte) error {
	var object struct {
		Message string `json:"message"`
	}
	if err := json.Unmarshal(data, &object); err != nil {
		return fmt.Errorf("wire: error object: %w", err)
	}
	e.Message = object.Message
	e.Detail = append(json.RawMessage(nil), data...)
	return nil
}

// Answer does one verb. Args and the result are JSON; progress may be called any number of times. Where ctx has ended, the
// answer is what is found so far; it must be looked at now and then, by calls of Done or Err, or no word to stop comes in.
type Answer func(ctx context.Context, verb string, args []byte, progress func(Progress)) ([]byte, error)

// Serve reads one request, has it answered in the context of its ID and posts what comes of it. A request that cannot be read has no
// ID to answer under: the worker is then reported gone, because the page would wait for ever. A panic in
// answer is returned to the page as an error, so that one fault does not take the worker down.
func Serve(request string, answer Answer, post func(message string), of func(id int) context.Context) {
	var r Request
	if err := json.Unmarshal([]byte(request), &r); err != nil {
		send(post, Message{Gone: fmt.Sprintf("request is not JSON: %v", err)})
		return
	}
	if r.ID <= 0 {
		send(post, Message{Gone: fmt.Sprintf("request id is %d, want above 0", r.ID)})
		return
	}
	result, err := guarded(of(r.ID), r, answer, func(p Progress) {
		send(post, Message{ID: r.ID, Progress: &p})
	})
	var compact bytes.Buffer
	if err == nil && json.Compact(&compact, result) != nil {
		err = fmt.Errorf("internal fault: verb %q returned no JSON", r.Verb)
	}
	ok := err == nil
	if ok {
		send(post, Message{ID: r.ID, OK: &ok, Result: compact.Bytes()})
		return
	}
	send(post, Message{ID: r.ID, OK: &ok, Error: asError(err)})
}

func guarded(ctx context.Context, r Request, answer Answer, progress func(Progress)) (result []byte, err error) {
	defer func() {
		if fault := recover(); fault != nil {
			result, err = nil, fmt.Errorf("internal fault in verb %q: %v", r.Verb, fault)
		}
	}()
	return answer(ctx, r.Verb, r.Args, progress)
}

// asError keeps the fields of an error that writes itself as a JSON object with a message.
func asError(err error) *Error {
	var own json.Marshaler
	if errors.As(err, &own) {
		if data, marshalErr := own.MarshalJSON(); marshalErr == nil {
			sent := new(Error)
			if sent.UnmarshalJSON(data) == nil && sent.Message != "" {
				return sent
			}
		}
	}
	return &Error{Message: err.Error()}
}

func send(post func(string), m Message) {
	post(Encode(m))
}

// Encode writes a message or a request down. Both hold only JSON already checked and plain
// fields, so encoding cannot fail.
func Encode(v any) string {
	data, err := json.Marshal(v)
	if err != nil {
		panic(fmt.Sprintf("wire: %T: %v", v, err))
	}
	if m, ok := v.(Message); ok && len(m.Result) > 0 {
		data = append(append(data, '\n'), m.Result...)
	}
	return string(data)
}

// Read reads one message from a worker.
func Read(message string) (Message, error) {
	var m Message
	line, result, _ := strings.Cut(message, "\n")
	if err := json.Unmarshal([]byte(line), &m); err != nil {
		return Message{}, fmt.Errorf("wire: message from the worker: %w", err)
	}
	if result != "" {
		m.Result = json.RawMessage(result)
	}
	return m, nil
}
