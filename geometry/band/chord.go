package band

import "slices"

// Span is a stretch along x, in µm.
type Span struct{ From, To int64 }

// Length gives the span's length in µm.
func (s Span) Length() int64 { return s.To - s.From }

// Chords lists the stretches of the line at height y that have material on
// both sides, in rising order: an edge of the outline on the line is no chord.
func (o *Outline) Chords(y int64) []Span {
	return Overlap(o.beside(y, true), o.beside(y, false))
}

// beside lists the stretches of the line at y with material just above it, or
// just below it.
func (o *Outline) beside(y int64, above bool) []Span {
	var xs []int64
	o.near(y, func(p, q Point) {
		if reaches(p.Y, q.Y, y, above) {
			x, _ := crossing(p, q, y)
			xs = append(xs, x)
		}
	})
	slices.Sort(xs)
	var out []Span
	for i := 0; i+1 < len(xs); i += 2 {
		if n := len(out); n > 0 && out[n-1].To == xs[i] {
			out[n-1].To = xs[i+1]
		} else if xs[i+1] > xs[i] {
			out = append(out, Span{xs[i], xs[i+1]})
		}
	}
	return out
}

// reaches says whether an edge passes just above (or just below) height y.
func reaches(y0, y1, y int64, above bool) bool {
	lo, hi := min(y0, y1), max(y0, y1)
	if above {
		return lo <= y && y < hi
	}
	return lo < y && y <= hi
}

// Overlap gives the stretches that lie in both of two rising lists.
func Overlap(a, b []Span) []Span {
	var out []Span
	for i, j := 0, 0; i < len(a) && j < len(b); {
		if s := (Span{max(a[i].From, b[j].From), min(a[i].To, b[j].To)}); s.To > s.From {
			out = append(out, s)
		}
		if a[i].To < b[j].To {
			i++
		} else {
			j++
		}
	}
	return out
}

// Less gives the stretches of a that lie in no stretch of b, both rising.
func Less(a, b []Span) []Span {
	var out []Span
	j := 0
	for _, s := range a {
		for j < len(b) && b[j].To <= s.From {
			j++
		}
		at := s.From
		for k := j; k < len(b) && b[k].From < s.To; k++ {
			if b[k].From > at {
				out = append(out, Span{at, b[k].From})
			}
			at = max(at, b[k].To)
		}
		if at < s.To {
			out = append(out, Span{at, s.To})
		}
	}
	return out
}
