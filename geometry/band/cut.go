package band

import (
	"cmp"
	"slices"
)

// Piece is one connected part of a band: its outer ring counter-clockwise and
// its holes clockwise, in whole micrometres of the ply frame. Band counts from
// the lowest, 0 first.
type Piece struct {
	Band       int
	Outer      Ring
	Holes      []Ring
	MinX, MaxX int64
	MinY, MaxY int64
}

// Height gives the piece's extent across the roll direction in µm.
func (p *Piece) Height() int64 { return p.MaxY - p.MinY }

// Rings lists the outer ring and then the holes.
func (p *Piece) Rings() []Ring { return append([]Ring{p.Outer}, p.Holes...) }

// Area2 gives twice the piece's area in µm².
func (p *Piece) Area2() int64 {
	a := area2(p.Outer)
	for _, h := range p.Holes {
		a += area2(h)
	}
	return a
}

// Cut divides the outline by joints, heights in µm in rising order; heights
// outside the outline are ignored. A joint on a horizontal edge cuts nothing
// there. Pieces come band by band from the lowest, and along x within a band.
func (o *Outline) Cut(joints []int64) []Piece { return new(Cutter).Cut(o, joints) }

// Cut is Outline.Cut with the room of earlier cuts.
func (c *Cutter) Cut(o *Outline, joints []int64) []Piece {
	c.room = nil
	return c.cut(o, joints)
}

// Look is Cut for pieces that are only looked at: the next Look overwrites them.
func (c *Cutter) Look(o *Outline, joints []int64) []Piece {
	c.room = c.looked[:0]
	pieces := c.cut(o, joints)
	c.looked = c.room
	return pieces
}

func (c *Cutter) cut(o *Outline, joints []int64) []Piece {
	c.begin(o, joints)
	if c.room == nil {
		c.room = make([]Point, 0, len(c.edges)+4*len(joints))
	}
	var pieces []Piece
	for b := 0; b <= len(joints); b++ {
		pieces = append(pieces, c.pieces(b)...)
	}
	return pieces
}

// pieces traces the rings of one band: along the outline while it stays in the
// band, and along the joint where it leaves.
func (c *Cutter) pieces(b int) []Piece {
	inBand := c.order[c.first[b]:c.first[b+1]]
	if len(inBand) == 0 {
		return nil
	}
	c.joinAlong(inBand, int32(b-1), false) // the joint below the band
	c.joinAlong(inBand, int32(b), true)    // the joint above it
	var rings []Ring
	for _, i := range inBand {
		switch r := c.trace(i); {
		case len(r) < 3:
		case c.pinched || c.touchesItself(r, b):
			rings = append(rings, splitPinches(r)...)
		default:
			rings = append(rings, r)
		}
	}
	return assemble(rings, b)
}

// touch is an end of an edge on a joint.
type touch struct {
	edge   int32
	x      float64
	slope  float64 // dx per |dy| away from the joint
	leaves bool    // the edge starts on the joint
}

// joinAlong links the edges that end on a joint with those that start on it.
// Sorted along the joint, ends and starts bound the stretches of material
// beside it in turn: below its joint a band is entered from right to left.
func (c *Cutter) joinAlong(inBand []int32, joint int32, above bool) {
	if joint < 0 || int(joint) >= len(c.joints) {
		return
	}
	var touches []touch
	for _, i := range inBand {
		e := &c.edges[i]
		if e.fromJ == joint {
			touches = append(touches, touch{i, e.fromX, slopeFrom(e.from, e.to), true})
		}
		if e.toJ == joint {
			touches = append(touches, touch{i, e.toX, slopeFrom(e.to, e.from), false})
		}
	}
	slices.SortStableFunc(touches, func(a, b touch) int {
		return cmp.Or(cmp.Compare(a.x, b.x), cmp.Compare(a.slope, b.slope), cmp.Compare(a.edge, b.edge))
	})
	if above { // above the band the material lies to the left of a stretch that runs to -x
		slices.Reverse(touches)
	}
	c.link(touches)
}

func slopeFrom(p, q Point) float64 {
	dy := q.Y - p.Y
	if dy < 0 {
		dy = -dy
	}
	return float64(q.X-p.X) / float64(dy)
}

// link pairs each end with the start that follows it; ends and starts left over
// after damage by snapping are paired in order, so that every ring closes.
func (c *Cutter) link(touches []touch) {
	var open, early []int32
	for _, t := range touches {
		switch {
		case !t.leaves:
			open = append(open, t.edge)
		case len(open) > 0:
			c.edges[open[len(open)-1]].next = t.edge
			open = open[:len(open)-1]
		default:
			early = append(early, t.edge)
		}
	}
	for k, i := range open {
		if k < len(early) {
			c.edges[i].next = early[k]
		}
	}
}

func (c *Cutter) trace(i int32) Ring {
	if c.edges[i].used {
		return nil
	}
	start := len(c.room)
	for at := i; at >= 0 && !c.edges[at].used; at = c.edges[at].next {
		e := &c.edges[at]
		e.used = true
		c.room = append(c.room, e.from)
		if e.toJ >= 0 {
			c.room = append(c.room, e.to)
		}
	}
	return tidy(c.room[start:len(c.room):len(c.room)])
}
