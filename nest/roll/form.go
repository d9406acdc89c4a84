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
	Chord float64 // length at mid height between the outermost edges, µm
}

// form is a shape in one of its two ways: heights from 0 to height across the
// roll, cells rising from 0, leftmost point at u = 0.
type form struct {
	height, length int64
	cells          []cell
	upright        bool // one cell with square ends
	longest        float64
}

// cell is a trapezoid between two heights.
type cell struct {
	v0, v1         int64
	l0, l1, r0, r1 float64
}

// NewShape reads a piece in the frame of its ply; mirrored for a ply that is
// laid face down. gap is the cutting gap in µm: half of it is added all round.
func NewShape(p *band.Piece, mirrored bool, gap int64) *Shape {
	cells := hull(band.Slabs(p))
	base := form{height: p.Height(), length: p.MaxX - p.MinX, cells: shift(cells, -float64(p.MinX), -p.MinY)}
	if mirrored {
		base = base.flipped()
	}
	s := &Shape{Area: float64(p.Area2()) / 2, Chord: base.chordAt(base.height / 2)}
	base = base.widened(gap)
	s.ways = [2]form{base.finished(), base.flipped().reversed().finished()}
	return s
}

// Height gives the extent across the roll in µm, with the cutting gap.
func (s *Shape) Height() int64 { return s.ways[0].height }

// Length gives the extent along the roll in µm, with the cutting gap.
func (s *Shape) Length() int64 { return s.ways[0].length }

// hull merges the slabs of one height into one cell.
func hull(slabs []band.Slab) []cell {
	var out []cell
	for _, s := range slabs {
		if n := len(out); n > 0 && out[n-1].v0 == s.Y0 {
			c := &out[n-1]
			c.l0, c.l1 = math.Min(c.l0, s.L0), math.Min(c.l1, s.L1)
			c.r0, c.r1 = math.Max(c.r0, s.R0), math.Max(c.r1, s.R1)
			continue
		}
		out = append(out, cell{s.Y0, s.Y1, s.L0, s.L1, s.R0, s.R1})
	}
	return merged(out)
}

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

func shift(cells []cell, du float64, dv int64) []cell {
	out := make([]cell, len(cells))
	for i, c := range cells {
		out[i] = cell{c.v0 + dv, c.v1 + dv, c.l0 + du, c.l1 + du, c.r0 + du, c.r1 + du}
	}
	return out
}

// flipped mirrors across the roll: v to height - v.
func (f form) flipped() form {
	out := make([]cell, len(f.cells))
	for i, c := range f.cells {
		out[len(out)-1-i] = cell{f.height - c.v1, f.height - c.v0, c.l1, c.l0, c.r1, c.r0}
	}
	return form{height: f.height, length: f.length, cells: out}
}

// reversed mirrors along the roll: u to length - u.
func (f form) reversed() form {
	n := float64(f.length)
	out := make([]cell, len(f.cells))
	for i, c := range f.cells {
		out[i] = cell{c.v0, c.v1, n - c.r0, n - c.r1, n - c.l0, n - c.l1}
	}
	return form{height: f.height, length: f.length, cells: out}
}

func (f form) finished() form {
	for _, c := range f.cells {
		f.longest = math.Max(f.longest, math.Max(c.r0-c.l0, c.r1-c.l1))
	}
	f.upright = len(f.cells) == 1 && f.cells[0] == cell{0, f.height, 0, 0, float64(f.length), float64(f.length)}
	return f
}

// chordAt gives the length between the outermost edges at a height.
func (f form) chordAt(v int64) float64 {
	l, r := f.edgesAt(v)
	return r - l
}

// edgesAt gives the outermost edges at a height; where the outline steps at
// that height, the outer of both.
func (f form) edgesAt(v int64) (l, r float64) {
	l, r = math.Inf(1), math.Inf(-1)
	i, _ := slices.BinarySearchFunc(f.cells, v, func(c cell, v int64) int {
		if c.v1 < v {
			return -1
		}
		return 0
	})
	for ; i < len(f.cells) && f.cells[i].v0 <= v; i++ {
		c := f.cells[i]
		l, r = math.Min(l, at(c.v0, c.v1, c.l0, c.l1, v)), math.Max(r, at(c.v0, c.v1, c.r0, c.r1, v))
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

// forbidden gives the open stretch of positions along the roll, relative to a,
// at which b would overlap a, when b lies dv higher than a. ok is false when
// they share no height. Both are level-wise convex, so it is one stretch.
func forbidden(a, b *form, dv int64) (lo, hi int64, ok bool) {
	if dv >= a.height || -dv >= b.height {
		return 0, 0, false
	}
	if a.upright && b.upright {
		return -b.length, a.length, true
	}
	low, high := math.Inf(1), math.Inf(-1)
	i, j := 0, 0
	for i < len(a.cells) && j < len(b.cells) {
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
