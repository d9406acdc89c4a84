package bound

import "slices"

// hollows gives what a core measures across the roll with the hollows between its
// feet filled, and those between its heads. A piece that reaches from edge to edge
// of the roll shuts them off: what lies there lies there whole, and is short.
// Beside narrow walls of another piece they do not count: the piece may reach
// into that one's opening.
//
//	   ____      the roll's edge
//	  /    \
//	 / ____ \
//	/_/    \_\   the other edge
//	   hollow
func (a *walled) hollows(c *core, s scale) []line {
	if a.walls != fullWalls || a.gap == 0 || !c.upright(stretch{c.from, c.to}) {
		return nil
	}
	var out []line
	for side, list := range [][]stretch{united(slices.Clone(c.feet)), united(slices.Clone(c.heads))} {
		for _, h := range between(list, a.gap) {
			if slices.ContainsFunc(c.doubled, func(d stretch) bool { return d.from < h.to && h.from < d.to }) {
				continue // what of it is above the hollow is not certain
			}
			for _, l := range c.filled(h, side == 1) {
				l.c0, l.c1 = l.c0-s.off, l.c1-s.off
				out = append(out, l)
			}
		}
	}
	return out
}

// filled gives what a core measures in a stretch with the room to the lower, or
// upper, edge of its band.
func (c *core) filled(in stretch, above bool) []line {
	var out []line
	for i := range c.posts {
		p := &c.posts[i]
		from, to := max(p.from, in.from), min(p.to, in.to)
		if from >= to {
			continue
		}
		b := p.band
		at := func(k int) float64 {
			if above {
				return min(b.width, b.low+b.width-p.ends[k][0])
			}
			return min(b.width, p.ends[k][1]-b.low-b.move)
		}
		out = append(out, (line{p.from, p.to, at(0), at(1), 0}).part(from, to))
	}
	return out
}

// weighHollow weighs what the hollows of a core make of its lines, where that is
// more than they measure, and adds those stretches to the closed ones.
func (a *walled) weighHollow(c *core, closed []stretch, s scale) (float64, []stretch) {
	sum := 0.0
	for _, h := range a.hollows(c, s) {
		for _, l := range c.lines {
			from, to := max(l.x0, h.x0), min(l.x1, h.x1)
			if from >= to {
				continue
			}
			f, own := h.part(from, to), l.part(from, to)
			up, ok := (line{from, to, f.c0 - own.c0 - own.more, f.c1 - own.c1 - own.more, 0}).above(0)
			if !ok || up.from >= up.to {
				continue
			}
			f.part(up.from, up.to).split(closed, func(line) {}, func(l line) {
				sum += a.over(l.x1-l.x0, l.c0/s.width, l.c1/s.width, 0)
			})
			closed = united(append(slices.Clone(closed), up))
		}
	}
	return sum, closed
}
