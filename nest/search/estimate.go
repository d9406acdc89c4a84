package search

import (
	"cmp"
	"slices"

	"stripwright/nest/layout"
)

// pack gives the roll length that narrow pieces take side by side, as
// rectangles of their height and mid-height length: longest first, each at the
// place where it starts earliest.
func pack(narrow []layout.Narrow, width, gap int64, sky *skyline) float64 {
	slices.SortFunc(narrow, func(a, b layout.Narrow) int {
		return cmp.Or(cmp.Compare(b.Length, a.Length), cmp.Compare(b.Height, a.Height))
	})
	sky.reset(width + gap)
	for _, n := range narrow {
		sky.add(n.Height+gap, n.Length+float64(gap))
	}
	if sky.top == 0 {
		return 0
	}
	return sky.top
}

// skyline is how far the roll is taken at each height: steps from v up to the
// next step's v.
type skyline struct {
	steps []skyStep
	width int64
	top   float64
}

type skyStep struct {
	v int64
	u float64
}

func (s *skyline) reset(width int64) {
	s.width, s.top = width, 0
	s.steps = append(s.steps[:0], skyStep{0, 0})
}

// add lays a rectangle where it starts earliest, lowest first.
func (s *skyline) add(height int64, length float64) {
	best, bestU := -1, 0.0
	for i := range s.steps {
		if s.steps[i].v+height > s.width {
			break
		}
		if u := s.level(i, height); best < 0 || u < bestU {
			best, bestU = i, u
		}
	}
	if best < 0 {
		s.top += length // wider than the roll: cannot happen for narrow pieces
		return
	}
	s.raise(best, height, bestU+length)
	s.top = max(s.top, bestU+length)
}

// level gives the greatest u from step i over a height.
func (s *skyline) level(i int, height int64) float64 {
	end, u := s.steps[i].v+height, 0.0
	for ; i < len(s.steps) && s.steps[i].v < end; i++ {
		u = max(u, s.steps[i].u)
	}
	return u
}

// raise sets the skyline from step i over a height to u.
func (s *skyline) raise(i int, height int64, u float64) {
	from, end := s.steps[i].v, s.steps[i].v+height
	j, last := i, 0.0
	for ; j < len(s.steps) && s.steps[j].v < end; j++ {
		last = s.steps[j].u
	}
	insert := []skyStep{{from, u}}
	if end < s.width && (j == len(s.steps) || s.steps[j].v > end) {
		insert = append(insert, skyStep{end, last})
	}
	s.steps = slices.Replace(s.steps, i, j, insert...)
}
