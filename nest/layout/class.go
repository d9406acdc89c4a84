package layout

import (
	"slices"

	"stripwright/geometry"
	"stripwright/geometry/band"
)

// Base is a blank at an angle, ready to be divided. It is never altered, so
// many classes may share it. Lengths are µm of the ply frame.
type Base struct {
	Angle  geometry.Angle
	Region geometry.Region // the blank in the part frame
	Blank  *band.Outline
	Clear  []*band.Outline // where no joint may run
	Edges  []Edge          // where the blank begins and ends across the roll
	lean   *band.Outline   // the blank with fewer vertices, for searching
	rough  *band.Outline   // the blank with few vertices, for comparing costs
	net    *band.Outline   // material that joints count in, lean
}

// Class is what plies share that have the same blank, angle and usable width.
// It is for one goroutine: it remembers the divisions it has made.
type Class struct {
	*Base
	Width     int64 // usable width of the roll, µm
	Narrowest int64 // least extent of a piece across the roll, µm
	Straight  bool  // pieces are cut as oblongs

	cutter   band.Cutter
	combs    map[int64]*Comb
	divided  map[int64]*Division
	sketched map[int64]*Division
	measured map[int64]*Division
	work     int64
}

// Work is how much dividing the blank has taken, in units of about one vertex.
func (c *Class) Work() int64 { return c.work }

// Division is what a comb makes of the blank.
type Division struct {
	*Comb
	Pieces []band.Piece // nil when only measured
	Fault  Fault
	slim   bool     // a piece is narrower than allowed
	Full   float64  // sum of the mean lengths of full-width pieces
	Fulls  int      // their number
	fit    [2]*Fit  // their ends, as cut face up and face down
	Narrow []Narrow // narrower pieces
}

// Narrow is a piece that does not take the whole width: its extent across the
// roll and its mid-height length.
type Narrow struct {
	Height int64
	Length float64
}

// Fault is why a phase is not allowed.
type Fault int

// Faults of a phase.
const (
	None      Fault = iota
	TooNarrow       // a piece is narrower than allowed
	NotClear        // a joint runs where none may run
)

// slack is by how much, in µm, an outline of very many vertices may be off
// while phases are searched; pieces are cut from the outline itself.
const slack = 20

// NewBase prepares a blank. clear holds the regions without joints; all regions
// lie in the part frame.
func NewBase(a geometry.Angle, blank, net geometry.Region, clear []geometry.Region) *Base {
	b := &Base{Angle: a, Region: blank, Blank: band.New(blank, a), net: band.New(net, a).Lean(slack)}
	b.lean = b.Blank.Lean(slack)
	b.rough = b.lean.Rough(manyVertices)
	if b.Edges = edges(b.lean); len(b.Edges) > mostEdges {
		b.Edges = edges(b.rough)
	}
	for _, r := range clear {
		b.Clear = append(b.Clear, band.New(r, a))
	}
	return b
}

// mostEdges is how many heights at which a blank begins or ends are told apart;
// of a wavy outline that has more, those of its rough outline.
const mostEdges = 200

// manyVertices is how many vertices an outline keeps for comparing costs.
const manyVertices = 72

// Vertices gives how many vertices the outline has that layouts are compared on.
func (b *Base) Vertices() int { return b.rough.Vertices() }

// Class gives a class of the base for a usable width, with an empty memory.
func (b *Base) Class(width, narrowest int64) *Class {
	return &Class{Base: b, Width: width, Narrowest: narrowest,
		combs: make(map[int64]*Comb), divided: make(map[int64]*Division),
		sketched: make(map[int64]*Division), measured: make(map[int64]*Division)}
}

// Divide gives the division of a phase with its pieces.
func (c *Class) Divide(phase int64) *Division {
	return c.divide(phase, c.divided, c.Blank)
}

// Sketch gives the division of a phase with the pieces of the rough outline: as
// good as those of Divide for comparing costs, not for cutting.
func (c *Class) Sketch(phase int64) *Division {
	if c.rough == c.Blank {
		return c.Divide(phase)
	}
	return c.divide(phase, c.sketched, c.rough)
}

func (c *Class) divide(phase int64, known map[int64]*Division, from *band.Outline) *Division {
	phase = c.Phase(phase)
	d, ok := known[phase]
	if !ok {
		c.work += int64(from.Vertices())
		full := *c.Measure(phase)
		full.Pieces = c.cutter.Cut(from, full.Joints)
		d = &full
		if len(known) >= divided {
			clear(known)
		}
		known[phase] = d
	}
	return d
}

// Across gives the net part's extent across the roll in µm.
func (c *Class) Across() int64 { return c.net.Across() }

// divided bounds how many divisions with pieces a class keeps.
const divided = 1000

// remembered bounds how many measured divisions a class keeps.
const remembered = 20000

// Measure gives the division of a phase without its pieces.
func (c *Class) Measure(phase int64) *Division {
	phase = c.Phase(phase)
	if d, ok := c.measured[phase]; ok {
		return d
	}
	d := &Division{Comb: c.Comb(phase)}
	from := c.rough
	if c.Narrowest > 0 {
		from = c.lean
	}
	c.work += int64(from.Vertices())
	pieces := c.cutter.Look(from, d.Joints)
	var ends []band.Ends
	for i := range pieces {
		ends = c.tally(d, &pieces[i], ends)
	}
	d.fit[0] = fitOf(ends)
	if !d.Clear {
		d.Fault = NotClear
	}
	if len(c.measured) >= remembered {
		clear(c.measured)
	}
	c.measured[phase] = d
	return d
}

// FaultAt says why a phase is not allowed. It costs far less than Measure where
// a piece may be as narrow as it comes.
func (c *Class) FaultAt(phase int64) Fault {
	if c.Narrowest > 0 {
		return c.Measure(phase).Fault
	}
	if !c.Comb(phase).Clear {
		return NotClear
	}
	return None
}

// WideEnough says whether a phase leaves no piece narrower than allowed, whatever
// else may be wrong with it.
func (c *Class) WideEnough(phase int64) bool { return !c.Measure(phase).slim }

// tally counts a piece as full-width or narrow, collects the ends of the former
// and marks one that is too narrow. A piece that no joint bounds is as narrow as the blank itself there.
func (c *Class) tally(d *Division, p *band.Piece, ends []band.Ends) []band.Ends {
	h := p.Height()
	cut := p
	if c.Straight {
		cut = p.Oblong()
	}
	if h > c.Width-band.Slip {
		e, mean := band.EndsOf(cut)
		d.Full += mean
		d.Fulls++
		return append(ends, e)
	}
	d.Narrow = append(d.Narrow, Narrow{h, midChord(cut)})
	if h < c.Narrowest && c.bounded(d, p) {
		d.Fault, d.slim = TooNarrow, true
	}
	return ends
}

// bounded says whether a joint bounds the piece.
func (c *Class) bounded(d *Division, p *band.Piece) bool {
	_, below := slices.BinarySearch(d.Joints, p.MinY)
	_, above := slices.BinarySearch(d.Joints, p.MaxY)
	return below || above
}

// midChord gives the length of a piece at mid height, between its outermost
// edges, in µm.
func midChord(p *band.Piece) float64 {
	y := p.MinY + p.Height()/2
	lo, hi := p.MaxX, p.MinX
	a := p.Outer[len(p.Outer)-1]
	for _, b := range p.Outer {
		if min(a.Y, b.Y) <= y && y <= max(a.Y, b.Y) && a.Y != b.Y {
			x := a.X + int64(float64(b.X-a.X)*float64(y-a.Y)/float64(b.Y-a.Y))
			lo, hi = min(lo, x), max(hi, x)
		}
		a = b
	}
	return float64(hi - lo)
}

// Barriers lists heights at which a phase may change from allowed to not: the
// borders of the regions without joints, and the edges of the blank with the
// narrowest piece beside them.
func (c *Class) Barriers() []int64 {
	var out []int64
	for _, r := range c.Clear {
		out = append(out, r.MinY, r.MaxY)
	}
	for _, e := range c.Edges {
		out = append(out, e.At)
		if c.Narrowest > 0 && e.Begins {
			out = append(out, e.At+c.Narrowest)
		} else if c.Narrowest > 0 {
			out = append(out, e.At-c.Narrowest)
		}
	}
	for i, y := range out {
		out[i] = c.Phase(y)
	}
	slices.Sort(out)
	return slices.Compact(out)
}
