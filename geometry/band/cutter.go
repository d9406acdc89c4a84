package band

import (
	"math"
	"slices"
	"sort"
)

// Cutter cuts outlines one after another in the same room; it belongs to one
// goroutine. The zero value is ready. It holds the outline's edges split at the joints and sorted into bands.
type Cutter struct {
	joints  []int64
	pinched bool
	edges   []edge
	first   []int32 // first edge of a band in order; edges of band b are order[first[b]:first[b+1]]
	order   []int32
	room    []Point // of the rings of this cut
	looked  []Point // room of the last Look
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

func (c *Cutter) begin(o *Outline, joints []int64) {
	c.joints, c.pinched, c.edges = joints, o.Pinched, slices.Grow(c.edges[:0], o.Vertices()+4*len(joints))
	for _, r := range o.Rings {
		c.addRing(r)
	}
	c.sortByBand()
}

// addRing splits a ring's edges at the joints. Edges that run along a joint are
// left out: the cut line takes their place.
func (c *Cutter) addRing(r Ring) {
	start := len(c.edges)
	var in inside
	p := r[0]
	for i := range r {
		q := r[0]
		if i+1 < len(r) {
			q = r[i+1]
		}
		if !in.holds(p.Y, q.Y) {
			in = c.around(p.Y)
		}
		if in.holds(p.Y, q.Y) {
			c.push(p, q, float64(p.X), float64(q.X), in.band, -1, -1)
		} else {
			c.addEdge(p, q)
		}
		p = q
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

// inside is a band without the joints beside it.
type inside struct {
	low, high int64
	band      int32
}

func (b inside) holds(y0, y1 int64) bool {
	return b.low < min(y0, y1) && max(y0, y1) < b.high
}

// around gives the band that a height lies in, or that lies above it.
func (c *Cutter) around(y int64) inside {
	j, on := c.jointAt(y)
	if on {
		j++
	}
	out := inside{math.MinInt64, math.MaxInt64, int32(j)}
	if j > 0 {
		out.low = c.joints[j-1]
	}
	if j < len(c.joints) {
		out.high = c.joints[j]
	}
	return out
}

func (c *Cutter) addEdge(p, q Point) {
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

func (c *Cutter) push(p, q Point, px, qx float64, band, pj, qj int32) {
	c.edges = append(c.edges, edge{from: p, to: q, fromX: px, toX: qx, band: band, fromJ: pj, toJ: qj})
}

// jointAt gives the number of joints below y, and whether y lies on a joint.
func (c *Cutter) jointAt(y int64) (int, bool) { return slices.BinarySearch(c.joints, y) }

// crossed lists the joints strictly between two heights, in the order met.
func (c *Cutter) crossed(y0, y1 int64) []int {
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
func (c *Cutter) bandOf(y0, y1 int64) int32 {
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

func (c *Cutter) sortByBand() {
	c.first = slices.Grow(c.first[:0], len(c.joints)+2)[:len(c.joints)+2]
	clear(c.first)
	for i := range c.edges {
		c.first[c.edges[i].band+1]++
	}
	for b := 1; b < len(c.first); b++ {
		c.first[b] += c.first[b-1]
	}
	c.order = slices.Grow(c.order[:0], len(c.edges))[:len(c.edges)]
	at := slices.Clone(c.first)
	for i := range c.edges {
		b := c.edges[i].band
		c.order[at[b]] = int32(i)
		at[b]++
	}
}
