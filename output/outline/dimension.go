package outline

import (
	"math"

	"github.com/paulmach/orb"

	"stripwright/geometry/length"
	"stripwright/output/sheet"
)

// pair prints width × height in a unit.
func pair(print func(float64) string, w, h float64) string { return print(w) + " × " + print(h) }

// dimensions draws the width below the regions and the height to their left.
func (b *board) dimensions() {
	low, high := b.place(b.extent.Min), b.place(b.extent.Max)
	w, h := b.size()
	off := 25 * b.k
	b.dimension(low, orb.Point{high[0], low[1]}, orb.Point{0, -off}, w)
	b.dimension(orb.Point{low[0], high[1]}, low, orb.Point{-off, 0}, h)
}

// dimension draws one between two points, moved off them: lines out, arrows at
// both ends, and the length in both units on either side of the line.
func (b *board) dimension(from, to, off orb.Point, mm float64) {
	l := b.s.Layer("DIMENSIONS")
	moved := func(p orb.Point, by float64) orb.Point { return sheet.Along(p, off, by) }
	thin := sheet.Solid(sheet.Grey, 0.25*b.k)
	l.Stroke(thin, moved(from, 0.1), moved(from, 1.1))
	l.Stroke(thin, moved(to, 0.1), moved(to, 1.1))
	from, to = moved(from, 1), moved(to, 1)
	middle := sheet.Between(from, to, 0.5)
	head := math.Min(4*b.k, mm/3)
	l.Arrow(sheet.Grey, 0.25*b.k, head, middle, from)
	l.Arrow(sheet.Grey, 0.25*b.k, head, middle, to)
	turn := 0.0
	if off[1] == 0 {
		turn = 90
	}
	first := sheet.Text{Height: 5 * b.k, Bold: true, Turn: turn, Words: length.MM(mm)}
	second := sheet.Text{Height: 4 * b.k, Turn: turn, Words: length.Inches(mm)}
	side := 1.0
	if turn == 90 {
		side = -1
	}
	inward := sheet.Towards(off, orb.Point{})
	l.Write(first.Centred(sheet.Along(middle, inward, 4.5*b.k*side)))
	l.Write(second.Centred(sheet.Along(middle, inward, -4*b.k*side)))
}

// arrows draws the 0° arrow along x and a second one along y, at a place in
// units.
func (b *board) arrows(x, y float64) {
	l := b.s.Layer("DATUM")
	l.Arrow(sheet.Black, 0.7*b.k, 4*b.k, b.at(x, y), b.at(x+30, y))
	l.Write(b.text(x+32, y-2.2, 4.4, true, "0° (x)"))
	l.Arrow(sheet.Black, 0.4*b.k, 3*b.k, b.at(x, y), b.at(x, y+20))
	l.Write(b.text(x+2.5, y+16, 4.4, false, "y"))
}
