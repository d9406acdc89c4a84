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
}

// shift moves slabs so that the lower left corner of their box is the origin.
func shift(slabs []band.Slab, x, y int64) []cell {
	out := make([]cell, len(slabs))
	u := float64(x)
	for i, s := range slabs {
		out[i] = cell{s.Y0 - y, s.Y1 - y, s.L0 - u, s.L1 - u, s.R0 - u, s.R1 - u}
	}
	return out
}

// columns sorts cells, level by level from the lowest, into columns: a cell
// that alone touches one cell of the level below, and is alone touched by it,
// continues that cell's column.
func columns(cells []cell) []column {
	var out []column
	var below, level []int // columns that end at the foot of this level, and of this level
	for i := 0; i < len(cells); {
		j := i
		for ; j < len(cells) && cells[j].v0 == cells[i].v0; j++ {
		}
		level = level[:0]
		for k := i; k < j; k++ {
			at := soleBelow(out, below, cells[i:j], k-i)
			if at < 0 {
				at = len(out)
				out = append(out, column{v0: cells[k].v0})
			}
			out[at].cells = append(out[at].cells, cells[k])
			level = append(level, at)
		}
		below = append(below[:0], level...)
		i = j
	}
	if len(out) > manyColumns {
		out = []column{{cells: hull(cells)}}
	}
	for i := range out {
		out[i].cells = thinned(merged(out[i].cells))
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

// soleBelow gives the column that cell k of a level continues, -1 for none.
func soleBelow(cols []column, below []int, level []cell, k int) int {
	found := -1
	for _, b := range below {
		foot := cols[b].cells[len(cols[b].cells)-1]
		if !touch(foot, level[k]) {
			continue
		}
		if found >= 0 {
			return -1
		}
		for m := range level {
			if m != k && touch(foot, level[m]) {
				return -1
			}
		}
		found = b
	}
	return found
}

// touch says whether the top of a and the foot of b share material.
func touch(a, b cell) bool { return a.v1 == b.v0 && a.l1 < b.r0 && b.l0 < a.r1 }

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

// clear gives the longest stretch between the right edge of a and the left
// edge of b at the ends of their cells.
func clear(a, b *column) int64 {
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
			for _, v := range [2]int64{v0, v1} {
				high = max(high, at(p.v0, p.v1, p.r0, p.r1, v)-at(q.v0, q.v1, q.l0, q.l1, v-dv))
				low = min(low, at(p.v0, p.v1, p.l0, p.l1, v)-at(q.v0, q.v1, q.r0, q.r1, v-dv))
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
