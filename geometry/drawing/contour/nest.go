package contour

import (
	"cmp"
	"math"
	"slices"

	"github.com/paulmach/orb"

	"stripwright/geometry"
)

// Nested is a region with how deep it lies: 0 an outline of its own, 2 an
// island in a hole of another, and so on.
type Nested struct {
	Region geometry.Region
	Depth  int
}

// Nest sorts contours that do not cross into outlines and holes by how many
// others lie around each: an even number makes an outline, an odd number a hole
// of the one around it. The largest region comes first; of equal ones the lower,
// then the one further left.
func Nest(rings []orb.Ring) []Nested {
	all := make([]*ring, len(rings))
	for i, r := range rings {
		all[i] = newRing(r)
	}
	slices.SortStableFunc(all, func(a, b *ring) int {
		return cmp.Or(-cmp.Compare(a.area, b.area), cmp.Compare(a.bound.Min[1], b.bound.Min[1]), cmp.Compare(a.bound.Min[0], b.bound.Min[0]))
	})
	var out []Nested
	region := map[*ring]int{} // the region that an outline begins
	for i, r := range all {
		var parent *ring
		for _, outer := range all[:i] {
			if outer.holds(r) {
				r.depth++
				parent = outer // the smallest so far, as they come by size
			}
		}
		if r.depth%2 == 0 {
			region[r] = len(out)
			out = append(out, Nested{geometry.Region{Outer: r.points}, r.depth})
			continue
		}
		to := &out[region[parent]].Region
		to.Holes = append(to.Holes, r.points)
	}
	for i := range out {
		out[i].Region = out[i].Region.Oriented()
	}
	slices.SortStableFunc(out, func(a, b Nested) int { return -cmp.Compare(a.Region.Area(), b.Region.Area()) })
	return out
}

// ring is a contour with what is needed to ask quickly what lies in it.
type ring struct {
	points orb.Ring
	bound  orb.Bound
	area   float64
	inner  orb.Point // a point inside
	depth  int
	floors [][]int32 // edges by the floor of the height that they pass
}

func newRing(r orb.Ring) *ring {
	out := &ring{points: r, bound: r.Bound(), area: math.Abs(geometry.SignedArea(r))}
	out.inner = out.pointInside()
	return out
}

// holds says whether another ring that is no larger and does not cross lies in
// this one.
func (r *ring) holds(other *ring) bool {
	b, p := r.bound, other.inner
	if p[0] < b.Min[0] || p[0] > b.Max[0] || p[1] < b.Min[1] || p[1] > b.Max[1] {
		return false
	}
	left := 0
	for _, x := range r.crossings(p[1]) {
		if x < p[0] {
			left++
		}
	}
	return left%2 == 1
}

// crossings lists where the ring passes the height y, in any order.
func (r *ring) crossings(y float64) []float64 {
	if r.floors == nil {
		r.buildFloors()
	}
	var xs []float64
	n := len(r.points)
	for _, i := range r.floors[r.floor(y)] {
		a, b := r.points[i], r.points[(int(i)+1)%n]
		if (a[1] > y) != (b[1] > y) {
			xs = append(xs, a[0]+float64((y-a[1])/(b[1]-a[1])*(b[0]-a[0])))
		}
	}
	return xs
}

func (r *ring) floor(y float64) int {
	h := r.bound.Max[1] - r.bound.Min[1]
	k := int((y - r.bound.Min[1]) / h * float64(len(r.floors)))
	return max(0, min(k, len(r.floors)-1))
}

// buildFloors sorts the edges by height into as many floors as keep the sum of
// all entries to a few times the number of edges.
func (r *ring) buildFloors() {
	n, h, sum := len(r.points), r.bound.Max[1]-r.bound.Min[1], 0.0
	for i, a := range r.points {
		sum += math.Abs(a[1] - r.points[(i+1)%n][1])
	}
	floors := 1
	if h > 0 && sum > 0 {
		floors = max(1, min(n, int(4*float64(n)/(sum/h))))
	}
	r.floors = make([][]int32, floors)
	for i, a := range r.points {
		b := r.points[(i+1)%n]
		for k := r.floor(math.Min(a[1], b[1])); k <= r.floor(math.Max(a[1], b[1])); k++ {
			r.floors[k] = append(r.floors[k], int32(i))
		}
	}
}

// pointInside finds a point well inside: half way along the longest run inside
// at one of a few heights.
func (r *ring) pointInside() orb.Point {
	best, widest := r.points[0], 0.0
	for _, part := range []float64{0.5, 0.31, 0.73, 0.17, 0.89} {
		y := r.bound.Min[1] + float64(part*(r.bound.Max[1]-r.bound.Min[1]))
		xs := r.crossings(y)
		slices.Sort(xs)
		for i := 0; i+1 < len(xs); i += 2 {
			if w := xs[i+1] - xs[i]; w > widest {
				best, widest = orb.Point{(xs[i] + xs[i+1]) / 2, y}, w
			}
		}
	}
	return best
}
