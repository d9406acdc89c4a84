package sheet

import (
	"math"

	"github.com/paulmach/orb"
)

// Align says which part of a text stands at its point, along the text.
type Align int

// Left sets the start of the text at the point, Middle its middle, Right its
// end.
const (
	Left Align = iota
	Middle
	Right
)

// Text is one line of lettering. At is on the base line; Height is that of the
// capitals in mm; Turn is counter-clockwise in degrees. Pen lettering is drawn
// in single strokes, for a pen on a cutter.
type Text struct {
	At     orb.Point
	Height float64
	Turn   float64
	Align  Align
	Bold   bool
	Pen    bool
	Ink    string
	Words  string
}

// Write adds lettering to a layer.
func (l *Layer) Write(t Text) {
	if t.Words == "" || t.Height <= 0 {
		return
	}
	if t.Ink == "" {
		t.Ink = Black
	}
	l.Texts = append(l.Texts, t)
}

// Width gives the length of the text in mm.
func (t Text) Width() float64 {
	if t.Pen {
		return t.Height * penAdvance(t.Words)
	}
	return t.Height * advance(t.Words, t.Bold)
}

// Fitted gives the text with its height reduced where it would be wider than
// width.
func (t Text) Fitted(width float64) Text {
	if w := t.Width(); w > width && w > 0 {
		t.Height *= width / w
	}
	return t
}

// Start gives the point where the first letter begins, whatever the alignment.
func (t Text) Start() orb.Point {
	back := 0.0
	switch t.Align {
	case Middle:
		back = t.Width() / 2
	case Right:
		back = t.Width()
	}
	sin, cos := math.Sincos(t.Turn * math.Pi / 180)
	return orb.Point{t.At[0] - float64(back*cos), t.At[1] - float64(back*sin)}
}

// Centred moves the text so that its middle lies at a point, along and across.
func (t Text) Centred(at orb.Point) Text {
	sin, cos := math.Sincos(t.Turn * math.Pi / 180)
	t.Align = Middle
	t.At = orb.Point{at[0] + float64(sin*t.Height/2), at[1] - float64(cos*t.Height/2)}
	return t
}

// Bounds gives the box about the text on the sheet, letters below the base line
// included.
func (t Text) Bounds() orb.Bound {
	s, w := t.Start(), t.Width()
	sin, cos := math.Sincos(t.Turn * math.Pi / 180)
	low, high := -0.3*t.Height, 1.05*t.Height
	b := orb.Bound{Min: orb.Point{math.Inf(1), math.Inf(1)}, Max: orb.Point{math.Inf(-1), math.Inf(-1)}}
	for _, c := range [4]orb.Point{{0, low}, {w, low}, {w, high}, {0, high}} {
		b = b.Extend(orb.Point{
			s[0] + float64(c[0]*cos) - float64(c[1]*sin),
			s[1] + float64(c[0]*sin) + float64(c[1]*cos),
		})
	}
	return b
}

// Towards gives the direction from one point to another, of length 1; along x
// when they coincide.
func Towards(from, to orb.Point) orb.Point {
	dx, dy := to[0]-from[0], to[1]-from[1]
	l := math.Hypot(dx, dy)
	if l == 0 {
		return orb.Point{1, 0}
	}
	return orb.Point{dx / l, dy / l}
}

// Upright turns a text direction so that it is read from below or from the
// right: into (-90°, 90°].
func Upright(deg float64) float64 {
	deg = math.Mod(deg, 180)
	if deg > 90 {
		deg -= 180
	}
	if deg <= -90 {
		deg += 180
	}
	return deg
}
