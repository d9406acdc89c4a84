package geometry

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"github.com/paulmach/orb"
)

// everyPair is the answer of the search alone, which holds every two edges
// that lie beside one another against each other.
func everyPair(rings []orb.Ring) (at orb.Point, found bool) {
	var grid [][]gridPoint
	for _, r := range rings {
		grid = append(grid, gridRing(r))
	}
	s := crossingSearch{edges: edgesOf(grid, -2*farthest)}
	s.run(0)
	if !s.found {
		return orb.Point{}, false
	}
	return orb.Point{Snap(s.best[0] / 1000), Snap(s.best[1] / 1000)}, true
}

// meets says whether any two edges have more in common than their vertex, and
// no lower than what height.
func meets(s *clearSweep) (height int64, found bool) {
	height = math.MaxInt64
	note := func(y int64) { height, found = min(height, y), true }
	for e := range s.points {
		for f := range e {
			a, b := int32(e), int32(f)
			if s.points[e] == s.points[f] {
				note(s.points[e].y)
			}
			if !s.clear(a, b) {
				note(max(s.whole(a).minY, s.whole(b).minY))
			}
		}
	}
	return height, found
}

// compareSearches holds the sweep against every pair of edges.
func compareSearches(t *testing.T, rings []orb.Ring) (found bool) {
	t.Helper()
	at, found := Crossing(rings...)
	if want, wanted := everyPair(rings); found != wanted || at != want {
		t.Fatalf("%v: found %v at %v, every pair %v at %v", rings, found, at, wanted, want)
	}
	var grid [][]gridPoint
	for _, r := range rings {
		grid = append(grid, gridRing(r))
	}
	s := newClearSweep(grid)
	first, met := s.run()
	lowest, want := meets(s)
	if met != want {
		t.Fatalf("%v: the sweep meets something: %v, every pair: %v", rings, met, want)
	}
	if !met && found {
		t.Fatalf("%v: a crossing where nothing meets", rings)
	}
	for e := range s.points {
		for f := range e {
			// Anything that meets, meets no lower than the sweep has come.
			a, b := s.whole(int32(e)), s.whole(int32(f))
			if met && min(a.maxY, b.maxY) < first.height && (a.a == b.a || !s.clear(int32(e), int32(f))) {
				t.Fatalf("%v: edges meet below the height %d (lowest %d)", rings, first.height, lowest)
			}
		}
	}
	return found
}

// Rings of few points on a coarse grid: touches, overlaps, spikes, points in
// one place, edges upright and level, and the same ring twice.
func TestSweepOnCoarseRings(t *testing.T) {
	rnd := rand.New(rand.NewPCG(21, 1))
	count := map[bool]int{}
	for range 20000 {
		grid := 2 + rnd.IntN(30)
		scale := []float64{0.001, 1, 1000, 1e8}[rnd.IntN(4)]
		var rings []orb.Ring
		for range 1 + rnd.IntN(3) {
			var r orb.Ring
			for range 1 + rnd.IntN(9) {
				r = append(r, orb.Point{float64(rnd.IntN(grid)) * scale, float64(rnd.IntN(grid)) * scale})
			}
			rings = append(rings, r)
		}
		if rnd.IntN(20) == 0 {
			rings = append(rings, rings[0])
		}
		count[compareSearches(t, rings)]++
	}
	if count[true] < 1000 || count[false] < 1000 {
		t.Errorf("too few of a kind: %v", count)
	}
}

// Rings that go round a centre cross nothing; a point moved, an edge doubled or
// a hole set anywhere may.
func TestSweepOnRoundRings(t *testing.T) {
	rnd := rand.New(rand.NewPCG(21, 2))
	count := map[bool]int{}
	for range 3000 {
		rings := []orb.Ring{round(rnd, 3+rnd.IntN(60), 0, 0, 100), round(rnd, 3+rnd.IntN(9), rnd.Float64()*60-30, rnd.Float64()*60-30, 20)}
		r := rings[0]
		switch k := rnd.IntN(len(r)); rnd.IntN(6) {
		case 0: // a point moved anywhere
			r[k] = orb.Point{rnd.Float64()*200 - 100, rnd.Float64()*200 - 100}
		case 1: // a point on another
			r[k] = r[rnd.IntN(len(r))]
		case 2: // a hole's point on the outline
			rings[1][0] = r[k]
		case 3: // level and upright edges
			for i := range r {
				r[i] = orb.Point{math.Round(r[i][0]/8) * 8, math.Round(r[i][1]/8) * 8}
			}
		}
		count[compareSearches(t, rings)]++
	}
	if count[true] < 300 || count[false] < 300 {
		t.Errorf("too few of a kind: %v", count)
	}
}

func round(rnd *rand.Rand, n int, x, y, size float64) orb.Ring {
	r := make(orb.Ring, n)
	for i := range r {
		s, c := math.Sincos(2 * math.Pi * (float64(i) + rnd.Float64()) / float64(n))
		d := size * (0.3 + rnd.Float64())
		r[i] = orb.Point{x + d*c, y + d*s}
	}
	return r
}

// A side is judged exactly, whatever the size of the numbers.
func TestSideIsExact(t *testing.T) {
	rnd := rand.New(rand.NewPCG(21, 3))
	big2 := func(a, b int64) *big.Int { return new(big.Int).Mul(big.NewInt(a), big.NewInt(b)) }
	for range 20000 {
		size := int64(1) << (1 + rnd.IntN(42))
		point := func() gridPoint {
			return gridPoint{rnd.Int64N(2*size) - size, rnd.Int64N(2*size) - size}
		}
		a, b, c := point(), point(), point()
		if rnd.IntN(2) == 0 { // close to the line, or on it
			c = gridPoint{a.x + (b.x-a.x)/2, a.y + (b.y-a.y)/2}
		}
		want := big2(b.x-a.x, c.y-a.y).Cmp(big2(b.y-a.y, c.x-a.x))
		if got := side(a, b, c); got != want {
			t.Fatalf("%v %v %v: side %d, want %d", a, b, c, got, want)
		}
	}
}

// FuzzCrossing reads bytes as points on a coarse grid; a 255 begins the next
// ring.
func FuzzCrossing(f *testing.F) {
	f.Add([]byte{0x00, 0x50, 0x55, 0x05})
	f.Add([]byte{0x00, 0x50, 0x05, 0x55, 255, 0x11, 0x21, 0x12})
	f.Add([]byte{0x00, 0x80, 0x88, 0x48, 0x40, 0x48, 0x08})
	f.Fuzz(func(t *testing.T, data []byte) {
		if len(data) > 60 {
			return
		}
		rings := []orb.Ring{nil}
		for _, b := range data {
			if b == 255 {
				rings = append(rings, nil)
				continue
			}
			last := len(rings) - 1
			rings[last] = append(rings[last], orb.Point{float64(b >> 4), float64(b & 15)})
		}
		compareSearches(t, rings)
	})
}
