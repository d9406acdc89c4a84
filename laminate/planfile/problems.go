package planfile

import (
	"bytes"
	"fmt"
	"strings"
)

// Problem is one thing that keeps a file from being read as a plan: its line,
// the place in the plan ("plies[2].strips[0].width_mm") and a sentence.
type Problem struct {
	Line  int
	Place string
	Text  string
}

// Error gives "line 14: plies[2].face: want a text, found the number 1".
func (p Problem) Error() string {
	return fmt.Sprintf("line %d: %s: %s", p.Line, p.Place, p.Text)
}

// Problems is every problem found in one file, a line each.
type Problems []Problem

// Error lists the problems, a line each.
func (p Problems) Error() string {
	lines := make([]string, len(p))
	for i, e := range p {
		lines[i] = e.Error()
	}
	return strings.Join(lines, "\n")
}

// problem records what is wrong at the place at hand; too many stop the reading.
func (d *decoder) problem(format string, args ...any) {
	if d.stopped {
		return
	}
	line := 1 + bytes.Count(d.data[:min(d.pos, len(d.data))], []byte("\n"))
	d.problems = append(d.problems, Problem{line, place(d.path), fmt.Sprintf(format, args...)})
	if len(d.problems) == mostProblems {
		d.problem("too many problems: the rest is not read")
		d.stopped = true
	}
}

// mostStrangers is how many kinds of unknown fields are named.
const mostStrangers = 100

// stranger notes an unknown field at the place at hand.
func (d *decoder) stranger() {
	kind := make([]step, 0, len(d.path))
	for _, s := range d.path {
		if s.name != "" || s.named {
			kind = append(kind, s)
		}
	}
	key := place(kind)
	if d.unknown[key] == 0 {
		if len(d.order) == mostStrangers {
			return
		}
		d.order, d.first = append(d.order, key), append(d.first, place(d.path))
	}
	d.unknown[key]++
}

// strangers lists the unknown fields.
func (d *decoder) strangers() []string {
	var out []string
	for i, k := range d.order {
		s := d.first[i]
		if n := d.unknown[k] - 1; n > 0 {
			s += fmt.Sprintf(" (and %d more)", n)
		}
		out = append(out, s)
	}
	return out
}
