package main

import (
	"bytes"
	"testing"

	"stripwright/nest"
)

// Nothing is said before patience is over, then the last step found, and the
// line is wiped in the end.
func TestProgressLine(t *testing.T) {
	var b bytes.Buffer
	l := &progressLine{to: &b, text: "searching"}
	l.show(nest.Found{Best: 43615.9, Bound: 43200, Lengths: true})
	if b.Len() > 0 {
		t.Errorf("too early: %q", b.String())
	}
	l.say("")
	l.show(nest.Found{Best: 81.5, Bound: 80})
	l.clear()
	l.show(nest.Found{Best: 81, Bound: 80})
	const wipe = "\r\x1b[K"
	want := wipe + "searching: best 43.62 m, at least 43.20 m, gap 0.96 %" + wipe + "searching: best 81.50, at least 80.00, gap 1.88 %" + wipe
	if b.String() != want {
		t.Errorf("%q, want %q", b.String(), want)
	}
}
