package svg

import (
	"math"

	"github.com/paulmach/orb"

	"stripwright/geometry/curve"
)

// arc reads rx ry turn large-flag sweep-flag x y and draws the elliptic arc.
func (p *pen) arc(from orb.Point) error {
	var n [5]float64 // rx, ry, turn, x, y
	var flags [2]bool
	for i := range 7 {
		if i > 0 {
			p.s.comma()
		}
		var err error
		switch {
		case i < 3:
			n[i], err = p.s.number()
		case i < 5:
			flags[i-3], err = p.s.flag()
		default:
			n[i-2], err = p.s.number()
		}
		if err != nil {
			return err
		}
	}
	to := orb.Point{from[0] + n[3], from[1] + n[4]}
	p.add(arcPoints(p.at, to, math.Abs(n[0]), math.Abs(n[1]), n[2], flags[0], flags[1], p.chord))
	return nil
}

// arcPoints turns the ends of an elliptic arc into its centre and angles: SVG 2,
// appendix B.2.4, with the corrections of B.2.5 (no radius: a straight line;
// radii too small: grown until they reach).
func arcPoints(a, b orb.Point, rx, ry, turn float64, large, sweep bool, chord float64) []orb.Point {
	if a == b || rx == 0 || ry == 0 {
		return []orb.Point{a, b}
	}
	sin, cos := math.Sincos(math.Mod(turn, 360) * math.Pi / 180)
	dx, dy := (a[0]-b[0])/2, (a[1]-b[1])/2
	x := (float64(cos*dx) + float64(sin*dy)) / rx // half the chord in a frame where
	y := (float64(cos*dy) - float64(sin*dx)) / ry // the ellipse is a unit circle
	l := float64(x*x) + float64(y*y)
	if grow := math.Sqrt(l); grow > 1 {
		rx, ry, x, y, l = rx*grow, ry*grow, x/grow, y/grow, 1
	}
	off := 0.0
	if l > 0 {
		off = math.Sqrt(math.Max(0, 1-l) / l)
	}
	if large == sweep {
		off = -off
	}
	cx, cy := float64(off*y), float64(-off*x) // centre, from the middle of the chord
	from := math.Atan2(y-cy, x-cx)
	angle := math.Atan2(-y-cy, -x-cx) - from
	switch {
	case sweep && angle < 0:
		angle += 2 * math.Pi
	case !sweep && angle > 0:
		angle -= 2 * math.Pi
	}
	u, v := orb.Point{cos * rx, sin * rx}, orb.Point{-sin * ry, cos * ry}
	centre := orb.Point{
		float64((a[0]+b[0])/2) + (float64(u[0]*cx) + float64(v[0]*cy)),
		float64((a[1]+b[1])/2) + (float64(u[1]*cx) + float64(v[1]*cy)),
	}
	points := curve.Ellipse(centre, u, v, from, angle, chord)
	if len(points) < 2 {
		return []orb.Point{a, b}
	}
	points[0], points[len(points)-1] = a, b
	return points
}
