package geometry

import (
	"cmp"
	"math"
	"slices"

	"github.com/paulmach/orb"
)

// Crossing finds the lowest place, and of equally low ones the leftmost, where
// the rings run across one another or lie on one another: two edges that cross,
// two that overlap, an edge that folds back on the one before it, or two
// passes through one point that change sides there. A pure touch, a ring that
// comes to a point of another (or of itself) and leaves on the same side, is
// not a crossing:
//
//	 \   /            \   /
//	  \ /              \ /
//	---x---  touch   ---x---  crossing
//	                   / \
//
// Rings may be open or closed; points that repeat the one before are ignored,
// and so are rings of fewer than two different points. Everything is judged on
// whole micrometres, so that the answer is exact and the same on every machine;
// coordinates must be finite and within 4,000 km of the origin, beyond that
// they are taken as lying there.
//
// The time taken is that of sorting the edges (n log n) where no two of them
// meet but at their common vertex; where some do, it stays so as long as few
// edges lie beside one another in at least one of four directions.
func Crossing(rings ...orb.Ring) (at orb.Point, found bool) {
	grid := make([][]gridPoint, len(rings))
	for i, r := range rings {
		grid[i] = gridRing(r)
	}
	sweep := newClearSweep(grid)
	first, meets := sweep.run()
	if !meets {
		return orb.Point{}, false
	}
	s := crossingSearch{edges: edgesOf(grid, first.height)}
	if first.e != none && first.f != none {
		// A crossing, if it is one, above which none need be looked for.
		s.compare(sweep.whole(first.e), sweep.whole(first.f))
	}
	s.run(s.axis())
	if !s.found {
		return orb.Point{}, false
	}
	return orb.Point{Snap(s.best[0] / 1000), Snap(s.best[1] / 1000)}, true
}

// crossingSearch holds the edges and the lowest crossing found so far, in
// micrometres.
type crossingSearch struct {
	edges []edge
	best  [2]float64
	found bool
}

// gridPoint is a vertex in whole micrometres.
type gridPoint struct{ x, y int64 }

// edge runs from a to b; before and after are the vertices on either side.
type edge struct {
	a, b, before, after    gridPoint
	minX, minY, maxX, maxY int64
}

// edgesOf lists the edges that reach a height or lie above it.
func edgesOf(rings [][]gridPoint, height int64) []edge {
	var out []edge
	for _, g := range rings {
		n := len(g)
		if n < 2 {
			continue
		}
		for i := range g {
			if a, b := g[i], g[(i+1)%n]; max(a.y, b.y) >= height {
				out = append(out, newEdge(g[(i+n-1)%n], a, b, g[(i+2)%n]))
			}
		}
	}
	return out
}

func newEdge(before, a, b, after gridPoint) edge {
	return edge{
		a: a, b: b, before: before, after: after,
		minX: min(a.x, b.x), minY: min(a.y, b.y),
		maxX: max(a.x, b.x), maxY: max(a.y, b.y),
	}
}

func gridRing(r orb.Ring) []gridPoint {
	out := make([]gridPoint, 0, len(r))
	for _, p := range r {
		q := gridPoint{gridCoordinate(p[0]), gridCoordinate(p[1])}
		if len(out) == 0 || out[len(out)-1] != q {
			out = append(out, q)
		}
	}
	for len(out) > 1 && out[0] == out[len(out)-1] {
		out = out[:len(out)-1]
	}
	return out
}

// farthest is 4,000 km in micrometres: sums of two still fit in an int64.
const farthest = 4e12

func gridCoordinate(mm float64) int64 {
	v := math.Round(float64(mm * 1000))
	if !(v > -farthest) { // NaN as well
		return -farthest
	}
	return int64(math.Min(v, farthest))
}

// span gives an edge's shadow on one of the four directions: y, x, x+y, x-y.
func (e *edge) span(axis int) (from, to int64) {
	switch axis {
	case 0:
		return e.minY, e.maxY
	case 1:
		return e.minX, e.maxX
	case 2:
		a, b := e.a.x+e.a.y, e.b.x+e.b.y
		return min(a, b), max(a, b)
	}
	a, b := e.a.x-e.a.y, e.b.x-e.b.y
	return min(a, b), max(a, b)
}

// axis chooses the direction in which the fewest edges lie beside one another;
// upward is kept while it is good enough, as the search can then stop early.
func (s *crossingSearch) axis() int {
	best, least := 0, s.beside(0)
	for axis := 1; axis < 4 && least > 64*len(s.edges); axis++ {
		if n := s.beside(axis); n < least/4 {
			best, least = axis, n
		}
	}
	return best
}

// beside counts the pairs of edges whose shadows on an axis overlap.
func (s *crossingSearch) beside(axis int) int {
	from, to := make([]int64, len(s.edges)), make([]int64, len(s.edges))
	for i := range s.edges {
		from[i], to[i] = s.edges[i].span(axis)
	}
	slices.Sort(from)
	slices.Sort(to)
	pairs, ended := 0, 0
	for i := range from {
		for to[ended] < from[i] {
			ended++
		}
		pairs += i - ended
	}
	return pairs
}

// run sweeps along the axis and holds every edge against those still beside
// it.
func (s *crossingSearch) run(axis int) {
	order := make([]int, len(s.edges))
	from, to := make([]int64, len(s.edges)), make([]int64, len(s.edges))
	for i := range order {
		order[i] = i
		from[i], to[i] = s.edges[i].span(axis)
	}
	slices.SortFunc(order, func(i, j int) int { return cmp.Compare(from[i], from[j]) })
	var beside []int
	for _, i := range order {
		e := &s.edges[i]
		if s.above(e) {
			continue
		}
		keep := beside[:0]
		for _, j := range beside {
			if to[j] < from[i] || s.above(&s.edges[j]) {
				continue
			}
			keep = append(keep, j)
			s.compare(e, &s.edges[j])
		}
		beside = append(keep, i)
	}
}

// above says whether nothing on the edge can be lower than the best so far.
func (s *crossingSearch) above(e *edge) bool {
	return s.found && float64(e.minY) > s.best[1]
}

func (s *crossingSearch) note(x, y float64) {
	if !s.found || y < s.best[1] || (y == s.best[1] && x < s.best[0]) {
		s.best, s.found = [2]float64{x, y}, true
	}
}
