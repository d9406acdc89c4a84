package outline

import (
	"math"
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/geometry/length"
	"stripwright/laminate"
	"stripwright/output/sheet"
)

// cloth is the ink of what is inside an outline.
const cloth = "#DCE6EE"

// regions draws the largest first, so that one that lies in a hole of another is
// seen.
func (b *board) regions() {
	l := b.s.Layer("OUTLINE")
	for _, r := range b.Drawing.Regions {
		l.Region(sheet.Solid(sheet.Black, 0.6*b.k), sheet.Fill{Ink: cloth}, r, b.place)
	}
	alone := len(b.Drawing.Regions) == 1
	for i, r := range b.Drawing.Regions {
		b.corners(r, alone)
		if !alone || b.Which > 0 {
			b.number(r, b.numberOf(i))
		}
	}
}

// numberOf gives the number by which the option --which takes region i.
func (r Reading) numberOf(i int) int {
	if r.Which > 0 {
		return r.Which
	}
	return i + 1
}

// corners marks the datum of a region with its pennant and, of one that stands
// alone, letters the corners as lay-up sheets do.
func (b *board) corners(r geometry.Region, letters bool) {
	l := b.s.Layer("DATUM")
	ring := r.Oriented().Outer
	for i, c := range laminate.NamedCorners(r) {
		corner := orb.Point(c.At)
		at := b.place(corner)
		if letters {
			out := sheet.Outward(ring, corner)
			sheet.CornerMark(l, at, sheet.Along(at, out, 8.5*b.k), b.k, c.Name, i == 0)
		}
		if i == 0 {
			most := 0.6 * b.k
			if letters {
				most = b.k
			}
			_, h := r.Size()
			sheet.Pennant(l, at, math.Max(0.3*b.k, math.Min(most, h/32)))
		}
	}
}

// number writes the number of a region and under it its size inside, where
// there is room; else the number alone, inside or to the right above it.
func (b *board) number(r geometry.Region, number int) {
	l := b.s.Layer("NUMBERS")
	w, h := r.Size()
	big := sheet.Text{Height: 1, Bold: true, Words: strconv.Itoa(number)}
	under := []string{pair(length.MM, w, h), pair(length.Inches, w, h)}
	ratio := 0.0
	for _, words := range under {
		ratio = math.Max(ratio, 0.22*sheet.Text{Height: 1, Words: words}.Width())
	}
	if at, high := sheet.Spot(r, ratio, 24*b.k, 9*b.k); high > 0 {
		at = b.place(at)
		big.Height = 0.4 * high
		l.Write(big.Centred(orb.Point{at[0], at[1] + float64(0.28*high)}))
		for i, words := range under {
			t := sheet.Text{Height: 0.18 * high, Words: words}
			l.Write(t.Centred(orb.Point{at[0], at[1] - float64((0.12+float64(0.28*float64(i)))*high)}))
		}
		return
	}
	if at, high := sheet.Spot(r, big.Width(), 10*b.k, 4*b.k); high > 0 {
		big.Height = 0.7 * high
		l.Write(big.Centred(b.place(at)))
		return
	}
	big.Height = 4 * b.k
	big.At = sheet.Along(b.place(r.Bounds().Max), orb.Point{1, 1}, b.k)
	l.Write(big)
}
