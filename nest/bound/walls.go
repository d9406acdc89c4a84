package bound

import "slices"

// hair is a length too small to tell apart, µm.
const hair = 1e-3

// Arguments about walls, by how much of the roll's width a wall may leave free.
const (
	fullWalls   = iota // nothing
	bareWalls          // less than what weighs anything
	narrowWalls        // less than thin: what runs straight may pass
)

// walled is an argument about what pieces measure across the roll. Every place
// along the roll is a bin of the roll's width, and the weights of the pieces
// there add up to one at most.
//
//	+-----+           +-----+  the roll's edge
//	|wall |  between  |wall |
//	|     +-----------+     |
//	|         piece         |
//	+-----------------------+
//
// Where a piece leaves little of the width free it is a wall to others: what is
// wider than that does not pass. If such a wide part of another piece lies
// between two walls of one piece, it is no longer than they are apart. So the
// place between weighs one in full when nothing counts that is short enough to
// lie there, short being no longer than gap:
//
//   - a piece that is short itself, unless it reaches from edge to edge of the
//     roll: the piece with the walls lies across its way;
//   - with walls that are not full, each part of a piece that is wide and short,
//     unless it is a wall or reaches from edge to edge.
//
// Walls of full width hold whatever is between them. Others count only where the
// piece itself is wide all the way from one to the other: then no wall of
// another piece can stand between, which would claim the same place. What is
// not wide may pass such a wall and then bend into the opening; it counts for
// nothing (bareWalls: the weight is nothing anyway), or (narrowWalls) as much as
// runs straight along the whole of its piece, because that passes beside the
// walls and cannot bend; the place then weighs what the walls measure.
type walled struct {
	weight
	walls int
	thin  float64 // narrowWalls: share of the width that is not wide
	gap   float64 // µm
}

// scale is what an argument needs to know of the roll and the blank.
type scale struct{ width, off float64 }

// ofCluster gives what a cluster weighs, µm along the roll.
func (a *walled) ofCluster(c []known, s scale) float64 {
	sum := 0.0
	var room [16]stretch
	closed := room[:0]
	for i := range c {
		closed = a.closed(closed, &c[i], s)
	}
	closed = united(closed)
	for _, f := range closed {
		sum += f.to - f.from
	}
	for i := range c {
		var fences [8]fence
		for _, f := range a.fenced(fences[:0], &c[i], s) {
			high := a.at(f.high, s)
			(line{x0: f.from, x1: f.to}).split(closed, nil, func(l line) { sum += float64((l.x1 - l.x0) * high) })
			closed = united(append(closed, f.stretch))
		}
	}
	for i := range c {
		more, with := a.hollows(c[i].core, closed, s)
		sum, closed = sum+more, with
	}
	for i := range c {
		sum += a.beside(&c[i], closed, s)
	}
	return sum
}

// full adds where a core takes the whole width.
func (k *known) full(out []stretch, s scale) []stretch {
	for _, f := range k.stretches(s.width - hair) {
		if f.to-f.from > float64(2*s.off)+1 {
			out = append(out, f)
		}
	}
	return out
}

// lost says whether a core is short and may lie between walls.
func (a *walled) lost(c *core) bool {
	return c.to-c.from <= a.gap && !c.stands
}

// wide is the length that is wide for certain.
func (a *walled) wide(s scale) float64 {
	if a.walls == narrowWalls {
		return float64(a.thin*s.width) + s.off + hair
	}
	return float64(a.bare()*s.width) + s.off + hair
}

// high is the length from which on a part is a wall for certain.
func (a *walled) high(s scale) float64 { return s.width - a.wide(s) + float64(2*(s.off+hair)) }

// closed adds the places between the walls of a core that weigh one in full.
func (a *walled) closed(out []stretch, c *known, s scale) []stretch {
	if a.gap == 0 || a.lost(c.core) {
		return out
	}
	var room [16]stretch
	out = between(out, c.full(room[:0], s), a.gap)
	if a.walls == bareWalls {
		wide := c.stretches(a.wide(s))
		for _, f := range between(room[:0], c.stretches(a.high(s)), a.gap) {
			if covers(wide, f) {
				out = append(out, f)
			}
		}
	}
	return out
}

// fence is what lies between two narrow walls, and how high they are both.
type fence struct {
	stretch
	high float64
}

// fenced adds the places between narrow walls of a core.
func (a *walled) fenced(out []fence, c *known, s scale) []fence {
	if a.walls != narrowWalls || a.gap == 0 || a.lost(c.core) {
		return out
	}
	wide := c.stretches(a.wide(s))
	last := -1
	for i := range c.posts {
		q := &c.posts[i]
		if q.least <= a.high(s) {
			continue
		}
		if last >= 0 {
			p := &c.posts[last]
			f := stretch{p.x1, q.x0}
			high := c.band.within(p.common(q.column))
			if f.to > f.from && f.to-f.from <= a.gap && high > 0 && covers(wide, f) {
				out = append(out, fence{f, high})
			}
		}
		last = i
	}
	return out
}

// between adds the stretches between those of a rising list, up to a length.
func between(out, list []stretch, most float64) []stretch {
	for i := 1; i < len(list); i++ {
		if s := (stretch{list[i-1].to, list[i].from}); s.to-s.from <= most {
			out = append(out, s)
		}
	}
	return out
}

// covers says whether one of a list holds a stretch.
func covers(list []stretch, s stretch) bool {
	return slices.ContainsFunc(list, func(t stretch) bool { return t.from <= s.from && s.to <= t.to })
}

// plain says whether the weight is the share itself.
func (w weight) plain() bool { return w.steps == 0 && w.edge == 0 }

// at is the weight of a length across the roll that may be off.
func (w weight) at(c float64, s scale) float64 {
	return w.over(1, c/s.width, c/s.width, s.off/s.width)
}
