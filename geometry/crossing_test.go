package geometry_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/paulmach/orb"
	"stripwright/geometry"

	sf "github.com/peterstace/simplefeatures/geom"
)

func ring(xy ...float64) orb.Ring {
	var r orb.Ring
	for i := 0; i < len(xy); i += 2 {
		r = append(r, orb.Point{xy[i], xy[i+1]})
	}
	return r
}

func TestCrossing(t *testing.T) {
	square := ring(0, 0, 100, 0, 100, 100, 0, 100)
	cases := []struct {
		name  string
		rings []orb.Ring
		found bool
		at    orb.Point
	}{
		{"square", []orb.Ring{square}, false, orb.Point{}},
		{"square, closed, points repeated", []orb.Ring{ring(0, 0, 0, 0, 100, 0, 100, 100, 100, 100, 0, 100, 0, 0)}, false, orb.Point{}},
		{"no rings", nil, false, orb.Point{}},
		{"a point", []orb.Ring{ring(1, 1)}, false, orb.Point{}},
		{"bow tie", []orb.Ring{ring(0, 0, 700, 500, 700, 0, 0, 500)}, true, orb.Point{350, 250}},
		{"two crossings, the lower is told", []orb.Ring{ring(0, 0, 10, 10, 0, 20, 10, 30, 10, 20, 0, 30, 10, 40, 0, 40, -20, 50, -20, 20, 8, 5, -20, 10)}, true, orb.Point{5.455, 5.455}},
		{"equally low, the left one is told", []orb.Ring{ring(0, 0, 30, 0, 30, 20, 0, 20), ring(5, -5, 25, -5, 25, 5, 5, 5)}, true, orb.Point{5, 0}},
		{"hole inside", []orb.Ring{square, ring(20, 20, 80, 20, 80, 80)}, false, orb.Point{}},
		{"hole across the outline", []orb.Ring{square, ring(50, 50, 150, 50, 150, 60, 50, 60)}, true, orb.Point{100, 50}},
		{"hole touches from inside at its vertex", []orb.Ring{square, ring(20, 20, 100, 50, 20, 80)}, false, orb.Point{}},
		{"hole's vertex on a vertex", []orb.Ring{square, ring(20, 20, 100, 100, 20, 80)}, false, orb.Point{}},
		{"pinch: ring touches itself and stays on its side", []orb.Ring{ring(0, 0, 50, 40, 100, 0, 100, 100, 50, 40, 0, 100)}, false, orb.Point{}},
		{"pinch: vertex on an edge", []orb.Ring{ring(0, 0, 100, 0, 100, 100, 50, 0, 0, 100)}, false, orb.Point{}},
		{"figure of eight through one vertex", []orb.Ring{ring(0, 0, 50, 50, 100, 100, 100, 0, 50, 50, 0, 100)}, true, orb.Point{50, 50}},
		{"runs through an edge at a vertex", []orb.Ring{square, ring(50, 50, 100, 70, 150, 90, 50, 90)}, true, orb.Point{100, 70}},
		{"same ring twice", []orb.Ring{square, square}, true, orb.Point{0, 0}},
		{"same ring, the other way round", []orb.Ring{square, ring(0, 100, 100, 100, 100, 0, 0, 0)}, true, orb.Point{0, 0}},
		{"half an edge shared", []orb.Ring{square, ring(100, 50, 200, 50, 200, 150, 100, 150)}, true, orb.Point{100, 50}},
		{"shared edge that falls to the right", []orb.Ring{ring(0, 100, 100, 0, 100, 100), ring(20, 80, 60, 40, 0, 0)}, true, orb.Point{60, 40}},
		{"spike", []orb.Ring{ring(0, 0, 100, 0, 150, 0, 100, 0, 100, 100, 0, 100)}, true, orb.Point{100, 0}},
		{"out and back", []orb.Ring{ring(0, 50, 100, 50, 20, 50)}, true, orb.Point{0, 50}},
		{"straight vertex is no spike", []orb.Ring{ring(0, 0, 50, 0, 100, 0, 100, 100, 0, 100)}, false, orb.Point{}},
		{"far away and large", []orb.Ring{ring(5.2e6, 3.4e6, 5.2e6+3e6, 3.4e6, 5.2e6, 3.4e6+3e6, 5.2e6+3e6, 3.4e6+3e6)}, true, orb.Point{6.7e6, 4.9e6}},
	}
	for _, c := range cases {
		at, found := geometry.Crossing(c.rings...)
		if found != c.found {
			t.Errorf("%s: found %v at %v, want %v", c.name, found, at, c.found)
		}
		if at != c.at {
			t.Errorf("%s: at %v, want %v", c.name, at, c.at)
		}
	}
}

// A turned or mirrored drawing has the same answer, and every vertex may be
// the first.
func TestCrossingFollowsTurnsAndStarts(t *testing.T) {
	rings := map[bool]orb.Ring{
		true:  ring(0, 0, 50, 50, 100, 100, 100, 0, 50, 50, 0, 100),
		false: ring(0, 0, 50, 40, 100, 0, 100, 100, 50, 40, 0, 100),
	}
	for want, r := range rings {
		for start := range r {
			for turn := range 8 {
				var moved orb.Ring
				for i := range r {
					p := r[(start+i)%len(r)]
					for range turn % 4 {
						p = orb.Point{-p[1], p[0]}
					}
					if turn > 3 {
						p[0] = -p[0]
					}
					moved = append(moved, p)
				}
				if _, found := geometry.Crossing(moved); found != want {
					t.Errorf("start %d turn %d: found %v, want %v", start, turn, found, want)
				}
			}
		}
	}
}

// Random rings on a coarse grid, so that touches and overlaps abound, held
// against a second engine (simplefeatures, the simple-features standard OGC
// 06-103r4): a ring that it calls simple has no crossing; where it does not,
// either we find one or the ring only touches itself.
func TestCrossingAgainstSimpleFeatures(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	simple, crossed, touched := 0, 0, 0
	for range 4000 {
		r := orb.Ring{}
		for range 3 + rnd.IntN(6) {
			r = append(r, orb.Point{float64(rnd.IntN(9)), float64(rnd.IntN(9))})
		}
		if r[0] == r[len(r)-1] {
			continue
		}
		_, found := geometry.Crossing(r)
		isSimple := simpleRing(t, r)
		switch {
		case isSimple && found:
			t.Fatalf("%v: simple, but a crossing was found", r)
		case isSimple:
			simple++
		case found:
			crossed++
		case !touches(r):
			t.Fatalf("%v: not simple, and no vertex touches, but no crossing was found", r)
		default:
			touched++
		}
	}
	if simple < 100 || crossed < 100 || touched < 20 {
		t.Errorf("too few of a kind: %d simple, %d crossed, %d touching", simple, crossed, touched)
	}
}

func simpleRing(t *testing.T, r orb.Ring) bool {
	t.Helper()
	var xy []float64
	for _, p := range append(append(orb.Ring{}, r...), r[0]) {
		xy = append(xy, p[0], p[1])
	}
	line := sf.NewLineString(sf.NewSequence(xy, sf.DimXY))
	if line.Validate() != nil {
		return false
	}
	return line.IsSimple()
}

// touches says whether a vertex of the ring lies on another part of it.
func touches(r orb.Ring) bool {
	for i, p := range r {
		for j := range r {
			a, b := r[j], r[(j+1)%len(r)]
			if j == i || (j+1)%len(r) == i {
				continue
			}
			cross := (b[0]-a[0])*(p[1]-a[1]) - (b[1]-a[1])*(p[0]-a[0])
			dot := (a[0]-p[0])*(b[0]-p[0]) + (a[1]-p[1])*(b[1]-p[1])
			if cross == 0 && dot <= 0 {
				return true
			}
		}
	}
	return false
}

// The answer is the lowest of all crossings, found here edge by edge.
func TestCrossingIsTheLowest(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 4))
	for range 300 {
		r := orb.Ring{}
		for range 4 + rnd.IntN(40) {
			r = append(r, orb.Point{float64(rnd.IntN(100000)) / 100, float64(rnd.IntN(100000)) / 100})
		}
		want := math.Inf(1)
		for i := range r {
			for j := range i {
				if y, ok := crossingHeight(r[i], r[(i+1)%len(r)], r[j], r[(j+1)%len(r)]); ok {
					want = math.Min(want, y)
				}
			}
		}
		at, found := geometry.Crossing(r)
		if found != !math.IsInf(want, 1) || (found && math.Abs(at[1]-want) > 0.002) {
			t.Fatalf("%v: found %v at %v, want height %v", r, found, at, want)
		}
	}
}

func crossingHeight(a, b, c, d orb.Point) (float64, bool) {
	if a == c || a == d || b == c || b == d {
		return 0, false
	}
	det := (b[0]-a[0])*(d[1]-c[1]) - (b[1]-a[1])*(d[0]-c[0])
	t := ((c[0]-a[0])*(d[1]-c[1]) - (c[1]-a[1])*(d[0]-c[0])) / det
	u := ((c[0]-a[0])*(b[1]-a[1]) - (c[1]-a[1])*(b[0]-a[0])) / det
	return a[1] + t*(b[1]-a[1]), t > 0 && t < 1 && u > 0 && u < 1
}

func blob(n int) orb.Ring {
	r := make(orb.Ring, n)
	for i := range r {
		a := 2 * math.Pi * float64(i) / float64(n)
		d := 500 + 20*math.Sin(40*a) + 3*math.Cos(900*a)
		r[i] = orb.Point{d * math.Cos(a), d * math.Sin(a)}
	}
	return r
}

func comb(teeth int, turn float64) orb.Ring {
	r := orb.Ring{}
	s, c := math.Sincos(turn)
	for i := range teeth {
		x := float64(i) * 0.2
		for _, p := range []orb.Point{{x, 0}, {x, 900}, {x + 0.1, 900}, {x + 0.1, 0}} {
			r = append(r, orb.Point{c*p[0] - s*p[1], s*p[0] + c*p[1]})
		}
	}
	end := 0.2 * float64(teeth)
	for _, p := range []orb.Point{{end, -1}, {0, -1}} {
		r = append(r, orb.Point{c*p[0] - s*p[1], s*p[0] + c*p[1]})
	}
	return r
}

func turned(r orb.Ring, degrees float64) orb.Ring {
	s, c := math.Sincos(degrees * math.Pi / 180)
	out := make(orb.Ring, len(r))
	for i, p := range r {
		out[i] = orb.Point{c*p[0] - s*p[1], s*p[0] + c*p[1]}
	}
	return out
}

// star has n points, every other one near the centre.
func star(n int) orb.Ring {
	r := make(orb.Ring, n)
	for i := range r {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		d := 2000 - 1000*float64(i%2)
		r[i] = orb.Point{d * c, d * s}
	}
	return r
}

// spiral winds 40 times outward and back beside itself.
func spiral(n int) orb.Ring {
	r := make(orb.Ring, n)
	for i := range r {
		k := min(i, n-1-i)
		s, c := math.Sincos(2 * math.Pi * 40 * float64(k) / float64(n/2))
		d := 10 + 990*float64(k)/float64(n/2)
		if k != i {
			d += 8
		}
		r[i] = orb.Point{d * c, d * s}
	}
	return r
}

func circle(n int) orb.Ring {
	r := make(orb.Ring, n)
	for i := range r {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		r[i] = orb.Point{1500 * c, 1500 * s}
	}
	return r
}

// All outlines have 100,000 points.
func BenchmarkCrossing(b *testing.B) {
	teeth := comb(25000, 0)
	for _, c := range []struct {
		name string
		ring orb.Ring
	}{
		{"blob", blob(100000)}, {"star", star(100000)}, {"spiral", spiral(100000)}, {"circle", circle(100000)},
		{"comb at 0°", teeth}, {"comb at 20°", turned(teeth, 20)}, {"comb at 45°", turned(teeth, 45)}, {"comb at 90°", turned(teeth, 90)},
	} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				if at, found := geometry.Crossing(c.ring); found {
					b.Fatal("crossing found at", at)
				}
			}
		})
	}
}
