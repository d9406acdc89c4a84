package layup

import (
	"math"
	"sort"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/sheet"
)

// onLineMM takes a vertex that lies this close to a joint's line for one on it:
// both are rounded to 0.001 mm.
const onLineMM = 0.002

// Tick is where a joint's line meets the net edge: a mark to be made with a
// tape measure laid along the edge.
type Tick struct {
	At      orb.Point
	From    string  // named corner that the tape starts from
	Edge    string  // the stretch of edge it runs on, "A-B"
	Way     string  // "anticlockwise" or "clockwise" from that corner
	AlongMM float64 // along the edge
	Outward orb.Point
}

// netEdge is the outer ring of the net region with its named corners, as
// distances along the ring from its first vertex, anticlockwise.
type netEdge struct {
	ring    orb.Ring
	start   []float64 // where each vertex lies
	long    float64
	corners []cornerAt // in order along the ring
	datum   orb.Point
}

type cornerAt struct {
	name string
	at   orb.Point
	s    float64
}

func newNetEdge(part laminate.PlanPart) *netEdge {
	return newEdge(part.Net.Oriented().Outer, part.Corners)
}

// newEdge takes any ring that runs anticlockwise, with corners on or near it; the
// first of them is the datum.
func newEdge(ring orb.Ring, corners []laminate.Corner) *netEdge {
	e := &netEdge{ring: ring}
	e.start = make([]float64, len(e.ring))
	for i, p := range e.ring {
		e.start[i] = e.long
		e.long += distance(p, e.next(i))
	}
	for _, c := range corners {
		e.corners = append(e.corners, cornerAt{c.Name, orb.Point(c.At), e.nearest(orb.Point(c.At))})
	}
	if len(corners) > 0 {
		e.datum = orb.Point(corners[0].At)
	}
	sort.SliceStable(e.corners, func(a, b int) bool { return e.corners[a].s < e.corners[b].s })
	return e
}

func (e *netEdge) next(i int) orb.Point { return e.ring[(i+1)%len(e.ring)] }

func distance(a, b orb.Point) float64 { return math.Hypot(b[0]-a[0], b[1]-a[1]) }

// nearest gives where along the ring a point lies, or comes nearest to it.
func (e *netEdge) nearest(p orb.Point) float64 {
	best, at := math.Inf(1), 0.0
	for i, q := range e.ring {
		d := sheet.Towards(q, e.next(i))
		long := distance(q, e.next(i))
		t := math.Max(0, math.Min(long, dot(d, minus(p, q))))
		if off := distance(p, sheet.Along(q, d, t)); off < best {
			best, at = off, e.start[i]+t
		}
	}
	return at
}

// crossing is where a line crosses the ring: t along the line, edge number and
// the way along it.
type crossing struct {
	t    float64
	edge int
	s    float64
}

// crossings lists where the line from a point in a direction crosses the ring,
// along the line; they pair up to stretches inside. A vertex on the line counts
// as lying to the left of it.
func (e *netEdge) crossings(from, d orb.Point) []crossing {
	var out []crossing
	side := make([]float64, len(e.ring))
	for i, p := range e.ring {
		side[i] = cross(d, minus(p, from))
	}
	for i, p := range e.ring {
		a, b := side[i], side[(i+1)%len(e.ring)]
		if (a >= -onLineMM) == (b >= -onLineMM) {
			continue
		}
		f := math.Max(0, math.Min(1, a/(a-b)))
		q := e.next(i)
		at := sheet.Between(p, q, f)
		out = append(out, crossing{dot(d, minus(at, from)), i, e.start[i] + float64(f*distance(p, q))})
	}
	sort.SliceStable(out, func(a, b int) bool { return out[a].t < out[b].t })
	return out
}

// ticks gives both marks of a joint: where its line, carried on over holes and
// the trim, meets the outer net edge. False for a joint that lies in the trim
// only.
func (e *netEdge) ticks(j laminate.Joint) (ends [2]Tick, ok bool) {
	from, to := orb.Point(j.From), orb.Point(j.To)
	long := distance(from, to)
	if long == 0 || len(e.corners) == 0 {
		return ends, false
	}
	found := e.crossings(from, sheet.Towards(from, to))
	first, last := -1, -1
	for i := 0; i+1 < len(found); i += 2 {
		if math.Min(found[i+1].t, long)-math.Max(found[i].t, 0) > 10*onLineMM {
			if first < 0 {
				first = i
			}
			last = i + 1
		}
	}
	if first < 0 {
		return ends, false
	}
	return [2]Tick{e.tick(found[first]), e.tick(found[last])}, true
}

// Ways along the edge.
const (
	anticlockwise = "anticlockwise"
	clockwise     = "clockwise"
)

// straightShare is how much longer than the straight line between its corners a
// stretch of edge may be and still be measured from one end all along.
const straightShare = 1.2

// tick names the mark: along its stretch of edge from that end of the stretch
// that is nearer to the datum, so that one laying of the tape marks a whole
// edge; on a stretch that curves far from the nearer end, as a tape laid round
// a curve is the worse the longer it is.
func (e *netEdge) tick(c crossing) Tick {
	n := len(e.corners)
	i := sort.Search(n, func(i int) bool { return e.corners[i].s > c.s }) - 1
	a, b := e.corners[(i+n)%n], e.corners[(i+1)%n]
	ahead, back := around(c.s-a.s, e.long), around(b.s-c.s, e.long)
	t := Tick{At: e.at(c.s, c.edge), Edge: a.name + "-" + b.name, Outward: e.outward(c.edge)}
	fromA := nearerDatum(a, b, e.datum)
	if ahead+back > straightShare*distance(a.at, b.at) {
		fromA = ahead <= back
	}
	if fromA {
		t.From, t.Way, t.AlongMM = a.name, anticlockwise, ahead
	} else {
		t.From, t.Way, t.AlongMM = b.name, clockwise, back
	}
	return t
}

// around brings a way along the ring into [0, long).
func around(s, long float64) float64 {
	if s < 0 {
		return s + long
	}
	return s
}

// nearerDatum compares whole micrometres; of equals the earlier letter.
func nearerDatum(a, b cornerAt, datum orb.Point) bool {
	da, db := math.Round(distance(a.at, datum)*1000), math.Round(distance(b.at, datum)*1000)
	return da < db || da == db && a.name < b.name
}

func (e *netEdge) at(s float64, edge int) orb.Point {
	d := sheet.Towards(e.ring[edge], e.next(edge))
	t := s - e.start[edge]
	return sheet.Along(e.ring[edge], d, t)
}

// outward gives the direction away from the part, square to an edge of the
// ring.
func (e *netEdge) outward(edge int) orb.Point {
	d := sheet.Towards(e.ring[edge], e.next(edge))
	return orb.Point{d[1], -d[0]}
}

func minus(a, b orb.Point) orb.Point { return orb.Point{a[0] - b[0], a[1] - b[1]} }

func dot(a, b orb.Point) float64 { return float64(a[0]*b[0]) + float64(a[1]*b[1]) }

func cross(a, b orb.Point) float64 { return float64(a[0]*b[1]) - float64(a[1]*b[0]) }
