package bound

import "slices"

// hollows weighs what a core measures across the roll with the hollows between its
// feet filled, and those between its heads, where that is more than the core itself
// does, and adds those stretches to the closed ones. A piece that reaches from edge to edge
// of the roll shuts them off: what lies there lies there whole, and is short.
// Beside narrow walls of another piece they do not count: the piece may reach
// into that one's opening.
//
//	   ____      the roll's edge
//	  /    \
//	 / ____ \
//	/_/    \_\   the other edge
//	   hollow
func (a *walled) hollows(c *core, closed []stretch, s scale) (float64, []stretch) {
	sum := 0.0
	if a.walls != fullWalls || a.gap == 0 || !c.stands {
		return sum, closed
	}
	for above, list := range [...][]stretch{c.feet, c.heads} {
		for i := 1; i < len(list); i++ {
			h := stretch{list[i-1].to, list[i].from}
			if h.to-h.from > a.gap || slices.ContainsFunc(c.doubled, func(d stretch) bool { return d.from < h.to && h.from < d.to }) {
				continue // where doubled, what of it is above the hollow is not certain
			}
			for k := range c.posts {
				if l, ok := c.filled(k, h, above == 1); ok {
					l.c0, l.c1 = l.c0-s.off, l.c1-s.off
					sum, closed = a.fill(sum, closed, c, l, s)
				}
			}
		}
	}
	return sum, closed
}

// filled gives what a post measures in a stretch with the room to the lower, or
// upper, edge of its band.
func (c *core) filled(k int, in stretch, above bool) (line, bool) {
	p, b := &c.posts[k], c.band
	from, to := max(p.x0, in.from), min(p.x1, in.to)
	if from >= to {
		return line{}, false
	}
	if above {
		return line{p.x0, p.x1, min(b.width, b.low+b.width-p.l0), min(b.width, b.low+b.width-p.l1), 0}.part(from, to), true
	}
	return line{p.x0, p.x1, min(b.width, p.h0-b.low-b.move), min(b.width, p.h1-b.low-b.move), 0}.part(from, to), true
}

// fill adds what a filled part of a core weighs to the sum, and its place to the
// closed ones.
func (a *walled) fill(sum float64, closed []stretch, c *core, h line, s scale) (float64, []stretch) {
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
		f.part(up.from, up.to).split(closed, nil, func(l line) {
			sum += a.over(l.x1-l.x0, l.c0/s.width, l.c1/s.width, 0)
		})
		closed = united(append(closed, up))
	}
	return sum, closed
}
