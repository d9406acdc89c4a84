package svg

import (
	"fmt"
	"slices"
	"strings"

	"github.com/paulmach/orb"

	"stripwright/geometry/drawing/trace"
)

// use draws the element that a use names, moved by x and y.
func (w *walker) use(e *Element, s state) {
	target := w.target(e, s)
	if target == nil {
		return
	}
	x, y, err := w.corner(e, s)
	if err != nil {
		w.problem("number", e, "write a length", "%v", err)
		return
	}
	s.at = s.at.Of(trace.Move(x, y))
	s.using = append(slices.Clip(s.using), e.self())
	switch target.Name {
	case "symbol", "svg":
		s = s.named(target)
		target, inner, hidden := w.enter(target, s)
		if hidden != "" {
			w.d.report.LeaveOut(target.Name + " " + hidden)
			return
		}
		w.transformed(target, inner, func(t *Element, s state) { w.nested(t, s, e) })
	default:
		w.element(target, s)
	}
}

// target finds what a use names; nil, and a problem, when it is not in the file
// or holds the use itself.
func (w *walker) target(e *Element, s state) *Element {
	ref, _ := e.get("href")
	t := w.byID[strings.TrimPrefix(ref, "#")]
	switch {
	case !w.wanted(s.names) && (t == nil || slices.Contains(s.using, e.self())):
		return nil
	case ref == "" || !strings.HasPrefix(ref, "#") || t == nil:
		w.problem("not-read", e, "put the element into the drawing itself", "use of %q, which is not in the file", trace.Printable(ref))
		return nil
	case slices.Contains(s.using, e.self()):
		w.problem("not-read", e, "remove the reference to itself", "use of %q, which holds this use", trace.Printable(ref))
		return nil
	}
	return t
}

// corner reads x and y of a use or nested svg.
func (w *walker) corner(e *Element, s state) (x, y float64, err error) {
	if x, err = e.size("x", 0, s.view.w); err == nil {
		y, err = e.size("y", 0, s.view.h)
	}
	return x, y, err
}

// nested draws the content of an svg or symbol in a viewport of its own; user
// is the use element that names it and may state the size, nil if none does.
func (w *walker) nested(e *Element, s state, user *Element) {
	view, err := w.viewport(e, s, user)
	x, y, cornerErr := w.corner(e, s)
	v, boxed, boxErr := e.parseViewBox()
	if err = firstError(err, cornerErr, boxErr); err != nil {
		w.problem("number", e, "correct the number", "%v", err)
		return
	}
	if view.w <= 0 || view.h <= 0 || (boxed && (v.w == 0 || v.h == 0)) {
		w.d.report.LeaveOut(e.Name + " without area")
		return
	}
	fit := trace.Identity()
	if boxed {
		aspect, _ := e.get("preserveAspectRatio")
		if fit, err = v.into(view.w, view.h, aspect); err != nil {
			w.problem("not-read", e, "use one of the words of the SVG recommendation", "%v", err)
			return
		}
	} else {
		v = viewBox{0, 0, view.w, view.h}
	}
	rx, ry, err := e.reference(v, fit)
	if err != nil {
		w.problem("number", e, "correct the number", "%v", err)
		return
	}
	s.at = s.at.Of(trace.Move(x-rx, y-ry))
	if e.hides() {
		s.clips = append(slices.Clip(s.clips), clip{viewportClip(s.at, view), "the viewport of <" + e.Name + ">"})
	}
	s.at, s.view = s.at.Of(fit), box{v.w, v.h}
	w.children(e, s)
}

// reference gives the place in the viewport of a symbol that refX and refY put
// at the corner of its use; 0 where they are not stated: SVG 2, section 5.5.
func (e *Element) reference(v viewBox, fit trace.Affine) (x, y float64, err error) {
	if e.Name != "symbol" {
		return 0, 0, nil
	}
	read := func(name, low, high string, from, whole float64) (at float64, there bool) {
		text, there := e.get(name)
		if !there {
			return 0, false
		}
		at, wrong := along(text, low, high, whole)
		if wrong != nil {
			err = firstError(err, fmt.Errorf("%s: %w", name, wrong))
		}
		if text == low || text == high || text == "center" {
			at += from
		}
		return at, true
	}
	px, stated := read("refX", "left", "right", v.x, v.w)
	py, also := read("refY", "top", "bottom", v.y, v.h)
	at := fit.Apply(orb.Point{px, py})
	if stated {
		x = at[0]
	}
	if also {
		y = at[1]
	}
	return x, y, err
}

// viewport gives the size of the viewport: as the use states it, or else the
// element itself, or else all there is.
func (w *walker) viewport(e *Element, s state, user *Element) (view box, err error) {
	from := func(name string, whole float64) float64 {
		for _, at := range []*Element{user, e} {
			if at == nil {
				continue
			}
			if text, ok := at.get(name); ok && text != "auto" {
				v, e := at.size(name, whole, whole)
				err = firstError(err, e)
				return v
			}
		}
		return whole
	}
	view = box{from("width", s.view.w), from("height", s.view.h)}
	return view, err
}
