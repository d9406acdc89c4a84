package bound

import (
	"cmp"
	"slices"
)

// profile is what a range of phases makes of a blank for certain: the pieces
// that may hang together, each with the parts that do, whatever the phase.
type profile struct {
	cell
	clusters []cluster
	slivers  float64 // area that is in a band at some phases only, µm²
}

// cluster is parts of one band that may belong to one piece.
type cluster []core

// core is a part that is in one piece at all phases of the range.
type core struct {
	band     reach
	lines    []line // along the roll
	from, to float64
	posts    []post
	spine    float64   // height of what runs along the whole piece without a bend
	feet     []stretch // where it reaches the lower edge of its band, rising
	heads    []stretch // and the upper edge
	stands   bool      // it reaches both
	plain    bool      // every place is in one column only
	doubled  []stretch // places that may be in several columns
}

// covered gives how much of the roll lines that do not overlap take.
func covered(list []line) float64 {
	sum := 0.0
	for _, l := range list {
		sum += l.x1 - l.x0
	}
	return sum
}

// begin makes a core new, in the room of what it held, for so many lines and posts.
func (c *core) begin(r reach, first line, size *tally) {
	*c = core{band: r, from: first.x0, to: first.x1, plain: true,
		lines: slices.Grow(c.lines[:0], size.lines), posts: slices.Grow(c.posts[:0], size.posts),
		feet: c.feet[:0], heads: c.heads[:0], doubled: c.doubled[:0]}
}

// add puts a column and its lines to a core.
func (c *core) add(k *column, lines []line, off float64) {
	r := c.band
	c.lines = append(c.lines, lines...)
	c.from, c.to = min(c.from, lines[0].x0), max(c.to, lines[len(lines)-1].x1)
	if n := len(c.posts); n > 0 && c.posts[n-1].x0 == k.x0 {
		c.plain = false
	}
	c.posts = append(c.posts, post{k, r.within(k.shared())})
	if s, ok := k.across(r.low-off, r.low+r.move+off); ok {
		c.feet = joinedTo(c.feet, s)
	}
	if s, ok := k.across(r.low+r.width-off, r.low+r.width+r.move+off); ok {
		c.heads = joinedTo(c.heads, s)
	}
}

// upright says whether a core reaches both edges of its band within a stretch.
func (c *core) upright(s stretch) bool { return s.meets(c.feet) && s.meets(c.heads) }

// straight gives the height of what runs along all columns of a core.
func (c *core) straight() float64 {
	var room [3][8]stretch
	held, here, both := room[0][:0], room[1][:0], room[2][:0]
	for i := 0; i < len(c.posts); {
		here = here[:0]
		j := i
		for ; j < len(c.posts) && c.posts[j].x0 == c.posts[i].x0; j++ {
			if c.posts[j].least > 0 {
				low, high := c.posts[j].shared()
				here = append(here, stretch{low, high})
			}
		}
		if i == 0 {
			held = append(held, here...)
		} else {
			both = common(both[:0], held, here)
			held, both = both, held
		}
		i = j
	}
	most := 0.0
	for _, s := range held {
		most = max(most, c.band.within(s.from, s.to))
	}
	return most
}

// stretches adds where the lines are longer than a height, as rising stretches
// along the roll that do not touch.
func (c *core) stretches(out []stretch, above float64) []stretch {
	for _, l := range c.lines {
		if s, ok := l.above(above); ok {
			out = joinedTo(out, s)
		}
	}
	return united(out)
}

// joinedTo adds a stretch to a list, as one with the last where they touch.
func joinedTo(list []stretch, s stretch) []stretch {
	if n := len(list); n > 0 && s.from <= list[n-1].to && list[n-1].from <= s.to {
		list[n-1] = stretch{min(list[n-1].from, s.from), max(list[n-1].to, s.to)}
		return list
	}
	return append(list, s)
}

// united joins stretches that overlap or touch.
func united(list []stretch) []stretch {
	slices.SortFunc(list, func(a, b stretch) int { return cmp.Or(cmp.Compare(a.from, b.from), cmp.Compare(a.to, b.to)) })
	out := list[:0]
	for _, s := range list {
		if n := len(out); n > 0 && s.from <= out[n-1].to {
			out[n-1].to = max(out[n-1].to, s.to)
			continue
		}
		out = append(out, s)
	}
	return out
}
