package grow

import "fmt"

// edge is a directed straight edge between grid points. A fresh edge has not
// yet been held against the others.
type edge struct {
	a, b  spot
	fresh bool
}

// near is how far, in micrometres, an edge may pass by a grid point before it
// is bent through it: a little more than half the diagonal of a grid square
// would be 0.71, half its side 0.5.
const near = 0.6

// bent takes the edges of a closed rim and bends them through their crossings
// and through the grid points they pass, until edges meet at their ends only.
// Edges move by about a micrometre at most.
func bent(r ring) ([]edge, error) {
	edges := make([]edge, 0, len(r))
	for i, p := range r {
		if q := r[(i+1)%len(r)]; p != q {
			edges = append(edges, edge{p, q, true})
		}
	}
	const most = 64
	for round := 0; round < most; round++ {
		cuts := map[int][]spot{}
		if !meeting(edges, func(i, j int) { cutPair(edges, i, j, cuts) }) {
			return nil, fmt.Errorf("the outline could not be grown: it has too many teeth far finer than the allowance")
		}
		if len(cuts) == 0 {
			return edges, nil
		}
		edges = split(edges, cuts)
	}
	return nil, fmt.Errorf("the outline could not be grown: its edges still cross after %d rounds", most)
}

// cutPair notes where two edges must be bent.
func cutPair(edges []edge, i, j int, cuts map[int][]spot) {
	e, f := edges[i], edges[j]
	if e.a == f.a && e.b == f.b || e.a == f.b && e.b == f.a {
		return
	}
	cut := func(k int, p spot) {
		if g := edges[k]; p != g.a && p != g.b {
			cuts[k] = append(cuts[k], p)
		}
	}
	touched := false
	for _, t := range [4]struct {
		p spot
		k int
	}{{f.a, i}, {f.b, i}, {e.a, j}, {e.b, j}} {
		if edges[t.k].passes(t.p) {
			cut(t.k, t.p)
			touched = true
		}
	}
	if touched {
		return
	}
	if p, ok := crossing(e, f); ok {
		cut(i, p)
		cut(j, p)
	}
}

// passes says whether an edge runs past a grid point, not one of its ends, so
// near that it is bent through it.
func (e edge) passes(p spot) bool {
	if p == e.a || p == e.b {
		return false
	}
	dx, dy := e.b.x-e.a.x, e.b.y-e.a.y
	along := (p.x-e.a.x)*dx + (p.y-e.a.y)*dy
	if along <= 0 || along >= dx*dx+dy*dy {
		return false
	}
	off := float64(turn(e.a, e.b, p))
	return off*off <= near*near*float64(dx*dx+dy*dy)
}

// crossing gives the grid point next to where two edges cross between their
// ends.
func crossing(e, f edge) (spot, bool) {
	if opposed(turn(e.a, e.b, f.a), turn(e.a, e.b, f.b)) && opposed(turn(f.a, f.b, e.a), turn(f.a, f.b, e.b)) {
		ta, tb := turn(f.a, f.b, e.a), turn(f.a, f.b, e.b)
		t := float64(ta) / (float64(ta) - float64(tb))
		return flat{
			float64(e.a.x) + float64(t*float64(e.b.x-e.a.x)),
			float64(e.a.y) + float64(t*float64(e.b.y-e.a.y)),
		}.spot(), true
	}
	return spot{}, false
}

func opposed(a, b int64) bool { return a < 0 && b > 0 || a > 0 && b < 0 }

// split breaks edges at their cuts, in order along each edge.
func split(edges []edge, cuts map[int][]spot) []edge {
	out := make([]edge, 0, len(edges)+2*len(cuts))
	for i, e := range edges {
		c, ok := cuts[i]
		if !ok {
			e.fresh = false
			out = append(out, e)
			continue
		}
		at := e.a
		for _, p := range e.ordered(c) {
			if p != at {
				out = append(out, edge{at, p, true})
				at = p
			}
		}
		if at != e.b {
			out = append(out, edge{at, e.b, true})
		}
	}
	return out
}
