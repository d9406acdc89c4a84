package check

import (
	"math"
	"sort"

	"stripwright/geometry"
)

// span is a length along x.
type span struct{ x0, x1 float64 }

// fence answers where a line along x runs inside a region: its edges, sorted
// into layers of equal height.
type fence struct {
	lo, layer float64
	edges     []edge
	layers    [][]int32
}

// newFence makes the fence of a region in a frame. The number of layers is
// such that all lists together stay within a few times the number of edges.
func newFence(r geometry.Region, f geometry.Frame) *fence {
	s := shapeIn(r, f)
	lo, hi := s.bounds()
	e := addEdges(nil, s, 0)
	if len(e) == 0 {
		return &fence{}
	}
	n := layersFor(e, hi[1]-lo[1])
	out := &fence{lo: lo[1], layer: (hi[1] - lo[1]) / float64(n), edges: e, layers: make([][]int32, n)}
	for i := range e {
		a, b := out.index(e[i].lo[1]), out.index(e[i].hi[1])
		for k := a; k <= b; k++ {
			out.layers[k] = append(out.layers[k], int32(i))
		}
	}
	return out
}

func layersFor(e []edge, height float64) int {
	rise := 0.0
	for i := range e {
		rise += e[i].hi[1] - e[i].lo[1]
	}
	n := 8 * float64(len(e)) / math.Max(rise/height, 1)
	return int(math.Min(math.Max(n, 1), 4096))
}

func (f *fence) index(y float64) int {
	k := int((y - f.lo) / f.layer)
	return min(max(k, 0), len(f.layers)-1)
}

// at gives the spans of level y inside the region. A vertex on the level
// belongs to the edge above it.
func (f *fence) at(y float64) []span {
	if len(f.layers) == 0 || y < f.lo || y > f.lo+float64(f.layer*float64(len(f.layers))) {
		return nil
	}
	var xs []float64
	for _, i := range f.layers[f.index(y)] {
		if e := &f.edges[i]; e.lo[1] <= y && y < e.hi[1] {
			xs = append(xs, e.at(y))
		}
	}
	sort.Float64s(xs)
	var out []span
	for i := 0; i+1 < len(xs); i += 2 {
		out = append(out, span{xs[i], xs[i+1]})
	}
	return out
}

// within gives the spans that have the region on both sides of level y, the
// tolerance away. A line along the region's edge has it on one side only.
func (f *fence) within(y float64) []span {
	return common(f.at(y-tolerance), f.at(y+tolerance))
}

// common gives what lies in both lists of spans, each sorted.
func common(a, b []span) []span {
	var out []span
	for i, k := 0, 0; i < len(a) && k < len(b); {
		if x0, x1 := math.Max(a[i].x0, b[k].x0), math.Min(a[i].x1, b[k].x1); x1 > x0 {
			out = append(out, span{x0, x1})
		}
		if a[i].x1 < b[k].x1 {
			i++
		} else {
			k++
		}
	}
	return out
}

// fences keeps fences by region and direction, for plies share both.
type fences map[fenceKey]*fence

type fenceKey struct {
	region int // ply whose blank it is, -1: the net part
	angle  geometry.Angle
}

func (m fences) get(region int, r geometry.Region, a geometry.Angle) *fence {
	key := fenceKey{region, a}
	f, ok := m[key]
	if !ok {
		f = newFence(r, geometry.PlyFrame(a))
		m[key] = f
	}
	return f
}
