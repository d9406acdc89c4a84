package svg

import (
	"fmt"
	"math"
	"strings"

	"stripwright/geometry/drawing/trace"
)

// parseTransform reads a list of matrix, translate, scale, rotate, skewX and
// skewY, applied from the right.
func parseTransform(text string) (trace.Affine, error) {
	m := trace.Identity()
	s := scanner{text: text}
	for !s.done() {
		open := strings.IndexByte(s.text[s.at:], '(')
		shut := strings.IndexByte(s.text[s.at:], ')')
		if open < 0 || shut < open {
			return m, fmt.Errorf("%q is not a transform", trace.Printable(text))
		}
		name := strings.TrimSpace(s.text[s.at : s.at+open])
		args, err := numbers(s.text[s.at+open+1 : s.at+shut])
		if err != nil {
			return m, fmt.Errorf("%s(…): %w", trace.Printable(name), err)
		}
		one, err := oneTransform(name, args)
		if err != nil {
			return m, err
		}
		m = m.Of(one)
		s.at += shut + 1
		s.comma()
	}
	if !m.Finite() {
		return m, errTooLarge
	}
	return m, nil
}

func oneTransform(name string, a []float64) (trace.Affine, error) {
	n := len(a)
	switch {
	case name == "matrix" && n == 6:
		return trace.Affine{A: a[0], B: a[1], C: a[2], D: a[3], E: a[4], F: a[5]}, nil
	case name == "translate" && n == 1:
		return trace.Move(a[0], 0), nil
	case name == "translate" && n == 2:
		return trace.Move(a[0], a[1]), nil
	case name == "scale" && n == 1:
		return trace.Scale(a[0], a[0]), nil
	case name == "scale" && n == 2:
		return trace.Scale(a[0], a[1]), nil
	case name == "rotate" && n == 1:
		return trace.Turn(a[0]), nil
	case name == "rotate" && n == 3:
		return trace.Move(a[1], a[2]).Of(trace.Turn(a[0])).Of(trace.Move(-a[1], -a[2])), nil
	case name == "skewX" && n == 1:
		return trace.Affine{A: 1, C: math.Tan(a[0] * math.Pi / 180), D: 1}, nil
	case name == "skewY" && n == 1:
		return trace.Affine{A: 1, B: math.Tan(a[0] * math.Pi / 180), D: 1}, nil
	}
	return trace.Affine{}, fmt.Errorf("%s with %d numbers is not a transform", trace.Printable(name), n)
}
