package curve_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/geometry/curve"
)

// farthest gives the greatest distance of densely sampled curve points from
// the polyline; at is the true curve over [0, 1], written out here again from
// its definition.
func farthest(points []orb.Point, at func(t float64) orb.Point) float64 {
	worst := 0.0
	for i := range 801 {
		p, d := at(float64(i)/800), math.Inf(1)
		for j := 0; j+1 < len(points); j++ {
			d = math.Min(d, fromSegment(p, points[j], points[j+1]))
		}
		worst = math.Max(worst, d)
	}
	return worst
}

func fromSegment(p, a, b orb.Point) float64 {
	dx, dy := b[0]-a[0], b[1]-a[1]
	t := 0.0
	if l := dx*dx + dy*dy; l > 0 {
		t = math.Max(0, math.Min(1, ((p[0]-a[0])*dx+(p[1]-a[1])*dy)/l))
	}
	return math.Hypot(a[0]+t*dx-p[0], a[1]+t*dy-p[1])
}

func TestChordErrorIsKept(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 6))
	v := func() float64 { return rnd.Float64()*1000 - 500 }
	for range 25 {
		chord := math.Pow(10, -2*rnd.Float64())
		a, b, c, d := orb.Point{v(), v()}, orb.Point{v(), v()}, orb.Point{v(), v()}, orb.Point{v(), v()}
		from, sweep, r := v(), v()/80, 1+rnd.Float64()*700
		hold := func(name string, points []orb.Point, at func(float64) orb.Point) {
			t.Helper()
			if e := farthest(points, at); e > chord*1.0001 {
				t.Errorf("%s: error %v, chord error %v, %d points", name, e, chord, len(points))
			}
		}
		hold("arc", curve.Arc(a, r, from, sweep, chord), func(u float64) orb.Point {
			s, c := math.Sincos(from + u*sweep)
			return orb.Point{a[0] + r*c, a[1] + r*s}
		})
		hold("ellipse", curve.Ellipse(a, b, c, from, sweep, chord), func(u float64) orb.Point {
			s, k := math.Sincos(from + u*sweep)
			return orb.Point{a[0] + b[0]*k + c[0]*s, a[1] + b[1]*k + c[1]*s}
		})
		hold("quadratic", curve.Quadratic(a, b, c, chord), func(u float64) orb.Point {
			w0, w1, w2 := (1-u)*(1-u), 2*u*(1-u), u*u
			return orb.Point{w0*a[0] + w1*b[0] + w2*c[0], w0*a[1] + w1*b[1] + w2*c[1]}
		})
		hold("cubic", curve.Cubic(a, b, c, d, chord), func(u float64) orb.Point {
			w0, w1, w2, w3 := (1-u)*(1-u)*(1-u), 3*u*(1-u)*(1-u), 3*u*u*(1-u), u*u*u
			return orb.Point{w0*a[0] + w1*b[0] + w2*c[0] + w3*d[0], w0*a[1] + w1*b[1] + w2*c[1] + w3*d[1]}
		})
	}
}

// DXF reference, group code 42: bulge is the tangent of a quarter of the
// included angle, negative clockwise: 90° .414214, 180° 1, 270° 2.414214;
// radius c(1+b²)/(4|b|).
func TestBulge(t *testing.T) {
	a, b := orb.Point{0, 0}, orb.Point{100, 0}
	cases := []struct {
		bulge, radius, sagitta float64 // sagitta: how far below the line a-b
	}{
		{0.41421356, 70.7107, 20.7107},
		{1, 50, 50},
		{2.41421356, 70.7107, 120.7107},
		{-1, 50, -50},
		{-0.5, 62.5, -25},
		{1e-9, 2.5e10, 5e-8},
		{0, math.Inf(1), 0},
	}
	for _, c := range cases {
		if r := curve.BulgeRadius(a, b, c.bulge); r != c.radius && math.Abs(r/c.radius-1) > 1e-5 {
			t.Errorf("bulge %v: radius %v, want %v", c.bulge, r, c.radius)
		}
		ps := curve.Bulge(a, b, c.bulge, 1e-3)
		if ps[0] != a || ps[len(ps)-1] != b {
			t.Errorf("bulge %v: ends %v, %v", c.bulge, ps[0], ps[len(ps)-1])
		}
		deepest := 0.0
		for _, p := range ps {
			if math.Abs(p[1]) > math.Abs(deepest) {
				deepest = p[1]
			}
			if c.sagitta != 0 && len(ps) > 2 {
				centre := orb.Point{50, c.radius - c.sagitta}
				if c.bulge < 0 {
					centre[1] = -c.radius - c.sagitta
				}
				if d := math.Hypot(p[0]-centre[0], p[1]-centre[1]); math.Abs(d-c.radius) > 1e-4 {
					t.Errorf("bulge %v: %v is %v from the centre, radius %v", c.bulge, p, d, c.radius)
				}
			}
		}
		if math.Abs(-deepest-c.sagitta) > 2e-3 {
			t.Errorf("bulge %v: deepest %v, want %v", c.bulge, -deepest, c.sagitta)
		}
	}
}

// A bulge reaches the same points, seen from either end.
func TestBulgeReversed(t *testing.T) {
	a, b := orb.Point{12, -7}, orb.Point{340, 55}
	for _, w := range []float64{-3, -1, -0.2, 1e-4, 0.7, 2.5} {
		there, back := curve.Bulge(a, b, w, 0.01), curve.Bulge(b, a, -w, 0.01)
		if len(there) != len(back) {
			t.Fatalf("bulge %v: %d points there, %d back", w, len(there), len(back))
		}
		for i, p := range there {
			q := back[len(back)-1-i]
			if math.Hypot(p[0]-q[0], p[1]-q[1]) > 1e-9 {
				t.Errorf("bulge %v: %v there, %v back", w, p, q)
			}
		}
	}
}

// An outline of an inscribed circle is smaller than the true one, by less than
// the chord error times its circumference.
func TestCircleIsNeverSmallerByMore(t *testing.T) {
	for _, r := range []float64{0.02, 1, 4.25, 325, 9000} {
		ring := orb.Ring(curve.Circle(orb.Point{5e6, -3e6}, r, 0.05))
		if len(ring) < 12 {
			t.Errorf("radius %v: only %d points", r, len(ring))
		}
		missing := math.Pi*r*r - geometry.SignedArea(ring)
		if missing < -1e-4 || missing > 0.05*2*math.Pi*r {
			t.Errorf("radius %v: %v mm² are missing", r, missing)
		}
	}
}

func TestStraightStaysTwoPoints(t *testing.T) {
	a, b, c, d := orb.Point{0, 0}, orb.Point{10, 10}, orb.Point{20, 20}, orb.Point{30, 30}
	for name, n := range map[string]int{
		"bulge 0":      len(curve.Bulge(a, d, 0, 0.05)),
		"bulge 1e-300": len(curve.Bulge(a, d, 1e-300, 0.05)),
		"quadratic":    len(curve.Quadratic(a, b, c, 0.05)),
		"cubic":        len(curve.Cubic(a, b, c, d, 0.05)),
	} {
		if n != 2 {
			t.Errorf("%s: %d points, want 2", name, n)
		}
	}
}

func TestNoNaN(t *testing.T) {
	odd := []float64{0, -1, 1, 1e-320, 1e300, -1e308, math.Inf(1), math.Inf(-1), math.NaN(), 1e149, 1e9}
	for _, x := range odd {
		for _, y := range odd {
			p, q, r := orb.Point{x, y}, orb.Point{y, x}, orb.Point{x, -x}
			for name, ps := range map[string][]orb.Point{
				"arc":       curve.Arc(p, y, x, y, 0.05),
				"arc chord": curve.Arc(orb.Point{}, 100, x, y, x),
				"circle":    curve.Circle(p, y, x),
				"ellipse":   curve.Ellipse(p, q, r, x, y, 0.05),
				"bulge":     curve.Bulge(p, q, x, y),
				"quadratic": curve.Quadratic(p, q, r, 0.05),
				"cubic":     curve.Cubic(p, q, r, p, 0.05),
			} {
				if len(ps) > 100001 {
					t.Errorf("%s of %v, %v: %d points", name, x, y, len(ps))
				}
				for _, at := range ps {
					if math.IsNaN(at[0]+at[1]) || math.IsInf(at[0]+at[1], 0) {
						t.Errorf("%s of %v, %v holds %v", name, x, y, at)
						break
					}
				}
			}
		}
	}
}
