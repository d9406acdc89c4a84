package zone

import (
	"cmp"
	"math"
	"slices"

	"github.com/paulmach/orb"

	"stripwright/geometry"
)

// edge is a piece of an outline that does not run along x; hi has the greater y.
type edge struct {
	lo, hi  orb.Point
	outline int
}

func (e edge) at(y float64) float64 {
	switch y {
	case e.lo[1]:
		return e.lo[0]
	case e.hi[1]:
		return e.hi[0]
	}
	return e.lo[0] + float64((e.hi[0]-e.lo[0])*((y-e.lo[1])/(e.hi[1]-e.lo[1])))
}

// part is where the same outlines lie.
type part struct {
	inside []bool
	area   float64
	fields []Field
}

// overlay lays outlines over each other and gives the parts that lie inside the
// first.
func overlay(outlines []geometry.Region) []part {
	edges := edgesOf(outlines)
	levels := heights(edges)
	o := &overlaying{inside: make([]bool, len(outlines)), key: make([]byte, len(outlines)), index: map[string]int{}}
	var active []int
	next := 0
	for i := 0; i+1 < len(levels); i++ {
		low, high := levels[i], levels[i+1]
		active = slices.DeleteFunc(active, func(k int) bool { return edges[k].hi[1] <= low })
		for ; next < len(edges) && edges[next].lo[1] <= low; next++ {
			active = append(active, next)
		}
		o.slab(edges, active, low, high)
	}
	o.close(nil)
	return o.parts
}

// edgesOf lists the edges of all outlines, lowest first.
func edgesOf(outlines []geometry.Region) []edge {
	n := 0
	for _, r := range outlines {
		for _, ring := range r.Rings() {
			n += len(ring)
		}
	}
	out := make([]edge, 0, n)
	for i, r := range outlines {
		for _, ring := range r.Rings() {
			for k, p := range ring {
				q := ring[(k+1)%len(ring)]
				if p[1] > q[1] {
					p, q = q, p
				}
				if p[1] < q[1] {
					out = append(out, edge{p, q, i})
				}
			}
		}
	}
	slices.SortStableFunc(out, func(a, b edge) int { return cmp.Compare(a.lo[1], b.lo[1]) })
	return out
}

// heights lists where an edge begins or ends and where two edges of different
// outlines cross, rising. Edges of one outline do not cross.
func heights(edges []edge) []float64 {
	ys := make([]float64, 0, 2*len(edges))
	var active []int
	for i, e := range edges {
		ys = append(ys, e.lo[1], e.hi[1])
		active = slices.DeleteFunc(active, func(k int) bool { return edges[k].hi[1] <= e.lo[1] })
		for _, k := range active {
			if y, ok := crossing(e, edges[k]); ok {
				ys = append(ys, y)
			}
		}
		active = append(active, i)
	}
	slices.Sort(ys)
	return slices.Compact(ys)
}

// crossing gives the height at which two edges change sides.
func crossing(a, b edge) (y float64, ok bool) {
	if a.outline == b.outline || math.Max(a.lo[0], a.hi[0]) < math.Min(b.lo[0], b.hi[0]) || math.Max(b.lo[0], b.hi[0]) < math.Min(a.lo[0], a.hi[0]) {
		return 0, false
	}
	low, high := math.Max(a.lo[1], b.lo[1]), math.Min(a.hi[1], b.hi[1])
	before, after := a.at(low)-b.at(low), a.at(high)-b.at(high)
	if before == 0 || after == 0 || (before > 0) == (after > 0) {
		return 0, false
	}
	return low + float64((high-low)*(before/(before-after))), true
}

// overlaying gathers the parts.
type overlaying struct {
	index map[string]int // of a part, by what lies inside
	parts []part
	open  []Field // up to the height reached, from left to right

	inside []bool // of the place at hand
	key    []byte // the same, to look it up by
	spare  []Field
}

// slab divides the stretch between two heights, where edges keep their order.
func (o *overlaying) slab(edges []edge, active []int, low, high float64) {
	middle := (low + high) / 2
	slices.SortStableFunc(active, func(a, b int) int { return cmp.Compare(edges[a].at(middle), edges[b].at(middle)) })
	inside, now := o.inside, o.spare[:0]
	clear(inside)
	for i, k := range active {
		inside[edges[k].outline] = !inside[edges[k].outline]
		if !inside[0] || i+1 == len(active) {
			continue
		}
		l, r := edges[k], edges[active[i+1]]
		f := Field{
			Low: low, High: high, LeftLow: l.at(low), LeftHigh: l.at(high), RightLow: r.at(low), RightHigh: r.at(high),
			leftEdge: k, rightEdge: active[i+1],
		}
		if !(f.AreaMM2() > 0) {
			continue
		}
		f.z = o.part(inside)
		o.parts[f.z].area += f.AreaMM2()
		now = append(now, f)
	}
	o.close(now)
}

// part finds the part that lies inside these outlines, or begins it.
func (o *overlaying) part(inside []bool) int {
	clear(o.key)
	for i, in := range inside {
		if in {
			o.key[i] = 1
		}
	}
	z, ok := o.index[string(o.key)]
	if !ok {
		z = len(o.parts)
		o.index[string(o.key)] = z
		o.parts = append(o.parts, part{inside: slices.Clone(inside)})
	}
	return z
}

// close goes on to the fields above: one between the same edges grows, the
// others are done.
func (o *overlaying) close(now []Field) {
	near := 0
	for _, f := range o.open {
		i := onLeft(now, f.leftEdge, near)
		if i < 0 || now[i].rightEdge != f.rightEdge || now[i].z != f.z || now[i].Low != f.High {
			o.parts[f.z].fields = append(o.parts[f.z].fields, f)
			continue
		}
		now[i].Low, now[i].LeftLow, now[i].RightLow = f.Low, f.LeftLow, f.RightLow
		near = i
	}
	o.open, o.spare = now, o.open
}

// onLeft finds the field whose left edge this is, or -1. Edges mostly keep their
// order from height to height, so that it is looked for near the last one first.
func onLeft(fields []Field, edge, near int) int {
	for i := range fields {
		if k := (near + i) % len(fields); fields[k].leftEdge == edge {
			return k
		}
	}
	return -1
}
