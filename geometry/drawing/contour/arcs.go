package contour

import (
	"math"
	"slices"

	"github.com/paulmach/orb"

	"stripwright/geometry/drawing/trace"
)

// round is an open line that is an arc of a circle, counter-clockwise from an
// angle in radians through a sweep.
type round struct {
	centre      orb.Point
	radius      float64
	from, sweep float64
	points      []orb.Point // counter-clockwise
	line        int
}

// at gives the angle at which a point lies, from the arc's beginning on.
func (r *round) at(p orb.Point) float64 {
	a := math.Atan2(p[1]-r.centre[1], p[0]-r.centre[0]) - r.from
	if a = math.Mod(a, 2*math.Pi); a < 0 {
		a += 2 * math.Pi
	}
	return a
}

// withoutArcOverlaps takes off every arc what lies on an arc of the same circle
// before it. Arcs are known by their points, whatever drew them, because two
// arcs of a circle are seldom turned into the same points.
func withoutArcOverlaps(lines []trace.Line) (out []trace.Line, cut int) {
	rounds := roundsOf(lines)
	rest := map[int][][]orb.Point{}
	byCentre := map[cell][]int{}
	for i := range rounds {
		r := &rounds[i]
		c := cellOf(r.centre, 2*same)
		var parts []covered
		looked := 0
		for _, near := range c.around() {
			for _, k := range byCentre[near] {
				if looked++; looked <= mostLooked {
					parts = append(parts, r.coveredBy(&rounds[k])...)
				}
			}
		}
		byCentre[c] = append(byCentre[c], i)
		if len(parts) > 0 {
			rest[r.line] = r.left(parts)
		}
	}
	for i, l := range lines {
		runs, isCut := rest[i]
		if !isCut {
			out = append(out, l)
			continue
		}
		cut++
		for _, points := range runs {
			l.Points = points
			out = append(out, l)
		}
	}
	return out, cut
}

func roundsOf(lines []trace.Line) []round {
	var out []round
	for i, l := range lines {
		if r, ok := roundOf(l.Points); ok && !l.Closed {
			r.line = i
			out = append(out, r)
		}
	}
	return out
}

// roundOf finds the circle through the first, middle and last point of a line,
// and says whether the line is an arc of it in equal steps, none longer than
// 30° as curves are drawn.
func roundOf(points []orb.Point) (round, bool) {
	n := len(points)
	if n < 3 {
		return round{}, false
	}
	centre, ok := circleThrough(points[0], points[n/2], points[n-1])
	if !ok {
		return round{}, false
	}
	r := round{centre: centre, radius: apart(centre, points[0]), points: points}
	step := apart(points[0], points[1])
	if step > 0.53*r.radius {
		return round{}, false
	}
	for i, p := range points {
		if math.Abs(apart(p, centre)-r.radius) > same/2 || i > 0 && math.Abs(apart(p, points[i-1])-step) > same/2 {
			return round{}, false
		}
	}
	a, b := points[0], points[1]
	if float64((a[0]-centre[0])*(b[1]-centre[1]))-float64((a[1]-centre[1])*(b[0]-centre[0])) < 0 {
		r.points = slices.Clone(points)
		slices.Reverse(r.points)
	}
	r.from = math.Atan2(r.points[0][1]-centre[1], r.points[0][0]-centre[0])
	r.sweep = 2 * float64(n-1) * math.Asin(min(1, step/(2*r.radius)))
	return r, r.sweep <= 2*math.Pi
}

// circleThrough gives the centre of the circle through three points.
func circleThrough(a, b, c orb.Point) (orb.Point, bool) {
	bx, by, cx, cy := b[0]-a[0], b[1]-a[1], c[0]-a[0], c[1]-a[1]
	d := 2 * (float64(bx*cy) - float64(by*cx))
	if math.Abs(d) < 1e-9*math.Hypot(bx, by)*math.Hypot(cx, cy) || d == 0 {
		return orb.Point{}, false
	}
	b2, c2 := float64(bx*bx)+float64(by*by), float64(cx*cx)+float64(cy*cy)
	return orb.Point{a[0] + (float64(cy*b2)-float64(by*c2))/d, a[1] + (float64(bx*c2)-float64(cx*b2))/d}, true
}

// covered is a stretch of an arc, as angles from its beginning, that lies on
// another, and the points of that other where it begins and ends.
type covered struct {
	from, to   float64
	head, tail orb.Point
}

// coveredBy gives the stretches of r that lie on q: none, one, or two where q
// ends and begins within r.
func (r *round) coveredBy(q *round) []covered {
	if apart(r.centre, q.centre) > same || math.Abs(r.radius-q.radius) > same {
		return nil
	}
	head, tail := q.points[0], q.points[len(q.points)-1]
	begin := r.at(head)
	var out []covered
	for _, turn := range [2]float64{0, -2 * math.Pi} {
		from, to := begin+turn, begin+turn+q.sweep
		c := covered{max(from, 0), min(to, r.sweep), head, tail}
		if (c.to-c.from)*r.radius >= shortest {
			out = append(out, c)
		}
	}
	return out
}

// left gives what of the arc is not covered.
func (r *round) left(parts []covered) [][]orb.Point {
	slices.SortStableFunc(parts, func(a, b covered) int {
		switch {
		case a.from < b.from:
			return -1
		case a.from > b.from:
			return 1
		}
		return 0
	})
	var out [][]orb.Point
	at, begin := 0.0, r.points[0]
	for _, c := range parts {
		if (c.from-at)*r.radius >= shortest {
			out = append(out, r.between(at, c.from, begin, c.head))
		}
		if c.to > at {
			at, begin = c.to, c.tail
		}
	}
	if (r.sweep-at)*r.radius >= shortest {
		out = append(out, r.between(at, r.sweep, begin, r.points[len(r.points)-1]))
	}
	return out
}

// between gives the arc's points from one angle to another, ends given.
func (r *round) between(from, to float64, begin, end orb.Point) []orb.Point {
	out := []orb.Point{begin}
	step := r.sweep / float64(len(r.points)-1)
	for i, p := range r.points {
		if a := float64(float64(i) * step); (a-from)*r.radius >= same && (to-a)*r.radius >= same {
			out = append(out, p)
		}
	}
	return append(out, end)
}
