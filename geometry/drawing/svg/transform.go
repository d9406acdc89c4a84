package svg

import (
	"fmt"
	"math"
	"strings"

	"stripwright/geometry/drawing/trace"
)

// transformOf gives the transform of an element, by its attribute or its style,
// about its transform-origin: CSS Transforms level 1. view is the viewport that
// percentages are taken of.
func transformOf(e *Element, view box) (trace.Affine, error) {
	text, ok := e.get("transform")
	if !ok || text == "none" {
		return trace.Identity(), nil
	}
	_, css := e.get(byStyle)
	m, err := parseTransform(text, css, view)
	if err != nil {
		return m, fmt.Errorf("transform: %w", err)
	}
	origin, ok := e.get("transform-origin")
	if !ok {
		return m, nil
	}
	if about, _ := e.get("transform-box"); about != "" && about != "view-box" {
		return m, fmt.Errorf("transform-box: %s is not read", trace.Printable(about))
	}
	x, y, err := originOf(origin, view)
	if err != nil {
		return m, fmt.Errorf("transform-origin: %w", err)
	}
	return trace.Move(x, y).Of(m).Of(trace.Move(-x, -y)), nil
}

// originOf reads "10 20", "50% 50%", "left top", "center".
func originOf(text string, view box) (x, y float64, err error) {
	words := strings.Fields(strings.ToLower(text))
	if len(words) < 1 || len(words) > 3 {
		return 0, 0, fmt.Errorf("%q is not a place", trace.Printable(text))
	}
	words = words[:min(len(words), 2)] // a third is the depth
	upright := words[0] == "top" || words[0] == "bottom"
	if len(words) == 2 && (upright || words[1] == "left" || words[1] == "right") {
		words[0], words[1] = words[1], words[0]
	} else if len(words) == 1 {
		words = []string{words[0], "50%"}
		if upright {
			words = []string{"50%", words[0]}
		}
	}
	if x, err = along(words[0], "left", "right", view.w); err != nil {
		return 0, 0, err
	}
	y, err = along(words[1], "top", "bottom", view.h)
	return x, y, err
}

// along reads a place between two edges that are whole apart.
func along(word, low, high string, whole float64) (float64, error) {
	switch word {
	case low:
		return 0, nil
	case "center":
		return whole / 2, nil
	case high:
		return whole, nil
	}
	l, err := parseLength(word)
	if err != nil {
		return 0, err
	}
	return l.of(whole)
}

// parseTransform reads a list of functions, applied from the right: as the
// attribute has them, or as CSS has them with units.
func parseTransform(text string, css bool, view box) (trace.Affine, error) {
	m := trace.Identity()
	s := scanner{text: text}
	for !s.done() {
		open := strings.IndexByte(s.text[s.at:], '(')
		shut := strings.IndexByte(s.text[s.at:], ')')
		if open < 0 || shut < open {
			return m, fmt.Errorf("%q is not a transform", trace.Printable(text))
		}
		name := strings.TrimSpace(s.text[s.at : s.at+open])
		inside := s.text[s.at+open+1 : s.at+shut]
		one, err := oneTransform(name, inside, css, view)
		if err != nil {
			return m, err
		}
		m = m.Of(one)
		s.at += shut + 1
		if css {
			s.blanks()
		} else {
			s.comma()
		}
	}
	if !m.Finite() {
		return m, errTooLarge
	}
	return m, nil
}

func oneTransform(name, inside string, css bool, view box) (trace.Affine, error) {
	read := numbers
	if css {
		read = func(text string) ([]float64, error) { return cssNumbers(name, text, view) }
	}
	a, err := read(inside)
	if err != nil {
		return trace.Affine{}, fmt.Errorf("%s(…): %w", trace.Printable(name), err)
	}
	if css {
		name, a = plainName(name, a)
	}
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
	case name == "rotate" && n == 3 && !css:
		return trace.Move(a[1], a[2]).Of(trace.Turn(a[0])).Of(trace.Move(-a[1], -a[2])), nil
	case name == "skewX" && n == 1:
		return trace.Affine{A: 1, C: math.Tan(a[0] * math.Pi / 180), D: 1}, nil
	case name == "skewY" && n == 1:
		return trace.Affine{A: 1, B: math.Tan(a[0] * math.Pi / 180), D: 1}, nil
	case name == "skew" && n == 2 && css:
		return trace.Affine{A: 1, B: math.Tan(a[1] * math.Pi / 180), C: math.Tan(a[0] * math.Pi / 180), D: 1}, nil
	}
	return trace.Affine{}, fmt.Errorf("%s with %d numbers is not a transform", trace.Printable(name), n)
}

// plainName gives the function that a CSS function for one axis stands for; CSS
// does not tell capitals from small letters.
func plainName(name string, a []float64) (string, []float64) {
	lower := strings.ToLower(name)
	one := len(a) == 1
	switch {
	case lower == "translatex" && one:
		return "translate", []float64{a[0], 0}
	case lower == "translatey" && one:
		return "translate", []float64{0, a[0]}
	case lower == "scalex" && one:
		return "scale", []float64{a[0], 1}
	case lower == "scaley" && one:
		return "scale", []float64{1, a[0]}
	case lower == "skewx":
		return "skewX", a
	case lower == "skewy":
		return "skewY", a
	case lower == "skew" && one:
		return "skewX", a
	}
	return lower, a
}

// degrees of each unit of angle: CSS Values and Units.
var degrees = map[string]float64{"deg": 1, "grad": 0.9, "rad": 180 / math.Pi, "turn": 360}

// cssNumbers reads the arguments of a CSS transform function: lengths and
// angles need their unit there.
func cssNumbers(name, text string, view box) ([]float64, error) {
	lower := strings.ToLower(name)
	var out []float64
	for i, word := range strings.Split(text, ",") {
		word = strings.TrimSpace(word)
		s := scanner{text: word}
		v, err := s.number()
		if err != nil {
			return nil, fmt.Errorf("%q is not a number", trace.Printable(word))
		}
		unit := strings.ToLower(word[s.at:])
		switch {
		case strings.HasPrefix(lower, "translate"):
			whole := view.w
			if i == 1 || lower == "translatey" {
				whole = view.h
			}
			if unit == "" && v != 0 {
				return nil, fmt.Errorf("%q has no unit, which a style needs", trace.Printable(word))
			}
			l, err := parseLength(word)
			if err == nil {
				v, err = l.of(whole)
			}
			if err != nil {
				return nil, err
			}
		case strings.HasPrefix(lower, "rotate") || strings.HasPrefix(lower, "skew"):
			per, known := degrees[unit]
			if !known && v != 0 {
				return nil, fmt.Errorf("%q has no unit of an angle, which a style needs", trace.Printable(word))
			}
			v *= per
		case unit == "%" && strings.HasPrefix(lower, "scale"):
			v /= 100
		case unit != "":
			return nil, fmt.Errorf("%q is not a plain number", trace.Printable(word))
		}
		out = append(out, v)
	}
	return out, nil
}
