package check

import (
	"sort"
)

// bare gives the parts of a stretch where fewer plies than asked lie between
// plies i and j: the full plies everywhere, a ply with a blank of its own only
// where that blank covers the joints of both, at levels y0 and y1 of bundle a.
func (s *staggering) bare(a bundle, over span, y0, y1 float64, i, j, asked int) []span {
	full := s.full[j] - s.full[i+1]
	if full >= asked {
		return nil
	}
	var covers []span
	if j-i-1 > full {
		covers = s.patches(a, over, y0, y1, i, j)
	}
	if len(covers) < asked-full { // too few to matter anywhere
		return []span{over}
	}
	return thin(over, covers, asked-full)
}

// patches lists where each ply between i and j that is not full covers the
// stretch.
func (s *staggering) patches(a bundle, over span, y0, y1 float64, i, j int) []span {
	var out []span
	for k := i + 1; k < j; k++ {
		if s.plies[k].full {
			continue
		}
		f := s.fences.get(k, s.plies[k].Blank, a.angle)
		both := common(f.at(y0), f.at(y1))
		out = append(out, common([]span{over}, both)...)
	}
	return out
}

// thin gives the parts of a stretch that fewer than n spans cover.
func thin(over span, covers []span, n int) []span {
	type change struct {
		x  float64
		by int
	}
	var cs []change
	for _, c := range covers {
		cs = append(cs, change{c.x0, 1}, change{c.x1, -1})
	}
	sort.Slice(cs, func(i, j int) bool {
		if cs[i].x != cs[j].x {
			return cs[i].x < cs[j].x
		}
		return cs[i].by > cs[j].by
	})
	var out []span
	count, from := 0, over.x0
	for _, c := range append(cs, change{over.x1, 0}) {
		if count < n && c.x > from {
			out = addSpan(out, span{from, c.x})
		}
		count, from = count+c.by, c.x
	}
	return out
}

// addSpan appends a span, joined to the last where they touch.
func addSpan(to []span, s span) []span {
	if n := len(to) - 1; n >= 0 && to[n].x1 >= s.x0 {
		to[n].x1 = s.x1
		return to
	}
	return append(to, s)
}
