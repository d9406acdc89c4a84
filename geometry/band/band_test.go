package band

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/paulmach/orb"
	"github.com/peterstace/simplefeatures/geom"

	"stripwright/geometry"
)

func region(outer orb.Ring, holes ...orb.Ring) geometry.Region {
	return geometry.Region{Outer: outer, Holes: holes}.Oriented()
}

func um(mm ...float64) []int64 {
	out := make([]int64, len(mm))
	for i, v := range mm {
		out[i] = int64(geometry.Micrometres(v))
	}
	return out
}

func box(x0, y0, x1, y1 float64) orb.Ring { return orb.Ring{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}} }

func TestCutPlainCases(t *testing.T) {
	steps := orb.Ring{{0, 0}, {1200, 0}, {1200, 300}, {900, 300}, {900, 600}, {0, 600}}
	u := orb.Ring{{0, 0}, {1000, 0}, {1000, 600}, {700, 600}, {700, 300}, {300, 300}, {300, 600}, {0, 600}}
	bow := orb.Ring{{0, 0}, {100, 0}, {50, 50}, {100, 100}, {0, 100}, {50, 50}}
	cases := []struct {
		name   string
		r      geometry.Region
		joints []float64
		pieces int
		holes  int
	}{
		{"whole", region(box(0, 0, 10, 10)), nil, 1, 0},
		{"three bands", region(box(0, 0, 1180, 740)), []float64{300, 600}, 3, 0},
		{"joint on both edges", region(box(0, 0, 10, 10)), []float64{0, 10}, 1, 0},
		{"steps on the joints", region(steps), []float64{300, 600}, 2, 0},
		{"U in two courses", region(u), []float64{300}, 3, 0},
		{"hole cut by a joint", region(box(0, 0, 100, 100), box(40, 40, 60, 60)), []float64{50}, 2, 0},
		{"hole inside a band", region(box(0, 0, 100, 100), box(40, 40, 60, 60)), []float64{10, 80}, 3, 1},
		{"joint on the hole's edge", region(box(0, 0, 100, 100), box(40, 40, 60, 60)), []float64{60}, 2, 0},
		{"frame", region(box(0, 0, 100, 100), box(20, 20, 80, 80)), []float64{30, 70}, 4, 0},
		{"pinch away from joints", region(bow), []float64{20}, 3, 0},
		{"pinch on a joint", region(bow), []float64{50}, 2, 0},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			o := New(c.r, 0)
			got := o.Cut(um(c.joints...))
			holes, area := 0, int64(0)
			for i := range got {
				holes += len(got[i].Holes)
				area += got[i].Area2()
			}
			if len(got) != c.pieces || holes != c.holes || area != o.Area2 {
				t.Errorf("%d pieces with %d holes, area %d; want %d, %d, %d", len(got), holes, area, c.pieces, c.holes, o.Area2)
			}
		})
	}
}

// wobbly is a random concave outline about a centre, with a hole.
func wobbly(rng *rand.Rand, n int, cx, cy float64) geometry.Region {
	ring := func(n int, r0, r1 float64) orb.Ring {
		var out orb.Ring
		for i := range n {
			a := 2 * math.Pi * float64(i) / float64(n)
			r := r0 + (r1-r0)*rng.Float64()
			out = append(out, orb.Point{cx + r*math.Cos(a), cy + r*math.Sin(a)})
		}
		return out
	}
	return region(ring(n, 300, 700), ring(n/2+3, 60, 250))
}

// The second opinion on areas and counts is simplefeatures' overlay.
func TestCutAgainstOverlay(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for k := range 200 {
		o := New(wobbly(rng, 5+rng.IntN(40), 5200e3, -3400e3), geometry.NewAngle(float64(rng.IntN(360))))
		joints := randomJoints(rng, o)
		pieces := o.Cut(joints)
		whole := polygonOf(o.Rings)
		for b := 0; b <= len(joints); b++ {
			lo, hi := o.MinY-1000, o.MaxY+1000
			if b > 0 {
				lo = joints[b-1]
			}
			if b < len(joints) {
				hi = joints[b]
			}
			strip := polygonOf([]Ring{{{o.MinX - 1000, lo}, {o.MaxX + 1000, lo}, {o.MaxX + 1000, hi}, {o.MinX - 1000, hi}}})
			want, err := geom.Intersection(whole, strip)
			if err != nil {
				t.Fatal(err)
			}
			area, count := 0.0, 0
			for i := range pieces {
				if pieces[i].Band == b {
					area += float64(pieces[i].Area2()) / 2e6
					count++
					if pieces[i].MinY < lo || pieces[i].MaxY > hi {
						t.Fatalf("case %d: piece leaves its band", k)
					}
				}
			}
			if math.Abs(area-want.Area()) > 0.02+1e-3*float64(o.MaxX-o.MinX)/1000 {
				t.Fatalf("case %d band %d: area %.4f, overlay %.4f mm²", k, b, area, want.Area())
			}
		}
		checkSlabs(t, pieces)
	}
}

func randomJoints(rng *rand.Rand, o *Outline) []int64 {
	hs := heights(o)
	var joints []int64
	for range 1 + rng.IntN(12) {
		y := o.MinY + rng.Int64N(o.Across())
		if rng.IntN(3) == 0 {
			y = hs[rng.IntN(len(hs))] + rng.Int64N(3) - 1
		}
		joints = append(joints, y)
	}
	slices.Sort(joints)
	return slices.Compact(joints)
}

func checkSlabs(t *testing.T, pieces []Piece) {
	t.Helper()
	for i := range pieces {
		sum := 0.0
		for _, s := range Slabs(&pieces[i]) {
			sum += (s.R0 - s.L0 + s.R1 - s.L1) * float64(s.Y1-s.Y0)
		}
		if a := float64(pieces[i].Area2()); math.Abs(sum-a) > 1e-6*a+5e6 {
			t.Fatalf("slabs hold %g, piece %g", sum, a)
		}
	}
}

func polygonOf(rings []Ring) geom.Geometry {
	var lines []geom.LineString
	for _, r := range rings {
		var xy []float64
		for k := 0; k <= len(r); k++ {
			p := r[k%len(r)]
			xy = append(xy, float64(p.X-5200e6)/1000, float64(p.Y)/1000)
		}
		lines = append(lines, geom.NewLineString(geom.NewSequence(xy, geom.DimXY)))
	}
	return geom.NewPolygon(lines).AsGeometry()
}

func TestChords(t *testing.T) {
	o := New(region(box(0, 0, 100, 100), box(40, 40, 60, 60)), 0)
	cases := []struct {
		y    float64
		want []Span
	}{
		{0, nil}, {100, nil},
		{20, []Span{{0, 100000}}},
		{50, []Span{{0, 40000}, {60000, 100000}}},
		{40, []Span{{0, 40000}, {60000, 100000}}},
		{60, []Span{{0, 40000}, {60000, 100000}}},
	}
	for _, c := range cases {
		if got := o.Chords(um(c.y)[0]); !slices.Equal(got, c.want) {
			t.Errorf("y %g: %v, want %v", c.y, got, c.want)
		}
	}
}

// Edges sorted by height give the chords that all edges give.
func TestChordsOfManyEdges(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	for range 20 {
		o := New(wobbly(rng, 300+rng.IntN(3000), 0, 0), 30)
		if o.rungs == nil {
			t.Fatal("the edges are not sorted")
		}
		plain := *o
		plain.rungs = nil
		ys := append(heights(o)[:50], o.MinY, o.MaxY, o.MinY-5, o.MaxY+5)
		for range 200 {
			ys = append(ys, o.MinY+rng.Int64N(o.Across()))
		}
		for _, y := range ys {
			if got, want := o.Chords(y), plain.Chords(y); !slices.Equal(got, want) {
				t.Fatalf("at %d: %v, want %v", y, got, want)
			}
		}
	}
}

// A rough outline keeps its extents and all but a little of its area.
func TestRough(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 8))
	var ring orb.Ring
	for i := range 20000 {
		a := 2 * math.Pi * float64(i) / 20000
		d := 1 + 0.05*math.Sin(9*a) + 0.0004*rng.Float64()
		ring = append(ring, orb.Point{1500 * d * math.Cos(a), 900 * d * math.Sin(a)})
	}
	o := New(region(ring), 20)
	rough := o.Rough(1500)
	if n := rough.Vertices(); n > 1500 || n < 50 {
		t.Errorf("%d vertices are left of %d", n, o.Vertices())
	}
	if rough.MinX != o.MinX || rough.MaxX != o.MaxX || rough.MinY != o.MinY || rough.MaxY != o.MaxY {
		t.Error("the extents have changed")
	}
	if part := math.Abs(float64(rough.Area2)/float64(o.Area2) - 1); part > 0.003 {
		t.Errorf("the area is off by %.2f %%", 100*part)
	}
	few := New(wobbly(rng, 40, 0, 0), 0)
	if few.Rough(1500) != few {
		t.Error("an outline of few vertices has changed")
	}
}

// A Look gives the pieces of a Cut.
func TestLook(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 12))
	var c Cutter
	for range 50 {
		o := New(wobbly(rng, 5+rng.IntN(60), 0, 0), 45)
		joints := randomJoints(rng, o)
		got, want := c.Look(o, joints), o.Cut(joints)
		if len(got) != len(want) {
			t.Fatalf("%d pieces, want %d", len(got), len(want))
		}
		for i := range got {
			if !slices.Equal(got[i].Outer, want[i].Outer) || len(got[i].Holes) != len(want[i].Holes) {
				t.Fatalf("piece %d differs", i)
			}
		}
	}
}

func TestSpans(t *testing.T) {
	a := []Span{{0, 10}, {20, 30}}
	b := []Span{{5, 22}, {25, 26}}
	if got := Overlap(a, b); !slices.Equal(got, []Span{{5, 10}, {20, 22}, {25, 26}}) {
		t.Error(got)
	}
	if got := Less(a, b); !slices.Equal(got, []Span{{0, 5}, {22, 25}, {26, 30}}) {
		t.Error(got)
	}
}

func BenchmarkCut1000Vertices(b *testing.B) {
	rng := rand.New(rand.NewPCG(3, 4))
	o := New(wobbly(rng, 1000, 0, 0), 45)
	var joints []int64
	for y := o.MinY + 10000; y < o.MaxY; y += 20000 {
		joints = append(joints, y)
	}
	for b.Loop() {
		o.Cut(joints)
	}
}

// Joints run where pieces of neighbouring bands meet, and their length is that
// of the chords.
func TestJoints(t *testing.T) {
	u := orb.Ring{{0, 0}, {1000, 0}, {1000, 600}, {700, 600}, {700, 300}, {300, 300}, {300, 600}, {0, 600}}
	o := New(region(u), 0)
	joints := um(200, 300, 450)
	pieces := o.Cut(joints)
	got := Joints(pieces, joints)
	want := []Joint{
		{Point{0, 200000}, Point{1000000, 200000}, 0, 1},
		{Point{0, 300000}, Point{300000, 300000}, 1, 2}, {Point{700000, 300000}, Point{1000000, 300000}, 1, 3},
		{Point{0, 450000}, Point{300000, 450000}, 2, 4}, {Point{700000, 450000}, Point{1000000, 450000}, 3, 5},
	}
	if !slices.Equal(got, want) {
		t.Errorf("joints %v", got)
	}
	rng := rand.New(rand.NewPCG(9, 9))
	for range 100 {
		o := New(wobbly(rng, 9+rng.IntN(30), 0, 0), 30)
		joints := randomJoints(rng, o)
		for _, y := range joints {
			sum := int64(0)
			for _, j := range Joints(o.Cut(joints), joints) {
				if j.From.Y == y {
					sum += j.To.X - j.From.X
				}
			}
			for _, s := range o.Chords(y) {
				sum -= s.Length()
			}
			if sum < -4 || sum > 4 {
				t.Fatalf("joints at %d are %d µm longer than the chords", y, sum)
			}
		}
	}
}

// Ends of a parallelogram fit each other without loss, those of a triangle and
// a rectangle lose the triangle's overhang.
func TestEndsMeet(t *testing.T) {
	slanted, _ := EndsOf(&New(region(orb.Ring{{0, 0}, {500, 0}, {700, 200}, {200, 200}}), 0).Cut(nil)[0])
	square, mean := EndsOf(&New(region(box(0, 0, 500, 200)), 0).Cut(nil)[0])
	if loss := slanted.Ahead.Meet(&slanted.Back); loss > 1 || mean != 500000 {
		t.Errorf("a parallelogram loses %g µm behind itself; mean %g", loss, mean)
	}
	if loss := slanted.Ahead.Meet(&square.Back); loss < 90000 || loss > 100000 {
		t.Errorf("a slant of 200 mm loses %g µm before a square end, about half of it expected", loss)
	}
	if m := slanted.Mirrored(); m.Ahead.Slant != -slanted.Ahead.Slant || m.Ahead.Most() != slanted.Ahead.Most() {
		t.Error("a mirrored end has the opposite slant and stands out as far")
	}
}

// heights lists the heights of an outline's vertices.
func heights(o *Outline) []int64 {
	var ys []int64
	for _, r := range o.Rings {
		for _, p := range r {
			ys = append(ys, p.Y)
		}
	}
	return ys
}
