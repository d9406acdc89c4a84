package svg

import (
	"fmt"
	"math"

	"github.com/paulmach/orb"

	"stripwright/geometry/curve"
	"stripwright/geometry/drawing/trace"
)

// shape draws one shape, if it is seen.
func (w *walker) shape(e *Element, s state) {
	switch {
	case s.look.hidden:
		w.d.report.LeaveOut(e.Name + " hidden (visibility)")
		return
	case s.look.unpainted():
		w.d.report.LeaveOut(e.Name + " without fill or stroke")
		return
	}
	w.transformed(e, s, func(e *Element, s state) {
		if err := w.draw(e, s); err != nil && w.wanted(s.names) {
			w.problem("syntax", e, "correct the drawing", "%v", err)
		}
	})
}

func (w *walker) draw(e *Element, s state) error {
	switch e.Name {
	case "path":
		return w.path(e, s)
	case "rect":
		return w.rectangle(e, s)
	case "circle", "ellipse":
		return w.ellipse(e, s)
	case "line":
		return w.segment(e, s)
	}
	return w.poly(e, s)
}

// size reads a length attribute in user units; otherwise when it is not there.
func (e *Element) size(name string, otherwise, whole float64) (float64, error) {
	text, ok := e.get(name)
	if !ok || text == "auto" {
		return otherwise, nil
	}
	l, err := parseLength(text)
	if err != nil {
		return 0, fmt.Errorf("%s: %w", name, err)
	}
	v, err := l.of(whole)
	if err != nil {
		return 0, fmt.Errorf("%s: %w", name, err)
	}
	return v, nil
}

// sizes reads several lengths; a negative one is an error unless it is a place.
func (e *Element) sizes(view box, names ...string) ([]float64, error) {
	out := make([]float64, len(names))
	for i, name := range names {
		whole, place := view.w, false
		switch name {
		case "y", "cy", "y1", "y2":
			whole, place = view.h, true
		case "height", "ry":
			whole = view.h
		case "x", "cx", "x1", "x2":
			place = true
		case "r":
			whole = view.diagonal()
		}
		v, err := e.size(name, 0, whole)
		if err != nil {
			return nil, err
		}
		if v < 0 && !place {
			return nil, fmt.Errorf("%s is negative", name)
		}
		out[i] = v
	}
	return out, nil
}

func (w *walker) path(e *Element, s state) error {
	d, _ := e.get("d")
	if d == "" || d == "none" {
		return nil
	}
	runs, err := parsePath(d, w.chordAt(s), trace.MaxPoints)
	if err != nil {
		return err
	}
	for _, r := range runs {
		w.add(e, s, r.points, r.closed)
	}
	return nil
}

func (w *walker) segment(e *Element, s state) error {
	n, err := e.sizes(s.view, "x1", "y1", "x2", "y2")
	if err == nil {
		w.add(e, s, []orb.Point{{n[0], n[1]}, {n[2], n[3]}}, false)
	}
	return err
}

// poly reads a polyline or polygon; an odd number of coordinates is an error.
func (w *walker) poly(e *Element, s state) error {
	text, _ := e.get("points")
	n, err := numbers(text)
	if err != nil {
		return fmt.Errorf("points: %w", err)
	}
	if len(n)%2 == 1 {
		return fmt.Errorf("points: the last one has no y")
	}
	points := make([]orb.Point, len(n)/2)
	for i := range points {
		points[i] = orb.Point{n[2*i], n[2*i+1]}
	}
	w.add(e, s, points, e.Name == "polygon")
	return nil
}

func (w *walker) ellipse(e *Element, s state) error {
	n, err := e.sizes(s.view, "cx", "cy", "r", "rx", "ry")
	if err != nil {
		return err
	}
	rx, ry := n[3], n[4]
	if e.Name == "circle" {
		rx, ry = n[2], n[2]
	} else if rx, ry, err = radii(e, rx, ry); err != nil {
		return err
	}
	if rx == 0 || ry == 0 {
		w.d.report.LeaveOut(e.Name + " without area")
		return nil
	}
	points := curve.Ellipse(orb.Point{n[0], n[1]}, orb.Point{rx, 0}, orb.Point{0, ry}, 0, 2*math.Pi, w.chordAt(s))
	w.add(e, s, points, true)
	return nil
}

// radii gives rx and ry, each the other where it is not stated.
func radii(e *Element, rx, ry float64) (float64, float64, error) {
	stated := func(name string) bool {
		v, ok := e.get(name)
		return ok && v != "auto"
	}
	switch x, y := stated("rx"), stated("ry"); {
	case x && !y:
		ry = rx
	case y && !x:
		rx = ry
	}
	return rx, ry, nil
}

// rectangle draws a rect; its corners are no larger than half its sides.
func (w *walker) rectangle(e *Element, s state) error {
	n, err := e.sizes(s.view, "x", "y", "width", "height", "rx", "ry")
	if err != nil {
		return err
	}
	x, y, width, height := n[0], n[1], n[2], n[3]
	if width == 0 || height == 0 {
		w.d.report.LeaveOut("rect without area")
		return nil
	}
	rx, ry, err := radii(e, n[4], n[5])
	if err != nil {
		return err
	}
	rx, ry = math.Min(rx, width/2), math.Min(ry, height/2)
	if rx == 0 || ry == 0 {
		w.add(e, s, []orb.Point{{x, y}, {x + width, y}, {x + width, y + height}, {x, y + height}}, true)
		return nil
	}
	var points []orb.Point
	for i, c := range []orb.Point{{x + width - rx, y + height - ry}, {x + rx, y + height - ry}, {x + rx, y + ry}, {x + width - rx, y + ry}} {
		corner := curve.Ellipse(c, orb.Point{rx, 0}, orb.Point{0, ry}, float64(i)*math.Pi/2, math.Pi/2, w.chordAt(s))
		points = append(points, corner...)
	}
	w.add(e, s, points, true)
	return nil
}
