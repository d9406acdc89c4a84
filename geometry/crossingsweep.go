package geometry

import (
	"cmp"
	"slices"
)

// clearSweep looks for any contact at all between the edges of rings: two that
// cross, overlap or fold back, a vertex on another edge or on another vertex.
// It goes up through the vertices and holds the edges that pass the present
// height from left to right; only edges that become neighbours there are held
// against one another, as nothing can meet without being neighbours first
// (Shamos and Hoey, "Geometric intersection problems", 1976; from memory).
// Where an edge ends and the next goes on upward, that one takes its place.
//
//	 \    |   /
//	  \   |  /     a vertex where two edges begin: placed by halving
//	---\--x-/---   the present height: edges from left to right
//	    \  /
type clearSweep struct {
	points       []gridPoint
	before, next []int32 // the vertices on either side on the ring
	passing      passing
}

// contact is where a sweep met the first thing that it does not pass over:
// nothing meets below the height. The edges are those that meet, numbered by
// the vertex that they begin with, or none where that is not known.
type contact struct {
	height int64
	e, f   int32
}

// none stands for no edge.
const none int32 = -1

// newClearSweep takes rings as gridRing gives them; those of one point are left
// out.
func newClearSweep(rings [][]gridPoint) *clearSweep {
	n := 0
	for _, r := range rings {
		n += len(r)
	}
	s := &clearSweep{points: make([]gridPoint, 0, n), before: make([]int32, 0, n), next: make([]int32, 0, n)}
	for _, r := range rings {
		if len(r) < 2 {
			continue
		}
		first := int32(len(s.points))
		last := first + int32(len(r)) - 1
		s.points = append(s.points, r...)
		for i := first; i <= last; i++ {
			s.before = append(s.before, i-1)
			s.next = append(s.next, i+1)
		}
		s.before[first], s.next[last] = last, first
	}
	s.passing.sweep = s
	return s
}

// run gives the first contact, if there is one.
func (s *clearSweep) run() (contact, bool) {
	order := make([]int32, len(s.points))
	for i := range order {
		order[i] = int32(i)
	}
	slices.SortFunc(order, func(i, j int32) int { return s.points[i].compare(s.points[j]) })
	for i, v := range order {
		p := s.points[v]
		e, f, clear := none, none, false
		if i == 0 || s.points[order[i-1]] != p {
			e, f, clear = s.pass(v)
		}
		if !clear {
			return contact{p.y, e, f}, true
		}
	}
	return contact{}, false
}

// compare orders points by height, and of equally high ones from left to right.
func (p gridPoint) compare(q gridPoint) int {
	if p.y != q.y {
		return cmp.Compare(p.y, q.y)
	}
	return cmp.Compare(p.x, q.x)
}

// pass goes over one vertex: its lower edges end there, its upper ones begin.
// Not clear when edges meet there or further up.
func (s *clearSweep) pass(v int32) (e, f int32, clear bool) {
	p := s.points[v]
	at := s.passing.find(p)
	in, out := s.before[v], v
	inEnds := s.points[in].compare(p) < 0
	outEnds := s.points[s.next[v]].compare(p) < 0
	switch {
	case inEnds && outEnds:
		return s.end(at, in, out)
	case inEnds:
		return s.goOn(at, in, out)
	case outEnds:
		return s.goOn(at, out, in)
	}
	return s.begin(at, v)
}

// begin lets in the two edges of a vertex that has no lower ones.
func (s *clearSweep) begin(at place, v int32) (e, f int32, clear bool) {
	right := s.passing.edge(at)
	if right != none && s.sideOf(right, s.points[v]) == 0 {
		return right, v, false
	}
	e, f = s.before[v], v
	if side(s.points[v], s.points[e], s.points[s.next[v]]) > 0 {
		e, f = f, e
	}
	if e, f, clear := s.clearAll(s.passing.edge(s.passing.left(at)), e, f, right); !clear {
		return e, f, false
	}
	s.passing.insert(at, e, f)
	return none, none, true
}

// goOn puts an edge in the place of the one that ends where it begins.
func (s *clearSweep) goOn(at place, old, new int32) (e, f int32, clear bool) {
	if x := s.passing.edge(at); x != old {
		return x, new, false
	}
	left, right := s.passing.edge(s.passing.left(at)), s.passing.edge(s.passing.right(at))
	if e, f, clear := s.clearAll(left, new, right); !clear {
		return e, f, false
	}
	s.passing.replace(at, new)
	return none, none, true
}

// end lets out two edges that end in one vertex: they must be neighbours.
func (s *clearSweep) end(at place, e, f int32) (int32, int32, bool) {
	second := s.passing.right(at)
	x, y := s.passing.edge(at), s.passing.edge(second)
	if (x != e || y != f) && (x != f || y != e) {
		return x, e, false
	}
	left, right := s.passing.edge(s.passing.left(at)), s.passing.edge(s.passing.right(second))
	if e, f, clear := s.clearAll(left, right); !clear {
		return e, f, false
	}
	s.passing.removeTwo(at)
	return none, none, true
}

// clearAll holds every edge against the one after it; there may be none at the
// ends.
func (s *clearSweep) clearAll(edges ...int32) (e, f int32, clear bool) {
	for i, f := range edges[1:] {
		if e := edges[i]; e != none && f != none && !s.clear(e, f) {
			return e, f, false
		}
	}
	return none, none, true
}

// sideOf is 1 when p lies left of an edge as seen upward along it, -1 right of
// it, 0 on its line.
func (s *clearSweep) sideOf(e int32, p gridPoint) int {
	a, b := s.points[e], s.points[s.next[e]]
	if b.compare(a) < 0 {
		a, b = b, a
	}
	return side(a, b, p)
}

// clear says whether two edges have nothing in common but a vertex of theirs.
func (s *clearSweep) clear(e, f int32) bool {
	a, b, c, d := s.points[e], s.points[s.next[e]], s.points[f], s.points[s.next[f]]
	switch {
	case s.next[e] == f && s.next[f] == e:
		return false
	case s.next[e] == f:
		return !sameRay(b, a, d)
	case s.next[f] == e:
		return !sameRay(a, b, c)
	}
	if max(a.x, b.x) < min(c.x, d.x) || max(c.x, d.x) < min(a.x, b.x) ||
		max(a.y, b.y) < min(c.y, d.y) || max(c.y, d.y) < min(a.y, b.y) {
		return true
	}
	return side(a, b, c)*side(a, b, d) > 0 || side(c, d, a)*side(c, d, b) > 0
}

// whole gives an edge with the vertices on either side of it.
func (s *clearSweep) whole(e int32) *edge {
	next := s.next[e]
	out := newEdge(s.points[s.before[e]], s.points[e], s.points[next], s.points[s.next[next]])
	return &out
}
