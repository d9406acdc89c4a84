package roll

import (
	"math"
	"slices"

	"stripwright/geometry/band"
)

// Shape is a piece as it may lie on the roll: as cut from the ply, or turned
// end for end. Pieces of equal shape may share one Shape.
type Shape struct {
	ways  [2]form // as it is, turned by 180°
	Area  float64 // µm²
	Chord float64 // mean length between the outermost edges, µm
	ends  band.Ends
}

// form is a shape in one of its two ways: heights from 0 to height across the
// roll, leftmost point at u = 0. Its columns cover it: one for a piece without
// openings or notches across the roll.
type form struct {
	height, length int64
	columns        []column
	upright        bool    // one cell with square ends
	longest        float64 // longest stretch of material along the roll
	inner          int64   // longest opening along the roll between columns
}

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
}

// cell is a trapezoid between two heights.
type cell struct {
	v0, v1         int64
	l0, l1, r0, r1 float64
}

// NewShape reads a piece in the frame of its ply; mirrored for a ply that is
// laid face down. gap is the cutting gap in µm: half of it is added all round.
func NewShape(p *band.Piece, mirrored bool, gap int64) *Shape {
	base := form{height: p.Height(), length: p.MaxX - p.MinX, columns: columns(shift(band.Slabs(p), p.MinX, p.MinY))}
	if mirrored {
		base = base.flipped()
	}
	s := &Shape{Area: float64(p.Area2()) / 2}
	if s.ends, s.Chord = band.EndsOf(p); mirrored {
		s.ends = s.ends.Mirrored()
	}
	base = base.widened(gap)
	s.ways = [2]form{base.finished(), base.flipped().reversed().finished()}
	return s
}

// Height gives the extent across the roll in µm, with the cutting gap.
func (s *Shape) Height() int64 { return s.ways[0].height }

// Length gives the extent along the roll in µm, with the cutting gap.
func (s *Shape) Length() int64 { return s.ways[0].length }

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
	for i := range out {
		out[i].cells = merged(out[i].cells)
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

// flipped mirrors across the roll: v to height - v.
func (f form) flipped() form {
	return f.moved(func(c cell) cell { return cell{f.height - c.v1, f.height - c.v0, c.l1, c.l0, c.r1, c.r0} }, true)
}

// reversed mirrors along the roll: u to length - u.
func (f form) reversed() form {
	n := float64(f.length)
	return f.moved(func(c cell) cell { return cell{c.v0, c.v1, n - c.r0, n - c.r1, n - c.l0, n - c.l1} }, false)
}

// moved applies a mirror to every cell; upended columns are read from the top.
func (f form) moved(to func(cell) cell, upended bool) form {
	out := form{height: f.height, length: f.length, columns: make([]column, len(f.columns))}
	for k, col := range f.columns {
		cells := make([]cell, len(col.cells))
		for i, c := range col.cells {
			cells[i] = to(c)
		}
		if upended {
			slices.Reverse(cells)
		}
		out.columns[k].cells = cells
	}
	return out
}

// finished works out what the search asks for again and again.
func (f form) finished() form {
	for k := range f.columns {
		c := &f.columns[k]
		c.v0, c.v1 = c.cells[0].v0, c.cells[len(c.cells)-1].v1
		l, r := math.Inf(1), math.Inf(-1)
		for _, x := range c.cells {
			l, r = min(l, x.l0, x.l1), max(r, x.r0, x.r1)
			f.longest = max(f.longest, x.r0-x.l0, x.r1-x.l1)
		}
		c.l, c.r = int64(math.Floor(l)), int64(math.Ceil(r))
	}
	f.inner = f.opening()
	c := f.columns[0].cells
	f.upright = len(f.columns) == 1 && len(c) == 1 && c[0] == cell{0, f.height, 0, 0, float64(f.length), float64(f.length)}
	return f
}

// opening gives the longest clear stretch between two columns, in µm, rounded
// up; 0 for a form of one column.
func (f *form) opening() int64 {
	most := int64(0)
	for i := range f.columns {
		for k := range f.columns {
			a, b := &f.columns[i], &f.columns[k]
			if i != k && a.v0 < b.v1 && b.v0 < a.v1 {
				most = max(most, clear(a, b))
			}
		}
	}
	return most
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

// edgesAt gives the outermost edges at a height; where the outline steps at
// that height, the outer of both.
func (f *form) edgesAt(v int64) (l, r float64) {
	l, r = math.Inf(1), math.Inf(-1)
	for k := range f.columns {
		cells := f.columns[k].cells
		i, _ := slices.BinarySearchFunc(cells, v, func(c cell, v int64) int {
			if c.v1 < v {
				return -1
			}
			return 0
		})
		for ; i < len(cells) && cells[i].v0 <= v; i++ {
			c := &cells[i]
			l, r = min(l, at(c.v0, c.v1, c.l0, c.l1, v)), max(r, at(c.v0, c.v1, c.r0, c.r1, v))
		}
	}
	return l, r
}

func at(v0, v1 int64, x0, x1 float64, v int64) float64 {
	switch v {
	case v0:
		return x0
	case v1:
		return x1
	}
	return x0 + float64((x1-x0)*float64(v-v0))/float64(v1-v0)
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
