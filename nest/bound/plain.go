package bound

import "math"

// levels is a stretch of heights, both ends included.
type levels struct{ from, to int64 }

// bays lists where an outline is not convex: levels that it crosses more than once,
// and heights at which a side turns inward.
func (s *blank) bays() []levels {
	var out []levels
	for i := 0; i < len(s.slabs); {
		j := i + 1
		for j < len(s.slabs) && s.slabs[j].Y0 == s.slabs[i].Y0 {
			j++
		}
		here := &s.slabs[i]
		if j > i+1 {
			out = append(out, levels{here.Y0, here.Y1})
		}
		if i > 0 && s.turnsIn(i-1, i) {
			out = append(out, levels{here.Y0, here.Y0})
		}
		i = j
	}
	return out
}

// turnsIn says whether a side steps, or turns inward by more than snapping does,
// from one slab to the next above.
func (s *blank) turnsIn(below, above int) bool {
	const slack = 1e-4 // of a slope: what is taken for straight only proves less
	a, b := &s.slabs[below], &s.slabs[above]
	if a.Y1 != b.Y0 || a.L1 != b.L0 || a.R1 != b.R0 {
		return true
	}
	left := (b.L1-b.L0)/float64(b.Y1-b.Y0) - (a.L1-a.L0)/float64(a.Y1-a.Y0)
	right := (b.R1-b.R0)/float64(b.Y1-b.Y0) - (a.R1-a.R0)/float64(a.Y1-a.Y0)
	return left < -slack || right > slack || math.IsNaN(left+right)
}

// plain says whether the outline is convex between two heights, so that a piece of
// that band encloses nothing.
func (s *blank) plain(from, to int64) bool {
	for _, b := range s.bay {
		if b.to > from && b.from < to {
			return false
		}
	}
	return true
}
