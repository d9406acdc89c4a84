package layout

import (
	"cmp"
	"slices"

	"stripwright/geometry/band"
)

// Edge is a height at which pieces begin (the blank lies above) or end.
type Edge struct {
	At     int64
	Begins bool
}

// edges lists the heights at which the boundary turns: lowest and highest
// points of its bays and noses, each once.
func edges(o *band.Outline) []Edge {
	var out []Edge
	for _, r := range o.Rings {
		n := len(r)
		for i := range r {
			if e, ok := turning(r, i, n); ok {
				out = append(out, e)
			}
		}
	}
	slices.SortFunc(out, func(a, b Edge) int { return cmp.Or(cmp.Compare(a.At, b.At), boolCompare(a.Begins, b.Begins)) })
	return slices.Compact(out)
}

func boolCompare(a, b bool) int {
	switch {
	case a == b:
		return 0
	case a:
		return -1
	}
	return 1
}

// turning says whether the ring turns back in height at vertex i, or runs
// level from it, and whether the material then begins there.
func turning(r band.Ring, i, n int) (Edge, bool) {
	p := r[i]
	back := i
	for k := 1; k < n && r[back].Y == p.Y; k++ {
		back = (i - k + n) % n
	}
	next := r[(i+1)%n]
	if next.Y == p.Y { // a level edge: material lies to its left
		return Edge{p.Y, next.X > p.X}, true
	}
	b := r[back]
	if (b.Y > p.Y) != (next.Y > p.Y) {
		return Edge{}, false
	}
	rises := next.Y > p.Y
	return Edge{p.Y, rises}, true
}
