package outline

import (
	"fmt"
	"math"
	"strings"

	"stripwright/geometry"
	"stripwright/geometry/length"
	"stripwright/output/sheet"
)

// Clear is what is kept clear of joints: where it comes from ("layer BOLTS"),
// what was found there, and what is kept clear, grown by GrowMM.
type Clear struct {
	From        string
	GrowMM      float64
	Found, Kept []geometry.Region
}

// Words gives the number of regions and their sizes: "layer BOLTS: 4 regions
// (4 of 9 mm across), grown by 15 mm".
func (c Clear) Words() string {
	words := c.From + ": " + sheet.Counted(len(c.Found), "region", "regions") + c.sizes()
	if c.GrowMM > 0 {
		words += ", grown by " + length.MM(c.GrowMM)
	}
	return words
}

// sizes lists the sizes to the tenth of a millimetre, with how many are of each,
// in the order in which they come.
func (c Clear) sizes() string {
	const most = 8
	var order []string
	count := map[string]int{}
	for _, g := range c.Found {
		w, h := g.Size()
		w, h = math.Round(w*10)/10, math.Round(h*10)/10
		size := pair(length.MM, w, h)
		if math.Abs(w-h) < 0.15 { // a circle, turned into points
			size = length.MM(max(w, h)) + " across"
		}
		if count[size]++; count[size] == 1 {
			order = append(order, size)
		}
	}
	var out []string
	for i, size := range order {
		if i == most {
			out = append(out, fmt.Sprintf("and %d other sizes", len(order)-most))
			break
		}
		out = append(out, fmt.Sprintf("%d of %s", count[size], size))
	}
	if len(out) == 0 {
		return ""
	}
	return " (" + strings.Join(out, ", ") + ")"
}

// kept draws what is kept clear, hatched, over the regions, with the edge of
// what was found inside it.
func (b *board) kept() {
	if len(b.Clear) == 0 {
		return
	}
	l := b.s.Layer("KEEP CLEAR")
	hatch := sheet.Fill{Ink: sheet.Grey, Spacing: 2 * b.k, Width: 0.2 * b.k}
	for _, c := range b.Clear {
		for i, g := range c.Kept {
			pen := sheet.Solid(sheet.Black, 0.35*b.k)
			pen.Dash = [6]float64{2 * b.k, 1.2 * b.k}
			l.Region(pen, hatch, g, b.place)
			if c.GrowMM > 0 {
				l.Region(sheet.Solid(sheet.Black, 0.3*b.k), sheet.Fill{}, c.Found[i], b.place)
			}
		}
	}
}
