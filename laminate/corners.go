package laminate

import (
	"math"
	"sort"

	"github.com/paulmach/orb"

	"stripwright/geometry"
)

// What makes a corner that a person finds again on the tool: an edge of at
// least shortestEdgeMM on both sides, a turn of at least leastTurnDeg. Points
// of a curve drawn within 0.05 mm turn less, or stand closer, from a radius of
// 1 mm up.
const (
	leastTurnDeg   = 20.0
	shortestEdgeMM = 2.0
	mostCorners    = 26

	// A rounded corner: the rounding is at most roundedShare of the straight
	// edge on either side, and those are at least besideRoundedMM long, so that
	// no chord of a curve is taken for a straight edge.
	roundedShare    = 0.5
	besideRoundedMM = 10.0

	straightMM = 0.005 // a vertex this close to the line of its neighbours is no corner
)

// turning is a vertex where the edge turns, with how much it stands out.
type turning struct {
	at     orb.Point
	weight float64 // turn in degrees times the shorter straight edge beside it
	along  float64 // where on the ring, for the order: vertices from its first one
}

// NamedCorners letters the corners of a net outline anticlockwise from A, the
// datum: the corner nearest the lower left of the bounding box, the lower one
// where two are equally near. Distances on the sheets are measured from them.
//
// A corner is a turn of 20° or more, inwards or outwards, between two straight
// edges of 2 mm or more. A rounded corner counts too, at the middle of its
// rounding, where that is at most half as long as the straight edge on either
// side. Other points of curves do not count, nor do holes. Of more than 26
// corners those with the greatest turn times shorter edge are kept.
//
// An outline of fewer than two corners (round, oval) gets two marks instead: A at its lowest, B at its highest point; where that is a
// straight edge, in the middle of it, and where several are equally low, the
// leftmost. An empty region has none.
func NamedCorners(net geometry.Region) []Corner {
	if net.Empty() {
		return nil
	}
	ring := straightened(net.Oriented().Outer)
	found := mostSignificant(append(turnings(ring), roundings(ring)...))
	if len(found) < 2 {
		low, high := lowest(ring, 1), lowest(ring, -1)
		return []Corner{{Name: "A", At: low}, {Name: "B", At: high}}
	}
	first := datum(found, net.Bounds().Min)
	corners := make([]Corner, len(found))
	for i := range found {
		corners[i] = Corner{
			Name: string(rune('A' + i)),
			At:   found[(first+i)%len(found)].at,
		}
	}
	return corners
}

// straightened drops vertices that lie on the line between their neighbours.
func straightened(ring orb.Ring) orb.Ring {
	out := make(orb.Ring, 0, len(ring))
	n := len(ring)
	for i, p := range ring {
		prev := ring[(i+n-1)%n]
		if len(out) > 0 {
			prev = out[len(out)-1]
		}
		if offLine(prev, ring[(i+1)%n], p) > straightMM {
			out = append(out, p)
		}
	}
	if len(out) < 3 {
		return ring
	}
	return out
}

// offLine gives how far p lies off the line from a to b; infinite where p turns
// back, so that the tip of a needle stays.
func offLine(a, b, p orb.Point) float64 {
	dx, dy := b[0]-a[0], b[1]-a[1]
	px, py := p[0]-a[0], p[1]-a[1]
	l := math.Hypot(dx, dy)
	along := float64(dx*px) + float64(dy*py)
	if along < 0 || along > float64(l*l) || l == 0 {
		return math.Inf(1)
	}
	return math.Abs(float64(dx*py)-float64(dy*px)) / l
}

// turnings lists the true corners in the order of the ring.
func turnings(ring orb.Ring) []turning {
	var found []turning
	n := len(ring)
	for i, p := range ring {
		before, after := ring[(i+n-1)%n], ring[(i+1)%n]
		shorter := math.Min(dist(before, p), dist(p, after))
		turn := turnDeg(before, p, after)
		if shorter >= shortestEdgeMM && turn >= leastTurnDeg {
			found = append(found, turning{p, float64(turn * shorter), float64(i)})
		}
	}
	return found
}

// turnDeg gives the turn at p without its sign, 0 (straight on) to 180.
func turnDeg(before, p, after orb.Point) float64 {
	ax, ay := p[0]-before[0], p[1]-before[1]
	bx, by := after[0]-p[0], after[1]-p[1]
	cross := float64(ax*by) - float64(ay*bx)
	dot := float64(ax*bx) + float64(ay*by)
	return math.Abs(math.Atan2(cross, dot)) * 180 / math.Pi
}

func dist(a, b orb.Point) float64 { return math.Hypot(b[0]-a[0], b[1]-a[1]) }

// roundings lists the rounded corners: curves between two straight edges that
// are long beside them.
func roundings(ring orb.Ring) []turning {
	var found []turning
	n := len(ring)
	for i, p := range ring {
		before := ring[(i+n-1)%n]
		straight := dist(before, p)
		if straight < besideRoundedMM {
			continue
		}
		long := 0.0
		for k := 1; k < n; k++ {
			from, to := ring[(i+k-1)%n], ring[(i+k)%n]
			if long += dist(from, to); long > roundedShare*straight {
				break
			}
			next := ring[(i+k+1)%n]
			shorter := math.Min(straight, dist(to, next))
			if shorter < besideRoundedMM || long > roundedShare*shorter {
				continue
			}
			if turn := between(before, p, to, next); turn >= leastTurnDeg && smooth(ring, i, k) {
				at, edge := halfway(ring, i, k, long)
				found = append(found, turning{at, float64(turn * shorter), edge})
			}
			break
		}
	}
	return found
}

// between gives the turn from the edge a-b to the edge c-d without its sign.
func between(a, b, c, d orb.Point) float64 {
	return turnDeg(a, b, orb.Point{b[0] + d[0] - c[0], b[1] + d[1] - c[1]})
}

// smooth says whether the curve of k edges from vertex i has no corner of its
// own.
func smooth(ring orb.Ring, i, k int) bool {
	n := len(ring)
	for v := i; v <= i+k; v++ {
		before, p, after := ring[(v+n-1)%n], ring[v%n], ring[(v+1)%n]
		if turnDeg(before, p, after) >= leastTurnDeg && math.Min(dist(before, p), dist(p, after)) >= shortestEdgeMM {
			return false
		}
	}
	return true
}

// halfway gives the middle of the curve of k edges from vertex i, long mm in
// all, and where on the ring that is.
func halfway(ring orb.Ring, i, k int, long float64) (at orb.Point, along float64) {
	n, left := len(ring), long/2
	for v := i; v < i+k; v++ {
		p, q := ring[v%n], ring[(v+1)%n]
		d := dist(p, q)
		if left <= d {
			f := left / d
			at = orb.Point{geometry.Snap(p[0] + float64(f*(q[0]-p[0]))), geometry.Snap(p[1] + float64(f*(q[1]-p[1])))}
			return at, math.Mod(float64(v)+f, float64(n))
		}
		left -= d
	}
	return ring[(i+k)%n], float64((i + k) % n)
}

// mostSignificant keeps the 26 that stand out most, in the order of the ring;
// of equals the earlier.
func mostSignificant(found []turning) []turning {
	sort.SliceStable(found, func(a, b int) bool { return found[a].along < found[b].along })
	if len(found) <= mostCorners {
		return found
	}
	rank := make([]int, len(found))
	for i := range rank {
		rank[i] = i
	}
	sort.SliceStable(rank, func(a, b int) bool { return found[rank[a]].weight > found[rank[b]].weight })
	rank = rank[:mostCorners]
	sort.Ints(rank)
	kept := make([]turning, 0, mostCorners)
	for _, i := range rank {
		kept = append(kept, found[i])
	}
	return kept
}

// datum picks the corner nearest the lower left, on whole micrometres, so that
// the last bit of a square root does not choose between equals.
func datum(found []turning, lowerLeft orb.Point) int {
	best := 0
	for i := range found {
		d := geometry.Micrometres(dist(found[i].at, lowerLeft))
		b := geometry.Micrometres(dist(found[best].at, lowerLeft))
		if d < b || d == b && lower(found[i].at, found[best].at, 1) {
			best = i
		}
	}
	return best
}

// lower says whether p comes before q: lower (up +1) or higher (up -1), of
// equals the one further left.
func lower(p, q orb.Point, up float64) bool {
	if p[1] != q[1] {
		return p[1]*up < q[1]*up
	}
	return p[0] < q[0]
}

// lowest gives the lowest (up +1) or highest (up -1) point of a ring, or the
// middle of the straight edge that lies there.
func lowest(ring orb.Ring, up float64) orb.Point {
	best := 0
	for i := range ring {
		if lower(ring[i], ring[best], up) {
			best = i
		}
	}
	n := len(ring)
	for _, q := range []orb.Point{ring[(best+1)%n], ring[(best+n-1)%n]} {
		if q[1] == ring[best][1] {
			return orb.Point{geometry.Snap((q[0] + ring[best][0]) / 2), q[1]}
		}
	}
	return ring[best]
}
