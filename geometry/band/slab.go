package band

import (
	"cmp"
	"slices"
)

// Slab is a trapezoid of a piece between two heights: its left and right edge
// at Y0 and at Y1, in µm.
//
//	  L1 +-------------+ R1    Y1
//	    /               \
//	L0 +-----------------+ R0  Y0
type Slab struct {
	Y0, Y1         int64
	L0, L1, R0, R1 float64
}

// Slabs divides a piece into trapezoids at the heights of its vertices, rising,
// from left to right within a height.
func Slabs(p *Piece) []Slab {
	edges, ys := slabEdges(p)
	var out []Slab
	var active []slabEdge
	next := 0
	for i := 0; i+1 < len(ys); i++ {
		y0, y1 := ys[i], ys[i+1]
		active = slices.DeleteFunc(active, func(e slabEdge) bool { return e.top.Y <= y0 })
		for ; next < len(edges) && edges[next].foot.Y == y0; next++ {
			active = append(active, edges[next])
		}
		out = append(out, level(active, y0, y1)...)
	}
	return out
}

// slabEdge is an edge of a piece, from its lower to its upper end.
type slabEdge struct{ foot, top Point }

func (e slabEdge) at(y int64) float64 {
	if y == e.foot.Y {
		return float64(e.foot.X)
	}
	if y == e.top.Y {
		return float64(e.top.X)
	}
	_, x := crossing(e.foot, e.top, y)
	return x
}

func slabEdges(p *Piece) ([]slabEdge, []int64) {
	var edges []slabEdge
	var ys []int64
	for _, r := range p.Rings() {
		a := r[len(r)-1]
		for _, b := range r {
			ys = append(ys, b.Y)
			switch {
			case a.Y < b.Y:
				edges = append(edges, slabEdge{a, b})
			case a.Y > b.Y:
				edges = append(edges, slabEdge{b, a})
			}
			a = b
		}
	}
	slices.Sort(ys)
	slices.SortFunc(edges, func(a, b slabEdge) int {
		return cmp.Or(cmp.Compare(a.foot.Y, b.foot.Y), cmp.Compare(a.foot.X, b.foot.X),
			cmp.Compare(a.top.Y, b.top.Y), cmp.Compare(a.top.X, b.top.X))
	})
	return edges, slices.Compact(ys)
}

// level pairs the edges that pass between two heights into trapezoids.
func level(active []slabEdge, y0, y1 int64) []Slab {
	type side struct{ x0, x1 float64 }
	sides := make([]side, len(active))
	for i, e := range active {
		sides[i] = side{e.at(y0), e.at(y1)}
	}
	slices.SortFunc(sides, func(a, b side) int {
		return cmp.Or(cmp.Compare(a.x0+a.x1, b.x0+b.x1), cmp.Compare(a.x0, b.x0))
	})
	var out []Slab
	for i := 0; i+1 < len(sides); i += 2 {
		out = append(out, Slab{y0, y1, sides[i].x0, sides[i].x1, sides[i+1].x0, sides[i+1].x1})
	}
	return out
}
