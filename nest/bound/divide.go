package bound

// profiles works out ranges of phase of a blank.
func (s *shape) profiles(cells []cell, width int64) []profile {
	d := s.divider(width)
	out := make([]profile, len(cells))
	for i, c := range cells {
		d.divide(&out[i], c)
	}
	return out
}

// divider works out the bands of a blank, one after another in the same room.
type divider struct {
	*shape
	width       int64
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

// divider gives a divider of bands of a width.
func (s *shape) divider(width int64) *divider {
	s.once.Do(func() { s.columns, s.links = columnsOf(s.outline) })
	n := len(s.columns)
	return &divider{shape: s, width: width, sure: make([]int, n), maybe: make([]int, n), tallies: make([]tally, n)}
}

// divide works out a range of phases, in the room of what the profile held.
func (d *divider) divide(p *profile, c cell) {
	p.cell, p.slivers, p.clusters = c, 0, p.clusters[:0]
	for _, y := range d.bands(c.from, d.width) {
		d.addBand(p, reach{float64(y), float64(d.width), float64(c.to - c.from)})
	}
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
		p.clusters = longer(p.clusters)
		piece.cluster = len(p.clusters)
		p.clusters[piece.cluster-1] = p.clusters[piece.cluster-1][:0]
	}
	c := &p.clusters[piece.cluster-1]
	if part.core == 0 {
		*c = longer(*c)
		part.core = len(*c)
		(*c)[part.core-1].begin(r, d.lines[l.first], part)
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
		own.doubled = append(own.doubled[:0], d.doubled...)
	}
	if len(c) == 1 && len(d.ghosts) == 0 {
		c[0].spine = c[0].straight()
	}
}
