package svg

import (
	"slices"
	"strings"

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
	s.using = append(slices.Clip(s.using), e)
	switch target.Name {
	case "symbol", "svg":
		s = s.named(target)
		inner, hidden := w.enter(target, s)
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
	case !w.wanted(s.names) && (t == nil || slices.Contains(s.using, e)):
		return nil
	case ref == "" || !strings.HasPrefix(ref, "#") || t == nil:
		w.problem("not-read", e, "put the element into the drawing itself", "use of %q, which is not in the file", trace.Printable(ref))
		return nil
	case slices.Contains(s.using, e):
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
	if err == nil && e.Name == "svg" {
		var x, y float64
		if x, y, err = w.corner(e, s); err == nil {
			s.at = s.at.Of(trace.Move(x, y))
		}
	}
	v, boxed, boxErr := e.parseViewBox()
	if err = firstError(err, boxErr); err != nil {
		w.problem("number", e, "correct the number", "%v", err)
		return
	}
	if view.w <= 0 || view.h <= 0 || (boxed && (v.w == 0 || v.h == 0)) {
		w.d.report.LeaveOut(e.Name + " without area")
		return
	}
	s.view = view
	if boxed {
		aspect, _ := e.get("preserveAspectRatio")
		fit, err := v.into(view.w, view.h, aspect)
		if err != nil {
			w.problem("not-read", e, "use one of the words of the SVG recommendation", "%v", err)
			return
		}
		s.at, s.view = s.at.Of(fit), box{v.w, v.h}
	}
	for _, ref := range []string{"refX", "refY"} {
		if _, ok := e.get(ref); ok && e.Name == "symbol" {
			w.problem("not-read", e, "move the symbol instead", "%s is not read", ref)
			return
		}
	}
	w.children(e, s)
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
