package grow

import (
	"math"

	"stripwright/geometry/thin"
)

const (
	// manyVertices is the number of vertices above which an outline is thinned
	// before it is grown.
	manyVertices = 4000
	// thinBy is how far thinning may move the edge, in micrometres; the ring is
	// grown by as much more, so that no blank falls short.
	thinBy = 4.0
	// overlapping is the number of edges that the joint of a mean corner may
	// lie across before the growing is done in several steps.
	overlapping = 3.0
)

// thinned drops vertices of a ring of many, and gives how far its edge may
// have moved. A ring that would cross itself after it is left as it is.
func thinned(r ring, base int) (ring, float64) {
	if len(r) <= manyVertices {
		return r, 0
	}
	far := 0
	for i, p := range r {
		if distance(r[0], p) > distance(r[0], r[far]) {
			far = i
		}
	}
	keep := make([]bool, len(r))
	keep[0], keep[far] = true, true
	stays := func(i int) { keep[i] = true }
	off := func(a, b, i int) float64 { return r[i].fromEdge(r[a], r[b%len(r)]) }
	thin.Run(0, far, thinBy, off, stays)
	thin.Run(far, len(r), thinBy, off, stays)
	out := make(ring, 0, len(r)/2)
	for i, p := range r {
		if keep[i] {
			out = append(out, p)
		}
	}
	if out = out.straightened(); len(out) < 3 || out.sound(base) != nil || (out.area2() > 0) != (r.area2() > 0) {
		return r, 0
	}
	return out, thinBy
}

// fromEdge is the distance of a spot from the edge a b, ends included.
func (p spot) fromEdge(a, b spot) float64 {
	dx, dy := b.x-a.x, b.y-a.y
	along := (p.x-a.x)*dx + (p.y-a.y)*dy
	switch {
	case along <= 0:
		return distance(p, a)
	case along >= dx*dx+dy*dy:
		return distance(p, b)
	}
	return math.Abs(float64(turn(a, b, p))) / distance(a, b)
}

// firstStep says how far to grow in one go: all that is left, or less where
// the outline is so rough that the joints of its corners would lie across one
// another many times over. Growing by a and then by b is growing by a + b, and
// each step leaves the outline smoother.
func firstStep(rings []ring, left float64) float64 {
	step := left
	for _, r := range rings {
		if len(r) <= manyVertices/4 {
			continue
		}
		bend := 0.0
		for i, v := range r {
			a, b := r[(i+len(r)-1)%len(r)], r[(i+1)%len(r)]
			cross := float64(turn(a, v, b))
			dot := float64((v.x-a.x)*(b.x-v.x) + (v.y-a.y)*(b.y-v.y))
			bend += math.Abs(math.Atan2(cross, dot))
		}
		if bend > 0 {
			step = math.Min(step, overlapping*r.length()/bend)
		}
	}
	return math.Min(left, math.Max(step, left/1024))
}
