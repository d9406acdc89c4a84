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
	lines    []line // along the roll
	from, to float64
	posts    []post
	spine    float64   // height of what runs along the whole piece without a bend
	feet     []stretch // where it reaches the lower edge of its band
	heads    []stretch // and the upper edge
	plain    bool      // every place is in one column only
	doubled  []stretch // places that may be in several columns
	known    []levelled
}

// profiles works out ranges of phase of a blank.
func (s *shape) profiles(cells []cell, width int64) []profile {
	if s.columns == nil {
		s.columns, s.links = columnsOf(s.outline)
	}
	out := make([]profile, len(cells))
	for i, c := range cells {
		p := &out[i]
		p.cell = c
		for _, y := range s.bands(c.from, width) {
			s.addBand(p, reach{float64(y), float64(width), float64(c.to - c.from)})
		}
	}
	return out
}

// addBand adds what of the columns is in a band.
func (s *shape) addBand(p *profile, r reach) {
	sure, maybe := s.linked(r)
	first := len(p.clusters)
	where, at := make(map[int]int), make(map[int]int) // cluster, and core in it
	ghosts := make(map[int][]stretch)                 // columns that are in the band at some phases
	var room []line
	for i := range s.columns {
		c := &s.columns[i]
		if !r.meets(c) {
			continue
		}
		room = r.lines(c, room[:0])
		p.slivers += float64(r.move * (c.x1 - c.x0 - covered(room)))
		m, k := top(maybe, i), top(sure, i)
		if len(room) == 0 {
			ghosts[m] = append(ghosts[m], stretch{c.x0, c.x1})
			continue
		}
		if _, ok := where[m]; !ok {
			where[m] = len(p.clusters)
			p.clusters = append(p.clusters, nil)
		}
		cl := &p.clusters[where[m]]
		if _, ok := at[k]; !ok {
			at[k] = len(*cl)
			*cl = append(*cl, core{from: room[0].x0, to: room[0].x1, plain: true})
		}
		(*cl)[at[k]].add(c, r, room, s.off)
	}
	for m, n := range where {
		if n >= first {
			p.clusters[n].finish(ghosts[m])
		}
	}
}

// finish notes where a piece is or may be in several columns, and what runs
// straight along it. Ghosts are columns that it may have at some phases.
func (c cluster) finish(ghosts []stretch) {
	for i := range c {
		own := &c[i]
		own.doubled = ghosts
		for k := 1; k < len(own.posts); k++ {
			if own.posts[k].from == own.posts[k-1].from {
				own.doubled = append(own.doubled, own.posts[k].stretch)
			}
		}
		for j := range c {
			for k := range c[j].posts {
				if j != i {
					own.doubled = append(own.doubled, c[j].posts[k].stretch)
				}
			}
		}
		own.doubled = united(slices.Clone(own.doubled))
	}
	if len(c) == 1 && len(ghosts) == 0 {
		c[0].spine = c[0].straight()
	}
}

// linked says which columns are in one piece wherever the band stands, and which
// may be, as forests.
func (s *shape) linked(r reach) (sure, maybe []int) {
	sure, maybe = make([]int, len(s.columns)), make([]int, len(s.columns))
	for i := range s.columns {
		sure[i], maybe[i] = i, i
	}
	for _, l := range s.links {
		if r.ever(l.from-s.off, l.to+s.off) {
			merge(maybe, l.a, l.b)
		}
		if r.within(l.from, l.to) > s.off {
			merge(sure, l.a, l.b)
		}
	}
	return sure, maybe
}

// covered gives how much of the roll lines that do not overlap take.
func covered(list []line) float64 {
	sum := 0.0
	for _, l := range list {
		sum += l.x1 - l.x0
	}
	return sum
}

// add puts a column and its lines to a core.
func (c *core) add(k *column, r reach, room []line, off float64) {
	c.lines = append(c.lines, room...)
	c.from, c.to = min(c.from, room[0].x0), max(c.to, room[len(room)-1].x1)
	if n := len(c.posts); n > 0 && c.posts[n-1].from == k.x0 {
		c.plain = false
	}
	c.posts = append(c.posts, newPost(k, r))
	if s, ok := k.across(r.low-off, r.low+r.move+off); ok {
		c.feet = append(c.feet, s)
	}
	if s, ok := k.across(r.low+r.width-off, r.low+r.width+r.move+off); ok {
		c.heads = append(c.heads, s)
	}
}

// upright says whether a core reaches both edges of its band within a stretch.
func (c *core) upright(s stretch) bool {
	in := func(t stretch) bool { return max(s.from, t.from) < min(s.to, t.to) }
	return slices.ContainsFunc(c.feet, in) && slices.ContainsFunc(c.heads, in)
}

// straight gives the height of what runs along all columns of a core.
func (c *core) straight() float64 {
	var held []stretch
	for i := 0; i < len(c.posts); {
		var here []stretch
		j := i
		for ; j < len(c.posts) && c.posts[j].from == c.posts[i].from; j++ {
			if c.posts[j].least > 0 {
				here = append(here, stretch{c.posts[j].low, c.posts[j].high})
			}
		}
		if i == 0 {
			held = here
		} else {
			held = common(held, here)
		}
		i = j
	}
	most := 0.0
	for _, s := range held {
		most = max(most, c.posts[0].band.within(s.from, s.to))
	}
	return most
}

// stretches gives where the lines are longer than a height, as rising stretches
// along the roll that do not touch.
func (c *core) stretches(above float64) []stretch {
	for _, k := range c.known {
		if k.above == above {
			return k.list
		}
	}
	out := make([]stretch, 0, len(c.lines))
	for _, l := range c.lines {
		if s, ok := l.above(above); ok {
			out = append(out, s)
		}
	}
	out = united(out)
	c.known = append(c.known, levelled{above, out})
	return out
}

// levelled is where a core is longer across the roll than a height.
type levelled struct {
	above float64
	list  []stretch
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
