package layup

import (
	"math"

	"github.com/paulmach/orb"

	"stripwright/geometry"
)

// within answers whether points lie inside a region, for many points: edges are
// kept by levels of y.
type within struct {
	low, step float64
	levels    [][][2]orb.Point
}

// levelCount is how many levels a region is cut into.
const levelCount = 128

func newWithin(r geometry.Region) *within {
	w := &within{levels: make([][][2]orb.Point, levelCount)}
	if r.Empty() {
		return w
	}
	b := r.Bounds()
	w.low, w.step = b.Min[1], math.Max((b.Max[1]-b.Min[1])/levelCount, 1e-6)
	for _, ring := range r.Rings() {
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			for l := w.level(math.Min(p[1], q[1])); l <= w.level(math.Max(p[1], q[1])); l++ {
				w.levels[l] = append(w.levels[l], [2]orb.Point{p, q})
			}
		}
	}
	return w
}

func (w *within) level(y float64) int {
	l := int(math.Floor((y - w.low) / w.step))
	return max(0, min(levelCount-1, l))
}

// contains says whether a point lies inside; on the edge it may say either.
func (w *within) contains(p orb.Point) bool {
	inside := false
	for _, e := range w.levels[w.level(p[1])] {
		a, b := e[0], e[1]
		if (a[1] > p[1]) != (b[1] > p[1]) && p[0] < a[0]+float64((p[1]-a[1])/(b[1]-a[1])*(b[0]-a[0])) {
			inside = !inside
		}
	}
	return inside
}
