package waste

import (
	"cmp"
	"slices"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

// stretch is a roll, or a part of it between two clear cross-cuts.
type stretch struct {
	from, to float64 // along the roll
	width    float64 // usable
	pieces   []laminate.Piece
}

// stretches breaks a roll at its clear cross-cuts.
func stretches(r laminate.PlanRoll) []*stretch {
	var out []*stretch
	from := 0.0
	for _, to := range append(slices.Clone(r.CrossCuts), r.UsedLengthMM) {
		out = append(out, &stretch{from: from, to: to, width: r.UsableWidthMM})
		from = to
	}
	for _, p := range r.Pieces {
		at := p.Shape.Bounds().Center()[0]
		k := 0
		for k+1 < len(out) && at > out[k].to {
			k++
		}
		out[k].pieces = append(out[k].pieces, p)
	}
	return out
}

// full tells which pieces take the whole usable width.
func (s *stretch) full() []bool {
	const rounding = 0.005 // mm: a strip's height was snapped on either side
	out := make([]bool, len(s.pieces))
	for i := range s.pieces {
		_, h := s.pieces[i].Shape.Size()
		out[i] = h > s.width-rounding
	}
	return out
}

// free is a trapezoid of free cloth between two heights: its left and right
// edge at both, and the pieces that they belong to, -1 for the first and the
// last cut.
type free struct {
	v0, v1         float64
	l0, l1, r0, r1 float64
	left, right    int
	times          float64 // 1; another only where pieces overlap by what was rounded
}

func (f *free) area() float64 {
	return float64((f.v1-f.v0)*(f.r0-f.l0+f.r1-f.l1)) / 2
}

// within gives the area of what lies within a length along the roll from the
// left edge.
func (f *free) within(length float64) float64 {
	a, b := f.r0-f.l0, f.r1-f.l1
	if a > b {
		a, b = b, a
	}
	h := f.v1 - f.v0
	switch {
	case b <= length:
		return f.area()
	case a >= length:
		return float64(h * length)
	}
	short := h * (length - a) / (b - a) // height over which it is shorter
	return float64(short*(a+length)/2) + float64((h-short)*length)
}

// border is an edge of a piece that does not run along the roll; material lies
// to its right when it opens the piece. In a sweep the borders at one height
// are a list by u.
type border struct {
	lo, hi     orb.Point // hi has the greater v
	piece      int
	opens      bool
	prev, next *border
	since      float64 // height from which the stretch behind it has been as it is
	deep       int     // pieces behind it
}

func (b *border) at(v float64) float64 {
	switch v {
	case b.lo[1]:
		return b.lo[0]
	case b.hi[1]:
		return b.hi[0]
	}
	return b.lo[0] + float64((b.hi[0]-b.lo[0])*(v-b.lo[1]))/(b.hi[1]-b.lo[1])
}

// bordersOf lists the borders of all pieces, lowest first.
func (s *stretch) bordersOf() []*border {
	var out []*border
	for i := range s.pieces {
		for k, ring := range s.pieces[i].Shape.Rings() {
			inward := (geometry.SignedArea(ring) > 0) == (k > 0) // material lies to the right of the way it runs
			if len(ring) == 0 {
				continue // of an edited plan
			}
			a := ring[len(ring)-1]
			for _, b := range ring {
				up := b[1] > a[1]
				if lo, hi := a, b; a[1] != b[1] {
					if !up {
						lo, hi = b, a
					}
					out = append(out, &border{lo: lo, hi: hi, piece: i, opens: up == inward})
				}
				a = b
			}
		}
	}
	slices.SortStableFunc(out, func(a, b *border) int { return cmp.Compare(a.lo[1], b.lo[1]) })
	return out
}
