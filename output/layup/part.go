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
	l.Region(blankPen(b.k), sheet.Fill{}, b.plan.Part.Blank, b.place)
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
		out := sheet.Outward(edge.ring, orb.Point(c.At))
		far := float64(b.trim()*1.5) + float64(6.5*b.k)
		ring := sheet.Along(at, out, far)
		if !b.room.inside(ring.Bound().Pad(4.8 * b.k)) {
			continue // of another view
		}
		sheet.CornerMark(l, at, ring, b.k, c.Name, i == 0)
		b.room.take(orb.Bound{Min: sheet.Along(ring, orb.Point{1, 1}, -4.8*b.k), Max: sheet.Along(ring, orb.Point{1, 1}, 4.8*b.k)})
		if i == 0 {
			b.pennant(at)
		}
	}
}

// pennant marks the datum corner, smaller on a low part.
func (b *board) pennant(at orb.Point) {
	box := b.plan.Part.Net.Bounds()
	k := math.Max(0.45*b.k, math.Min(b.k, (box.Max[1]-box.Min[1])*b.scale/32))
	sheet.Pennant(b.s.Layer("DATUM"), at, k)
	b.room.take(orb.Bound{Min: at, Max: sheet.Along(at, orb.Point{10, 16}, k)})
}
