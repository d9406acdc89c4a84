package roll

import (
	"math"

	"stripwright/geometry/band"
)

// column is a level-wise convex part of a form: cells rising without a break.
//
//	+---------------+     a U cut by a joint: three columns,
//	|   +-------+   |     with an opening that holds narrow
//	| 2 |       | 3 |     pieces
//	+---+-------+---+
//	|       1       |
//	+---------------+
type column struct {
	v0, v1 int64 // heights
	l, r   int64 // outermost edges, rounded outward
	cells  []cell
	number uint32 // in a Memory, 0 for none
}

// cell is a trapezoid between two heights.
type cell struct {
	v0, v1         int64
	l0, l1, r0, r1 float64
	lean           [2]float64 // of the left and the right edge: u for each v
	runs           bool       // the next cell of the column begins where this one ends
}

func trapezoid(v0, v1 int64, l0, l1, r0, r1 float64) cell {
	return cell{v0: v0, v1: v1, l0: l0, l1: l1, r0: r0, r1: r1}
}

// leaning works out what cells are asked for again and again.
func leaning(cells []cell) {
	for i := range cells {
		c := &cells[i]
		high := float64(c.v1 - c.v0)
		c.lean = [2]float64{(c.l1 - c.l0) / high, (c.r1 - c.r0) / high}
		c.runs = i+1 < len(cells) && c.v1 == cells[i+1].v0 && c.l1 == cells[i+1].l0 && c.r1 == cells[i+1].r0
	}
}

// edges gives the edges of a cell at a height.
func (c *cell) edges(v int64) (l, r float64) {
	switch v {
	case c.v0:
		return c.l0, c.r0
	case c.v1:
		return c.l1, c.r1
	}
	d := float64(v - c.v0)
	return c.l0 + float64(c.lean[0]*d), c.r0 + float64(c.lean[1]*d)
}

// columns gives the columns of a piece, the lower left corner of its box as the
// origin. Cells are sorted level by level from the lowest: one that alone touches
// one cell of the level below, and is alone touched by it, continues that cell's
// column.
func (s *Shaper) columns(p *band.Piece) []column {
	s.shift(s.slicer.Slabs(p), p.MinX, p.MinY)
	s.sort()
	out := s.gathered()
	for i := range out {
		out[i].cells = thinned(merged(out[i].cells))
	}
	return out
}

// shift reads slabs as cells, from an origin.
func (s *Shaper) shift(slabs []band.Slab, x, y int64) {
	s.cells = s.cells[:0]
	u := float64(x)
	for _, b := range slabs {
		s.cells = append(s.cells, trapezoid(b.Y0-y, b.Y1-y, b.L0-u, b.L1-u, b.R0-u, b.R1-u))
	}
}

// sort finds the column of each cell, and how many cells each has.
func (s *Shaper) sort() {
	s.column, s.counts, s.below = s.column[:0], s.counts[:0], s.below[:0]
	for i := 0; i < len(s.cells); {
		j := i + 1
		for j < len(s.cells) && s.cells[j].v0 == s.cells[i].v0 {
			j++
		}
		s.level = s.level[:0]
		for k := i; k < j; k++ {
			at := len(s.counts)
			if b := s.soleBelow(k, i, j); b >= 0 {
				at = s.column[b]
			} else {
				s.counts = append(s.counts, 0)
			}
			s.counts[at]++
			s.column = append(s.column, at)
			s.level = append(s.level, k)
		}
		s.below = append(s.below[:0], s.level...)
		i = j
	}
}

// gathered gives the columns with the cells in their own room, as their hull where
// they are too many.
func (s *Shaper) gathered() []column {
	if len(s.counts) > manyColumns {
		return []column{{cells: hull(s.cells)}}
	}
	room := make([]cell, len(s.cells))
	out := make([]column, len(s.counts))
	from := 0
	for i, n := range s.counts {
		out[i].cells = room[from : from : from+n]
		from += n
	}
	for k, at := range s.column {
		out[at].cells = append(out[at].cells, s.cells[k])
	}
	return out
}

// manyColumns is the number of columns beyond which a piece counts as its
// hull: a ragged edge along the roll has a column for every tooth.
const manyColumns = 12

// hull merges the cells of one level into one.
func hull(cells []cell) []cell {
	var out []cell
	for _, c := range cells {
		n := len(out) - 1
		if n < 0 || out[n].v0 != c.v0 {
			out = append(out, c)
			continue
		}
		o := &out[n]
		o.l0, o.l1 = min(o.l0, c.l0), min(o.l1, c.l1)
		o.r0, o.r1 = max(o.r0, c.r0), max(o.r1, c.r1)
	}
	return out
}

// soleBelow gives the cell whose column cell k continues, of a level from cell i
// to before cell j; -1 for none.
func (s *Shaper) soleBelow(k, i, j int) int {
	found := -1
	for _, b := range s.below {
		if !touch(&s.cells[b], &s.cells[k]) {
			continue
		}
		if found >= 0 {
			return -1
		}
		for m := i; m < j; m++ {
			if m != k && touch(&s.cells[b], &s.cells[m]) {
				return -1
			}
		}
		found = b
	}
	return found
}

// touch says whether the top of a and the foot of b share material.
func touch(a, b *cell) bool { return a.v1 == b.v0 && a.l1 < b.r0 && b.l0 < a.r1 }

// merged joins cells whose sides run on in a straight line.
func merged(cells []cell) []cell {
	out := cells[:0]
	for _, c := range cells {
		if n := len(out); n > 0 && runsOn(out[n-1], c) {
			out[n-1].v1, out[n-1].l1, out[n-1].r1 = c.v1, c.l1, c.r1
			continue
		}
		out = append(out, c)
	}
	return out
}

func runsOn(a, b cell) bool {
	const slack = 1e-9
	ha, hb := float64(a.v1-a.v0), float64(b.v1-b.v0)
	return a.l1 == b.l0 && a.r1 == b.r0 &&
		math.Abs((a.l1-a.l0)/ha-(b.l1-b.l0)/hb) < slack && math.Abs((a.r1-a.r0)/ha-(b.r1-b.r0)/hb) < slack
}

// opening gives the longest stretch between the right edge of a and the left
// edge of b at the ends of their cells.
func opening(a, b *column) int64 {
	most := 0.0
	for _, p := range a.cells {
		for _, q := range b.cells {
			for _, v := range [2]int64{max(p.v0, q.v0), min(p.v1, q.v1)} {
				if max(p.v0, q.v0) < min(p.v1, q.v1) {
					most = max(most, at(q.v0, q.v1, q.l0, q.l1, v)-at(p.v0, p.v1, p.r0, p.r1, v))
				}
			}
		}
	}
	return int64(math.Ceil(most))
}

// forbidden gives the open stretch of positions along the roll, relative to
// column a's form, at which column b of another form would overlap a, when b's
// form lies dv higher. ok is false when they share no height. Both are
// level-wise convex, so it is one stretch.
func forbidden(a, b *column, dv int64) (lo, hi int64, ok bool) {
	low, high := math.Inf(1), math.Inf(-1)
	for i, j := 0, 0; i < len(a.cells) && j < len(b.cells); {
		p, q := &a.cells[i], &b.cells[j]
		v0, v1 := max(p.v0, q.v0+dv), min(p.v1, q.v1+dv)
		if v0 < v1 {
			pl, pr := p.edges(v0)
			ql, qr := q.edges(v0 - dv)
			high, low = max(high, pr-ql), min(low, pl-qr)
			if v1 == p.v1 && !p.runs || v1 == q.v1+dv && !q.runs { // else the next level begins alike
				pl, pr = p.edges(v1)
				ql, qr = q.edges(v1 - dv)
				high, low = max(high, pr-ql), min(low, pl-qr)
			}
		}
		if p.v1 < q.v1+dv {
			i++
		} else {
			j++
		}
	}
	if math.IsInf(high, -1) {
		return 0, 0, false
	}
	// A millionth of a millimetre is below what turning and cutting leave.
	return int64(math.Floor(low + 1e-3)), int64(math.Ceil(high - 1e-3)), true
}
