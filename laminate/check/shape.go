package check

import (
	"math"

	"github.com/paulmach/orb"

	"stripwright/geometry"
)

// shape is a region in some frame: rings with the cloth on their left.
type shape [][]orb.Point

// shapeIn turns a region by a frame. Coordinates are rounded to a millionth of
// a millimetre, far below the tolerance, so that equal points stay equal and
// points of one level share it exactly.
func shapeIn(r geometry.Region, f geometry.Frame) shape {
	s := make(shape, 0, 1+len(r.Holes))
	s = append(s, ringIn(r.Outer, f, true))
	for _, h := range r.Holes {
		s = append(s, ringIn(h, f, false))
	}
	return s
}

func ringIn(r orb.Ring, f geometry.Frame, ccw bool) []orb.Point {
	out := make([]orb.Point, 0, len(r))
	for _, p := range r {
		q := f.Apply(p)
		q = orb.Point{fine(q[0]), fine(q[1])}
		if n := len(out); n == 0 || out[n-1] != q {
			out = append(out, q)
		}
	}
	for len(out) > 1 && out[0] == out[len(out)-1] {
		out = out[:len(out)-1]
	}
	if (geometry.SignedArea(out) > 0) != ccw {
		for i, j := 0, len(out)-1; i < j; i, j = i+1, j-1 {
			out[i], out[j] = out[j], out[i]
		}
	}
	return out
}

// fine rounds to 1e-6 mm and drops the sign of zero.
func fine(v float64) float64 { return math.Round(float64(v*1e6))/1e6 + 0 }

// bounds gives the least and the largest coordinates.
func (s shape) bounds() (lo, hi orb.Point) {
	lo, hi = orb.Point{math.Inf(1), math.Inf(1)}, orb.Point{math.Inf(-1), math.Inf(-1)}
	for _, r := range s {
		for _, p := range r {
			for k := range p {
				lo[k], hi[k] = math.Min(lo[k], p[k]), math.Max(hi[k], p[k])
			}
		}
	}
	return lo, hi
}

// around gives the length of all rings.
func (s shape) around() float64 {
	sum := 0.0
	for _, r := range s {
		for i, p := range r {
			q := r[(i+1)%len(r)]
			sum += math.Hypot(q[0]-p[0], q[1]-p[1])
		}
	}
	return sum
}

// moved gives the shape shifted by d.
func (s shape) moved(d orb.Point) shape {
	out := make(shape, len(s))
	for i, r := range s {
		m := make([]orb.Point, len(r))
		for k, p := range r {
			m[k] = orb.Point{p[0] + d[0], p[1] + d[1]}
		}
		out[i] = m
	}
	return out
}

// sameRegion says whether two regions have the same rings, vertex by vertex.
func sameRegion(a, b geometry.Region) bool {
	if !sameRing(a.Outer, b.Outer) || len(a.Holes) != len(b.Holes) {
		return false
	}
	for i := range a.Holes {
		if !sameRing(a.Holes[i], b.Holes[i]) {
			return false
		}
	}
	return true
}

func sameRing(a, b orb.Ring) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if math.Abs(a[i][0]-b[i][0]) > tolerance || math.Abs(a[i][1]-b[i][1]) > tolerance {
			return false
		}
	}
	return true
}
