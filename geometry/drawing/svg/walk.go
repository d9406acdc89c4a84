package svg

import (
	"math"
	"slices"
	"strings"

	"github.com/paulmach/orb"

	"stripwright/geometry/drawing/trace"
)

// Drawing is a parsed drawing, ready to be traced.
type Drawing struct {
	root   *Element
	page   page
	sheet  sheet
	byID   map[string]*Element
	report *trace.Report
}

// Open finds the size of a parsed drawing; unit is the size in mm of a user
// unit where the user has stated it (as stated), 0 where not. Nil when the size
// is not known.
func Open(root *Element, unit float64, stated string, r *trace.Report) *Drawing {
	d := &Drawing{byID: map[string]*Element{}, report: r}
	d.index(root)
	slices.SortStableFunc(d.sheet, func(a, b styleRule) int { return a.weight - b.weight })
	_, styled := d.sheet.styleOf(root)
	root, err := root.effective(styled)
	if err != nil {
		r.Problem("not-read", r.Line(root.Line), "write it as an attribute", "<svg>: %v", err)
		return nil
	}
	if text, ok := root.get("transform"); ok && text != "none" && text != "" {
		r.Problem("not-read", r.Line(root.Line), "put what it holds into a group, and the transform on that",
			"<svg>: a transform of the whole drawing is not read, as programs do not agree on it")
		return nil
	}
	p, ok := pageOf(root, unit, stated, r)
	if !ok {
		return nil
	}
	d.root, d.page = root, p
	return d
}

// index finds every id and reads the style sheets.
func (d *Drawing) index(e *Element) {
	if _, taken := d.byID[e.id]; !taken && e.id != "" {
		d.byID[e.id] = e
	}
	if e.Name == "style" && !e.foreign {
		d.sheet = append(d.sheet, parseSheet(e, d.report)...)
	}
	for _, c := range e.Children {
		d.index(c)
	}
}

// UnitFrom says where the size comes from.
func (d *Drawing) UnitFrom() string { return d.page.from }

// definitions are drawn by reference only, or not at all.
var definitions = []string{"defs", "symbol", "clipPath", "mask", "marker", "pattern", "linearGradient", "radialGradient",
	"meshgradient", "hatch", "filter", "metadata", "title", "desc", "script", "style", "view", "cursor", "font", "font-face",
	"animate", "animateMotion", "animateTransform", "set", "discard", "color-profile", "solidcolor"}

// walker goes over the tree and keeps the lines.
type walker struct {
	d      *Drawing
	chord  float64 // in mm
	byID   map[string]*Element
	sheet  sheet
	wanted func(names []string) bool
	out    []trace.Line
	points int
	used   int // elements drawn by way of a use
	full   bool
	over   bool // something reaches over the edge of the page
}

// state is what an element inherits.
type state struct {
	at    trace.Affine // its user units to mm
	view  box
	look  look
	names []string // of all groups around it
	layer string
	fixed bool       // the layer comes from a group marked as one
	using []*Element // use elements on the way here
	clips []clip     // windows that it is seen through
	depth int
}

// Lines gives every line that is seen, in millimetres with y up, curves within
// the chord error (mm). What cannot be read is a problem when it is wanted by
// one of its names, and is left out when not.
func (d *Drawing) Lines(chord float64, wanted func(names []string) bool) []trace.Line {
	w := walker{d: d, chord: chord, byID: d.byID, sheet: d.sheet, wanted: wanted}
	s := state{at: d.page.at, view: d.page.view, look: look{fill: true}}
	_, s, hidden := w.enter(d.root, s)
	if hidden != "" {
		d.report.LeaveOut("the whole drawing " + hidden)
		return nil
	}
	w.children(d.root, s)
	if w.over {
		d.report.Note("page", "the drawing reaches over the edge of its page: taken whole")
	}
	return w.out
}

func (w *walker) children(e *Element, s state) {
	for _, c := range e.Children {
		if w.full {
			return
		}
		w.element(c, s)
	}
}

// element draws one element with all it holds.
func (w *walker) element(e *Element, s state) {
	switch {
	case e.foreign && isShape(e.Name):
		w.d.report.LeaveOut(e.Name + " that is not of SVG (its name space)")
		return
	case e.foreign || slices.Contains(definitions, e.Name):
		return
	case w.tooMany(e, s):
		return
	}
	s.depth++
	s = s.named(e)
	if why := w.conditional(e, s); why != "" {
		w.d.report.LeaveOut(e.Name + " " + why)
		return
	}
	e, s, hidden := w.enter(e, s)
	if hidden != "" {
		w.d.report.LeaveOut(e.Name + " " + hidden)
		return
	}
	switch {
	case isShape(e.Name):
		w.shape(e, s)
	case e.Name == "g" || e.Name == "a":
		w.transformed(e, s, w.children)
	case e.Name == "svg":
		w.transformed(e, s, func(e *Element, s state) { w.nested(e, s, nil) })
	case e.Name == "use":
		w.transformed(e, s, w.use)
	case e.Name == "switch":
		w.transformed(e, s, w.oneOf)
	default:
		w.d.report.LeaveOut(e.Name)
	}
}

// tooMany bounds what use elements may multiply the drawing to.
func (w *walker) tooMany(e *Element, s state) bool {
	if len(s.using) > 0 {
		w.used++
	}
	if w.used <= mostUsed && s.depth <= 2*deepest {
		return false
	}
	w.overflow(e)
	return true
}

func (w *walker) overflow(e *Element) {
	if !w.full {
		w.full = true
		w.problem("size", e, "keep only the outline in the drawing", "the drawing grows out of all bounds: use in use, or more than %d points", trace.MaxPoints)
	}
}

// enter reads an element's style: what it replaces of the attributes, how it
// looks, and why it is not seen at all.
func (w *walker) enter(e *Element, s state) (*Element, state, string) {
	attributes, styled := w.sheet.styleOf(e)
	changed, err := e.effective(styled)
	if err != nil && w.wanted(s.names) {
		w.problem("not-read", e, "write it as an attribute", "%v", err)
	}
	next, hidden := s.look.change(append(attributes, styled...))
	s.look = next
	return changed, s, hidden
}

// transformed applies an element's transform and clip and goes on.
func (w *walker) transformed(e *Element, s state, then func(*Element, state)) {
	m, err := transformOf(e, s.view)
	if err != nil {
		if w.wanted(s.names) {
			w.problem("syntax", e, "correct the transform", "%v", err)
		}
		return
	}
	s.at = s.at.Of(m)
	if size := s.at.Stretch(); !s.at.Finite() || size > largest {
		w.problem("size", e, "draw it at its real size", "its transform reaches out of all reason")
		return
	}
	then(e, w.clipped(e, s))
}

// conditional says why an element is not seen by everyone, or "": it asks for an
// extension. One for certain languages only, or that moves, is a problem.
func (w *walker) conditional(e *Element, s state) string {
	if asks, _ := e.get("requiredExtensions"); asks != "" {
		return "for an extension"
	}
	if _, some := e.get("systemLanguage"); some && w.wanted(s.names) {
		w.problem("not-read", e, "keep one of them in the drawing", "it is seen in some languages only (systemLanguage)")
	}
	for _, c := range e.Children {
		if (c.Name == "set" || strings.HasPrefix(c.Name, "animate")) && !c.foreign && w.wanted(s.names) {
			w.problem("not-read", c, "take the animation out", "<%s> is animated", e.Name)
		}
	}
	return ""
}

// oneOf draws the first child of a switch that asks for no extension.
func (w *walker) oneOf(e *Element, s state) {
	for _, c := range e.Children {
		asks, _ := c.get("requiredExtensions")
		if !c.foreign && asks == "" && (isGroup(c.Name) || isShape(c.Name) || c.Name == "use") {
			w.element(c, s)
			return
		}
	}
}

// add keeps a line of a shape.
func (w *walker) add(e *Element, s state, points []orb.Point, closed bool) {
	if len(points) < 2 || w.full {
		return
	}
	if w.points += len(points); w.points > trace.MaxPoints {
		w.overflow(e)
		return
	}
	l := trace.Line{Points: points, Closed: closed, Layer: s.layer, Names: s.names, At: e.Line}.Map(s.at)
	if !l.Finite(largest) {
		w.problem("size", e, "draw it at its real size", "it reaches out of all reason")
		w.full = true
		return
	}
	if !w.seen(e, s, l.Points) {
		return
	}
	w.over = w.over || w.d.page.leaves(l.Points)
	w.out = append(w.out, l)
}

// chordAt gives the chord error in an element's user units.
func (w *walker) chordAt(s state) float64 {
	if size := s.at.Stretch(); size > 1e-12 && !math.IsInf(size, 1) {
		return w.chord / size
	}
	return w.chord
}

// problem tells what is wrong with an element, named by its id.
func (w *walker) problem(rule string, e *Element, cure, text string, args ...any) {
	name := "<" + trace.Printable(e.Name) + ">"
	if id, ok := e.get("id"); ok {
		name = `<` + trace.Printable(e.Name) + ` id="` + trace.Printable(id) + `">`
	}
	r := w.d.report
	r.Problem(rule, r.Line(e.Line), cure, strings.ReplaceAll(name, "%", "%%")+": "+text, args...)
}
