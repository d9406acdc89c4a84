package check

import (
	"math"

	"github.com/paulmach/orb"
)

// edge is a side of an outline, from its lower to its higher end.
type edge struct {
	lo, hi orb.Point
	lean   float64 // change of x for each mm of y
	square float64 // turns a distance along the level into one square to the edge
	owner  int32

	bot, mid, top float64 // x in the slab at hand
}

// at gives x at level y.
func (e *edge) at(y float64) float64 {
	x := e.lo[0] + float64((y-e.lo[1])*e.lean)
	return math.Min(math.Max(x, math.Min(e.lo[0], e.hi[0])), math.Max(e.lo[0], e.hi[0]))
}

// addEdges appends the sides of a shape; sides along the level are left out,
// for they bound nothing between two levels.
func addEdges(to []edge, s shape, owner int32) []edge {
	for _, r := range s {
		for i, p := range r {
			q := r[(i+1)%len(r)]
			if p[1] == q[1] {
				continue
			}
			if p[1] > q[1] {
				p, q = q, p
			}
			dx, dy := q[0]-p[0], q[1]-p[1]
			to = append(to, edge{lo: p, hi: q, lean: dx / dy, square: dy / math.Hypot(dx, dy), owner: owner})
		}
	}
	return to
}

// room makes a list that holds the edges of all shapes without growing.
func room(shapes ...shape) []edge {
	n := 0
	for _, s := range shapes {
		for _, r := range s {
			n += len(r)
		}
	}
	return make([]edge, 0, n)
}
