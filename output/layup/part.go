package layup

import (
	"math"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/sheet"
)

// outlines draws blank and net edge, the line that is measured along, and any
// outline of a ply's own.
func (b *board) outlines(own *laminate.PlanPly) {
	l := b.s.Layer("OUTLINE")
	blank := sheet.Pen{Ink: sheet.Grey, Width: 0.35 * b.k, Dash: [6]float64{2.4 * b.k, 1.2 * b.k}}
	l.Region(blank, sheet.Fill{}, b.plan.Part.Blank, b.place)
	if own != nil && own.Outline != "" {
		l.Region(sheet.Solid(sheet.Black, 0.4*b.k), sheet.Fill{}, own.Blank, b.place)
	}
	l.Region(netPen(b.k), sheet.Fill{}, b.plan.Part.Net, b.place)
}

// corners draws the named corners, each in a ring outside the blank, and the
// datum: a pennant, which looks the same from no other side.
func (b *board) corners() {
	l := b.s.Layer("DATUM")
	edge := newNetEdge(b.plan.Part)
	for i, c := range b.plan.Part.Corners {
		at := b.place(orb.Point(c.At))
		out := edge.cornerOutward(orb.Point(c.At))
		far := float64(b.plan.Part.TrimMM*1.5) + float64(6.5*b.k)
		letter := sheet.Text{Height: 4.4 * b.k, Bold: true, Words: c.Name}
		ring := sheet.Along(at, out, far)
		letter = letter.Centred(ring)
		fill := sheet.Fill{Ink: sheet.White}
		if i == 0 {
			fill.Ink, letter.Ink = sheet.Black, sheet.White
		}
		l.Stroke(sheet.Solid(sheet.Black, 0.25*b.k), at, ring)
		l.Disc(sheet.Solid(sheet.Black, 0.5*b.k), fill, ring, 4.4*b.k)
		l.Write(letter)
		b.room.take(orb.Bound{Min: sheet.Along(ring, orb.Point{1, 1}, -4.8*b.k), Max: sheet.Along(ring, orb.Point{1, 1}, 4.8*b.k)})
		if i == 0 {
			b.pennant(at)
		}
	}
}

// pennant marks the datum corner: a pole upwards with a flag to the right.
func (b *board) pennant(at orb.Point) {
	box := b.plan.Part.Net.Bounds()
	k := math.Max(0.45*b.k, math.Min(b.k, (box.Max[1]-box.Min[1])/32))
	shape := []orb.Point{{0, 0}, {0, 16}, {10, 12.5}, {1.4, 9}, {1.4, 0}}
	points := make([]orb.Point, len(shape))
	for i, p := range shape {
		points[i] = sheet.Along(at, p, k)
	}
	b.s.Layer("DATUM").Area(sheet.Solid(sheet.White, 0.5*k), sheet.Fill{Ink: sheet.Black}, points...)
	b.room.take(orb.Bound{Min: at, Max: sheet.Along(at, orb.Point{10, 16}, k)})
}

// cornerOutward gives the direction away from the part at a point of the net
// edge: between the normals of the edges that meet there.
func (e *netEdge) cornerOutward(p orb.Point) orb.Point {
	var sum orb.Point
	for i, q := range e.ring {
		r := e.next(i)
		d := sheet.Towards(q, r)
		t := dot(d, minus(p, q))
		if math.Abs(cross(d, minus(p, q))) < onLineMM*3 && t > -onLineMM*3 && t < distance(q, r)+onLineMM*3 {
			n := e.outward(i)
			sum = orb.Point{sum[0] + n[0], sum[1] + n[1]}
		}
	}
	if math.Hypot(sum[0], sum[1]) < 1e-6 {
		return orb.Point{0, -1}
	}
	return sheet.Towards(orb.Point{}, sum)
}
