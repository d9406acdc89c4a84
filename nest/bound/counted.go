package bound

import "slices"

// beside weighs what of a core is not closed off and cannot lie where it is.
func (a *walled) beside(c *known, closed []stretch, s scale) float64 {
	m := manner{weight: a.weight}
	var room [16]stretch
	parts := room[:0]
	switch {
	case a.gap > 0 && a.lost(c.core):
		if !a.plain() {
			return 0
		}
		m.open = countNone
	case a.gap > 0 && a.walls != fullWalls:
		m.open, m.thin = countParts, a.thin
		if a.walls == narrowWalls {
			m.open = countStraight
		}
		parts = a.kept(parts, c, s)
	}
	last, ok := c.last(m)
	if !ok || !last.same(closed, parts) {
		last.closed, last.parts = append(last.closed[:0], closed...), append(last.parts[:0], parts...)
		last.sum = a.lines(c.core, m, closed, parts, s)
	}
	return last.sum
}

// lines weighs the lines of a core.
func (a *walled) lines(c *core, m manner, closed, parts []stretch, s scale) float64 {
	sum := 0.0
	var drop, keep func(line)
	if a.plain() {
		drop = func(l line) { sum += a.drop(l, s) }
	} else {
		keep = func(l line) { sum += a.keep(l, s) }
	}
	bend := func(l line) { // may lie between walls, but for what runs straight
		if drop != nil {
			drop(l)
		}
		sum += float64((l.x1 - l.x0) * a.at(c.spine, s))
	}
	open := keep
	switch m.open {
	case countNone:
		open = drop
	case countParts:
		open = func(l line) { l.split(parts, keep, drop) }
	case countStraight:
		open = func(l line) { l.split(parts, keep, bend) }
	}
	for _, l := range c.lines {
		switch {
		case len(closed) > 0:
			l.split(closed, drop, open)
		case open != nil:
			open(l)
		}
	}
	return sum
}

// kept adds the wide parts of a core that cannot lie between narrow walls of
// another piece.
func (a *walled) kept(out []stretch, c *known, s scale) []stretch {
	walls := c.stretches(a.high(s))
	for _, p := range c.stretches(a.wide(s)) {
		if p.to-p.from > a.gap || c.plain && c.upright(p) ||
			slices.ContainsFunc(walls, func(w stretch) bool { return w.from < p.to && p.from < w.to }) {
			out = append(out, p)
		}
	}
	return out
}

// keep weighs a line where the weight is not plain: then it is counted with the
// area. What goes from cut to cut is exact.
func (w weight) keep(l line, s scale) float64 {
	off := s.off
	if l.c0 >= s.width-hair && l.c1 >= s.width-hair {
		off = 0
	}
	return w.over(l.x1-l.x0, l.c0/s.width, l.c1/s.width, off/s.width)
}

// drop takes away the area of a line that does not count, where the weight is plain.
func (w weight) drop(l line, s scale) float64 {
	high := min(s.width, float64((l.c0+l.c1)/2)+l.more+s.off)
	return -float64((l.x1-l.x0)*high) / s.width
}
