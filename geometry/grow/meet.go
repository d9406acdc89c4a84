package grow

import (
	"cmp"
	"slices"
)

// field is a rectangle of grid points, edges included.
type field struct{ min, max spot }

// mostCompared is how many pairs of edges are compared. Only teeth by the ten
// thousand, each far finer than the distance grown, need more: their edges cross
// all those of the teeth around.
const mostCompared = 60_000_000

// fewEdges is the number of edges that are compared each with each.
const fewEdges = 12

// meeting calls visit for pairs of edges that come within 2 µm of each other,
// at least one of them fresh; a pair may be visited more than once, and pairs
// farther apart may be visited too. The field is halved again and again, along
// its longer side, until few edges reach into a part. The answer is no where
// that would compare more than mostCompared pairs; not all are visited then.
func meeting(edges []edge, visit func(i, j int)) bool {
	if len(edges) == 0 {
		return true
	}
	f := field{edges[0].a, edges[0].a}
	all := make([]int32, len(edges))
	for i, e := range edges {
		all[i] = int32(i)
		f.min = spot{min(f.min.x, e.a.x, e.b.x), min(f.min.y, e.a.y, e.b.y)}
		f.max = spot{max(f.max.x, e.a.x, e.b.x), max(f.max.y, e.a.y, e.b.y)}
	}
	m := &meeter{edges, visit, mostCompared}
	m.halve(f, all, 0)
	return m.left >= 0
}

type meeter struct {
	edges []edge
	visit func(i, j int)
	left  int // pairs that may still be compared
}

// halve works on the edges that reach into a field; stuck counts the halvings
// in a row that parted nothing.
func (m *meeter) halve(f field, ids []int32, stuck int) {
	if m.left < 0 || !m.anyFresh(ids) {
		return
	}
	w, h := f.max.x-f.min.x, f.max.y-f.min.y
	if len(ids) <= fewEdges || stuck > 4 || max(w, h) < 8 {
		m.compare(ids)
		return
	}
	low, high := f, f
	if w >= h {
		low.max.x = f.min.x + w/2
		high.min.x = low.max.x
	} else {
		low.max.y = f.min.y + h/2
		high.min.y = low.max.y
	}
	a, b := m.within(low, ids), m.within(high, ids)
	if len(a)+len(b) < len(ids)*2*9/10 {
		stuck = 0
	} else {
		stuck++
	}
	m.halve(low, a, stuck)
	m.halve(high, b, stuck)
}

func (m *meeter) anyFresh(ids []int32) bool {
	for _, i := range ids {
		if m.edges[i].fresh {
			return true
		}
	}
	return false
}

// compare visits all pairs whose bounding boxes come near.
func (m *meeter) compare(ids []int32) {
	for k, i := range ids {
		e := m.edges[i]
		box := around(e)
		if m.left -= k; m.left < 0 {
			return
		}
		for _, j := range ids[:k] {
			f := m.edges[j]
			if (e.fresh || f.fresh) && box.meets(around(f)) {
				m.visit(int(j), int(i))
			}
		}
	}
}

func (m *meeter) within(f field, ids []int32) []int32 {
	out := make([]int32, 0, len(ids)/2+4)
	for _, i := range ids {
		if f.reached(m.edges[i]) {
			out = append(out, i)
		}
	}
	return out
}

// around is the bounding box of an edge, 1 µm wider on all sides.
func around(e edge) field {
	return field{
		spot{min(e.a.x, e.b.x) - 1, min(e.a.y, e.b.y) - 1},
		spot{max(e.a.x, e.b.x) + 1, max(e.a.y, e.b.y) + 1},
	}
}

func (f field) meets(g field) bool {
	return f.min.x <= g.max.x && g.min.x <= f.max.x && f.min.y <= g.max.y && g.min.y <= f.max.y
}

// reached says whether an edge comes within 1 µm of the field: their boxes
// meet and not all corners of the field lie on one side of the edge.
func (f field) reached(e edge) bool {
	g := field{spot{f.min.x - 1, f.min.y - 1}, spot{f.max.x + 1, f.max.y + 1}}
	if !g.meets(around(e)) {
		return false
	}
	left, right := false, false
	for _, c := range [4]spot{g.min, {g.max.x, g.min.y}, g.max, {g.min.x, g.max.y}} {
		t := turn(e.a, e.b, c)
		left, right = left || t >= 0, right || t <= 0
	}
	return left && right
}

// ordered sorts points along an edge from its start.
func (e edge) ordered(p []spot) []spot {
	dx, dy := e.b.x-e.a.x, e.b.y-e.a.y
	along := func(q spot) int64 { return (q.x-e.a.x)*dx + (q.y-e.a.y)*dy }
	slices.SortFunc(p, func(a, b spot) int {
		return cmp.Or(cmp.Compare(along(a), along(b)), cmp.Compare(a.x, b.x), cmp.Compare(a.y, b.y))
	})
	return slices.Compact(p)
}
