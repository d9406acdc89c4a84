package outline

import (
	"math"

	"github.com/paulmach/orb"

	"stripwright/geometry/drawing"
	"stripwright/output/sheet"
)

// Measures of the layout, in units: a sheet is sheetWide units wide, of k mm
// each, so that it looks the same whatever the size of what was read, which is
// on it true to scale.
const (
	sheetWide  = 420.0
	edgeMargin = 10.0
	partWide   = 310.0 // most that the regions take
	partHigh   = 200.0
	beside     = 40.0 // lettering around them
	headHigh   = 42.0
	lineHigh   = 7.0
	footHigh   = 14.0
	leastK     = 0.1 // mm: below, the grid of 0.001 mm would show in the letters
)

// Reading is a drawing with the name it was read by, and what was asked for of
// it: layers, none for all, and the number of one outline, 0 for all.
type Reading struct {
	File    string
	Layers  []string
	Which   int
	Drawing drawing.Drawing
	Clear   []Clear // what is kept clear of joints
}

// board is a sheet while it is drawn: scene coordinates are mm from its lower
// left corner.
type board struct {
	Reading
	k      float64
	extent orb.Bound // of the regions
	origin orb.Point // where the drawing's zero lies, mm
	s      sheet.Scene
}

// Scene draws what was read. A reading with problems, which has no regions,
// gets a sheet that says so.
func Scene(r Reading) sheet.Scene {
	b := &board{Reading: r}
	for i, g := range r.Drawing.Regions {
		if i == 0 {
			b.extent = g.Bounds()
		}
		b.extent = b.extent.Union(g.Bounds())
	}
	w, h := b.size()
	b.k = math.Max(leastK, math.Max(w/partWide, h/partHigh))
	lines := wrapped(facts(r))
	foot := 2*edgeMargin + footHigh + float64(float64(len(lines))*lineHigh)
	middle := 0.0
	if len(r.Drawing.Regions) > 0 {
		middle = h/b.k + 2*beside
	}
	b.s.Box = orb.Bound{Max: b.at(sheetWide, foot+middle+headHigh)}
	b.s.Layer("PAPER").Box(sheet.Pen{}, sheet.Fill{Ink: sheet.White}, b.s.Box)
	b.words(lines, foot+middle)
	if len(r.Drawing.Regions) > 0 {
		b.origin = orb.Point{float64((float64(sheetWide*b.k)-w)/2) - b.extent.Min[0], float64((foot+beside)*b.k) - b.extent.Min[1]}
		b.dimensions()
		b.regions()
		b.kept()
		b.arrows(edgeMargin, foot+6)
	}
	b.s.Title = "Read from " + r.File
	b.s.About = sizeWords(r)
	return b.s
}

// size gives width and height of all regions in mm.
func (b *board) size() (w, h float64) {
	return b.extent.Max[0] - b.extent.Min[0], b.extent.Max[1] - b.extent.Min[1]
}

// at gives a place of the layout in units as mm.
func (b *board) at(x, y float64) orb.Point { return orb.Point{x * b.k, y * b.k} }

// place takes a point of the drawing onto the sheet.
func (b *board) place(p orb.Point) orb.Point {
	return orb.Point{p[0] + b.origin[0], p[1] + b.origin[1]}
}

// text gives lettering in units at a place in units.
func (b *board) text(x, y, height float64, heavy bool, words string) sheet.Text {
	return sheet.Text{At: b.at(x, y), Height: height * b.k, Bold: heavy, Words: words}
}
