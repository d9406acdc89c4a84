package bound

import (
	"cmp"
	"math"
	"slices"
	"sync"

	"stripwright/geometry/band"
	"stripwright/nest/layout"
)

// shape is a blank, and which of its phases are asked about.
type shape struct {
	*blank
	only []cell // the one phase, nil: all
}

// blank is a blank as slabs between the heights of its vertices.
type blank struct {
	outline *band.Outline
	net     *band.Outline
	slabs   []band.Slab
	bay     []levels // where it is not convex
	once    sync.Once
	columns []column // found when they are needed
	links   []joined
	heights []int64 // of vertices, rising
	area    float64 // of the blank itself
	snapped float64 // area that snapping may have added, µm²
	thinned float64 // area that waste may be overstated by, µm²
	off     float64 // by how much a boundary may be off, µm
	convex  bool
}

// offGrid is how far snapping and thinning may have moved a boundary, in µm.
const offGrid = 4

func newShape(b *layout.Base) *shape { return &shape{blank: newBlank(b)} }

func newBlank(b *layout.Base) *blank {
	s := &blank{outline: b.Lean(), net: b.Net()}
	s.area = float64(b.Blank.Area2) / 2
	around := 0.0
	square := true
	s.convex = len(s.outline.Rings) == 1
	for _, r := range s.outline.Rings {
		around += length(r)
		s.convex = s.convex && convex(r)
		square = square && rightAngled(r)
		for _, p := range r {
			s.heights = append(s.heights, p.Y)
		}
	}
	if !square { // right-angled outlines are cut without rounding
		s.off = offGrid
		s.snapped = offGrid * around
		s.thinned = offGrid * (around + float64(4*float64(s.outline.Across())))
	}
	if s.outline != b.Blank {
		s.off += layout.Slack
		s.thinned += float64(layout.Slack * around)
	}
	slices.Sort(s.heights)
	s.heights = slices.Compact(s.heights)
	s.slabs = slabsOf(s.outline)
	s.bay = s.bays()
	return s
}

func slabsOf(o *band.Outline) []band.Slab {
	if len(o.Rings) == 0 {
		return nil
	}
	return band.Slabs(&band.Piece{Outer: o.Rings[0], Holes: o.Rings[1:], MinX: o.MinX, MaxX: o.MaxX, MinY: o.MinY, MaxY: o.MaxY})
}

func length(r band.Ring) float64 {
	sum := 0.0
	p := r[len(r)-1]
	for _, q := range r {
		sum += math.Hypot(float64(q.X-p.X), float64(q.Y-p.Y))
		p = q
	}
	return sum
}

// rightAngled says whether all edges run along the roll or across it.
func rightAngled(r band.Ring) bool {
	p := r[len(r)-1]
	for _, q := range r {
		if p.X != q.X && p.Y != q.Y {
			return false
		}
		p = q
	}
	return true
}

// oblong says whether an outline is a rectangle along the roll.
func oblong(rings []band.Ring) bool {
	return len(rings) == 1 && len(rings[0]) == 4 && rightAngled(rings[0])
}

// convex says whether a counter-clockwise ring bulges nowhere inwards by more
// than snapping does: every vertex lies within offGrid of its convex hull. The
// hull decides, not the turn at each vertex: a hollow of very short edges hardly
// turns at any of them.
func convex(r band.Ring) bool {
	on := hull(r)
	for k, i := range on {
		a, b := r[i], r[on[(k+1)%len(on)]]
		long := math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y))
		for j := (i + 1) % len(r); j != on[(k+1)%len(on)]; j = (j + 1) % len(r) {
			if float64(turn(a, b, r[j])) > offGrid*long {
				return false
			}
		}
	}
	return true
}

// hull lists the vertices of a ring that are on its convex hull, by number,
// rising (Andrew's monotone chain; Information Processing Letters 9, 1979).
func hull(r band.Ring) []int {
	order := make([]int, len(r))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int {
		return cmp.Or(cmp.Compare(r[i].X, r[j].X), cmp.Compare(r[i].Y, r[j].Y), cmp.Compare(i, j))
	})
	var out []int
	for range 2 { // the lower half, then back along the upper one
		from := len(out)
		for _, i := range order {
			for len(out) > from+1 && turn(r[out[len(out)-2]], r[out[len(out)-1]], r[i]) <= 0 {
				out = out[:len(out)-1]
			}
			out = append(out, i)
		}
		out = out[:len(out)-1]
		slices.Reverse(order)
	}
	slices.Sort(out)
	return out
}

// turn is positive where c lies to the left of the line from a to b.
func turn(a, b, c band.Point) int64 {
	return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X)
}

// clip adds the slabs between two heights, in order.
func clip(out, slabs []band.Slab, from, to int64) []band.Slab {
	first, _ := slices.BinarySearchFunc(slabs, from, func(s band.Slab, y int64) int {
		if s.Y1 <= y {
			return -1
		}
		return 1
	})
	for _, s := range slabs[first:] {
		if s.Y0 >= to {
			break
		}
		out = append(out, part(s, max(from, s.Y0), min(to, s.Y1)))
	}
	return out
}

// part is what lies of a slab between two of its heights.
func part(s band.Slab, y0, y1 int64) band.Slab {
	if y0 == s.Y0 && y1 == s.Y1 {
		return s
	}
	t0, t1 := along(s, y0), along(s, y1)
	return band.Slab{Y0: y0, Y1: y1,
		L0: mix(s.L0, s.L1, t0), L1: mix(s.L0, s.L1, t1),
		R0: mix(s.R0, s.R1, t0), R1: mix(s.R0, s.R1, t1)}
}

func along(s band.Slab, y int64) float64 { return float64(y-s.Y0) / float64(s.Y1-s.Y0) }

func mix(a, b, t float64) float64 { return float64(a*(1-t)) + float64(b*t) }

// size gives the area of a slab.
func size(s band.Slab) float64 {
	return float64(((s.R0 - s.L0) + (s.R1 - s.L1)) / 2 * float64(s.Y1-s.Y0))
}
