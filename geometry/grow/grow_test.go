package grow

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/paulmach/orb"
	"github.com/peterstace/simplefeatures/geom"

	"stripwright/geometry"
)

// polygon gives a region to simplefeatures, which judges validity by the rules
// of OGC 06-103r4 (simple features): rings simple, holes inside, touching in
// points only, the inside in one piece.
func polygon(t *testing.T, r geometry.Region) geom.Polygon {
	t.Helper()
	var rings []geom.LineString
	for _, q := range r.Rings() {
		var c []float64
		for _, p := range append(append(orb.Ring{}, q...), q[0]) {
			c = append(c, p[0], p[1])
		}
		rings = append(rings, geom.NewLineString(geom.NewSequence(c, geom.DimXY)))
	}
	p := geom.NewPolygon(rings)
	if err := p.Validate(); err != nil {
		t.Fatalf("not a valid polygon: %v", err)
	}
	if d := math.Abs(p.Area() - r.Area()); d > 1e-3 {
		t.Fatalf("area differs from the other engine's by %v mm²", d)
	}
	return p
}

func onGrid(r geometry.Region) bool {
	for _, q := range r.Rings() {
		for _, p := range q {
			if p[0] != geometry.Snap(p[0]) || p[1] != geometry.Snap(p[1]) {
				return false
			}
		}
	}
	return true
}

// The definition: a point is covered exactly when it is no farther from the
// net part than the allowance; within a chord error and three micrometres.
func TestCoverIsDistance(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 1))
	for k := 0; k < 600; k++ {
		far := []float64{0, 12_345.678, 5_000_000}[k%3]
		net := holed(rnd, far)
		trim := []float64{0.5, 6, 25, 60, 150}[rnd.IntN(5)]
		got, err := Blank(net, trim, Round)
		if err != nil {
			t.Fatalf("case %d: %v", k, err)
		}
		polygon(t, got)
		if !onGrid(got) {
			t.Fatalf("case %d: not on the micrometre grid", k)
		}
		b := net.Bounds().Pad(trim * 1.3)
		for n := 0; n < 300; n++ {
			p := orb.Point{b.Min[0] + rnd.Float64()*(b.Max[0]-b.Min[0]), b.Min[1] + rnd.Float64()*(b.Max[1]-b.Min[1])}
			d := distanceTo(net, p)
			if d > trim-0.003 && d < trim+ChordMM+0.003 {
				continue
			}
			if got.Contains(p) != (d <= trim) {
				t.Fatalf("case %d: trim %v: point %v lies %.4f from the part, covered: %v", k, trim, p, d, got.Contains(p))
			}
		}
	}
}

// Mitred growth holds all of the round one, nothing beyond the mitre limit, and
// leaves gaps in holes and notches only where the round one does.
func TestMitredHoldsRound(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 2))
	for k := 0; k < 600; k++ {
		net := holed(rnd, 0)
		trim := []float64{0.5, 6, 25, 60}[rnd.IntN(4)]
		mitred, err := Blank(net, trim, Mitred)
		if err != nil {
			t.Fatal(err)
		}
		polygon(t, mitred)
		b := net.Bounds().Pad(trim * 2.3)
		for n := 0; n < 300; n++ {
			p := orb.Point{b.Min[0] + rnd.Float64()*(b.Max[0]-b.Min[0]), b.Min[1] + rnd.Float64()*(b.Max[1]-b.Min[1])}
			d, in := distanceTo(net, p), mitred.Contains(p)
			// A cut-off tip ends in two corners that lie beyond the limit by
			// 1/cos 30° at most (exactly square spike: d beside the line at 2 d).
			if d < trim-0.003 && !in || d > trim*math.Sqrt(MitreLimit*MitreLimit+1)+0.003 && in {
				t.Fatalf("case %d: trim %v: point %v lies %.4f from the part, covered: %v", k, trim, p, d, in)
			}
		}
	}
}

// Areas from formulas: A + L·t + k·t², with L the edge length, k 4 for the four
// mitred corners of right-angled work (5 out, 1 in for an L), π for round ones
// (J. Steiner's formula for convex outlines).
func TestFormulas(t *testing.T) {
	plate := geometry.Region{Outer: orb.Ring{{0, 0}, {1370, 0}, {1370, 620}, {0, 620}}}
	ell := geometry.Region{Outer: orb.Ring{{0, 0}, {800, 0}, {800, 300}, {300, 300}, {300, 700}, {0, 700}}}
	triangle := geometry.Region{Outer: orb.Ring{{0, 0}, {400, 0}, {0, 300}}}
	frame := geometry.Region{Outer: plate.Outer, Holes: []orb.Ring{{{200, 200}, {200, 400}, {600, 400}, {600, 200}}}}
	for _, c := range []struct {
		name    string
		net     geometry.Region
		trim    float64
		corner  Corner
		area    float64
		rel     float64
		holes   int
		corners int
	}{
		{"plate mitred", plate, 25, Mitred, 1420 * 670, 0, 0, 4},
		{"plate round", plate, 25, Round, 1370*620 + 2*(1370+620)*25 + math.Pi*625, 2e-6, 0, 0},
		{"L mitred", ell, 20, Mitred, 800*300 + 300*400 + 3000*20 + 4*400, 0, 0, 6},
		{"L round", ell, 20, Round, 800*300 + 300*400 + 3000*20 + (5.0/4*math.Pi-1)*400, 2e-6, 0, 0},
		{"triangle round", triangle, 30, Round, 60000 + 1200*30 + math.Pi*900, 1e-5, 0, 0},
		{"frame", frame, 25, Mitred, 1420*670 - 350*150, 0, 1, 8},
		{"hole just closed", frame, 100, Mitred, 1570 * 820, 0, 0, 4},
		{"hole almost closed", frame, 99.9, Mitred, 1569.8*819.8 - 200.2*0.2, 1e-12, 1, 8},
		{"slots closed at the mouth", comb(2, 50), 25, Mitred, 270 * 350, 0, 0, 4},
		{"slots open by a hair", comb(2, 50.02), 25, Mitred, 270.04*350 - 2*0.02*240, 1e-12, 0, 12},
	} {
		got, err := Blank(c.net, c.trim, c.corner)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		polygon(t, got)
		if d := math.Abs(got.Area() - c.area); d > c.rel*c.area+1e-6 {
			t.Errorf("%s: area %.6f, formula %.6f", c.name, got.Area(), c.area)
		}
		if len(got.Holes) != c.holes {
			t.Errorf("%s: %d holes, expected %d", c.name, len(got.Holes), c.holes)
		}
		n := 0
		for _, r := range got.Rings() {
			n += len(r)
		}
		if c.corners > 0 && n != c.corners {
			t.Errorf("%s: %d corners, expected %d: %v", c.name, n, c.corners, got.Outer)
		}
	}
}

// What a hole or notch comes to, by hand.
func TestHolesAndNotches(t *testing.T) {
	plate := orb.Ring{{0, 0}, {1000, 0}, {1000, 600}, {0, 600}}
	dumbbell := orb.Ring{{200, 200}, {400, 200}, {400, 280}, {600, 280}, {600, 200}, {800, 200},
		{800, 400}, {600, 400}, {600, 320}, {400, 320}, {400, 400}, {200, 400}}
	// A notch with a mouth of 30 that widens to 200 inside.
	notch := orb.Ring{{0, 0}, {1000, 0}, {1000, 600}, {515, 600}, {515, 500}, {600, 500}, {600, 300},
		{400, 300}, {400, 500}, {485, 500}, {485, 600}, {0, 600}}
	ring := geometry.Region{Outer: plate, Holes: []orb.Ring{dumbbell}}
	for _, c := range []struct {
		name  string
		net   geometry.Region
		trim  float64
		holes []float64 // areas of what is left
	}{
		{"dumbbell falls in two", ring, 25, []float64{150 * 150, 150 * 150}},
		{"dumbbell closes", ring, 110, nil},
		{"dumbbell stays whole", ring, 10, []float64{2*180*180 + 220*20}},
		{"notch becomes a hole", geometry.Region{Outer: notch}, 25, []float64{150 * 150}},
		{"notch closes", geometry.Region{Outer: notch}, 100, nil},
		{"notch stays open", geometry.Region{Outer: notch}, 10, nil},
	} {
		got, err := Blank(c.net.Oriented(), c.trim, Mitred)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		polygon(t, got)
		if len(got.Holes) != len(c.holes) {
			t.Errorf("%s: %d holes, expected %d", c.name, len(got.Holes), len(c.holes))
			continue
		}
		for i, h := range got.Holes {
			if a := math.Abs(geometry.SignedArea(h)); math.Abs(a-c.holes[i]) > 1e-6 {
				t.Errorf("%s: hole %d has %v mm², expected %v", c.name, i, a, c.holes[i])
			}
		}
	}
}

// Growing more covers more, and growing in two goes is growing once.
func TestMonotone(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 3))
	for k := 0; k < 60; k++ {
		net, last := holed(rnd, 0), 0.0
		for _, trim := range []float64{0, 0.2, 3, 12, 12.001, 40, 90} {
			got, err := Blank(net, trim, Round)
			if err != nil {
				t.Fatal(err)
			}
			if a := got.Area(); a < last {
				t.Fatalf("case %d: %v mm covers %v mm², less covered %v", k, trim, a, last)
			}
			last = got.Area()
		}
		once, _ := Blank(net, 30, Round)
		twice, _ := Blank(net, 11, Round)
		twice, err := Blank(twice, 19, Round)
		if err != nil {
			t.Fatal(err)
		}
		if d := math.Abs(once.Area() - twice.Area()); d > 0.02*8000 {
			t.Errorf("case %d: in two goes the area differs by %v mm²", k, d)
		}
	}
}

// Turned and mirrored, the blank follows, within the grid.
func TestTurnedAndMirrored(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 4))
	for k := 0; k < 100; k++ {
		net := holed(rnd, 0)
		for _, f := range []geometry.Frame{geometry.Turned(90), geometry.Turned(180), geometry.MirrorX(), geometry.MirrorAcross()} {
			a, err := Blank(net, 25, Mitred)
			if err != nil {
				t.Fatal(err)
			}
			b, err := Blank(net.In(f), 25, Mitred)
			if err != nil {
				t.Fatal(err)
			}
			if d := math.Abs(a.Area() - b.Area()); d > 0.003*6000 {
				t.Errorf("case %d: area differs by %v mm²", k, d)
			}
			if len(a.Holes) != len(b.Holes) {
				t.Errorf("case %d: %d and %d holes", k, len(a.Holes), len(b.Holes))
			}
		}
	}
}

// Thinned and grown in steps, an outline of many vertices still keeps to the
// distance: never short, at most 0.05 mm too far.
func TestManyVertices(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 9))
	for _, c := range []struct {
		name string
		net  geometry.Region
	}{
		{"smooth", wavy(20_000, 0, rnd)},
		{"rough", wavy(6_000, 0.3, rnd)},
		{"very rough", wavy(5_000, 5, rnd)},
	} {
		got, err := Blank(c.net, 25, Round)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		polygon(t, got)
		b := c.net.Bounds().Pad(30)
		for n := 0; n < 3000; n++ {
			p := orb.Point{b.Min[0] + rnd.Float64()*(b.Max[0]-b.Min[0]), b.Min[1] + rnd.Float64()*(b.Max[1]-b.Min[1])}
			d := distanceTo(c.net, p)
			if in := got.Contains(p); d < 25-0.003 && !in || d > 25.05 && in {
				t.Fatalf("%s: point %v lies %.4f from the part, covered: %v", c.name, p, d, in)
			}
		}
	}
}

// Slots at any angle, as wide as twice the allowance give or take the grid, are
// closed whole: a slit of a few micrometres would cut every strip in two.
func TestObliqueSlots(t *testing.T) {
	for deg := 0.0; deg < 90; deg += 3.7 {
		for _, slot := range []float64{49.998, 50, 50.002, 50.004} {
			net := comb(3, slot).In(geometry.Turned(deg))
			got, err := Blank(net, 25, Mitred)
			if err != nil {
				t.Fatalf("%v°, slot %v: %v", deg, slot, err)
			}
			polygon(t, got)
			want := (3*(slot+40) + 40 + 50) * 350
			if d := math.Abs(got.Area() - want); d > 0.006*1400 {
				t.Errorf("%v°, slot %v: area %v, expected %v", deg, slot, got.Area(), want)
			}
			if len(got.Holes) > 0 || len(got.Outer) > 16 || !alone(got.Outer, 1) {
				t.Errorf("%v°, slot %v: a slit is left: %v", deg, slot, got.Rings())
			}
		}
	}
}

// alone says whether no edge longer than 1 mm has a neighbour running back beside
// it within the distance given.
func alone(r orb.Ring, within float64) bool {
	for i, a := range r {
		b := r[(i+1)%len(r)]
		for j, c := range r {
			d := r[(j+1)%len(r)]
			if math.Hypot(b[0]-a[0], b[1]-a[1]) < 1 || math.Hypot(d[0]-c[0], d[1]-c[1]) < 1 || i == j {
				continue
			}
			if math.Hypot(d[0]-a[0], d[1]-a[1]) < within && math.Hypot(b[0]-c[0], b[1]-c[1]) < within {
				return false
			}
		}
	}
	return true
}

func TestZeroLeavesTheNet(t *testing.T) {
	net := holed(rand.New(rand.NewPCG(7, 5)), 0)
	got, err := Blank(net, 0, Mitred)
	if err != nil || fmt.Sprint(got) != fmt.Sprint(net) {
		t.Errorf("changed by an allowance of zero: %v", err)
	}
}

func TestArgumentsAreLeftAlone(t *testing.T) {
	net := holed(rand.New(rand.NewPCG(7, 6)), 0)
	before := fmt.Sprint(net)
	if _, err := Blank(net, 25, Round); err != nil || fmt.Sprint(net) != before {
		t.Errorf("the net was altered: %v", err)
	}
}

func TestRefused(t *testing.T) {
	plate := geometry.Region{Outer: orb.Ring{{0, 0}, {100, 0}, {100, 100}, {0, 100}}}
	for _, c := range []struct {
		name string
		net  geometry.Region
		trim float64
		want string
	}{
		{"negative", plate, -1, "allowance -1 mm: it must be a length from 0 to 400000 mm"},
		{"nan", plate, math.NaN(), "allowance NaN mm: it must be a length from 0 to 400000 mm"},
		{"infinite", plate, math.Inf(1), "allowance +Inf mm: it must be a length from 0 to 400000 mm"},
		{"empty", geometry.Region{}, 5, "no outline to grow: it has fewer than three corners"},
		{"nan corner", geometry.Region{Outer: orb.Ring{{0, 0}, {math.NaN(), 0}, {1, 1}}}, 5, "the outline has a coordinate that is not a number"},
		{"bow tie", geometry.Region{Outer: orb.Ring{{0, 0}, {700, 500}, {700, 0}, {0, 400}}}, 5, "the outline crosses itself near (311.111, 222.222)"},
		{"line", geometry.Region{Outer: orb.Ring{{0, 0}, {700, 0}, {300, 0}}}, 5, "the outline has no area"},
		{"hole crossed", geometry.Region{Outer: plate.Outer, Holes: []orb.Ring{{{10, 10}, {30, 30}, {30, 10}, {10, 40}}}}, 5, "hole 1: the outline crosses itself near (22, 22)"},
		{"too large", geometry.Region{Outer: orb.Ring{{0, 0}, {500_000, 0}, {0, 100}}}, 5, "the outline is 500000 × 100 mm: larger than 400000 mm cannot be grown"},
	} {
		if _, err := Blank(c.net, c.trim, Round); err == nil || err.Error() != c.want {
			t.Errorf("%s: %v, expected %s", c.name, err, c.want)
		}
	}
}

func BenchmarkBlank(b *testing.B) {
	rnd := rand.New(rand.NewPCG(7, 8))
	for _, c := range []struct {
		name string
		net  geometry.Region
	}{
		{"plate", geometry.Region{Outer: orb.Ring{{0, 0}, {1370, 0}, {1370, 620}, {0, 620}}}},
		{"smooth/1000", wavy(1000, 0, rnd)},
		{"smooth/10000", wavy(10_000, 0, rnd)},
		{"smooth/100000", wavy(100_000, 0, rnd)},
		{"rough/10000", wavy(10_000, 0.5, rnd)},
		{"rough/100000", wavy(100_000, 0.5, rnd)},
	} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				r, err := Blank(c.net, 25, Mitred)
				if err != nil {
					b.Fatal(err)
				}
				b.ReportMetric(float64(len(r.Outer)), "vertices")
			}
		})
	}
}
