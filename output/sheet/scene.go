package sheet

import (
	"github.com/paulmach/orb"

	"stripwright/geometry"
)

// Scene is one drawing: layers in the order in which they are drawn. Box is
// what is seen of it, in scene coordinates (mm, y up).
type Scene struct {
	Title  string // for the file's own title, not drawn
	About  string // one sentence for a reader that cannot see it, not drawn
	Box    orb.Bound
	Layers []*Layer
}

// Layer is a named group: its shapes are drawn first, its lettering over them.
// With a Clip, what lies outside that box is not seen; only pages have such
// layers (package pdf), drawings for a cutter and single sheets do not.
type Layer struct {
	Name   string
	Clip   orb.Bound
	Shapes []Shape
	Texts  []Text
}

// Clipped says whether the layer is seen through its Clip only.
func (l *Layer) Clipped() bool { return l.Clip.Max[0] > l.Clip.Min[0] && l.Clip.Max[1] > l.Clip.Min[1] }

// Shape is an area or lines: several Lines are one path, filled by the even-odd
// rule. A Shape of Radius > 0 is a circle about Centre.
type Shape struct {
	Lines  []Line
	Centre orb.Point
	Radius float64
	Pen    Pen
	Fill   Fill
}

// Line runs from point to point; Closed goes back to the first, which is not
// repeated.
type Line struct {
	Points []orb.Point
	Closed bool
}

// Pen draws a line; the zero Pen draws none. Dash holds lengths on, off, on, …
// in mm, ending with zeros; all zero is a solid line.
type Pen struct {
	Ink   string
	Width float64
	Dash  [6]float64
}

// Fill covers an area; the zero Fill leaves it open. With Spacing > 0 it is
// hatched with lines at 45°, Width thick, Crossed: at both diagonals.
type Fill struct {
	Ink     string
	Spacing float64
	Width   float64
	Crossed bool
}

// Inks that all sheets use; colours of ply directions are roles of package
// layup.
const (
	Black = "#000000"
	Grey  = "#595959"
	Pale  = "#D9D9D9"
	White = "#FFFFFF"
	Fault = "#B00020"
)

// Solid is a solid pen.
func Solid(ink string, width float64) Pen { return Pen{Ink: ink, Width: width} }

// Layer adds a layer at the end, or finds the one of that name.
func (s *Scene) Layer(name string) *Layer {
	for _, l := range s.Layers {
		if l.Name == name {
			return l
		}
	}
	l := &Layer{Name: name}
	s.Layers = append(s.Layers, l)
	return l
}

// Stroke adds an open line.
func (l *Layer) Stroke(pen Pen, points ...orb.Point) {
	l.Shapes = append(l.Shapes, Shape{Lines: []Line{{Points: points}}, Pen: pen})
}

// Area adds a closed line with its inside.
func (l *Layer) Area(pen Pen, fill Fill, points ...orb.Point) {
	l.Shapes = append(l.Shapes, Shape{Lines: []Line{{Points: points, Closed: true}}, Pen: pen, Fill: fill})
}

// Box adds a rectangle.
func (l *Layer) Box(pen Pen, fill Fill, b orb.Bound) {
	l.Area(pen, fill, b.Min, orb.Point{b.Max[0], b.Min[1]}, b.Max, orb.Point{b.Min[0], b.Max[1]})
}

// Disc adds a circle.
func (l *Layer) Disc(pen Pen, fill Fill, centre orb.Point, radius float64) {
	l.Shapes = append(l.Shapes, Shape{Centre: centre, Radius: radius, Pen: pen, Fill: fill})
}

// Region adds a region with its holes; place takes its points onto the sheet.
func (l *Layer) Region(pen Pen, fill Fill, r geometry.Region, place func(orb.Point) orb.Point) {
	shape := Shape{Pen: pen, Fill: fill, Lines: make([]Line, 0, 1+len(r.Holes))}
	shape.Lines = append(shape.Lines, placed(r.Outer, place))
	for _, h := range r.Holes {
		shape.Lines = append(shape.Lines, placed(h, place))
	}
	l.Shapes = append(l.Shapes, shape)
}

func placed(ring orb.Ring, place func(orb.Point) orb.Point) Line {
	points := make([]orb.Point, len(ring))
	for i, p := range ring {
		points[i] = place(p)
	}
	return Line{Points: points, Closed: true}
}

// Arrow adds an arrow with a filled head of the given length.
func (l *Layer) Arrow(ink string, width, head float64, from, to orb.Point) {
	d := Towards(from, to)
	neck := Along(to, d, -head)
	l.Stroke(Solid(ink, width), from, neck)
	w := head * 0.38
	l.Area(Pen{}, Fill{Ink: ink}, to, Beside(neck, d, 0, w), Beside(neck, d, 0, -w))
}
