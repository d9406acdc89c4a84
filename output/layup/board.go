package layup

import (
	"math"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/sheet"
)

// Measures of the layout, in units: a sheet is sheetWide units wide, of k mm
// each, so that it looks the same whatever the size of the part, and the part
// on it is true to scale.
const (
	sheetWide  = 420.0
	edgeMargin = 8.0
	drawWide   = 258.0 // room of the drawing with its lettering
	besideWide = 29.0  // lettering left and right of the part
	besideHigh = 17.0  // lettering above and below it
	headHigh   = 64.0
	blockHigh  = 43.0
	stampHigh  = 30.0
	mostHigh   = 190.0 // of the part on a sheet
)

// board is a sheet while it is drawn: scene coordinates are mm from its lower
// left corner.
type board struct {
	plan   laminate.Plan
	sha    string
	k      float64
	scale  float64   // mm of the sheet for one of the part
	height float64   // of the sheet, in units
	extent orb.Bound // of everything that lies in the part frame
	origin orb.Point // where the part frame's zero lies, mm
	room   *placer
	limit  orb.Bound // where lettering beside the part may lie
	s      sheet.Scene
}

// newBoard chooses the scale of the layout for the part.
func newBoard(p laminate.Plan, sha string) *board {
	b := bounds(p)
	w, h := b.Max[0]-b.Min[0], b.Max[1]-b.Min[1]
	k := math.Max(math.Max(w/(drawWide-2*besideWide), h/mostHigh), 0.5)
	return &board{plan: p, sha: sha, k: k, scale: 1, extent: b, room: newPlacer(k), limit: orb.Bound{
		Min: orb.Point{(edgeMargin + 1) * k, math.Inf(-1)}, Max: orb.Point{(edgeMargin + drawWide - 1) * k, math.Inf(1)},
	}}
}

// bounds gives the box about everything that lies in the part frame: the part,
// and plies with an outline of their own.
func bounds(p laminate.Plan) orb.Bound {
	b := p.Part.Net.Bounds()
	if !p.Part.Blank.Empty() {
		b = b.Union(p.Part.Blank.Bounds())
	}
	for _, ply := range p.Plies {
		if ply.Outline != "" && !ply.Blank.Empty() {
			b = b.Union(ply.Blank.Bounds())
		}
	}
	return b
}

// at gives a place of the layout in units as mm.
func (b *board) at(x, y float64) orb.Point { return orb.Point{x * b.k, y * b.k} }

func (b *board) box(x0, y0, x1, y1 float64) orb.Bound {
	return orb.Bound{Min: b.at(x0, y0), Max: b.at(x1, y1)}
}

// place takes a point of the part onto the sheet.
func (b *board) place(p orb.Point) orb.Point {
	return sheet.Along(b.origin, p, b.scale)
}

// back takes a place of the sheet to the part.
func (b *board) back(p orb.Point) orb.Point {
	return orb.Point{(p[0] - b.origin[0]) / b.scale, (p[1] - b.origin[1]) / b.scale}
}

// trim gives the trim allowance on the sheet.
func (b *board) trim() float64 { return b.plan.Part.TrimMM * b.scale }

// partHigh gives the height of the drawing with its lettering in units.
func (b *board) partHigh() float64 {
	return (b.extent.Max[1]-b.extent.Min[1])/b.k + 2*besideHigh
}

// layDown puts the part into a room of the drawing's width, in its middle:
// left, bottom and height in units.
func (b *board) layDown(left, bottom, high float64) {
	c := b.extent.Center()
	b.origin = orb.Point{float64((left+float64(drawWide/2))*b.k) - c[0], float64((bottom+float64(high/2))*b.k) - c[1]}
}

// text gives lettering in units at a place in units.
func (b *board) text(x, y, height float64, heavy bool, words string) sheet.Text {
	return sheet.Text{At: b.at(x, y), Height: height * b.k, Bold: heavy, Words: words}
}

// finish closes the sheet: white paper, title block below, stamp above.
func (b *board) finish(fabrics []string, extra []sheet.Entry) sheet.Scene {
	rows := sheet.Rows(b.plan, b.sha, fabrics...)
	if len(extra) > 0 {
		rows = append([][]sheet.Entry{extra}, rows...)
	}
	sheet.Block(b.s.Layer("TITLE"), b.box(edgeMargin, edgeMargin, sheetWide-edgeMargin, edgeMargin+blockHigh), 2*b.k, rows)
	if len(sheet.Faults(b.plan.Checks)) > 0 {
		band := b.box(edgeMargin, b.height, sheetWide-edgeMargin, b.height+stampHigh)
		sheet.Stamp(&b.s, b.plan.Checks, band, 3*b.k)
		b.height += stampHigh + edgeMargin
	}
	b.s.Box = b.box(0, 0, sheetWide, b.height)
	b.s.Layers[0].Box(sheet.Pen{}, sheet.Fill{Ink: sheet.White}, b.s.Box)
	return b.s
}

// over hatches the drawing of a plan at fault, thinly, so that nobody lays by
// it unawares.
func (b *board) over(box orb.Bound) {
	if len(sheet.Faults(b.plan.Checks)) == 0 {
		return
	}
	hatch := sheet.Fill{Ink: sheet.Fault, Spacing: 14 * b.k, Width: 0.5 * b.k, Crossed: true}
	b.s.Layer("FAULT").Box(sheet.Pen{}, hatch, box)
	words := sheet.Text{Height: 14 * b.k, Bold: true, Ink: sheet.Fault, Words: sheet.DoNotCut}
	b.s.Layer("FAULT").Write(words.Centred(box.Center()))
}

// zeroArrow draws the part's 0° arrow at a place in units.
func (b *board) zeroArrow(x, y float64) {
	l := b.s.Layer("DATUM")
	l.Arrow(sheet.Black, 0.7*b.k, 4*b.k, b.at(x, y), b.at(x+36, y))
	l.Write(b.text(x+38, y-2.2, 4.4, true, "0°"))
}
