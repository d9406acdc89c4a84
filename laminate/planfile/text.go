package planfile

import (
	"bytes"
	"encoding/json"
	"errors"
	"strconv"
)

// text is a place in bytes that the standard library has found to be one JSON
// value, so that its parts need not be looked at for errors again.
type text struct {
	data []byte
	pos  int
}

// broken says where bytes stop being one JSON value.
func broken(data []byte) error {
	if json.Valid(data) {
		return nil
	}
	var raw json.RawMessage
	err := json.Unmarshal(data, &raw)
	p := Problem{Line: 1, Place: "plan", Text: "no JSON"}
	var syntax *json.SyntaxError
	if errors.As(err, &syntax) {
		n := min(max(int(syntax.Offset)-1, 0), len(data))
		p.Line += bytes.Count(data[:n], []byte("\n"))
		p.Text = "no JSON from here on: " + err.Error()
		if n+1 >= len(data) && syntax.Error() == "unexpected end of JSON input" {
			p.Text = "the file ends within the plan: it was cut short"
		}
	}
	return Problems{p}
}

// peek goes to the next byte that is no white space and gives it.
func (t *text) peek() byte {
	for t.pos < len(t.data) {
		switch c := t.data[t.pos]; c {
		case ' ', '\t', '\n', '\r':
			t.pos++
		default:
			return c
		}
	}
	return 0
}

// more goes past a comma and says whether another member follows; at the
// closing byte it goes past that.
func (t *text) more(closing byte) bool {
	switch t.peek() {
	case ',':
		t.pos++
		t.peek()
		return true
	case closing:
		t.pos++
		return false
	}
	return t.pos < len(t.data)
}

func (t *text) colon() {
	t.peek()
	t.pos++
}

// raw gives the bytes of the string, number or word that comes next, and goes
// past them.
func (t *text) raw() []byte {
	if t.peek() == '"' {
		start := t.pos
		for t.pos++; t.pos < len(t.data) && t.data[t.pos] != '"'; t.pos++ {
			if t.data[t.pos] == '\\' {
				t.pos++
			}
		}
		t.pos++
		return t.data[start:t.pos]
	}
	start := t.pos
	for t.pos < len(t.data) {
		switch t.data[t.pos] {
		case ',', ']', '}', ' ', '\n', '\t', '\r', ':':
			return t.data[start:t.pos]
		}
		t.pos++
	}
	return t.data[start:t.pos]
}

// quoted reads the string that comes next.
func (t *text) quoted() string {
	b := t.raw()
	for _, c := range b[1 : len(b)-1] {
		if c == '\\' || c >= 0x80 {
			var s string
			if json.Unmarshal(b, &s) != nil {
				return ""
			}
			return s
		}
	}
	return string(b[1 : len(b)-1])
}

// skip goes past the next value, whatever it holds.
func (t *text) skip() {
	depth := 0
	for t.pos < len(t.data) {
		switch t.peek() {
		case '{', '[':
			depth++
			t.pos++
		case '}', ']':
			depth--
			t.pos++
		case ',', ':':
			t.pos++
		default:
			t.raw()
		}
		if depth == 0 {
			return
		}
	}
}

// kind tells in words what comes next.
func (t *text) kind() string {
	here := *t
	switch c := here.peek(); c {
	case '{':
		return "a block"
	case '[':
		return "a list"
	case '"':
		return "the text " + strconv.Quote(shortened(here.quoted()))
	case 't', 'f', 'n':
		return string(here.raw())
	}
	return "the number " + shortened(string(here.raw()))
}

func shortened(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}
