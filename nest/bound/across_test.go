package bound

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/nest/layout"
	"stripwright/nest/roll"
)

// frame is a plate with a border of so much.
func frame(x, y, border float64) geometry.Region {
	r := plate(x, y)
	a, b := x-border, y-border
	r.Holes = []orb.Ring{{{border, border}, {border, b}, {a, b}, {a, border}}}
	return r
}

// ring is a disc with a round hole.
func ring(r, hole float64) geometry.Region {
	out := disc(r, 36)
	in := disc(hole, 36).Outer
	slices.Reverse(in)
	out.Holes = []orb.Ring{in}
	return out
}

// A frame of 1400 by 900 with a border of 150 laid at 90° on a roll of 300, its
// first joint 250 from the edge, worked out by hand. Its pieces: two edge strips
// 900 long, 250 wide at their ends of 150 and 150 between, that leave openings of
// 600 by 100; three strips of 300 between them, each two pieces 150 long.
func TestWallsOfFrame(t *testing.T) {
	s := newShape(layout.NewBase(90, frame(1400, 900, 150), frame(1400, 900, 150), nil))
	const width = 300000
	at := modulo(s.outline.MinY+um(250), width)
	p := s.profiles([]cell{{at, at}}, width)
	short := um(600) + 1
	for _, k := range []struct {
		name string
		walled
		mm float64
	}{
		{"area", walled{}, 2000}, // 600000 mm² of blank
		// Walls of full width only: there are none about an opening.
		{"full walls", walled{weight: weight{}, gap: float64(short)}, 2000},
		// Ends of 250 leave 50: what is wider cannot pass. Both edge strips count one
		// along all of their 900, the six short pieces 150 each.
		{"walls of 250", walled{weight: weight{edge: 0.3}, walls: bareWalls, gap: float64(short)}, 2*900 + 900},
		// What runs straight takes part in the 50 beside the walls: 250/300 each.
		{"narrow walls", walled{weight: weight{}, walls: narrowWalls, thin: 0.4, gap: float64(short)}, 2*900*250.0/300 + 900},
		// Halves: 150 is one half, 250 more than one; the openings are not shut.
		{"halves", walled{weight: weight{steps: 1}}, 2*(600.0/2+300) + 900},
		// An opening longer than gap is not shut, and pieces up to gap do not count,
		// but for those from edge to edge.
		{"gap too short", walled{weight: weight{}, gap: float64(um(599))}, 2000},
	} {
		if got := k.of(&p[0], s, width) / 1000; math.Abs(got-k.mm) > 0.01 {
			t.Errorf("%s: %.3f mm, want %g", k.name, got, k.mm)
		}
	}
}

// No shares that fit side by side weigh more than one, whatever the weight.
func TestWeightsAreDualFeasible(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 1))
	for range 20000 {
		w := someWeight(rng)
		n := 1 + rng.IntN(8)
		left, sum := 1.0, 0.0
		for range n {
			x := left * rng.Float64()
			if rng.IntN(2) == 0 { // shares that the weight tells apart
				x = min(left, math.Round(x*12)/12)
			}
			left -= x
			sum += w.over(1, x, x, 0)
		}
		if sum += w.over(1, left, left, 0); sum > 1+1e-6 {
			t.Fatalf("%+v: shares of one weigh %g", w, sum)
		}
	}
}

// Over a stretch in which the share changes evenly the weight is the mean of
// many samples (trapezoidal rule).
func TestWeightOverStretch(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 2))
	for range 300 {
		w := someWeight(rng)
		a, b := rng.Float64(), rng.Float64()
		const n = 20000
		sum := 0.0
		for i := range n {
			x := a + (b-a)*(float64(i)+0.5)/n
			sum += w.over(1, x, x, 0)
		}
		if got := w.over(3, a, b, 0); math.Abs(got-3*sum/n) > 3e-3 {
			t.Errorf("%+v from %g to %g: %g, samples %g", w, a, b, got, 3*sum/n)
		}
	}
}

func someWeight(rng *rand.Rand) weight {
	if rng.IntN(2) == 0 {
		return weight{steps: 1 + rng.IntN(8)}
	}
	return weight{edge: []float64{0, 0.1, 0.25, 0.4}[rng.IntN(4)]}
}

// someBlank is a frame, a ring, a C, a T or a disc at some angle.
func someBlank(rng *rand.Rand) geometry.Region {
	x, y := 300+float64(rng.IntN(600)), 300+float64(rng.IntN(400))
	b := 40 + float64(rng.IntN(80))
	switch rng.IntN(5) {
	case 0:
		return frame(x, y, b)
	case 1:
		return ring(x/2, x/2-b)
	case 2:
		return geometry.Region{Outer: orb.Ring{{0, 0}, {x, 0}, {x, b}, {b, b}, {b, y - b}, {x, y - b}, {x, y}, {0, y}}}
	case 3:
		return geometry.Region{Outer: orb.Ring{{x/2 - b/2, 0}, {x/2 + b/2, 0}, {x/2 + b/2, y - b}, {x, y - b}, {x, y}, {0, y}, {0, y - b}, {x/2 - b/2, y - b}}}
	}
	return disc(x/2, 24)
}

func someAngle(rng *rand.Rand) geometry.Angle {
	return []geometry.Angle{0, 90, 45, 20}[rng.IntN(4)]
}

// of gives what one argument makes of a range of phases.
func (a walled) of(p *profile, s *shape, width float64) float64 {
	return (&weighing{width: width}).of(p, s, []walled{a})[0]
}

// allOf lists all arguments about a blank.
func allOf(s *shape, width int64) []walled {
	f := &fabric{Task: &Task{Width: width}, shapes: []*shape{s}, count: []int{1}}
	return f.draft().args
}

// Many arguments about one range after another in the same room say to the last bit
// what each says alone of a range worked out anew.
func TestArgumentsTogether(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 6))
	for range 20 {
		r := someBlank(rng)
		s := newShape(layout.NewBase(someAngle(rng), r, r, nil))
		width := um(100 + float64(rng.IntN(200)))
		args, cells := allOf(s, width), s.ranges(width)
		w, d := &weighing{width: float64(width)}, s.divider(width)
		var p profile
		for i := 0; i < len(cells); i += 1 + rng.IntN(40) {
			d.divide(&p, cells[i])
			alone := s.profiles(cells[i:i+1], width)
			for k, got := range w.of(&p, s, args) {
				if want := args[k].of(&alone[0], s, float64(width)); got != want {
					t.Fatalf("%+v says %g of %v, alone %g", args[k], got, cells[i], want)
				}
			}
		}
	}
}

// What is said of a range of phases holds for each phase in it.
func TestRangesHoldInside(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 3))
	for range 60 {
		r := someBlank(rng)
		s := newShape(layout.NewBase(someAngle(rng), r, r, nil))
		width := um(100 + float64(rng.IntN(200)))
		from := rng.Int64N(width)
		c := cell{from, min(width-1, from+rng.Int64N(1+width/40))}
		ranges := s.profiles([]cell{c}, width)
		for range 4 {
			at := c.from + rng.Int64N(c.to-c.from+1)
			points := s.profiles([]cell{{at, at}}, width)
			for _, a := range allOf(s, width) {
				w := float64(width)
				least, is := a.of(&ranges[0], s, w), a.of(&points[0], s, w)
				if least > is+50 { // µm: a boundary's rounding
					t.Errorf("%+v: %.1f from %d to %d, but %.1f at %d", a, least, c.from, c.to, is, at)
				}
			}
		}
	}
}

// No lay of real pieces, whatever its phases, is shorter than any argument says.
func TestArgumentsBelowLays(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 4))
	closest := math.Inf(1)
	for n := range 60 {
		width := um(100 + float64(rng.IntN(200)))
		r := someBlank(rng)
		task := &roll.Task{Width: width, Stock: []roll.Stock{{Copies: 1}}}
		f := &fabric{Task: &Task{Width: width}}
		var at []cell
		for range 1 + rng.IntN(4) {
			base := layout.NewBase(someAngle(rng), r, r, nil)
			s := newShape(base)
			phase := rng.Int64N(width)
			if rng.IntN(2) == 0 { // a joint on an edge
				phase = modulo(s.heights[rng.IntN(len(s.heights))], width)
			}
			d := base.Class(width, 0).Divide(phase)
			for k := range d.Pieces {
				task.Pieces = append(task.Pieces, roll.Piece{Shape: roll.NewShape(&d.Pieces[k], false, 0), Ways: roll.Either})
			}
			f.shapes, f.count = append(f.shapes, s), append(f.count, 1)
			at = append(at, cell{phase, phase})
		}
		lay, err := roll.Lay(task, roll.Effort{ChainMoves: 2000, Trials: 60}, 1)
		if err != nil {
			t.Fatal(err)
		}
		table := f.draft()
		for _, a := range table.args {
			sum := 0.0
			for k, s := range f.shapes {
				p := s.profiles([]cell{at[k]}, width)
				sum += a.of(&p[0], s, float64(width))
			}
			if sum > lay.Cost+100 {
				t.Errorf("lay %d of %.1f mm is shorter than %+v says: %.1f mm", n, lay.Cost/1000, a, sum/1000)
			}
			closest = min(closest, lay.Cost/sum-1)
		}
	}
	if closest > 0.01 {
		t.Errorf("no lay comes nearer to an argument than %.1f %%: the test is too weak", 100*closest)
	}
}

// Pieces laid by hand without a gap: no argument may say that they take more.
func TestArgumentsBelowHandLays(t *testing.T) {
	const width = 300000
	u := func(post, leg, high float64) geometry.Region { // two posts, a post apart, on a leg
		return geometry.Region{Outer: orb.Ring{{0, 0}, {3 * post, 0}, {3 * post, high}, {2 * post, high}, {2 * post, leg}, {post, leg}, {post, high}, {0, high}}}
	}
	type ply struct {
		region geometry.Region
		angle  geometry.Angle
		first  float64 // joint, from the lower edge of the blank
	}
	for _, k := range []struct {
		name  string
		plies []ply
		mm    float64
	}{
		// Each upside down in the other's opening: post, post, post, post.
		{"two U in each other", []ply{{u(100, 10, 290), 0, 0}, {u(100, 10, 290), 0, 0}}, 400},
		{"two thick U in each other", []ply{{u(100, 50, 250), 0, 0}, {u(100, 50, 250), 0, 0}}, 400},
		// A thin arch between two posts reaches into the opening of a U above it; what
		// the cuts take off its feet and heads lies in its hollow.
		{"arch into U", []ply{
			{geometry.Region{Outer: orb.Ring{{0, -10}, {130, -10}, {130, 220}, {410, 220}, {410, -10}, {540, -10},
				{540, 310}, {480, 310}, {480, 50}, {420, 50}, {420, 230}, {120, 230}, {120, 50}, {60, 50}, {60, 310}, {0, 310}}}, 0, 10},
			{geometry.Region{Outer: orb.Ring{{60, 50}, {120, 50}, {120, 230}, {420, 230}, {420, 50}, {480, 50}, {480, 300}, {60, 300}}}, 0, 0},
		}, 540},
		// A short plate in the opening of a U.
		{"plate in U", []ply{{u(100, 60, 300), 0, 0}, {plate(100, 240), 0, 0}}, 300},
		// A frame's edge strips with two plates 600 by 100 each in their openings, and
		// strips of 50 beside them; six short pieces between.
		{"frame, filled", []ply{
			{frame(1400, 900, 150), 90, 250},
			{plate(600, 100), 0, 0}, {plate(600, 100), 0, 0}, {plate(900, 50), 0, 0}, {plate(900, 50), 0, 0},
		}, 2700},
		// Bent strips of 50 pass the ends and fill the openings: an L and a plate.
		{"frame, filled with bent strips", []ply{
			{frame(1400, 900, 150), 90, 250},
			{geometry.Region{Outer: orb.Ring{{0, 0}, {900, 0}, {900, 50}, {750, 50}, {750, 150}, {150, 150}, {150, 50}, {0, 50}}}, 0, 0},
			{geometry.Region{Outer: orb.Ring{{0, 0}, {900, 0}, {900, 50}, {750, 50}, {750, 150}, {150, 150}, {150, 50}, {0, 50}}}, 0, 0},
		}, 2700},
	} {
		f := &fabric{Task: &Task{Width: width}}
		var at []cell
		for _, p := range k.plies {
			s := newShape(layout.NewBase(p.angle, p.region, p.region, nil))
			phase := modulo(s.outline.MinY+um(p.first), width)
			f.shapes, f.count, at = append(f.shapes, s), append(f.count, 1), append(at, cell{phase, phase})
		}
		most := 0.0
		for _, a := range f.draft().args {
			sum := 0.0
			for i, s := range f.shapes {
				p := s.profiles([]cell{at[i]}, width)
				sum += a.of(&p[0], s, width) / 1000
			}
			if most = max(most, sum); sum > k.mm+0.01 {
				t.Errorf("%s: %+v says %.2f mm, %g do", k.name, a, sum, k.mm)
			}
		}
		if most < 0.7*k.mm {
			t.Errorf("%s: arguments say %.2f mm at most, of %g", k.name, most, k.mm)
		}
	}
}

// Frames on which walls prove most of what is lost. The figures are the best
// plans known, which no bound may pass, and what it must reach of them.
func TestFrames(t *testing.T) {
	window := plate(1000, 800)
	window.Holes = []orb.Ring{{{200, 150}, {200, 450}, {800, 450}, {800, 150}}}
	for _, k := range []struct {
		name  string
		task  *Task
		best  float64
		reach float64
	}{
		{"window", task(window, 400, 30, 3, 0, 90, 0, 90, 90, 0, 90, 0), 14800, 0.98},
		{"frame", task(frame(1400, 900, 150), 300, 25, 3, 0, 90, 0, 90, 90, 0, 90, 0), 18300, 0.94},
		{"square frame", task(frame(900, 900, 250), 320, 30, 3, 0, 45, -45, 90, 90, -45, 45, 0), 17739, 0.94},
		{"small ring", task(ring(300, 150), 220, 25, 3, 0, 90, 90, 0), 4839, 0.85},
	} {
		b := Least(k.task, 0)
		if got := float64(b.Length) / 1000; b.Kind != Across || got > k.best || got < k.reach*k.best {
			t.Errorf("%s: %s bound of %.1f mm, the best plan is %g", k.name, b.Kind, got, k.best)
		}
	}
}
