package geometry

import (
	"math"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/planar"
)

// Region is one connected outline with holes, in mm. Rings are open (the first
// vertex is not repeated), the outer ring runs counter-clockwise, holes run
// clockwise; Oriented brings any region into that form. A Region is a value:
// no function alters the rings it is given. The zero Region is empty.
type Region struct {
	Outer orb.Ring   `json:"outer"`
	Holes []orb.Ring `json:"holes"`
}

// Empty says whether the region has no outline.
func (r Region) Empty() bool { return len(r.Outer) < 3 }

// Rings lists the outer ring and then the holes.
func (r Region) Rings() []orb.Ring {
	return append([]orb.Ring{r.Outer}, r.Holes...)
}

// Bounds gives the bounding box in mm.
func (r Region) Bounds() orb.Bound { return r.Outer.Bound() }

// Size gives width and height of the bounding box in mm.
func (r Region) Size() (w, h float64) {
	b := r.Bounds()
	return b.Max[0] - b.Min[0], b.Max[1] - b.Min[1]
}

// Area gives the area inside the outer ring less that of the holes, in mm².
func (r Region) Area() float64 {
	if r.Empty() {
		return 0
	}
	a := math.Abs(SignedArea(r.Outer))
	for _, h := range r.Holes {
		a -= math.Abs(SignedArea(h))
	}
	return a
}

// Contains says whether a point lies inside or on the edge of the region.
func (r Region) Contains(p orb.Point) bool {
	if r.Empty() || !planar.RingContains(r.Outer, p) {
		return false
	}
	for _, h := range r.Holes {
		if planar.RingContains(h, p) && !onRing(h, p) {
			return false
		}
	}
	return true
}

func onRing(r orb.Ring, p orb.Point) bool {
	for i := range r {
		if planar.DistanceFromSegment(r[i], r[(i+1)%len(r)], p) == 0 {
			return true
		}
	}
	return false
}

// Map moves every vertex by f, snaps it to the micrometre grid, drops vertices
// that fall together and orients the rings again.
func (r Region) Map(f func(orb.Point) orb.Point) Region {
	out := Region{Outer: mapRing(r.Outer, f)}
	for _, h := range r.Holes {
		if m := mapRing(h, f); len(m) >= 3 {
			out.Holes = append(out.Holes, m)
		}
	}
	return out.Oriented()
}

// In gives the region in another frame, snapped to the micrometre grid.
func (r Region) In(f Frame) Region { return r.Map(f.Apply) }

// Snapped gives the region with every vertex on the micrometre grid.
func (r Region) Snapped() Region { return r.Map(func(p orb.Point) orb.Point { return p }) }

func mapRing(r orb.Ring, f func(orb.Point) orb.Point) orb.Ring {
	out := make(orb.Ring, 0, len(r))
	for _, p := range r {
		q := f(p)
		q = orb.Point{Snap(q[0]), Snap(q[1])}
		if len(out) == 0 || out[len(out)-1] != q {
			out = append(out, q)
		}
	}
	for len(out) > 1 && out[0] == out[len(out)-1] {
		out = out[:len(out)-1]
	}
	return out
}

// Oriented gives the region with its outer ring counter-clockwise, its holes
// clockwise and all rings open.
func (r Region) Oriented() Region {
	out := Region{Outer: orientRing(r.Outer, true)}
	for _, h := range r.Holes {
		out.Holes = append(out.Holes, orientRing(h, false))
	}
	return out
}

func orientRing(r orb.Ring, ccw bool) orb.Ring {
	n := len(r)
	if n > 1 && r[0] == r[n-1] {
		n--
	}
	out := make(orb.Ring, n)
	copy(out, r[:n])
	if (SignedArea(out) > 0) != ccw {
		for i, j := 0, n-1; i < j; i, j = i+1, j-1 {
			out[i], out[j] = out[j], out[i]
		}
	}
	return out
}

// SignedArea gives a ring's area in mm², positive when it runs
// counter-clockwise; taken about its first vertex, so that a far origin costs
// no digits.
func SignedArea(r orb.Ring) float64 {
	if len(r) < 3 {
		return 0
	}
	o, sum := r[0], 0.0
	for i := 1; i+1 < len(r); i++ {
		ax, ay := r[i][0]-o[0], r[i][1]-o[1]
		bx, by := r[i+1][0]-o[0], r[i+1][1]-o[1]
		sum += float64(ax*by) - float64(bx*ay)
	}
	return sum / 2
}
