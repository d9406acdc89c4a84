package roll

import (
	"math"
	"slices"
)

// widened grows a form by half the cutting gap to every side, as if by a
// square: the edge at a height becomes the outermost edge within half a gap
// above and below it, moved out by half a gap. A circle would do; the square
// holds it, so the gap is never less than asked.
func (f form) widened(gap int64) form {
	if gap == 0 {
		return f
	}
	r := gap / 2
	if gap%2 == 1 {
		r++
	}
	out := form{height: f.height + 2*r, length: f.length + 2*r}
	for _, c := range f.columns {
		out.columns = append(out.columns, column{cells: widenCells(c.cells, r)})
	}
	return out
}

// widenCells grows one column; columns may overlap afterwards.
func widenCells(cells []cell, r int64) []cell {
	var left, right []line
	heights := []int64{}
	for _, c := range cells {
		left = append(left, spread(c.v0, c.v1, -c.l0, -c.l1, r))
		right = append(right, spread(c.v0, c.v1, c.r0, c.r1, r))
		heights = append(heights, c.v0-r, c.v0+r, c.v1-r, c.v1+r)
	}
	slices.Sort(heights)
	heights = slices.Compact(heights)
	var out []cell
	for i := 0; i+1 < len(heights); i++ {
		v0, v1 := heights[i], heights[i+1]
		l0, l1 := outermost(left, v0, v1)
		r0, r1 := outermost(right, v0, v1)
		if math.IsInf(l0, -1) {
			continue
		}
		d := float64(r) // the leftmost point goes back to u = 0
		out = append(out, trapezoid(v0+r, v1+r, d-l0, d-l1, d+r0, d+r1))
	}
	return merged(out)
}

// line is the outer edge of one cell after spreading: level from v0 to a,
// straight from a to b, level from b to v1.
type line struct {
	v0, a, b, v1 int64
	x0, x1       float64
}

// spread takes the greatest x within r above and below and moves it out by r.
func spread(v0, v1 int64, x0, x1 float64, r int64) line {
	d := float64(r)
	if x1 >= x0 { // the outermost point lies upward: reached r earlier
		return line{v0 - r, v0 - r, v1 - r, v1 + r, x0 + d, x1 + d}
	}
	return line{v0 - r, v0 + r, v1 + r, v1 + r, x0 + d, x1 + d}
}

func (l line) at(v int64) float64 {
	switch {
	case v <= l.a:
		return l.x0
	case v >= l.b:
		return l.x1
	}
	return at(l.a, l.b, l.x0, l.x1, v)
}

// outermost gives the greatest x of all lines over a stretch of heights, at
// its two ends. The greatest of straight lines is convex, so the straight line
// between the two ends never lies inside it.
func outermost(lines []line, v0, v1 int64) (x0, x1 float64) {
	x0, x1 = math.Inf(-1), math.Inf(-1)
	for _, l := range lines {
		if l.v0 <= v0 && v1 <= l.v1 {
			x0, x1 = math.Max(x0, l.at(v0)), math.Max(x1, l.at(v1))
		}
	}
	return x0, x1
}
