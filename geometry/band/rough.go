package band

import (
	"slices"

	"github.com/paulmach/orb"

	"stripwright/geometry"
)

// Slacks of a rough outline, in µm: each is tried where the one before leaves
// more vertices than wanted.
var roughSlacks = []int64{100, 200, 400, 800, 1600, 3200}

// Rough gives the outline with about most vertices or fewer, for comparing the
// costs of layouts: the boundary is off by up to 3.2 mm, and bays, noses and
// holes that small are left out. Its extents stay. An outline of few vertices,
// and one that would cross itself, is given back as it is.
func (o *Outline) Rough(most int) *Outline {
	rough := o
	for _, slack := range roughSlacks {
		if rough.Vertices() <= most {
			break
		}
		if r := o.roughened(slack); r != nil {
			rough = r
		}
	}
	return rough
}

// Vertices gives how many vertices the rings have.
func (o *Outline) Vertices() int {
	n := 0
	for _, r := range o.Rings {
		n += len(r)
	}
	return n
}

// roughened thins every ring; nil where they would cross.
func (o *Outline) roughened(slack int64) *Outline {
	out := &Outline{}
	var rings []orb.Ring
	for _, r := range o.Rings {
		t := thinned(r, outermost(r), slack)
		if len(t) < 3 || (area2(t) > 0) != (area2(r) > 0) {
			continue
		}
		out.Rings = append(out.Rings, t)
		ring := make(orb.Ring, len(t))
		for i, p := range t {
			ring[i] = p.MM()
		}
		rings = append(rings, ring)
	}
	if len(rings) == 0 {
		return nil
	}
	if _, found := geometry.Crossing(rings...); found {
		return nil
	}
	out.measure()
	out.Pinched = pinched(out.Rings)
	return out
}

// outermost gives the numbers of the lowest, highest, leftmost and rightmost
// vertex, the first of each, in rising order.
func outermost(r Ring) []int {
	var low, high, left, right int
	for i, p := range r {
		if p.Y < r[low].Y {
			low = i
		}
		if p.Y > r[high].Y {
			high = i
		}
		if p.X < r[left].X {
			left = i
		}
		if p.X > r[right].X {
			right = i
		}
	}
	out := []int{low, high, left, right}
	slices.Sort(out)
	return slices.Compact(out)
}
