package search

import (
	"context"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/geometry/band"
	"stripwright/nest/layout"
	"stripwright/nest/stagger"
)

func um(mm float64) int64 { return int64(geometry.Micrometres(mm)) }

// problem makes plies of one plate at angles, all from rolls of one width.
func problem(w, h, width, d float64, between int, angles ...geometry.Angle) *Problem {
	r := geometry.Region{Outer: orb.Ring{{0, 0}, {w, 0}, {w, h}, {0, h}}}
	classes := make(map[geometry.Angle]*layout.Class)
	p := &Problem{Weight: []float64{1}, Turn: []bool{true}, Group: make([]int, len(angles)), Down: make([]bool, len(angles))}
	var plies []stagger.Ply
	for k, a := range angles {
		if classes[a] == nil {
			classes[a] = layout.NewBase(a, r, r, nil).Class(um(width), 0)
		}
		plies = append(plies, stagger.Ply{Number: k + 1, Class: classes[a], Stagger: um(d), Between: between, Covers: true})
	}
	p.Web = stagger.NewWeb(plies)
	return p
}

func startOf(t *testing.T, p *Problem) []int64 {
	t.Helper()
	phases, ok, _ := p.Web.Start()
	if !ok {
		t.Fatal("no start")
	}
	return phases
}

// P equal plies of b across need exactly ⌈P·b/w⌉ strips of the roll when every
// off-cut starts another ply (derived); the search must find the phases.
func TestExactFitIsFound(t *testing.T) {
	cases := []struct {
		name             string
		w, h, width, d   float64
		between, n       int
		strips           float64
		angle            geometry.Angle
		lengthOfOneStrip float64
	}{
		{"six plies, 1000 across, roll 300", 1800, 1000, 300, 25, 3, 6, 20, 0, 1800},
		{"three plies, 430 across, roll 200", 1000, 430, 200, 25, 2, 3, 7, 0, 1000},
		{"five plies, 270 across, roll 120", 1000, 270, 120, 25, 3, 5, 12, 0, 1000},
		{"across the part", 530, 1000, 200, 25, 3, 4, 11, 90, 1000},
	}
	for _, c := range cases {
		angles := make([]geometry.Angle, c.n)
		for i := range angles {
			angles[i] = c.angle
		}
		p := problem(c.w, c.h, c.width, c.d, c.between, angles...)
		best := Run(context.Background(), p, startOf(t, p), 6000, 3, 0, 1)[0]
		if want := c.strips * c.lengthOfOneStrip * 1000; math.Abs(best.Cost-want) > 1 {
			t.Errorf("%s: %g µm, want %g", c.name, best.Cost, want)
		}
	}
}

// Every state returned keeps all rules, the best first, none twice; the same
// seed gives the same states.
func TestStatesKeepTheRules(t *testing.T) {
	p := problem(900, 700, 150, 37.5, 5, 45, 0, 45, 45, 90, 45, 0)
	start := startOf(t, p)
	states := Run(context.Background(), p, start, 3000, 6, 0, 3)
	for k, s := range states {
		if k > 0 && s.Cost <= states[k-1].Cost {
			t.Errorf("state %d costs %g after %g", k, s.Cost, states[k-1].Cost)
		}
		for i, phase := range s.Phases {
			if !p.Web.Clear(i, phase, s.Phases) {
				t.Errorf("state %d: ply %d is not clear", k, i+1)
			}
		}
		if w := newWalker(p, s.Phases); math.Abs(w.total()-s.Cost) > 1e-3 {
			t.Errorf("state %d: cost %g, counted again %g", k, s.Cost, w.total())
		}
	}
	if again := Run(context.Background(), p, start, 3000, 6, 0, 3); !reflect.DeepEqual(states, again) {
		t.Error("the same seed gives other states")
	}
	if merged := p.Best([][]State{states, states}, 4); len(merged) != min(4, len(states)) || merged[0].Cost != states[0].Cost {
		t.Errorf("merged to %d states", len(merged))
	}
}

// The skyline lays rectangles side by side and into the lowest step.
func TestPack(t *testing.T) {
	cases := []struct {
		name   string
		narrow []layout.Narrow
		width  int64
		gap    int64
		want   float64
	}{
		{"none", nil, 100, 0, 0},
		{"two that fill the width", []layout.Narrow{{Height: 40, Length: 500}, {Height: 60, Length: 500}}, 100, 0, 500},
		{"a micrometre too wide", []layout.Narrow{{Height: 41, Length: 500}, {Height: 60, Length: 500}}, 100, 0, 1000},
		{"two short ones beside a long one", []layout.Narrow{{Height: 50, Length: 250}, {Height: 50, Length: 500}, {Height: 50, Length: 250}}, 100, 0, 500},
		{"with a gap between", []layout.Narrow{{Height: 40, Length: 500}, {Height: 58, Length: 500}}, 100, 2, 502},
	}
	for _, c := range cases {
		if got := pack(c.narrow, c.width, c.gap, &skyline{}); got != c.want {
			t.Errorf("%s: %g, want %g", c.name, got, c.want)
		}
	}
}

// slope is a Table on which the cost of a state is how far its phases are from
// some that are given.
type slope struct {
	calls      int64
	last, kept float64
	best       float64
}

func (s *slope) Lay(phases []int64, most float64, _ *rand.Rand) (float64, bool) {
	s.calls++
	s.last = 1e6
	for i, ph := range phases {
		s.last += math.Abs(float64(ph - um(float64(60+40*i))))
	}
	return s.last, s.last <= most
}

func (s *slope) Vary(most, _ float64, _ *rand.Rand) (float64, bool) {
	s.calls++
	s.last = s.kept
	return s.last, s.last <= most
}

// Work counts every laying as so much that nothing else counts.
func (s *slope) Work() int64 { return s.calls * 1e9 }

func (s *slope) Keep() {
	s.kept = s.last
	if s.best == 0 || s.kept < s.best {
		s.best = s.kept
	}
}

// Climb finds a lower place, keeps the start, and counts what it
// lays.
func TestClimb(t *testing.T) {
	p := problem(740, 740, 200, 25, 2, 45, -45, 45)
	start := startOf(t, p)
	s := &slope{}
	before, _ := s.Lay(start, math.Inf(1), nil)
	s.calls = 0
	Climb(context.Background(), p, start, 600e9, 0.001, 0.01, 1, s)
	if s.best >= before || s.calls > 601 {
		t.Errorf("from %g to %g in %d calls", before, s.best, s.calls)
	}
	s = &slope{}
	Climb(context.Background(), p, start, 0, 0.001, 0.01, 1, s)
	if s.best != before || s.calls != 1 {
		t.Errorf("without lays: %g in %d calls, want %g", s.best, s.calls, before)
	}
}

// A joint a few µm inside an edge of the blank would cut a sliver: no state has
// one. A joint on the edge, just outside it, or farther in does not.
func TestNoSlivers(t *testing.T) {
	p := problem(740, 740, 200, 25, 2, 0)
	w := newWalker(p, startOf(t, p))
	begins, ends := w.class(0).Edges[0].At, w.class(0).Edges[1].At
	for _, c := range []struct {
		at   int64
		want bool
	}{
		{begins, false}, {begins + 3, true}, {begins - 3, false}, {begins + band.Slip, false}, {begins + band.Slip - 1, true},
		{ends, false}, {ends - 3, true}, {ends + 3, false}, {ends - band.Slip, false}, {ends + um(100), false},
	} {
		if got := w.slivers(0, w.class(0).Phase(c.at)); got != c.want {
			t.Errorf("joint at %d, blank from %d to %d: sliver %v", c.at, begins, ends, got)
		}
		if _, ok := w.apply([]change{{0, w.class(0).Phase(c.at)}}, nil); ok == c.want {
			t.Errorf("joint at %d allowed: %v", c.at, ok)
		}
	}
}
