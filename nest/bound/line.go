package bound

import "slices"

// line is what a piece measures across the roll at all phases of a range at
// least, over a stretch along it: evenly from c0 at x0 to c1 at x1. More is by
// how much it may measure more.
type line struct{ x0, x1, c0, c1, more float64 }

// reach is a band that may stand anywhere between two places: its lower edge
// from low to low+move. What is in it of a stretch of heights is a concave
// function of its place, so that the two ends decide about the least.
type reach struct{ low, width, move float64 }

// meets says whether a column is in the band somewhere.
func (r reach) meets(c *column) bool {
	return min(c.l0, c.l1) < r.low+r.width+r.move && max(c.h0, c.h1) > r.low
}

// within gives how much of the heights from..to is in the band at least; below 0
// where they may be outside.
func (r reach) within(from, to float64) float64 {
	return min(min(to, r.low+r.width)-max(from, r.low), min(to, r.low+r.width+r.move)-max(from, r.low+r.move))
}

// ever says whether the heights from..to are in the band somewhere.
func (r reach) ever(from, to float64) bool {
	return min(to, r.low+r.width+r.move) > max(from, r.low)
}

// lines adds what of a column is in the band wherever it stands.
func (r reach) lines(c *column, out []line) []line {
	var room [6]float64
	marks := r.marks(room[:0], c)
	more := r.move
	if min(c.l0, c.l1) >= r.low+r.move && max(c.h0, c.h1) <= r.low+r.width {
		more = 0 // no cut comes near
	}
	for i := 1; i < len(marks); i++ {
		a, b := marks[i-1], marks[i]
		if b <= a {
			continue
		}
		f0, l0 := r.chords(c, a)
		f1, l1 := r.chords(c, b)
		if (f0-l0 < 0) != (f1-l1 < 0) && f0 != l0 && f1 != l1 {
			x := mix(a, b, (l0-f0)/((l0-f0)-(l1-f1)))
			m, n := r.chords(c, x)
			out = addLine(out, line{a, x, min(f0, l0), min(m, n), more})
			out = addLine(out, line{x, b, min(m, n), min(f1, l1), more})
			continue
		}
		out = addLine(out, line{a, b, min(f0, l0), min(f1, l1), more})
	}
	return out
}

// marks adds the places between which what is in the band at either of its two
// ends changes evenly.
func (r reach) marks(out []float64, c *column) []float64 {
	out = append(out, c.x0, c.x1)
	add := func(a, b, level float64) {
		if (a < level) != (b < level) {
			out = append(out, mix(c.x0, c.x1, (level-a)/(b-a)))
		}
	}
	add(c.l0, c.l1, r.low)
	add(c.h0, c.h1, r.low+r.width)
	if r.move > 0 {
		add(c.l0, c.l1, r.low+r.move)
		add(c.h0, c.h1, r.low+r.width+r.move)
	}
	slices.Sort(out)
	return out
}

// chords gives what a column measures in the band at its lowest and at its
// highest place; below 0 where it is outside.
func (r reach) chords(c *column, x float64) (first, last float64) {
	t := (x - c.x0) / (c.x1 - c.x0)
	l, h := mix(c.l0, c.l1, t), mix(c.h0, c.h1, t)
	return min(h, r.low+r.width) - max(l, r.low), min(h, r.low+r.width+r.move) - max(l, r.low+r.move)
}

// addLine adds what of a line is above nothing.
func addLine(out []line, l line) []line {
	s, ok := l.above(0)
	if !ok || s.to <= s.from {
		return out
	}
	l = l.part(s.from, s.to)
	l.c0, l.c1 = max(0, l.c0), max(0, l.c1)
	return append(out, l)
}

// above gives where a line is longer than a height.
func (l line) above(height float64) (stretch, bool) {
	switch {
	case l.c0 <= height && l.c1 <= height:
		return stretch{}, false
	case l.c0 <= height:
		return stretch{mix(l.x0, l.x1, (height-l.c0)/(l.c1-l.c0)), l.x1}, true
	case l.c1 <= height:
		return stretch{l.x0, mix(l.x0, l.x1, (l.c0-height)/(l.c0-l.c1))}, true
	}
	return stretch{l.x0, l.x1}, true
}

// split hands the parts of a line inside rising stretches and those outside, to
// those who ask for them.
func (l line) split(list []stretch, inside, outside func(line)) {
	at := l.x0
	for _, s := range list {
		if s.to <= at {
			continue
		}
		if s.from >= l.x1 {
			break
		}
		if s.from > at {
			if outside != nil {
				outside(l.part(at, s.from))
			}
			at = s.from
		}
		to := min(s.to, l.x1)
		if inside != nil {
			inside(l.part(at, to))
		}
		at = to
	}
	if at < l.x1 && outside != nil {
		outside(l.part(at, l.x1))
	}
}

func (l line) part(from, to float64) line {
	if from == l.x0 && to == l.x1 {
		return l
	}
	long := l.x1 - l.x0
	return line{from, to, mix(l.c0, l.c1, (from-l.x0)/long), mix(l.c0, l.c1, (to-l.x0)/long), l.more}
}
