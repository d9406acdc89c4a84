package band

import (
	"cmp"
	"slices"
	"sort"
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
func (o *Outline) Cut(joints []int64) []Piece {
	c := newCutter(o, joints)
	var pieces []Piece
	for b := 0; b <= len(joints); b++ {
		pieces = append(pieces, c.pieces(b)...)
	}
	return pieces
}

// cutter holds the outline's edges split at the joints and sorted into bands.
type cutter struct {
	joints  []int64
	pinched bool
	edges   []edge
	first   []int32 // first edge of a band in order; edges of band b are order[first[b]:first[b+1]]
	order   []int32
}

// edge is a stretch of the outline inside one band. next is the edge that
// follows it in the ring, -1 where the ring leaves the band at its end; the
// exact x of an end on a joint decides the order along the joint.
type edge struct {
	from, to   Point
	fromX, toX float64
	band       int32
	next       int32
	used       bool
	fromJ, toJ int32 // joint that the end lies on, -1 for none
}

func newCutter(o *Outline, joints []int64) *cutter {
	c := &cutter{joints: joints, pinched: o.Pinched}
	n := 0
	for _, r := range o.Rings {
		n += len(r)
	}
	c.edges = make([]edge, 0, n+4*len(joints))
	for _, r := range o.Rings {
		c.addRing(r)
	}
	c.sortByBand()
	return c
}

// addRing splits a ring's edges at the joints. Edges that run along a joint are
// left out: the cut line takes their place.
func (c *cutter) addRing(r Ring) {
	start := len(c.edges)
	for i := range r {
		c.addEdge(r[i], r[(i+1)%len(r)])
	}
	for i := start; i < len(c.edges); i++ {
		e := &c.edges[i]
		e.next = -1
		if e.toJ >= 0 {
			continue
		}
		e.next = int32(i + 1)
		if i+1 == len(c.edges) {
			e.next = int32(start)
		}
	}
}

func (c *cutter) addEdge(p, q Point) {
	if p.Y == q.Y {
		if j, on := c.jointAt(p.Y); !on {
			c.push(p, q, float64(p.X), float64(q.X), int32(j), -1, -1)
		}
		return
	}
	at, atX, atJ := p, float64(p.X), int32(-1)
	if j, on := c.jointAt(p.Y); on {
		atJ = int32(j)
	}
	for _, j := range c.crossed(p.Y, q.Y) {
		x, exact := crossing(p, q, c.joints[j])
		to := Point{x, c.joints[j]}
		c.push(at, to, atX, exact, c.bandOf(at.Y, to.Y), atJ, int32(j))
		at, atX, atJ = to, exact, int32(j)
	}
	toJ := int32(-1)
	if j, on := c.jointAt(q.Y); on {
		toJ = int32(j)
	}
	c.push(at, q, atX, float64(q.X), c.bandOf(at.Y, q.Y), atJ, toJ)
}

func (c *cutter) push(p, q Point, px, qx float64, band, pj, qj int32) {
	c.edges = append(c.edges, edge{from: p, to: q, fromX: px, toX: qx, band: band, fromJ: pj, toJ: qj})
}

// jointAt gives the number of joints below y, and whether y lies on a joint.
func (c *cutter) jointAt(y int64) (int, bool) { return slices.BinarySearch(c.joints, y) }

// crossed lists the joints strictly between two heights, in the order met.
func (c *cutter) crossed(y0, y1 int64) []int {
	lo, hi := min(y0, y1), max(y0, y1)
	a := sort.Search(len(c.joints), func(i int) bool { return c.joints[i] > lo })
	var out []int
	for i := a; i < len(c.joints) && c.joints[i] < hi; i++ {
		out = append(out, i)
	}
	if y1 < y0 {
		slices.Reverse(out)
	}
	return out
}

// bandOf gives the band of an edge that crosses no joint and is not level.
func (c *cutter) bandOf(y0, y1 int64) int32 {
	j, on := c.jointAt(min(y0, y1))
	if on {
		j++
	}
	return int32(j)
}

// crossing gives where an edge meets a height: x rounded to a micrometre, the
// same for both directions of the edge, and x as it is.
func crossing(p, q Point, y int64) (int64, float64) {
	if p.Y > q.Y {
		p, q = q, p
	}
	num, den := (q.X-p.X)*(y-p.Y), q.Y-p.Y
	return p.X + roundDiv(num, den), float64(p.X) + float64(num)/float64(den)
}

// roundDiv divides by a positive number and rounds to the nearest, halves up.
func roundDiv(a, b int64) int64 {
	q := (2*a + b) / (2 * b)
	if (2*a+b)%(2*b) < 0 {
		q--
	}
	return q
}

func (c *cutter) sortByBand() {
	c.first = make([]int32, len(c.joints)+2)
	for i := range c.edges {
		c.first[c.edges[i].band+1]++
	}
	for b := 1; b < len(c.first); b++ {
		c.first[b] += c.first[b-1]
	}
	c.order = make([]int32, len(c.edges))
	at := slices.Clone(c.first)
	for i := range c.edges {
		b := c.edges[i].band
		c.order[at[b]] = int32(i)
		at[b]++
	}
}

// pieces traces the rings of one band: along the outline while it stays in the
// band, and along the joint where it leaves.
func (c *cutter) pieces(b int) []Piece {
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
func (c *cutter) joinAlong(inBand []int32, joint int32, above bool) {
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
func (c *cutter) link(touches []touch) {
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

func (c *cutter) trace(i int32) Ring {
	if c.edges[i].used {
		return nil
	}
	var r Ring
	for at := i; at >= 0 && !c.edges[at].used; at = c.edges[at].next {
		e := &c.edges[at]
		e.used = true
		r = append(r, e.from)
		if e.toJ >= 0 {
			r = append(r, e.to)
		}
	}
	return tidy(r)
}

// splitPinches cuts a ring in two wherever it comes back to a vertex.
func splitPinches(r Ring) []Ring {
	seen := make(map[Point]int, len(r))
	var out []Ring
	path := make(Ring, 0, len(r))
	for _, p := range r {
		if k, again := seen[p]; again && k < len(path) && path[k] == p {
			loop := slices.Clone(path[k:])
			for _, q := range loop[1:] {
				delete(seen, q)
			}
			path = path[:k+1]
			out = append(out, loop)
			continue
		}
		seen[p] = len(path)
		path = append(path, p)
	}
	return append(out, path)
}

// touchesItself says whether a ring comes back to a vertex on the joints of its
// band. Elsewhere a ring has the vertices of the outline.
func (c *cutter) touchesItself(r Ring, b int) bool {
	var met []Point
	for _, p := range r {
		below, above := b > 0 && p.Y == c.joints[b-1], b < len(c.joints) && p.Y == c.joints[b]
		if !below && !above {
			continue
		}
		if slices.Contains(met, p) {
			return true
		}
		met = append(met, p)
	}
	return false
}

// pinched says whether any vertex of the rings occurs twice.
func pinched(rings []Ring) bool {
	seen := make(map[Point]bool)
	for _, r := range rings {
		for _, p := range r {
			if seen[p] {
				return true
			}
			seen[p] = true
		}
	}
	return false
}

// assemble sorts rings into pieces: rings of positive area are outer rings,
// the others are holes of the piece around them. Rings of no area are dropped.
func assemble(rings []Ring, b int) []Piece {
	var out []Piece
	var holes []Ring
	for _, r := range rings {
		switch a := area2(r); {
		case a > 0:
			out = append(out, newPiece(r, b))
		case a < 0:
			holes = append(holes, r)
		}
	}
	slices.SortStableFunc(out, func(a, b Piece) int {
		return cmp.Or(cmp.Compare(a.MinX, b.MinX), cmp.Compare(a.MinY, b.MinY), cmp.Compare(a.MaxX, b.MaxX))
	})
	for _, h := range holes {
		if k := around(out, h); k >= 0 {
			out[k].Holes = append(out[k].Holes, h)
		}
	}
	return out
}

func newPiece(r Ring, b int) Piece {
	p := Piece{Band: b, Outer: r, MinX: r[0].X, MaxX: r[0].X, MinY: r[0].Y, MaxY: r[0].Y}
	for _, q := range r {
		p.MinX, p.MaxX = min(p.MinX, q.X), max(p.MaxX, q.X)
		p.MinY, p.MaxY = min(p.MinY, q.Y), max(p.MaxY, q.Y)
	}
	return p
}

// around gives the smallest piece whose outer ring holds the hole, -1 for none.
func around(pieces []Piece, hole Ring) int {
	best, bestArea := -1, int64(0)
	for k := range pieces {
		p := &pieces[k]
		if !insideRing(p.Outer, hole) {
			continue
		}
		if a := area2(p.Outer); best < 0 || a < bestArea {
			best, bestArea = k, a
		}
	}
	return best
}

// insideRing says whether a hole lies in a ring: by its first vertex that is
// not on the ring, so that a hole touching the ring at a vertex is placed right.
func insideRing(r, hole Ring) bool {
	for _, p := range hole {
		switch side(r, p) {
		case 1:
			return true
		case -1:
			return false
		}
	}
	return false
}

// side gives 1 for a point inside a ring, -1 outside, 0 on it.
func side(r Ring, p Point) int {
	in := -1
	for i := range r {
		a, b := r[i], r[(i+1)%len(r)]
		cross := (b.X-a.X)*(p.Y-a.Y) - (b.Y-a.Y)*(p.X-a.X)
		if cross == 0 && between(a.X, p.X, b.X) && between(a.Y, p.Y, b.Y) {
			return 0
		}
		if (a.Y > p.Y) != (b.Y > p.Y) && (cross > 0) == (b.Y > a.Y) {
			in = -in
		}
	}
	return in
}

func between(a, v, b int64) bool { return min(a, b) <= v && v <= max(a, b) }
