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
func Slabs(p *Piece) []Slab { return new(Slicer).Slabs(p) }

// Slicer divides one piece after the other in the same room. The zero value is
// ready; it is for one goroutine.
type Slicer struct {
	edges, active []slabEdge
	ys            []int64
	sides         []slabSide
	out           []Slab
}

// Slabs is the function of that name; what it gave before is overwritten.
func (s *Slicer) Slabs(p *Piece) []Slab {
	s.readEdges(p)
	s.out, s.active = s.out[:0], s.active[:0]
	next := 0
	for i := 0; i+1 < len(s.ys); i++ {
		y0, y1 := s.ys[i], s.ys[i+1]
		s.active = slices.DeleteFunc(s.active, func(e slabEdge) bool { return e.top.Y <= y0 })
		for ; next < len(s.edges) && s.edges[next].foot.Y == y0; next++ {
			s.active = append(s.active, s.edges[next])
		}
		s.level(y0, y1)
	}
	return s.out
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

// readEdges sorts the edges of a piece by their lower ends, and the heights of its
// vertices.
func (s *Slicer) readEdges(p *Piece) {
	s.edges, s.ys = s.edges[:0], s.ys[:0]
	s.readRing(p.Outer)
	for _, r := range p.Holes {
		s.readRing(r)
	}
	slices.Sort(s.ys)
	s.ys = slices.Compact(s.ys)
	slices.SortFunc(s.edges, func(a, b slabEdge) int {
		return cmp.Or(cmp.Compare(a.foot.Y, b.foot.Y), cmp.Compare(a.foot.X, b.foot.X),
			cmp.Compare(a.top.Y, b.top.Y), cmp.Compare(a.top.X, b.top.X))
	})
}

func (s *Slicer) readRing(r Ring) {
	a := r[len(r)-1]
	for _, b := range r {
		s.ys = append(s.ys, b.Y)
		switch {
		case a.Y < b.Y:
			s.edges = append(s.edges, slabEdge{a, b})
		case a.Y > b.Y:
			s.edges = append(s.edges, slabEdge{b, a})
		}
		a = b
	}
}

// slabSide is where an edge stands at two heights.
type slabSide struct{ x0, x1 float64 }

// level pairs the edges that pass between two heights into trapezoids.
func (s *Slicer) level(y0, y1 int64) {
	s.sides = s.sides[:0]
	for _, e := range s.active {
		s.sides = append(s.sides, slabSide{e.at(y0), e.at(y1)})
	}
	slices.SortFunc(s.sides, func(a, b slabSide) int {
		return cmp.Or(cmp.Compare(a.x0+a.x1, b.x0+b.x1), cmp.Compare(a.x0, b.x0))
	})
	for i := 0; i+1 < len(s.sides); i += 2 {
		s.out = append(s.out, Slab{y0, y1, s.sides[i].x0, s.sides[i].x1, s.sides[i+1].x0, s.sides[i+1].x1})
	}
}
