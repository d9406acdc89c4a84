package roll

import (
	"cmp"
	"slices"
)

// rings knows which pieces are joined in one ring.
type rings struct {
	mate []int32
	up   []int32
}

func newRings(mate []int32, n int) *rings {
	r := &rings{mate: mate, up: make([]int32, n)}
	for i := range r.up {
		r.up[i] = int32(i)
	}
	for e, m := range mate {
		r.join(int32(e)/2, m/2)
	}
	return r
}

func (r *rings) root(i int32) int32 {
	for r.up[i] != i {
		r.up[i] = r.up[r.up[i]]
		i = r.up[i]
	}
	return i
}

func (r *rings) join(a, b int32) { r.up[r.root(a)] = r.root(b) }

// merge exchanges matches between rings until one ring is left. Matches are
// looked at in the order of slant, so that what is exchanged is alike.
func (r *rings) merge(g *linkage) {
	pairs := r.pairs(g)
	for k := 1; k < len(pairs); k++ {
		r.exchange(g, &pairs[k-1], &pairs[k])
	}
}

// pairs lists the matches by slant; where no piece may be turned, the end that
// faces ahead comes first.
func (r *rings) pairs(g *linkage) [][2]int32 {
	pairs := make([][2]int32, 0, len(r.mate)/2)
	slants := make([]float32, len(r.mate))
	for e, m := range r.mate {
		slants[e] = g.ends[e].Slant
		switch {
		case e > int(m):
		case g.turn || g.faces(int32(e)):
			pairs = append(pairs, [2]int32{int32(e), m})
		default:
			pairs = append(pairs, [2]int32{m, int32(e)})
		}
	}
	slices.SortFunc(pairs, func(a, b [2]int32) int {
		return cmp.Or(cmp.Compare(slants[a[0]], slants[b[0]]), cmp.Compare(a[0], b[0]))
	})
	return pairs
}

// exchange swaps partners between two matches of different rings.
func (r *rings) exchange(g *linkage, p, q *[2]int32) {
	a, b, c, d := p[0], p[1], q[0], q[1]
	if r.root(a/2) == r.root(c/2) {
		return
	}
	*p, *q = [2]int32{a, d}, [2]int32{c, b}
	if g.turn && g.between(a, c)+g.between(b, d) < g.between(a, d)+g.between(b, c) {
		*p, *q = [2]int32{a, c}, [2]int32{b, d}
	}
	for _, m := range [2][2]int32{*p, *q} {
		r.mate[m[0]], r.mate[m[1]] = m[1], m[0]
	}
	r.join(a/2, c/2)
}

// faces says whether an end of a piece that is not turned faces ahead.
func (g *linkage) faces(e int32) bool { return int8(e%2) == g.ways[e/2].only() }
