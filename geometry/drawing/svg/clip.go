package svg

import (
	"math"
	"slices"
	"strings"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/geometry/drawing/trace"
)

// clip is a window that an element is seen through: whatever lies in it is seen
// whole. Nil window: it is not known what is seen.
type clip struct {
	window orb.Ring // convex, counter-clockwise, mm
	what   string   // "its viewport (line 3)"
}

// clipSlack is how far, in mm, an outline may reach over a window that it is
// drawn up to: a clip of the same size hides nothing worth telling.
const clipSlack = 0.02

// cut says how a line lies to the window: in it, outside and not seen at all,
// or cut by it.
func (c clip) cut(points []orb.Point) (inside, outside bool) {
	if c.window == nil {
		return false, false
	}
	inside = true
	for i, a := range c.window {
		b := c.window[(i+1)%len(c.window)]
		long := math.Hypot(b[0]-a[0], b[1]-a[1])
		beyond := true
		for _, p := range points {
			off := (float64((b[0]-a[0])*(p[1]-a[1])) - float64((b[1]-a[1])*(p[0]-a[0]))) / long
			inside = inside && off >= -clipSlack
			beyond = beyond && off <= clipSlack
		}
		outside = outside || beyond
	}
	return inside, outside && !inside
}

// seen says whether a line is seen whole through all windows; one that is not
// seen at all is left out, one that is cut is a problem.
func (w *walker) seen(e *Element, s state, points []orb.Point) bool {
	for _, c := range s.clips {
		inside, outside := c.cut(points)
		switch {
		case inside:
			continue
		case outside:
			w.d.report.LeaveOut(e.Name + " outside " + c.what)
		case w.wanted(s.names):
			w.problem("clip", e, "cut the outline in the drawing itself, or take the clip off", "it is cut by %s, and only part of it is to be seen", c.what)
		}
		return false
	}
	return true
}

// viewportClip gives the window of a viewport that hides what reaches out of
// it, at in mm.
func viewportClip(at trace.Affine, view box) orb.Ring {
	return convex([]orb.Point{at.Apply(orb.Point{0, 0}), at.Apply(orb.Point{view.w, 0}), at.Apply(orb.Point{view.w, view.h}), at.Apply(orb.Point{0, view.h})})
}

// convex gives a ring of points without repeats, counter-clockwise; nil when it
// is not convex or encloses nothing.
func convex(points []orb.Point) orb.Ring {
	r := geometry.Region{Outer: slices.CompactFunc(slices.Clone(points), func(a, b orb.Point) bool {
		return math.Hypot(a[0]-b[0], a[1]-b[1]) < 1e-9
	})}.Oriented().Outer
	n := len(r)
	if n < 3 || r[0] == r[n-1] || !(geometry.SignedArea(r) > 0) {
		return nil
	}
	turned := 0.0
	for i, b := range r {
		a, c := r[(i+n-1)%n], r[(i+1)%n]
		turn := math.Atan2(
			float64((b[0]-a[0])*(c[1]-b[1]))-float64((b[1]-a[1])*(c[0]-b[0])),
			float64((b[0]-a[0])*(c[0]-b[0]))+float64((b[1]-a[1])*(c[1]-b[1])))
		if turn < -1e-9 {
			return nil
		}
		turned += turn
	}
	if turned > 7 { // round more than once
		return nil
	}
	return r
}

// clipped adds the windows of an element's clip-path and mask to those it is
// seen through.
func (w *walker) clipped(e *Element, s state) state {
	for _, name := range []string{"clip-path", "mask"} {
		v, ok := e.get(name)
		if !ok || v == "none" {
			continue
		}
		c := clip{what: "the " + name + " " + trace.Printable(v)}
		if name == "clip-path" {
			c.window = w.clipWindow(v, s)
		}
		s.clips = append(slices.Clip(s.clips), c)
	}
	return s
}

// clipWindow draws the clipPath that url(#id) names: the window when it is one
// closed convex shape, nil for anything else.
func (w *walker) clipWindow(ref string, s state) orb.Ring {
	inside, ok := strings.CutPrefix(ref, "url(")
	id, whole := strings.CutSuffix(inside, ")")
	id = strings.TrimPrefix(strings.Trim(strings.TrimSpace(id), `"'`), "#")
	t := w.byID[id]
	if !ok || !whole || t == nil || t.Name != "clipPath" {
		return nil
	}
	if units, _ := t.get("clipPathUnits"); units == "objectBoundingBox" {
		return nil
	}
	quiet := &trace.Report{}
	draft := walker{d: &Drawing{report: quiet}, chord: w.chord, byID: map[string]*Element{}, sheet: w.sheet, wanted: func([]string) bool { return true }}
	draft.element(&Element{Name: "g", Attr: t.Attr, Children: t.Children, parent: t.parent, id: t.id, classes: t.classes, original: t},
		state{at: s.at, view: s.view, look: look{fill: true}})
	if len(quiet.Problems) > 0 || len(quiet.Notes) > 0 || quiet.LeftOut() != "" || len(draft.out) != 1 {
		return nil
	}
	return convex(draft.out[0].Points)
}

// hides says whether what reaches out of an element's viewport is hidden: as
// the SVG recommendation has it, unless overflow says otherwise.
func (e *Element) hides() bool {
	for _, name := range []string{"overflow", "overflow-x", "overflow-y"} {
		if v, ok := e.get(name); ok && (v == "visible" || v == "auto" || strings.HasPrefix(v, "visible ")) {
			return false
		}
	}
	return true
}
