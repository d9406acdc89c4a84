package bound

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/nest/layout"
)

func um(mm float64) int64 { return int64(geometry.Micrometres(mm)) }

func plate(x, y float64) geometry.Region {
	return geometry.Region{Outer: orb.Ring{{0, 0}, {x, 0}, {x, y}, {0, y}}}
}

func disc(r float64, n int) geometry.Region {
	var ring orb.Ring
	for i := range n {
		a := 2 * math.Pi * float64(i) / float64(n)
		ring = append(ring, orb.Point{r * math.Cos(a), r * math.Sin(a)})
	}
	return geometry.Region{Outer: ring}
}

// task is plies of one blank at angles, each kept away from the earlier parallel
// ones with fewer than between plies between.
func task(r geometry.Region, width, stagger float64, between int, angles ...geometry.Angle) *Task {
	t := &Task{Width: um(width), Nodes: 100000}
	bases := map[geometry.Angle]*layout.Base{}
	for i, a := range angles {
		if bases[a] == nil {
			bases[a] = layout.NewBase(a, r, r, nil)
		}
		p := Ply{Base: bases[a]}
		for j := max(0, i-between); j < i; j++ {
			if angles[j] == a {
				p.Near = append(p.Near, Near{Ply: j, Stagger: um(stagger)})
			}
		}
		t.Plies = append(t.Plies, p)
	}
	return t
}

// Figures worked out by hand.
func TestLeast(t *testing.T) {
	frame := plate(1200, 800)
	frame.Holes = []orb.Ring{{{200, 200}, {200, 600}, {1000, 600}, {1000, 200}}}
	for _, k := range []struct {
		name string
		task *Task
		kind Kind
		mm   float64
	}{
		// Three plies 430 across, rolls of 200: 6.45 strips of 1 m, so 7.
		{"three plies of whole strips", task(plate(1000, 430), 200, 25, 2, 0, 0, 0), Chord, 7000},
		{"area fills whole strips", task(plate(1000, 400), 200, 25, 2, 0, 0), Area, 4000},
		// Chords of 1600 and 800: 40960 by area, the next multiple of 800 is 41600.
		{"lengths that are multiples of 800", task(plate(1600, 800), 250, 25, 3, 0, 90, 0, 90, 90, 0, 90, 0), Chord, 41600},
		// Two plies at each direction may start at an edge, the others enclose
		// 160000 mm² (0°) or 80000 mm² (90°) each. Only the 90° edge strips, 800 mm
		// long, fit, into the openings of the 0° plies: with two of the 90° plies off
		// the edge 160000 mm² stay empty, 800 mm of roll; with more of them more.
		{"frame", task(frame, 200, 25, 3, 0, 90, 0, 90, 90, 0, 90, 0), Openings, 26400},
	} {
		t.Run(k.name, func(t *testing.T) {
			b := Least(k.task, 0)
			if b.Kind != k.kind || b.Length != um(k.mm) {
				t.Errorf("%s bound of %g mm, want %s of %g", b.Kind, geometry.Micrometre(b.Length).MM(), k.kind, k.mm)
			}
		})
	}
}

// Figures worked out by hand: three plies 430 mm across, rolls of 200 mm, are 6.45
// widths, so seven strips of 1000 mm.
func TestGapAndRollEnds(t *testing.T) {
	three := func(gap float64, rolls ...float64) *Task {
		k := task(plate(1000, 430), 200, 25, 2, 0, 0, 0)
		k.Gap = um(gap)
		for _, l := range rolls {
			k.Rolls = append(k.Rolls, um(l))
		}
		return k
	}
	for _, k := range []struct {
		name string
		task *Task
		kind Kind
		mm   float64
	}{
		{"six gaps between seven strips", three(10), Chord, 7060},
		{"two strips from each roll", three(0, 2500, 2500, 2500, 2500), RollEnds, 8500},
		{"two strips from a rest, then five", three(0, 2500, 0), RollEnds, 7500},
		{"a rest too short for any strip", three(0, 900, 0), RollEnds, 7900},
		{"one strip a roll, no gap between rolls", three(10, 1000, 1000, 1000, 1000, 1000, 1000, 1000, 1000), Chord, 7000},
		{"with gaps 3 × 1000 do not fit into 3010", three(10, 3010, 3010, 3010, 3010), RollEnds, 10030},
	} {
		if b := Least(k.task, 0); b.Kind != k.kind || b.Length != um(k.mm) {
			t.Errorf("%s: %s bound of %g mm, want %s of %g", k.name, b.Kind, geometry.Micrometre(b.Length).MM(), k.kind, k.mm)
		}
	}
	// A hole makes two chords of a level; both may be of one piece, so no gap is
	// counted there: 100 mm of four rows of 1010 mm, and 230 mm of two of 400 mm.
	holed := plate(1000, 430)
	holed.Holes = []orb.Ring{{{400, 100}, {400, 330}, {600, 330}, {600, 100}}}
	k := task(holed, 430, 25, 2, 0)
	k.Gap = um(10)
	want := (200*1010+230*800)/430.0 - 10
	if got := geometry.Micrometre(spacedOf(k)).MM(); math.Abs(got-want) > 0.01 {
		t.Errorf("a plate with a hole: %g mm, want %g", got, want)
	}
}

// A full-width strip of a disc of 250 mm radius, 300 mm wide and centred, leaves
// 300·250 - ∫√(250²-y²) dy from -150 to 150 = 4780.6 mm² behind its best
// tangent at each end (integral from a handbook: y/2·√(R²-y²) + R²/2·asin(y/R)).
func TestTangentOfDisc(t *testing.T) {
	s := newShape(layout.NewBase(0, disc(250, 720), disc(250, 720), nil))
	right, left := sidesOf(s.slabs)
	want := 300*250 - 2*(150.0/2*200+250*250/2.0*math.Asin(0.6))
	for _, side := range []*side{right, left} {
		w := side.wastes(um(-150), um(150))
		if got := w[0] / 1e6; math.Abs(got-want) > 5 {
			t.Errorf("one tangent leaves %.1f mm², want %.1f", got, want)
		}
		for p := 1; p < mostTangents; p++ {
			if w[p] > w[p-1] || w[p] < 0 {
				t.Errorf("%d tangents leave %.1f mm², one fewer %.1f", p+1, w[p]/1e6, w[p-1]/1e6)
			}
		}
		// Two tangents that meet at height 0 and touch at ±75: what each half leaves.
		half := 150*math.Sqrt(250*250-75*75) - (150.0/2*200 + 250*250/2.0*math.Asin(0.6))
		if got := w[1] / 1e6; got > 2*half+1 {
			t.Errorf("two tangents are said to leave %.1f mm², these leave %.1f", got, 2*half)
		}
	}
}

// A hollow side of very short edges, each turning less than snapping could, is no
// convex one: 0.5 mm long on a radius of 500 mm they turn by 0.06 µm, and the
// side is 2.5 mm hollow.
func TestHollowIsNotConvex(t *testing.T) {
	for _, k := range []struct {
		name   string
		radius float64 // of the side's hollow; below 0 it bulges
		convex bool
	}{{"hollow", 500, false}, {"bulging", -500, true}} {
		ring := orb.Ring{{0, 0}, {100, 0}}
		for i := 0; i <= 200; i++ {
			x := 50 - float64(i)/2
			sag := math.Abs(k.radius) - math.Sqrt(k.radius*k.radius-x*x)
			ring = append(ring, orb.Point{x + 50, 80 + math.Copysign(sag, k.radius)})
		}
		r := geometry.Region{Outer: ring}
		for _, a := range []geometry.Angle{0, 45, 90} {
			if got := newShape(layout.NewBase(a, r, r, nil)).convex; got != k.convex {
				t.Errorf("%s at %g°: convex %v", k.name, float64(a), got)
			}
		}
	}
}

// The weights of a dual feasible function: no numbers that add up to one weigh
// more than one.
func TestSteppedIsDualFeasible(t *testing.T) {
	const length = 60
	var all func(left, from, m int64, sum float64)
	all = func(left, from, m int64, sum float64) {
		if sum > 1+1e-9 {
			t.Fatalf("%d steps: numbers that fit weigh %g", m, sum)
		}
		for c := from; c <= left; c++ {
			all(left-c, c, m, sum+stepped(c, length, m))
		}
	}
	for m := int64(1); m < 12; m++ {
		all(length, 5, m, 0)
	}
}

// The least of a parabola through three samples.
func TestCurveLeast(t *testing.T) {
	c := curve{at: []int64{0, 10, 20}, values: []float64{36, 16, 196}}
	for _, k := range []struct{ from, to int64 }{{0, 20}, {0, 3}, {12, 18}} {
		least := math.Inf(1)
		for x := k.from; x <= k.to; x++ {
			least = min(least, c.eval(float64(x)))
		}
		if got := c.least(k.from, k.to); got > least+1e-9 || got < least-1 {
			t.Errorf("least from %d to %d: %g, on the grid %g", k.from, k.to, got, least)
		}
	}
}

func spacedOf(t *Task) int64 {
	f := newFabric(t)
	return f.spaced(f.runs(f.Gap), f.Gap)
}

// A strip of the frame that stands half on the opening (y 200 to 600) and half on
// the rim shuts off 800 × 100 mm, twice in a ply with a joint 100 mm above its edge;
// the edge strips are 1200 mm long and do not fit in. With all joints on edges of
// the opening nothing is shut off (worked out by hand, 200 mm of roll).
func TestLeastAtGivenPhases(t *testing.T) {
	frame := plate(1200, 800)
	frame.Holes = []orb.Ring{{{200, 200}, {200, 600}, {1000, 600}, {1000, 200}}}
	k := task(frame, 200, 25, 3, 0, 0)
	for _, c := range []struct{ a, b, mm float64 }{{0, 0, 6400}, {0, 100, 7200}, {100, 100, 8000}, {200, -100, 7200}} {
		k.Phases = []int64{um(c.a), um(c.b)}
		if b := Least(k, 0); b.Length != um(c.mm) {
			t.Errorf("phases %g and %g: %s bound of %g mm, want %g", c.a, c.b, b.Kind, geometry.Micrometre(b.Length).MM(), c.mm)
		}
	}
}

// Where an outline is plain a band encloses nothing and is one piece: on random
// outlines with bays and holes, bands that are said to be plain have no openings.
func TestPlainBandsEncloseNothing(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 3))
	plain := 0
	for range 200 {
		n := 5 + rng.IntN(20)
		var ring orb.Ring
		for i := range n {
			a := 2 * math.Pi * float64(i) / float64(n)
			r := 300 + 200*rng.Float64()*float64(rng.IntN(2))
			ring = append(ring, orb.Point{r * math.Cos(a), r * math.Sin(a)})
		}
		region := geometry.Region{Outer: ring}
		if rng.IntN(3) == 0 {
			region.Holes = []orb.Ring{{{-50, -50}, {-50, 40}, {60, 40}, {60, -50}}}
		}
		s := newShape(layout.NewBase(geometry.Angle(rng.IntN(180)-89), region, region, nil))
		for range 50 {
			width := um(20 + 200*rng.Float64())
			y := s.outline.MinY + rng.Int64N(s.outline.Across())
			if !s.plain(y, y+width) {
				continue
			}
			plain++
			var l look
			l.openingsIn(clip(nil, s.slabs, y, y+width), y, y+width)
			for _, o := range l.open {
				if o.area > 100*float64(width) { // a hair of 0.1 mm along the band
					t.Fatalf("%v from %d to %d: an opening of %g µm²", ring, y, y+width, o.area)
				}
			}
			if whole := y+width <= s.outline.MaxY; whole == (len(l.narrow) > 0) || len(l.narrow) > 1 {
				t.Fatalf("%v from %d to %d: %d narrow pieces", ring, y, y+width, len(l.narrow))
			}
		}
	}
	if plain < 500 {
		t.Errorf("only %d plain bands", plain)
	}
}
