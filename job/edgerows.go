package job

import (
	"math"
	"sort"

	"github.com/paulmach/orb"

	"stripwright/geometry"
)

// edgeRows holds the edges of a region in rows of equal height, so that the
// edges at a level are found without looking at all of them.
type edgeRows struct {
	low, high, step float64
	rows            [][]stretch
	all             []stretch
}

// stretch is one edge of a ring.
type stretch struct{ a, b point }

// indexed sorts the edges of a region into rows, so many that each edge lies in
// eight of them at most on average.
func indexed(g geometry.Region) edgeRows {
	box := g.Bounds()
	s := edgeRows{low: box.Min[1], high: box.Max[1]}
	rise := 0.0
	for _, ring := range g.Rings() {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			s.all = append(s.all, stretch{a, b})
			rise += math.Abs(b[1] - a[1])
		}
	}
	n := 1
	if height := s.high - s.low; rise > 0 && height > 0 {
		n = max(1, min(len(s.all), int(8*float64(len(s.all))*height/rise)))
	}
	s.rows, s.step = make([][]stretch, n), (s.high-s.low)/float64(n)
	for _, e := range s.all {
		for row, last := s.row(min(e.a[1], e.b[1])), s.row(max(e.a[1], e.b[1])); row <= last; row++ {
			s.rows[row] = append(s.rows[row], e)
		}
	}
	return s
}

// row gives the row of a level; levels beyond the region belong to the nearest.
func (s edgeRows) row(y float64) int {
	if s.step <= 0 {
		return 0
	}
	return max(0, min(len(s.rows)-1, int((y-s.low)/s.step)))
}

// holds says whether a point lies inside, by the edges to its right.
func (s edgeRows) holds(p point) (in bool) {
	if p[1] < s.low || p[1] > s.high {
		return false
	}
	for _, e := range s.rows[s.row(p[1])] {
		if (e.a[1] > p[1]) != (e.b[1] > p[1]) && p[0] < e.at(p[1]) {
			in = !in
		}
	}
	return in
}

// at gives the x of an edge at a level that it crosses.
func (e stretch) at(y float64) float64 {
	return e.a[0] + float64((e.b[0]-e.a[0])*(y-e.a[1]))/(e.b[1]-e.a[1])
}

// near says whether an edge lies within a distance of a point.
func (s edgeRows) near(p point, mm float64) bool {
	for row, last := s.row(p[1]-mm), s.row(p[1]+mm); row <= last; row++ {
		for _, e := range s.rows[row] {
			if e.from(p) <= mm {
				return true
			}
		}
	}
	return false
}

// away gives the distance of a point from the nearest edge.
func (s edgeRows) away(p point) float64 {
	least := math.Inf(1)
	for _, e := range s.all {
		least = min(least, e.from(p))
	}
	return least
}

// from gives the distance of a point from the edge.
func (e stretch) from(p point) float64 {
	dx, dy, t := e.b[0]-e.a[0], e.b[1]-e.a[1], 0.0
	if l := float64(dx*dx) + float64(dy*dy); l > 0 {
		t = max(0, min(1, (float64((p[0]-e.a[0])*dx)+float64((p[1]-e.a[1])*dy))/l))
	}
	return math.Hypot(p[0]-e.a[0]-float64(t*dx), p[1]-e.a[1]-float64(t*dy))
}

// crossed gives the places on a-b, from 0 to 1 with both ends, where edges
// cross it, sorted.
func (s edgeRows) crossed(a, b point) []float64 {
	cuts := []float64{0, 1}
	if max(a[1], b[1]) < s.low || min(a[1], b[1]) > s.high {
		return cuts
	}
	dx, dy := b[0]-a[0], b[1]-a[1]
	for row, last := s.row(min(a[1], b[1])), s.row(max(a[1], b[1])); row <= last; row++ {
		for _, e := range s.rows[row] {
			ex, ey := e.b[0]-e.a[0], e.b[1]-e.a[1]
			d := float64(dx*ey) - float64(dy*ex)
			if d == 0 {
				continue
			}
			gx, gy := e.a[0]-a[0], e.a[1]-a[1]
			t, u := (float64(gx*ey)-float64(gy*ex))/d, (float64(gx*dy)-float64(gy*dx))/d
			if t > 0 && t < 1 && u >= 0 && u <= 1 {
				cuts = append(cuts, t)
			}
		}
	}
	sort.Float64s(cuts)
	return cuts
}

// middleOf gives a point inside a ring: half way across the widest stretch of
// the level between the two vertices that lie farthest apart in height.
func middleOf(ring orb.Ring) point {
	ys := make([]float64, len(ring))
	for i, p := range ring {
		ys[i] = p[1]
	}
	sort.Float64s(ys)
	y, gap := ys[0], 0.0
	for i := 1; i < len(ys); i++ {
		if d := ys[i] - ys[i-1]; d > gap {
			gap, y = d, (ys[i]+ys[i-1])/2
		}
	}
	var xs []float64
	for i, a := range ring {
		if e := (stretch{a, ring[(i+1)%len(ring)]}); (e.a[1] > y) != (e.b[1] > y) {
			xs = append(xs, e.at(y))
		}
	}
	sort.Float64s(xs)
	best := point{ring[0][0], y}
	for i, wide := 0, -1.0; i+1 < len(xs); i += 2 {
		if w := xs[i+1] - xs[i]; w > wide {
			wide, best = w, point{(xs[i] + xs[i+1]) / 2, y}
		}
	}
	return best
}
