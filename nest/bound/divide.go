package bound

import "slices"

// profiles works out ranges of phase of a blank.
func (s *shape) profiles(cells []cell, width int64) []profile {
	if s.columns == nil {
		s.columns, s.links = columnsOf(s.outline)
	}
	n := len(s.columns)
	d := &divider{shape: s, sure: make([]int, n), maybe: make([]int, n), tallies: make([]tally, n)}
	out := make([]profile, len(cells))
	for i, c := range cells {
		p := &out[i]
		p.cell = c
		for _, y := range s.bands(c.from, width) {
			d.addBand(p, reach{float64(y), float64(width), float64(c.to - c.from)})
		}
	}
	return out
}

// divider works out the bands of a blank, one after another in the same room.
type divider struct {
	*shape
	sure, maybe []int   // columns that are in one piece wherever the band stands, and that may be, as forests
	tallies     []tally // of the columns that stand for others
	laid        []laid
	lines       []line // of all that is laid
	ghosts      []stretch
	doubled     []stretch
}

// laid is a column that is in the band at some phases at least.
type laid struct {
	*column
	part, piece int // columns that stand for those in one piece with it, and that may be
	first, last int // lines; none: a ghost
}

// tally is what of a band a column stands for.
type tally struct {
	lines, posts  int // of a core
	core, cluster int // number, from 1
}

// addBand adds what of the columns is in a band.
func (d *divider) addBand(p *profile, r reach) {
	d.link(r)
	d.lay(p, r)
	first := len(p.clusters)
	for i := range d.laid {
		if l := &d.laid[i]; l.first < l.last {
			d.coreOf(p, l, r).add(l.column, d.lines[l.first:l.last], d.off)
		}
	}
	for i := range d.laid {
		if l := &d.laid[i]; d.tallies[l.piece].cluster > first {
			d.finish(p.clusters[d.tallies[l.piece].cluster-1], l.piece)
			d.tallies[l.piece].cluster = 0
		}
	}
}

// link finds which columns are in one piece.
func (d *divider) link(r reach) {
	for i := range d.columns {
		d.sure[i], d.maybe[i] = i, i
	}
	for _, l := range d.links {
		if r.ever(l.from-d.off, l.to+d.off) {
			merge(d.maybe, l.a, l.b)
		}
		if r.within(l.from, l.to) > d.off {
			merge(d.sure, l.a, l.b)
		}
	}
}

// lay finds the lines of the band and counts those of each core.
func (d *divider) lay(p *profile, r reach) {
	d.laid, d.lines = d.laid[:0], d.lines[:0]
	clear(d.tallies)
	for i := range d.columns {
		c := &d.columns[i]
		if !r.meets(c) {
			continue
		}
		l := laid{column: c, part: top(d.sure, i), piece: top(d.maybe, i), first: len(d.lines)}
		d.lines = r.lines(c, d.lines)
		l.last = len(d.lines)
		p.slivers += float64(r.move * (c.x1 - c.x0 - covered(d.lines[l.first:])))
		d.laid = append(d.laid, l)
		if l.first < l.last {
			d.tallies[l.part].lines += l.last - l.first
			d.tallies[l.part].posts++
		}
	}
}

// coreOf gives the core that a column belongs to, a new one for the first column.
func (d *divider) coreOf(p *profile, l *laid, r reach) *core {
	piece, part := &d.tallies[l.piece], &d.tallies[l.part]
	if piece.cluster == 0 {
		p.clusters = append(p.clusters, nil)
		piece.cluster = len(p.clusters)
	}
	c := &p.clusters[piece.cluster-1]
	if part.core == 0 {
		room := d.lines[l.first]
		*c = append(*c, core{band: r, from: room.x0, to: room.x1, plain: true,
			lines: make([]line, 0, part.lines), posts: make([]post, 0, part.posts)})
		part.core = len(*c)
	}
	return &(*c)[part.core-1]
}

// finish notes where a piece is or may be in several columns, and what runs
// straight along it. Ghosts are columns that it may have at some phases.
func (d *divider) finish(c cluster, piece int) {
	d.ghosts = d.ghosts[:0]
	for i := range d.laid {
		if l := &d.laid[i]; l.piece == piece && l.first == l.last {
			d.ghosts = append(d.ghosts, stretch{l.x0, l.x1})
		}
	}
	for i := range c {
		own := &c[i]
		own.feet, own.heads = united(own.feet), united(own.heads)
		own.stands = own.upright(stretch{own.from, own.to})
		d.doubled = append(d.doubled[:0], d.ghosts...)
		for k := 1; k < len(own.posts); k++ {
			if own.posts[k].x0 == own.posts[k-1].x0 {
				d.doubled = joinedTo(d.doubled, own.posts[k].stretch())
			}
		}
		for j := range c {
			for k := range c[j].posts {
				if j != i {
					d.doubled = joinedTo(d.doubled, c[j].posts[k].stretch())
				}
			}
		}
		d.doubled = united(d.doubled)
		own.doubled = slices.Clone(d.doubled)
	}
	if len(c) == 1 && len(d.ghosts) == 0 {
		c[0].spine = c[0].straight()
	}
}
