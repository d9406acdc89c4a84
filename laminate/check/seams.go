package check

import (
	"math"
	"sort"

	"stripwright/laminate"
)

// seam is a butt that two strips of a ply make, along the roll direction (side)
// or across it (end). It lies in the frame of its kind: the ply frame for a
// side seam, the ply frame turned by -90° for an end seam, so that it runs
// along x from x0 to x1 at level y. Strip below has the seam as its upper edge.
type seam struct {
	kind         string
	x0, x1, y    float64
	below, above int // strips of the ply
}

// scrap is the length of seam below which rounding may make or lose one, in mm.
const scrap = 0.05

// side is a strip's edge that runs along x: to the right where the strip lies
// above it, to the left where it lies below.
type side struct {
	x0, x1, y float64
	strip     int
}

// seamsOf finds every butt along and across the roll among the strips of a
// ply, from their shapes in the ply frame: an edge with one strip below it and
// another above.
func seamsOf(shapes []shape) []seam {
	out := seamsAlong(shapes, laminate.SideJoint)
	turned := make([]shape, len(shapes))
	for i, s := range shapes {
		turned[i] = s.turnedBack()
	}
	return append(out, seamsAlong(turned, laminate.EndJoint)...)
}

// turnedBack gives the shape turned by -90°, exactly.
func (s shape) turnedBack() shape {
	out := make(shape, len(s))
	for i, r := range s {
		t := make([]point, len(r))
		for k, p := range r {
			t[k] = point{p[1], -p[0]}
		}
		out[i] = t
	}
	return out
}

func seamsAlong(shapes []shape, kind string) []seam {
	lower, upper := sidesAlong(shapes)
	var out []seam
	for i, k := 0, 0; i < len(lower); {
		n := levelEnd(lower, i)
		for k < len(upper) && upper[k].y < lower[i].y-tolerance {
			k++
		}
		m := k
		for m < len(upper) && upper[m].y <= lower[n-1].y+tolerance {
			m++
		}
		out = append(out, meet(lower[i:n], upper[k:m], kind)...)
		i = n
	}
	return out
}

// levelEnd gives the end of the sides that share the level of side i.
func levelEnd(s []side, i int) int {
	n := i + 1
	for n < len(s) && s[n].y-s[n-1].y <= tolerance {
		n++
	}
	return n
}

// sidesAlong lists the edges along x with their strip below and those with
// their strip above, by level.
func sidesAlong(shapes []shape) (below, above []side) {
	for i, s := range shapes {
		for _, r := range s {
			for k, p := range r {
				q := r[(k+1)%len(r)]
				dx, dy := q[0]-p[0], q[1]-p[1]
				if math.Abs(dy) > tolerance || math.Abs(dx) <= math.Abs(dy) {
					continue
				}
				e := side{math.Min(p[0], q[0]), math.Max(p[0], q[0]), p[1] + float64(dy/2), i}
				if dx < 0 {
					below = append(below, e)
				} else {
					above = append(above, e)
				}
			}
		}
	}
	byLevel(below)
	byLevel(above)
	return below, above
}

func byLevel(s []side) {
	sort.Slice(s, func(i, j int) bool {
		switch {
		case s[i].y != s[j].y:
			return s[i].y < s[j].y
		case s[i].x0 != s[j].x0:
			return s[i].x0 < s[j].x0
		}
		return s[i].strip < s[j].strip
	})
}

// meet pairs the sides of one level that lie against each other, and joins
// what goes on between the same two strips. Strips that do not overlap meet no
// more often than they have sides; where they do, coverage fails, and no more
// seams than that are kept.
func meet(below, above []side, kind string) []seam {
	byPlace(below)
	byPlace(above)
	var out []seam
	k := 0
	for _, b := range below {
		for k < len(above) && above[k].x1 <= b.x0 {
			k++
		}
		for m := k; m < len(above) && above[m].x0 < b.x1 && len(out) <= len(below)+len(above); m++ {
			a := above[m]
			x0, x1 := math.Max(a.x0, b.x0), math.Min(a.x1, b.x1)
			if x1 > x0 && math.Abs(a.y-b.y) <= tolerance {
				out = extend(out, seam{kind, x0, x1, (a.y + b.y) / 2, b.strip, a.strip})
			}
		}
	}
	return long(out)
}

func byPlace(s []side) {
	sort.Slice(s, func(i, j int) bool {
		if s[i].x0 != s[j].x0 {
			return s[i].x0 < s[j].x0
		}
		return s[i].strip < s[j].strip
	})
}

func extend(to []seam, s seam) []seam {
	if n := len(to) - 1; n >= 0 {
		l := &to[n]
		if l.below == s.below && l.above == s.above && s.x0-l.x1 <= 2*tolerance {
			l.x1 = math.Max(l.x1, s.x1)
			return to
		}
	}
	return append(to, s)
}

func long(s []seam) []seam {
	out := s[:0]
	for _, e := range s {
		if e.x1-e.x0 > scrap {
			out = append(out, e)
		}
	}
	return out
}
