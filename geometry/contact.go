package geometry

import (
	"cmp"
	"math"
	"math/bits"
)

// compare notes where two edges cross, overlap, or pass through each other at
// a vertex.
func (s *crossingSearch) compare(e, f *edge) {
	if e.minX > f.maxX || f.minX > e.maxX || e.minY > f.maxY || f.minY > e.maxY {
		return
	}
	ea, eb := side(f.a, f.b, e.a), side(f.a, f.b, e.b)
	fa, fb := side(e.a, e.b, f.a), side(e.a, e.b, f.b)
	switch {
	case ea == 0 && eb == 0:
		s.compareInLine(e, f)
	case ea*eb < 0 && fa*fb < 0:
		s.note(crossPoint(e, f))
	case ea == 0 && fa*fb <= 0 && e.a != f.b:
		s.comparePasses(e.a, e, f)
	case fa == 0 && ea*eb <= 0 && f.a != e.b:
		s.comparePasses(f.a, e, f)
	}
}

// compareInLine notes the lowest point that two edges of one line share, if
// they share more than a point.
func (s *crossingSearch) compareInLine(e, f *edge) {
	lowX, lowY := max(e.minX, f.minX), max(e.minY, f.minY)
	highX, highY := min(e.maxX, f.maxX), min(e.maxY, f.maxY)
	if lowX < highX || lowY < highY {
		x := lowX
		if e.maxX-e.minX > 0 && e.maxY-e.minY > 0 && (e.b.x-e.a.x > 0) != (e.b.y-e.a.y > 0) {
			x = highX // the line falls to the right: its lowest point is its rightmost
		}
		s.note(float64(x), float64(lowY))
		return
	}
	if e.a == f.a {
		s.comparePasses(e.a, e, f)
	}
}

// ahead says whether, on one line through o, p and q lie on the same side of o.
func ahead(o, p, q gridPoint) bool {
	return sign(p.x-o.x) == sign(q.x-o.x) && sign(p.y-o.y) == sign(q.y-o.y)
}

// comparePasses looks at the two passes through p, each coming in on one ray
// and leaving on another, and notes p when they change sides:
//
//	f out  e out             e in  f in
//	    \  /                     \ /
//	     p      crossing          p      touch
//	    /  \                     / \
//	e in    f in             e out  f out
func (s *crossingSearch) comparePasses(p gridPoint, e, f *edge) {
	e1, e2, ok := e.rays(p)
	f1, f2, ok2 := f.rays(p)
	if !ok || !ok2 {
		return
	}
	for _, r := range []gridPoint{f1, f2} {
		if sameRay(p, e1, r) || sameRay(p, e2, r) {
			return // the edges along that ray overlap and are found as such
		}
	}
	if between(p, e1, e2, f1) != between(p, e1, e2, f2) {
		s.note(float64(p.x), float64(p.y))
	}
}

// rays gives the vertices before and after p on the edge's ring; not ok when p
// ends the edge, as the next edge then begins there and is looked at itself.
func (e *edge) rays(p gridPoint) (in, out gridPoint, ok bool) {
	switch p {
	case e.a:
		return e.before, e.b, true
	case e.b:
		return in, out, false
	}
	return e.a, e.b, true
}

func sameRay(o, p, q gridPoint) bool { return side(o, p, q) == 0 && ahead(o, p, q) }

// between says whether the ray from o to q lies in the sector that runs
// counter-clockwise from p1 to p2.
func between(o, p1, p2, q gridPoint) bool {
	if side(o, p1, p2) > 0 || (side(o, p1, p2) == 0 && !ahead(o, p1, p2)) {
		return side(o, p1, q) > 0 && (side(o, q, p2) > 0 || side(o, p1, p2) == 0)
	}
	return !(side(o, p2, q) > 0 && side(o, q, p1) > 0)
}

// side is 1 when c lies left of the line from a to b, -1 right of it, 0 on it;
// exact.
func side(a, b, c gridPoint) int {
	ux, uy, vx, vy := b.x-a.x, b.y-a.y, c.x-a.x, c.y-a.y
	const safe = 1 << 30
	if abs(ux) < safe && abs(uy) < safe && abs(vx) < safe && abs(vy) < safe {
		return sign(ux*vy - uy*vx)
	}
	return wideProduct(ux, vy).compare(wideProduct(uy, vx))
}

// wide is a signed product of two coordinates in 128 bits.
type wide struct {
	high int64
	low  uint64
}

func wideProduct(a, b int64) wide {
	high, low := bits.Mul64(uint64(abs(a)), uint64(abs(b)))
	if (a < 0) == (b < 0) {
		return wide{int64(high), low}
	}
	low, borrow := bits.Sub64(0, low, 0)
	high, _ = bits.Sub64(0, high, borrow)
	return wide{int64(high), low}
}

func (w wide) compare(v wide) int {
	if w.high != v.high {
		return cmp.Compare(w.high, v.high)
	}
	return cmp.Compare(w.low, v.low)
}

// crossPoint gives the point where two edges that cross do so, in whole
// micrometres, the same whichever edge is named first.
func crossPoint(e, f *edge) (x, y float64) {
	if cmp.Or(cmp.Compare(e.minY, f.minY), cmp.Compare(e.minX, f.minX), e.a.compare(f.a)) < 0 {
		e, f = f, e
	}
	ux, uy := float64(e.b.x-e.a.x), float64(e.b.y-e.a.y)
	vx, vy := float64(f.b.x-f.a.x), float64(f.b.y-f.a.y)
	wx, wy := float64(f.a.x-e.a.x), float64(f.a.y-e.a.y)
	t := (float64(wx*vy) - float64(wy*vx)) / (float64(ux*vy) - float64(uy*vx))
	x = float64(e.a.x) + math.Round(float64(t*ux))
	y = float64(e.a.y) + math.Round(float64(t*uy))
	return x, y
}

func sign(v int64) int {
	switch {
	case v > 0:
		return 1
	case v < 0:
		return -1
	}
	return 0
}

func abs(v int64) int64 { return max(v, -v) }
