package sheet

import (
	"math"

	"github.com/paulmach/orb"
)

// onEdgeMM takes a point that lies this close to an edge for one on it: places
// are rounded to 0.001 mm.
const onEdgeMM = 0.006

// Pennant marks the datum corner: a pole upwards, 16 k high, with a flag to the
// right. It looks the same from no other side, turned or mirrored.
func Pennant(l *Layer, at orb.Point, k float64) {
	shape := []orb.Point{{0, 0}, {0, 16}, {10, 12.5}, {1.4, 9}, {1.4, 0}}
	points := make([]orb.Point, len(shape))
	for i, p := range shape {
		points[i] = Along(at, p, k)
	}
	l.Area(Solid(White, 0.5*k), Fill{Ink: Black}, points...)
}

// CornerMark letters a corner in a ring at the end of a line from it; the datum
// white on black.
func CornerMark(l *Layer, at, ring orb.Point, k float64, name string, datum bool) {
	letter := Text{Height: 4.4 * k, Bold: true, Words: name}.Centred(ring)
	fill := Fill{Ink: White}
	if datum {
		fill.Ink, letter.Ink = Black, White
	}
	l.Stroke(Solid(Black, 0.25*k), at, ring)
	l.Disc(Solid(Black, 0.5*k), fill, ring, 4.4*k)
	l.Write(letter)
}

// Outward gives the direction away from the inside of an outline at a point of
// it: between the normals of the edges that meet there. The ring is open and
// runs counter-clockwise; for a point that lies on no edge it is downwards.
func Outward(ring orb.Ring, p orb.Point) orb.Point {
	var sum orb.Point
	for i, q := range ring {
		r := ring[(i+1)%len(ring)]
		d := Towards(q, r)
		dx, dy := p[0]-q[0], p[1]-q[1]
		t := float64(d[0]*dx) + float64(d[1]*dy)
		off := float64(d[0]*dy) - float64(d[1]*dx)
		if math.Abs(off) < onEdgeMM && t > -onEdgeMM && t < math.Hypot(r[0]-q[0], r[1]-q[1])+onEdgeMM {
			sum = orb.Point{sum[0] + d[1], sum[1] - d[0]}
		}
	}
	if math.Hypot(sum[0], sum[1]) < 1e-6 {
		return orb.Point{0, -1}
	}
	return Towards(orb.Point{}, sum)
}
