package roll

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/geometry/band"
)

func um(mm float64) int64 { return int64(geometry.Micrometres(mm)) }

// shapeOf makes a shape of an outline in mm, as cut face up.
func shapeOf(outer orb.Ring, holes ...orb.Ring) *Shape {
	o := band.New(geometry.Region{Outer: outer, Holes: holes}.Oriented(), 0)
	return NewShape(&o.Cut(nil)[0], false, 0)
}

func square(side float64) *Shape {
	return shapeOf(orb.Ring{{0, 0}, {side, 0}, {side, side}, {0, side}})
}

// inOrder lays narrow pieces in the order given on an endless roll.
func inOrder(width float64, shapes ...*Shape) (*Layout, *Task) {
	t := &Task{Width: um(width), Stock: []Stock{{Copies: 1}}, Memory: &Memory{}}
	order := make([]int32, len(shapes))
	for i, s := range shapes {
		t.Memory.number(s)
		t.Pieces = append(t.Pieces, Piece{s, Either})
		order[i] = int32(i)
	}
	f := &filler{task: t}
	f.grow()
	f.open()
	f.tuck(order)
	return f.layout(), t
}

// Squared rectangles tile a roll without waste when their squares are laid in
// the published order, each where it starts earliest. Bouwkamp codes: the
// 112 × 112 square of order 21 (A. J. W. Duijvestijn, J. Comb. Theory B 25,
// 1978) and the 33 × 32 rectangle of order 9 (Z. Moroń, 1925), as tabulated in
// public lists of perfect squared rectangles.
func TestPerfectRectangles(t *testing.T) {
	cases := []struct {
		width, length float64
		code          []float64
	}{
		{112, 112, []float64{50, 35, 27, 8, 19, 15, 17, 11, 6, 24, 29, 25, 9, 2, 7, 18, 16, 42, 4, 37, 33}},
		{33, 32, []float64{18, 15, 7, 8, 14, 4, 10, 1, 9}},
	}
	for _, c := range cases {
		var shapes []*Shape
		for _, side := range c.code {
			shapes = append(shapes, square(side))
		}
		l, task := inOrder(c.width, shapes...)
		if l.Rolls[0].Length != um(c.length) {
			t.Errorf("%g × %g: %d µm of roll used", c.width, c.length, l.Rolls[0].Length)
		}
		noOverlap(t, task, l)
	}
}

// noOverlap tests every pair of pieces at many heights, from their cells alone.
func noOverlap(t *testing.T, task *Task, l *Layout) {
	t.Helper()
	for i := range task.Pieces {
		for j := range i {
			a, b := l.Places[i], l.Places[j]
			if a.Roll == b.Roll && overlap(formAt(task, i, a), a, formAt(task, j, b), b) {
				t.Errorf("pieces %d and %d lie over each other", i, j)
			}
		}
	}
}

func formAt(task *Task, i int, p Place) *form { return &task.Pieces[i].Shape.ways[p.Way] }

func overlap(f *form, p Place, g *form, q Place) bool {
	lo, hi := max(p.V, q.V), min(p.V+f.height, q.V+g.height)
	for k := range 200 {
		v := float64(lo) + (float64(k)+0.5)/200*float64(hi-lo)
		if hi <= lo {
			return false
		}
		for _, s := range spans(f, v-float64(p.V), float64(p.U)) {
			for _, r := range spans(g, v-float64(q.V), float64(q.U)) {
				if math.Min(s[1], r[1])-math.Max(s[0], r[0]) > 3 {
					return true
				}
			}
		}
	}
	return false
}

func spans(f *form, v, u float64) [][2]float64 {
	var out [][2]float64
	for _, col := range f.columns {
		for _, c := range col.cells {
			if float64(c.v0) < v && v < float64(c.v1) {
				t := (v - float64(c.v0)) / float64(c.v1-c.v0)
				out = append(out, [2]float64{u + c.l0 + t*(c.l1-c.l0), u + c.r0 + t*(c.r1-c.r0)})
			}
		}
	}
	return out
}

// Every layout keeps its pieces apart and on the roll: random pieces with
// slanted and notched ends, holes and narrow ones, on endless and finite rolls,
// with and without cutting gap.
func TestLayKeepsPiecesApart(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 7))
	for k := range 60 {
		task := randomTask(rng)
		l, err := Lay(task, Effort{ChainMoves: 3000, Trials: 400}, uint64(k))
		if err != nil {
			t.Fatalf("case %d: %v", k, err)
		}
		noOverlap(t, task, l)
		for i, p := range l.Places {
			s := task.Pieces[i].Shape
			if p.U < 0 || p.V < 0 || p.V+s.Height() > task.Width+task.Gap || p.U+s.Length()-task.Gap > l.Rolls[p.Roll].Length {
				t.Errorf("case %d: piece %d leaves the roll", k, i)
			}
		}
		for _, u := range l.Rolls {
			if n := task.Stock[u.Stock].Length; n > 0 && u.Length > n {
				t.Errorf("case %d: roll of %d used to %d", k, n, u.Length)
			}
		}
	}
}

func randomTask(rng *rand.Rand) *Task {
	t := &Task{Width: um(200), Stock: []Stock{{Copies: 1}}}
	if rng.IntN(2) == 0 {
		t.Stock = []Stock{{Length: um(2500), Copies: 2}, {Length: um(4000), Copies: 9}}
		t.Measure = LastCut
	}
	if rng.IntN(2) == 0 {
		t.Gap = um(4)
	}
	for range 6 + rng.IntN(25) {
		h, n := 200.0, 200+1000*rng.Float64()
		if rng.IntN(2) == 0 {
			h = 20 + 150*rng.Float64()
		}
		a, b := (rng.Float64()-0.5)*150, (rng.Float64()-0.5)*150
		ring := orb.Ring{{0, 0}, {n, 0}, {n + a, h / 2}, {n + b, h}, {b, h}, {a, h / 2}}
		var holes []orb.Ring
		if h == 200 && rng.IntN(3) == 0 {
			holes = append(holes, orb.Ring{{n/2 - 40, 60}, {n/2 + 40, 60}, {n/2 + 40, 150}, {n/2 - 40, 150}})
		}
		if h == 200 && rng.IntN(3) == 0 {
			ring = orb.Ring{{0, 0}, {n, 0}, {n, h}, {n - 50, h}, {n - 50, 90}, {50, 90}, {50, h}, {0, h}}
			holes = nil
		}
		o := band.New(geometry.Region{Outer: ring, Holes: holes}.Oriented(), 0)
		t.Pieces = append(t.Pieces, Piece{NewShape(&o.Cut(nil)[0], rng.IntN(2) == 0, t.Gap), Either})
	}
	return t
}

// Two triangles that make a rectangle interlock without loss.
func TestEndsInterlock(t *testing.T) {
	tri := shapeOf(orb.Ring{{0, 0}, {300, 0}, {0, 200}})
	task := &Task{Width: um(200), Stock: []Stock{{Copies: 1}}, Pieces: []Piece{{tri, Either}, {tri, Either}}}
	l, err := Lay(task, Effort{ChainMoves: 100}, 1)
	if err != nil || l.Rolls[0].Length != um(300) {
		t.Errorf("two triangles of 300 mm take %v mm (%v)", l.Rolls, err)
	}
	task.Pieces = []Piece{{tri, AsCut}, {tri, AsCut}}
	if l, _ = Lay(task, Effort{ChainMoves: 100}, 1); l.Rolls[0].Length <= um(300) {
		t.Error("cloth that may not be turned was turned")
	}
}

// Cutting stock: the lengths of the classic instances of the literature, laid
// as full-width strips; the optimum is known (values recomputed with linear and
// integer programming).
func TestCuttingStockOptima(t *testing.T) {
	cases := []struct {
		name   string
		roll   float64
		pieces map[float64]int
		rolls  int
	}{
		{"length 17 (from memory)", 17, map[float64]int{3: 25, 5: 20, 9: 15}, 19},
		{"length 132 (from memory)", 132, map[float64]int{44: 2, 33: 3, 12: 6}, 3},
		{"capacity 100 (from memory)", 100, map[float64]int{51: 6, 27: 6, 26: 6, 23: 12}, 9},
	}
	for _, c := range cases {
		task := &Task{Width: um(10), Measure: LastCut, Stock: []Stock{{Length: um(c.roll), Copies: 100}}}
		for _, n := range []float64{3, 5, 9, 12, 23, 26, 27, 33, 44, 51} {
			for range c.pieces[n] {
				task.Pieces = append(task.Pieces, Piece{shapeOf(orb.Ring{{0, 0}, {n, 0}, {n, 10}, {0, 10}}), Either})
			}
		}
		l, err := Lay(task, Effort{ChainMoves: 1000}, 1)
		if err != nil || len(l.Rolls) != c.rolls {
			t.Errorf("%s: %d rolls, the optimum is %d (%v)", c.name, len(l.Rolls), c.rolls, err)
		}
	}
}

// A shortage names what found no room and what a further roll would take.
func TestShortage(t *testing.T) {
	strip := shapeOf(orb.Ring{{0, 0}, {1180, 0}, {1180, 300}, {0, 300}})
	task := &Task{Width: um(300), Measure: LastCut, Stock: []Stock{{Length: um(3000), Copies: 1}}, Pieces: []Piece{{strip, Either}, {strip, Either}, {strip, Either}}}
	_, err := Lay(task, Effort{}, 1)
	short, ok := err.(*Shortage)
	if !ok || len(short.Unplaced) != 1 {
		t.Fatalf("got %v", err)
	}
	if alone, further := task.Wanted(Effort{}, 1); alone != um(3540) || further != um(1180) {
		t.Errorf("alone %d, further %d", alone, further)
	}
}

// The widened form keeps the cutting gap on every side.
func TestCuttingGap(t *testing.T) {
	o := band.New(geometry.Region{Outer: orb.Ring{{0, 0}, {300, 0}, {500, 200}, {200, 200}}}, 0)
	s := NewShape(&o.Cut(nil)[0], false, um(5))
	if s.Height() < um(205) || s.Length() < um(505) {
		t.Errorf("widened to %d × %d µm", s.Length(), s.Height())
	}
	plain := NewShape(&o.Cut(nil)[0], false, 0)
	w, p := &s.ways[0], &plain.ways[0]
	for k := 3; k < 38; k++ { // away from the corners
		v := um(200) * int64(k) / 40
		l, r := edgesAt(p, v)
		wl, wr := edgesAt(w, v+um(2.5))
		// A slanted edge at 45° moves by the gap's half times √2 at least.
		need := 2500 * math.Sqrt2
		if l+2500-wl < need-1 || wr-(r+2500) < need-1 {
			t.Fatalf("height %d: %f %f %f %f", v, l, wl, r, wr)
		}
	}
}

// edgesAt gives the outermost edges of a form at a height within a cell.
func edgesAt(f *form, v int64) (l, r float64) {
	for _, c := range f.outer.cells {
		if c.v0 <= v && v <= c.v1 {
			return at(c.v0, c.v1, c.l0, c.l1, v), at(c.v0, c.v1, c.r0, c.r1, v)
		}
	}
	return math.Inf(1), math.Inf(-1)
}

// The outermost edges of a U are those of its legs and of its foot; the longest
// stretch between two that stand back to back with a slanted foot is at the top of
// the legs or just above the foot, from either side (worked out by hand).
func TestEnvelope(t *testing.T) {
	u := band.New(geometry.Region{Outer: orb.Ring{{0, 0}, {400, 0}, {350, 50}, {300, 50}, {300, 200}, {200, 200}, {200, 50}, {150, 50}, {150, 200}, {50, 200}, {50, 50}}}, 0)
	s := NewShape(&u.Cut(nil)[0], false, 0)
	f := &s.ways[0]
	if len(f.columns) < 3 {
		t.Fatalf("%d columns", len(f.columns))
	}
	for _, k := range []struct{ v, l, r float64 }{{25, 25, 375}, {49, 49, 351}, {51, 50, 300}, {199, 50, 300}} {
		if l, r := edgesAt(f, um(k.v)); math.Abs(l-k.l*1000) > 1 || math.Abs(r-k.r*1000) > 1 {
			t.Errorf("at %g: %g to %g µm", k.v, l, r)
		}
	}
	if got := widest(&f.outer, &f.outer); got != um(-250) {
		t.Errorf("widest %d µm, want -250 mm: from 300 to 50", got)
	}
}

// What is known at a few heights never says more than the whole: pairs of random
// slanted pieces stay at least as far behind each other as that.
func TestBehindAtLeast(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 5))
	var forms []*form
	for range 40 {
		x := func(at float64) float64 { return at + 150*rng.Float64() }
		ring := orb.Ring{{x(0), 0}, {x(500), 0}, {x(400), 60}, {x(500), 200}, {x(0), 200}, {x(0), 90}}
		s := NewShape(&band.New(geometry.Region{Outer: ring}, 0).Cut(nil)[0], false, 0)
		forms = append(forms, &s.ways[0], &s.ways[1])
	}
	var m Memory
	near := 0
	for _, a := range forms {
		for _, b := range forms {
			least, all := behindAtLeast(a, b), float64(m.clearOf(a, b))
			if least-1 > all {
				t.Fatalf("at least %g µm behind, and clear at %g", least, all)
			}
			if all-least < 50000 {
				near++
			}
		}
	}
	if near < len(forms) {
		t.Errorf("only %d of %d pairs are known within 50 mm", near, len(forms)*len(forms))
	}
}
