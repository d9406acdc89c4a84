package job

import (
	"math"

	"github.com/paulmach/orb"
	"gopkg.in/yaml.v3"

	"stripwright/geometry"
	"stripwright/geometry/thin"
)

const (
	// dense is the number of vertices from which a ring is thinned.
	dense = 3000
	// thinnedMM is how far a thinned edge may run from a vertex it leaves out: far
	// below what a cutter holds, and below the chord error of curves.
	thinnedMM = 0.02
)

// thinned leaves out vertices of very densely drawn rings, such as scanned ones,
// that lie within thinnedMM of the edge without them, and says so. A ring that
// would cross itself is left as it is.
func (r *reading) thinned(at *yaml.Node, g geometry.Region) geometry.Region {
	out, before, after := geometry.Region{Outer: thinRing(g.Outer)}, len(g.Outer), 0
	for _, h := range g.Holes {
		before += len(h)
		out.Holes = append(out.Holes, thinRing(h))
	}
	for _, ring := range out.Rings() {
		after += len(ring)
	}
	if after == before {
		return g
	}
	if _, found := geometry.Crossing(out.Rings()...); found {
		return g
	}
	r.note(at, "outline", "drawn with %d points: laid out with %d of them, within %v mm of the rest", before, after, thinnedMM)
	return out
}

// thinRing thins a ring of very many points, from two far apart vertices on.
func thinRing(ring orb.Ring) orb.Ring {
	n := len(ring)
	if n < dense {
		return ring
	}
	far := 0
	for i := range ring {
		if apartSquared(ring[i], ring[0]) > apartSquared(ring[far], ring[0]) {
			far = i
		}
	}
	keep := make([]bool, n)
	keep[0], keep[far] = true, true
	stays := func(i int) { keep[i] = true }
	off := func(a, b, i int) float64 { return fromEdge(ring[i], ring[a], ring[b%n]) }
	thin.Run(0, far, thinnedMM, off, stays)
	thin.Run(far, n, thinnedMM, off, stays)
	var out orb.Ring
	for i, p := range ring {
		if keep[i] {
			out = append(out, p)
		}
	}
	return out
}

func apartSquared(p, q orb.Point) float64 {
	dx, dy := p[0]-q[0], p[1]-q[1]
	return float64(dx*dx) + float64(dy*dy)
}

// fromEdge gives the distance of c from the edge from p to q.
func fromEdge(c, p, q orb.Point) float64 {
	dx, dy := q[0]-p[0], q[1]-p[1]
	t := 0.0
	if n := float64(dx*dx) + float64(dy*dy); n > 0 {
		t = min(max((float64((c[0]-p[0])*dx)+float64((c[1]-p[1])*dy))/n, 0), 1)
	}
	return math.Sqrt(apartSquared(c, orb.Point{p[0] + float64(t*dx), p[1] + float64(t*dy)}))
}
