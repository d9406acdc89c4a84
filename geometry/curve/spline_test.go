package curve_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry/curve"
)

// basis is the Cox-de Boor recursion, the definition of a B-spline (Piegl and
// Tiller, The NURBS Book, eq. 2.5, from memory): slow, and another way than
// the one tested.
func basis(i, p int, knots []float64, u float64) float64 {
	if p == 0 {
		if knots[i] <= u && u < knots[i+1] {
			return 1
		}
		return 0
	}
	sum := 0.0
	if d := knots[i+p] - knots[i]; d > 0 {
		sum += (u - knots[i]) / d * basis(i, p-1, knots, u)
	}
	if d := knots[i+p+1] - knots[i+1]; d > 0 {
		sum += (knots[i+p+1] - u) / d * basis(i+1, p-1, knots, u)
	}
	return sum
}

func onSpline(s curve.Spline, u float64) orb.Point {
	var x, y, w float64
	for i, p := range s.Control {
		n := basis(i, s.Degree, s.Knots, u)
		if len(s.Weights) > 0 {
			n *= s.Weights[i]
		}
		x, y, w = x+n*p[0], y+n*p[1], w+n
	}
	return orb.Point{x / w, y / w}
}

func TestSplineAgainstItsDefinition(t *testing.T) {
	rnd := rand.New(rand.NewPCG(9, 10))
	for range 40 {
		p := 1 + rnd.IntN(5)
		n := p + 1 + rnd.IntN(6)
		s := curve.Spline{Degree: p}
		knot := -3.0
		for range n + p + 1 {
			if rnd.IntN(4) > 0 {
				knot += rnd.Float64()
			}
			s.Knots = append(s.Knots, knot)
		}
		for range n {
			s.Control = append(s.Control, orb.Point{rnd.Float64() * 900, rnd.Float64() * 900})
		}
		if rnd.IntN(2) == 0 {
			for range n {
				s.Weights = append(s.Weights, 0.3+rnd.Float64()*3)
			}
		}
		if s.Valid() != nil || cusped(s) {
			continue
		}
		from, to := s.Knots[p], s.Knots[n]
		points := s.Points(0.05)
		e := farthest(points, func(t float64) orb.Point {
			return onSpline(s, math.Min(from+t*(to-from), to-1e-12*(to-from)))
		})
		if e > 0.0501 {
			t.Errorf("degree %d, %d control points: error %v with %d points", p, n, e, len(points))
		}
	}
}

// cusped says whether a knot inside is there so often that the curve jumps.
func cusped(s curve.Spline) bool {
	for i := range s.Knots[:len(s.Knots)-s.Degree-1] {
		if s.Knots[i] == s.Knots[i+s.Degree+1] {
			return true
		}
	}
	return false
}

// Nine control points with the weights 1 and √½ are an exact circle: the
// textbook example of a rational spline (Piegl and Tiller, section 7.5, from
// memory).
func TestRationalSplineIsACircle(t *testing.T) {
	w := math.Sqrt2 / 2
	s := curve.Spline{
		Degree:  2,
		Knots:   []float64{0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4},
		Control: []orb.Point{{240, 0}, {240, 240}, {0, 240}, {-240, 240}, {-240, 0}, {-240, -240}, {0, -240}, {240, -240}, {240, 0}},
		Weights: []float64{1, w, 1, w, 1, w, 1, w, 1},
	}
	points := s.Points(0.01)
	for _, p := range points {
		if r := math.Hypot(p[0], p[1]); math.Abs(r-240) > 1e-9 {
			t.Errorf("%v is %v from the centre", p, r)
		}
	}
	if len(points) < 100 || len(points) > 2000 {
		t.Errorf("%d points", len(points))
	}
}

func TestSplineThatIsNone(t *testing.T) {
	good := curve.Spline{Degree: 2, Knots: []float64{0, 0, 0, 1, 1, 1}, Control: []orb.Point{{0, 0}, {1, 1}, {2, 0}}}
	if good.Valid() != nil {
		t.Fatal(good.Valid())
	}
	for name, spoil := range map[string]func(*curve.Spline){
		"degree":        func(s *curve.Spline) { s.Degree = 0 },
		"few points":    func(s *curve.Spline) { s.Control = s.Control[:2] },
		"knots missing": func(s *curve.Spline) { s.Knots = s.Knots[:5] },
		"backwards":     func(s *curve.Spline) { s.Knots = []float64{0, 0, 0, 1, 0.5, 1} },
		"no curve":      func(s *curve.Spline) { s.Knots = make([]float64, 6) },
		"NaN":           func(s *curve.Spline) { s.Control = []orb.Point{{0, 0}, {math.NaN(), 1}, {2, 0}} },
		"weights":       func(s *curve.Spline) { s.Weights = []float64{1, 1} },
		"weight zero":   func(s *curve.Spline) { s.Weights = []float64{1, 0, 1} },
	} {
		s := good
		spoil(&s)
		if s.Valid() == nil || s.Points(0.05) != nil {
			t.Errorf("%s: taken for a spline", name)
		}
	}
}

// Through passes its points, runs along the stated directions, and through
// many points of a circle comes close to it.
func TestThrough(t *testing.T) {
	var fit []orb.Point
	for i := range 12 {
		a := 2 * math.Pi * float64(i) / 12
		fit = append(fit, orb.Point{300 * math.Cos(a), 300 * math.Sin(a)})
	}
	for _, p := range curve.Through(fit, orb.Point{}, orb.Point{}, true, 0.01) {
		if r := math.Hypot(p[0], p[1]); math.Abs(r-300) > 0.15 {
			t.Errorf("closed: %v is %v from the centre", p, r)
		}
	}
	open := curve.Through(fit[:7], orb.Point{0, 5}, orb.Point{0, -2}, false, 0.01)
	for _, p := range open {
		if r := math.Hypot(p[0], p[1]); math.Abs(r-300) > 0.15 {
			t.Errorf("open: %v is %v from the centre", p, r)
		}
	}
	for _, p := range fit[:7] {
		if d := farthest(open, func(float64) orb.Point { return p }); d > 1e-9 {
			t.Errorf("%v is passed at %v", p, d)
		}
	}
	if dx, dy := open[1][0]-open[0][0], open[1][1]-open[0][1]; dy < 10*math.Abs(dx) {
		t.Errorf("begins in the direction %v, %v", dx, dy)
	}
	if got := curve.Through(fit[:2], orb.Point{}, orb.Point{}, false, 0.05); len(got) != 2 {
		t.Errorf("two points make %d", len(got))
	}
	if got := curve.Through(fit[:1], orb.Point{}, orb.Point{}, true, 0.05); got != nil {
		t.Errorf("one point makes %v", got)
	}
}
