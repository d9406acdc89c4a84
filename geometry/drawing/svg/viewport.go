package svg

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/paulmach/orb"

	"stripwright/geometry/drawing/trace"
)

// viewBox is the part of the drawing that fills a viewport.
type viewBox struct{ x, y, w, h float64 }

// parseViewBox reads a viewBox attribute; none when there is none.
func (e *Element) parseViewBox() (v viewBox, there bool, err error) {
	text, ok := e.get("viewBox")
	if !ok {
		return v, false, nil
	}
	n, err := numbers(text)
	if err != nil || len(n) != 4 || n[2] < 0 || n[3] < 0 {
		return v, false, fmt.Errorf("viewBox %q is not four numbers x y width height", trace.Printable(text))
	}
	return viewBox{n[0], n[1], n[2], n[3]}, true, nil
}

// into gives the placement that fits the viewBox into a viewport of the given
// size as preserveAspectRatio says: SVG 2, section 8.2.
func (v viewBox) into(w, h float64, aspect string) (trace.Affine, error) {
	sx, sy := w/v.w, h/v.h
	words := strings.Fields(aspect)
	align, how := "xMidYMid", "meet"
	if len(words) > 0 {
		align = words[0]
	}
	if len(words) > 1 {
		how = words[1]
	}
	if align == "none" {
		return trace.Scale(sx, sy).Of(trace.Move(-v.x, -v.y)), nil
	}
	parts := map[string]float64{"Min": 0, "Mid": 0.5, "Max": 1}
	if len(align) != 8 || align[0] != 'x' || align[4] != 'Y' || len(words) > 2 || (how != "meet" && how != "slice") {
		return trace.Affine{}, fmt.Errorf("preserveAspectRatio %q is not known", trace.Printable(aspect))
	}
	px, okX := parts[align[1:4]]
	py, okY := parts[align[5:8]]
	if !okX || !okY {
		return trace.Affine{}, fmt.Errorf("preserveAspectRatio %q is not known", trace.Printable(aspect))
	}
	s := math.Min(sx, sy)
	if how == "slice" {
		s = math.Max(sx, sy)
	}
	place := trace.Move(px*(w-float64(v.w*s)), py*(h-float64(v.h*s)))
	return place.Of(trace.Scale(s, s)).Of(trace.Move(-v.x, -v.y)), nil
}

// page is how the drawing lies in the real world: where its user units come to
// lie in millimetres, y up, and the viewport for percentages.
type page struct {
	at   trace.Affine
	view box
	from string // where the unit comes from
	size box    // of the page in mm, none if it is not known
}

// leaves says whether any of the points, in mm, lies off the page.
func (p page) leaves(points []orb.Point) bool {
	const slack = 0.5 // mm
	return p.size.w > 0 && slices.ContainsFunc(points, func(q orb.Point) bool {
		return q[0] < -slack || q[1] < -slack || q[0] > p.size.w+slack || q[1] > p.size.h+slack
	})
}

const sizeCure = "state width and height with a unit in the drawing, or say what a user unit is: drawing_units: mm in the job, --units mm for outline (or in, 96/in …)"

// pageOf finds the page of the outermost svg element; unit is the size in mm of
// a user unit as stated by the user, 0 if not. Not ok when the size is not
// known, which is then a problem.
func pageOf(root *Element, unit float64, stated string, r *trace.Report) (p page, ok bool) {
	v, boxed, err := root.parseViewBox()
	if err == nil && boxed && (v.w == 0 || v.h == 0) {
		err = fmt.Errorf("its viewBox has no area")
	}
	width, height := rootLength(root, "width"), rootLength(root, "height")
	if err == nil {
		err = firstError(width.err, height.err)
	}
	if err != nil {
		r.Problem("size", r.Line(root.Line), sizeCure, "<svg>: %v", err)
		return p, false
	}
	if unit > 0 {
		return statedPage(v, boxed, width, height, unit, stated, r), true
	}
	width.fill(height, v.w, v.h, boxed)
	height.fill(width, v.h, v.w, boxed)
	if !width.known || !height.known {
		r.Problem("unit", r.Line(root.Line), sizeCure, "the drawing does not say its size in the real world: width %s, height %s", width.text, height.text)
		return p, false
	}
	if !(width.px > 0 && height.px > 0) {
		r.Problem("size", r.Line(root.Line), sizeCure, "the drawing's width or height is not more than nothing: %s, %s", width.text, height.text)
		return p, false
	}
	return measuredPage(root, v, boxed, width, height, r)
}

func firstError(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// rootSize is the width or height of the outermost element.
type rootSize struct {
	text     string // as written
	px       float64
	known    bool
	physical bool
	err      error
}

func rootLength(root *Element, name string) rootSize {
	text, there := root.get(name)
	if !there || text == "auto" || text == "" {
		return rootSize{text: "not stated"}
	}
	s := rootSize{text: text}
	l, err := parseLength(text)
	if err != nil {
		s.err = fmt.Errorf("%s: %w", name, err)
		return s
	}
	if _, absolute := perUnit[l.unit]; absolute {
		s.px, _ = l.of(0)
		s.known, s.physical = true, l.physical()
	}
	return s
}

// fill takes a size that is not stated from the other one and the viewBox.
func (s *rootSize) fill(other rootSize, own, others float64, boxed bool) {
	if s.text == "not stated" && other.known && boxed {
		s.px, s.known, s.physical = other.px*own/others, true, other.physical
	}
}

// statedPage is the page when the user has said what a user unit is.
func statedPage(v viewBox, boxed bool, width, height rootSize, unit float64, stated string, r *trace.Report) page {
	if width.physical || height.physical {
		r.Note("unit", "the drawing says width %s, height %s; read with user units of %s as stated", width.text, height.text, stated)
	} else {
		r.Note("unit", "read with user units of %s as stated", stated)
	}
	if !boxed {
		v = viewBox{0, 0, width.px, height.px}
	}
	return page{
		at:   trace.Affine{A: unit, D: -unit, E: -v.x * unit, F: (v.y + v.h) * unit},
		view: box{v.w, v.h},
		from: "stated: " + stated,
	}
}

// measuredPage is the page when the drawing states its size.
func measuredPage(root *Element, v viewBox, boxed bool, width, height rootSize, r *trace.Report) (p page, ok bool) {
	const mm = 25.4 / 96
	p.at = trace.Affine{A: mm, D: -mm, F: height.px * mm}
	p.view, p.size = box{width.px, height.px}, box{width.px * mm, height.px * mm}
	p.from = fmt.Sprintf("width %s, height %s", width.text, height.text)
	if boxed {
		aspect, _ := root.get("preserveAspectRatio")
		fit, err := v.into(width.px, height.px, aspect)
		if err != nil {
			r.Problem("not-read", r.Line(root.Line), sizeCure, "<svg>: %v", err)
			return p, false
		}
		p.at, p.view = p.at.Of(fit), box{v.w, v.h}
		if sx, sy := width.px/v.w, height.px/v.h; math.Abs(sx/sy-1) > 1e-3 {
			r.Note("aspect", "width and height do not fit the viewBox: scales %.5g and %.5g; preserveAspectRatio decides", sx, sy)
		}
	}
	if !width.physical || !height.physical {
		p.from += ", 96 px per inch"
		r.Note("unit", "the size is in px only (width %s, height %s): taken at 96 per inch; check the size", width.text, height.text)
	}
	return p, true
}
