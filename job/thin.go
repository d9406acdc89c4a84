package job

import (
	"math"

	"github.com/paulmach/orb"
	"gopkg.in/yaml.v3"

	"stripwright/geometry"
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
	out, before, after := geometry.Region{Outer: thin(g.Outer)}, len(g.Outer), 0
	for _, h := range g.Holes {
		before += len(h)
		out.Holes = append(out.Holes, thin(h))
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

// thin keeps the vertices that Douglas and Peucker's method keeps (The Canadian
// Cartographer 10, 1973, from memory), from two opposite vertices on.
func thin(ring orb.Ring) orb.Ring {
	n := len(ring)
	if n < dense {
		return ring
	}
	keep := make([]bool, n+1)
	first, far := 0, 0
	for i := range ring {
		if apartSquared(ring[i], ring[first]) > apartSquared(ring[far], ring[first]) {
			far = i
		}
	}
	keep[0], keep[far], keep[n] = true, true, true
	stretches := [][2]int{{0, far}, {far, n}}
	for len(stretches) > 0 {
		s := stretches[len(stretches)-1]
		stretches = stretches[:len(stretches)-1]
		most, at := 0.0, 0
		for i := s[0] + 1; i < s[1]; i++ {
			if d := fromEdge(ring[i], ring[s[0]], ring[s[1]%n]); d > most {
				most, at = d, i
			}
		}
		if most > thinnedMM {
			keep[at] = true
			stretches = append(stretches, [2]int{s[0], at}, [2]int{at, s[1]})
		}
	}
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
