package check

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"

	"stripwright/geometry"
	"stripwright/laminate"
)

// plate is a plate of 1000 × 600 mm with a margin of 10 mm. Tape is 300 mm
// wide; broad cloth covers the plate without a joint.
func plate(tb testing.TB, stagger float64, between int, plies ...plySpec) laminate.Plan {
	tb.Helper()
	blank, net := region(box4(0, 0, 1000, 600)), region(box4(10, 10, 990, 590))
	return build(tb, net, blank, []clothSpec{{"tape", 300, 300, true, stagger, between}, {"broad", 200, 3000, true, stagger, between}}, plies)
}

func tape(angle float64, cuts ...float64) plySpec {
	return plySpec{cloth: "tape", angle: angle, cuts: cuts}
}

func broad() plySpec { return plySpec{cloth: "broad"} }

func patch(x0, y0, x1, y1 float64) plySpec {
	return plySpec{cloth: "broad", outline: "patch " + num(x0) + " " + num(x1), blank: region(box4(x0, y0, x1, y1))}
}

// judged gives the stagger rule's result on a plan that is right otherwise.
func judged(tb testing.TB, p laminate.Plan) laminate.CheckResult {
	tb.Helper()
	rs := Plan(p)
	for _, r := range rs {
		if !r.Pass && r.Rule != RuleStagger {
			tb.Fatalf("%s: %s", r.Rule, r.Text)
		}
	}
	return verdict(rs, RuleStagger)
}

// MIL-HDBK-17-3F (17 Jun 2002) vol. 3 ch. 12 §12.3.1 item A-30: at least 4
// plies of any orientation between coincident splices. Full plies 1 and 5 have
// three between them, 1 and 6 have four.
func TestFourPliesBetween(t *testing.T) {
	line := tape(0, 150, 450)
	for _, c := range []struct {
		name  string
		plies []plySpec
		pass  bool
	}{
		{"1 and 5 in line", []plySpec{line, broad(), broad(), broad(), line}, false},
		{"1 and 6 in line", []plySpec{line, broad(), broad(), broad(), broad(), line}, true},
		{"1 and 6 with patches elsewhere between", []plySpec{line,
			patch(700, 300, 900, 420), patch(701, 300, 900, 420), patch(702, 300, 900, 420), patch(703, 300, 900, 420), line}, false},
		{"1 and 6 with one of four a patch elsewhere", []plySpec{line, broad(), patch(700, 300, 900, 420), broad(), broad(), line}, false},
		{"1 and 6 with patches over part of the joint", []plySpec{line, broad(), broad(), broad(), patch(0, 0, 700, 600), line}, false},
		{"1 and 6 with patches that cover all between them", []plySpec{line, broad(), broad(), broad(),
			patch(0, 0, 500.5, 600), patch(500, 0, 1000, 600), line}, true},
		{"1 and 6 with patches that leave 2 mm between them", []plySpec{line, broad(), broad(), broad(),
			patch(0, 0, 500, 600), patch(502, 0, 1000, 600), line}, false},
		{"1 and 6 with patches that leave 0.9 mm between them", []plySpec{line, broad(), broad(), broad(),
			patch(0, 0, 500, 600), patch(500.9, 0, 1000, 600), line}, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := judged(t, plate(t, 15, 4, c.plies...))
			if r.Pass != c.pass {
				t.Errorf("pass %v, want %v: %s", r.Pass, c.pass, r.Text)
			}
			if last := len(c.plies); !c.pass && (!slices.Equal(r.Worst.Plies, []int{1, last}) || r.Worst.ValueMM != 0) {
				t.Errorf("worst %+v, want plies 1 and %d, 0 mm", r.Worst, last)
			}
		})
	}
}

// MIL-HDBK-17-3F (17 Jun 2002) vol. 3 ch. 12 §12.3.1 item A-31: butts of
// same-orientation plies with fewer than 4 plies between are staggered by
// 0.6 in, printed 15 mm. The printed millimetres are tested.
func TestFifteenMillimetres(t *testing.T) {
	for _, c := range []struct {
		apart float64
		pass  bool
	}{{14.9, false}, {14.99, false}, {15, true}, {15.1, true}} {
		r := judged(t, plate(t, 15, 4, tape(0, 150, 450), tape(0, 150+c.apart, 450+c.apart)))
		if r.Pass != c.pass || math.Abs(r.Worst.ValueMM-c.apart) > 1e-9 {
			t.Errorf("%v mm apart: pass %v, worst %v: %s", c.apart, r.Pass, r.Worst.ValueMM, r.Text)
		}
	}
}

// The words a laminator acts on.
func TestStaggerInWords(t *testing.T) {
	r := judged(t, plate(t, 50, 4, tape(0, 150, 450), broad(), tape(0, 184, 384)))
	if want := "DO NOT CUT: plies 1 and 3, joints 34 mm apart, 50 needed, at x 500, y 167"; !strings.HasPrefix(r.Text, want+"; ") {
		t.Errorf("%q, want %q", r.Text, want)
	}
	if r.Worst.At != [2]float64{500, 167} || r.Worst.ValueMM != 34 {
		t.Errorf("worst %+v", r.Worst)
	}
}

// Rounded to 0.001 mm, 50 mm at any angle still reads as 50, and 49.99 as less.
func TestFiftyAtAnyAngle(t *testing.T) {
	for _, angle := range []float64{0, 90, 45, -45, 30, -17.3, 88.8, 67.123456789} {
		for _, c := range []struct {
			apart float64
			pass  bool
		}{{50, true}, {49.99, false}} {
			first := tape(angle, levels(angle, 0)...)
			second := tape(angle, levels(angle, c.apart)...)
			r := judged(t, plate(t, 50, 4, first, second))
			if r.Pass != c.pass {
				t.Errorf("%v mm apart at %v°: pass %v: %s", c.apart, angle, r.Pass, r.Text)
			}
		}
	}
}

// levels gives joints every 300 mm over the plate in a ply's frame.
func levels(angle, off float64) []float64 {
	b := region(box4(0, 0, 1000, 600)).In(geometry.PlyFrame(geometry.Angle(angle))).Bounds()
	var out []float64
	for y := math.Floor(b.Min[1]) + 123 + off; y < b.Max[1]-5; y += 300 {
		out = append(out, y)
	}
	return out
}

// The larger rule of two fabrics holds, both for the distance and for the plies
// between.
func TestLargerRuleHolds(t *testing.T) {
	p := plate(t, 0, 0, tape(0, 150, 450), plySpec{cloth: "broad", cuts: []float64{180}})
	if r := judged(t, p); !r.Pass {
		t.Fatal(r.Text)
	}
	p.Fabrics[0].StaggerMM, p.Fabrics[1].PliesBetween = 50, 1
	r := judged(t, p)
	if r.Pass || !strings.Contains(r.Text, "plies 1 and 2, joints 30 mm apart, 50 needed") {
		t.Error(r.Text)
	}
}

// Only where there is net part on both sides does a joint count.
func TestOnlyNetPartCounts(t *testing.T) {
	for _, c := range []struct {
		name string
		y    float64
		pass bool
	}{{"in the margin", 5, true}, {"along the net edge", 10, true}, {"inside", 10.02, false}} {
		p := plate(t, 50, 4, tape(0, c.y, 250, 450), tape(0, c.y, 305, 510))
		if r := judged(t, p); r.Pass != c.pass {
			t.Errorf("%s: pass %v: %s", c.name, r.Pass, r.Text)
		}
	}
}

// Joints of one level on either side of a hole do not run side by side.
func TestBesideAHole(t *testing.T) {
	hole := box4(450, 100, 550, 500)
	net := region(box4(0, 0, 1000, 560), hole)
	cloth := []clothSpec{{"tape", 300, 300, true, 50, 4}}
	left := region([]orb.Point{{0, 0}, {500, 0}, {500, 100}, {450, 100}, {450, 500}, {500, 500}, {500, 560}, {0, 560}})
	right := region([]orb.Point{{500, 0}, {1000, 0}, {1000, 560}, {500, 560}, {500, 500}, {550, 500}, {550, 100}, {500, 100}})
	patch := func(name string, r geometry.Region, y float64) plySpec {
		return plySpec{cloth: "tape", outline: name, blank: r, cuts: []float64{y}}
	}
	p := build(t, net, net, cloth, []plySpec{patch("left", left, 300), patch("right", right, 300)})
	if r := judged(t, p); !r.Pass || r.Worst != nil {
		t.Errorf("%s %+v", r.Text, r.Worst)
	}
	p = build(t, net, net, cloth, []plySpec{patch("wide", region(box4(0, 0, 600, 560), hole), 300), patch("right", right, 280)})
	if r := judged(t, p); r.Pass || r.Worst.ValueMM != 20 {
		t.Errorf("20 mm apart over 50 mm of net: %s", r.Text)
	}
}

// Nearly parallel joints are held up to 5°, remarked on up to 15°, and cross
// freely beyond.
func TestDirections(t *testing.T) {
	for _, c := range []struct {
		angle        float64
		pass, remark bool
	}{{3, false, false}, {5, false, false}, {5.1, true, true}, {15, true, true}, {16, true, false}, {90, true, false}} {
		a := tape(0, levels(0, 0)...)
		b := tape(c.angle, levels(c.angle, 0)...)
		r := judged(t, plate(t, 20, 4, a, b))
		if r.Pass != c.pass || strings.Contains(r.Text, "look at plies 1 and 2") != c.remark {
			t.Errorf("%v°: pass %v: %s", c.angle, r.Pass, r.Text)
		}
	}
}

// An end joint of a 0° ply runs parallel to a side joint of a 90° ply: joints
// are compared, not plies.
func TestEndJointAgainstSideJoint(t *testing.T) {
	for _, c := range []struct {
		x    float64
		pass bool
	}{{-420, false}, {-450, true}, {-350.01, false}, {-350, true}, {-400, false}} {
		p := endJointed(t, 400, tape(90, -850, -650, c.x, -150))
		rs := Plan(p)
		for _, r := range rs {
			if !r.Pass && r.Rule != RuleStagger {
				t.Fatalf("%s: %s", r.Rule, r.Text)
			}
		}
		r := verdict(rs, RuleStagger)
		if want := math.Abs(-c.x - 400); r.Pass != c.pass || math.Abs(r.Worst.ValueMM-want) > 0.002 {
			t.Errorf("%v: pass %v, worst %v: %s", c.x, r.Pass, r.Worst.ValueMM, r.Text)
		}
	}
}

// endJointed is a plate of 1000 × 250 mm; its first ply is one width of tape in
// two lengths that butt at x.
func endJointed(tb testing.TB, x float64, second plySpec) laminate.Plan {
	tb.Helper()
	r := region(box4(0, 0, 1000, 250))
	p := build(tb, r, r, []clothSpec{{"tape", 300, 300, true, 50, 4}}, []plySpec{tape(0), second})
	y, c := &p.Plies[0], &p.Rolls[0]
	a, b := region(box4(0, 0, x, 250)), region(box4(x, 0, 1000, 250))
	y.Strips = []laminate.Strip{{ID: "P01-S01", Shape: a, WidthMM: 250}, {ID: "P01-S02", Shape: b, WidthMM: 250}}
	y.Joints = []laminate.Joint{{Kind: laminate.EndJoint, From: [2]float64{x, 0}, To: [2]float64{x, 250}, Between: [2]string{"P01-S01", "P01-S02"}}}
	c.Pieces[0].Shape = a
	c.Pieces = append(c.Pieces, laminate.Piece{ID: "P01-S02", Shape: b, CutOrder: len(c.Pieces) + 1})
	return p
}

// An end joint may be shifted, deleted and invented like any other.
func TestEndJointsAreHeld(t *testing.T) {
	for name, spoil := range map[string]func(y *laminate.PlanPly){
		"deleted":       func(y *laminate.PlanPly) { y.Joints = nil },
		"shifted":       func(y *laminate.PlanPly) { y.Joints[0].From[0] += 3; y.Joints[0].To[0] += 3 },
		"a side joint":  func(y *laminate.PlanPly) { y.Joints[0].Kind = laminate.SideJoint },
		"at odd angles": func(y *laminate.PlanPly) { y.Strips[0].Shape.Outer[1][0] += 30; y.Strips[1].Shape.Outer[0][0] += 30 },
	} {
		p := endJointed(t, 400, tape(90, -740, -470))
		if !verdict(Plan(p), RuleJoints).Pass {
			t.Fatal("the good plan fails")
		}
		spoil(&p.Plies[0])
		if r := verdict(Plan(p), RuleJoints); r.Pass || !slices.Equal(r.Worst.Plies, []int{1}) {
			t.Errorf("%s: %s", name, r.Text)
		}
	}
}

// Turned and mirrored, a plan keeps its least stagger.
func TestStaggerFollowsTheTurn(t *testing.T) {
	want := judged(t, plate(t, 20, 4, tape(0, 150, 450), tape(90, -730, -430, -130), tape(0, 190, 490), tape(90, -700, -400, -100))).Worst.ValueMM
	for _, turn := range []float64{30, 45, 77.7} {
		f := geometry.Turned(turn)
		blank, net := region(box4(0, 0, 1000, 600)).In(f), region(box4(10, 10, 990, 590)).In(f)
		at := func(a float64, cuts ...float64) plySpec {
			n := geometry.NewAngle(a + turn)
			if n.Degrees() != a+turn { // the ply frame is half a turn round
				for i := range cuts {
					cuts[i] = -cuts[i]
				}
				slices.Reverse(cuts)
			}
			return tape(n.Degrees(), cuts...)
		}
		p := build(t, net, blank, []clothSpec{{"tape", 300, 300, true, 20, 4}}, []plySpec{
			at(0, 150, 450), at(90, -730, -430, -130), at(0, 190, 490), at(90, -700, -400, -100)})
		if r := judged(t, p); !r.Pass || math.Abs(r.Worst.ValueMM-want) > 0.003 {
			t.Errorf("turned %v°: %v, want %v: %s", turn, r.Worst, want, r.Text)
		}
	}
	if want != 30 {
		t.Errorf("least stagger %v, want 30", want)
	}
}

// beside against a plain count along the run: within the distance that it gives
// lies a millimetre, and any more lies further off.
func TestBesideAgainstACount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := run{0, rapid.Float64Range(2, 300).Draw(t, "x1"), rapid.Float64Range(-20, 20).Draw(t, "y")}
		s := slanted{
			rapid.Float64Range(-50, 100).Draw(t, "sx0"), rapid.Float64Range(-40, 40).Draw(t, "sy0"),
			rapid.Float64Range(101, 400).Draw(t, "sx1"), rapid.Float64Range(-40, 40).Draw(t, "sy1"),
		}
		d, over, ok := beside(r, s)
		if length := math.Min(r.x1, s.x1) - math.Max(r.x0, s.x0); ok != (length > shortest) {
			t.Fatalf("side by side %v over %v mm", ok, length)
		}
		if !ok {
			return
		}
		const n = 20000
		within := 0
		for i := range n {
			x := over.x0 + (float64(i)+0.5)*(over.x1-over.x0)/n
			if math.Abs(s.at(x)-r.y) <= d {
				within++
			}
		}
		step := (over.x1 - over.x0) / n
		if got := float64(within) * step; math.Abs(s.y0-s.y1) > 1e-3 && math.Abs(got-shortest) > 3*step {
			t.Fatalf("%v mm lie within %v", got, d)
		}
	})
}

// Two joints of 0° and three of 90° cross six times; a ply further off does not
// count.
func TestCrossingsAreCounted(t *testing.T) {
	r := judged(t, plate(t, 50, 1, tape(0, 150, 450), tape(90, -800, -520, -230), broad(), tape(90, -790, -510, -220)))
	if want := "cross at 6 places"; !r.Pass || !strings.Contains(r.Text, want) {
		t.Errorf("%q does not say %q", r.Text, want)
	}
}

// Four directions whose joints all pass within 20 mm of the middle of the plate,
// and plies without joints between and beside them.
func TestJointsThroughTheThickness(t *testing.T) {
	middle := func(angle float64) plySpec {
		m := geometry.PlyFrame(geometry.Angle(angle)).Apply(orb.Point{500, 300})[1]
		var cuts []float64
		for _, y := range []float64{m - 570, m - 290, m, m + 290, m + 570} {
			b := region(box4(0, 0, 1000, 600)).In(geometry.PlyFrame(geometry.Angle(angle))).Bounds()
			if y > b.Min[1]+1 && y < b.Max[1]-1 {
				cuts = append(cuts, geometry.Snap(y))
			}
		}
		return tape(angle, cuts...)
	}
	for _, c := range []struct {
		between int
		says    string
	}{
		{4, "4 plies of plies 1 to 5"},
		{2, "3 plies of plies 1 to 3"},
	} {
		r := judged(t, plate(t, 20, c.between, middle(0), middle(45), middle(90), broad(), middle(-45), broad()))
		if !r.Pass || !strings.Contains(r.Text, c.says) {
			t.Errorf("%q does not say %q", r.Text, c.says)
		}
	}
}

func TestThin(t *testing.T) {
	over := span{0, 100}
	for _, c := range []struct {
		covers []span
		n      int
		want   []span
	}{
		{nil, 1, []span{{0, 100}}},
		{nil, 0, nil},
		{[]span{{0, 100}}, 1, nil},
		{[]span{{0, 40}, {60, 100}}, 1, []span{{40, 60}}},
		{[]span{{0, 60}, {40, 100}}, 1, nil},
		{[]span{{0, 60}, {40, 100}}, 2, []span{{0, 40}, {60, 100}}},
		{[]span{{0, 50}, {50, 100}}, 1, nil},
		{[]span{{20, 30}, {20, 30}, {25, 90}}, 2, []span{{0, 20}, {30, 100}}},
	} {
		if got := thin(over, c.covers, c.n); !slices.Equal(got, c.want) {
			t.Errorf("%v under %d: %v, want %v", c.covers, c.n, got, c.want)
		}
	}
}

// fence against containment in the general-purpose geometry library.
func TestFenceAgainstContainment(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := star(t)
		a := geometry.Angle(rapid.SampledFrom([]float64{0, 90, 45, -45, 12.5}).Draw(t, "angle"))
		f := newFence(r, geometry.PlyFrame(a))
		b := r.In(geometry.PlyFrame(a)).Bounds()
		for range 20 {
			x := rapid.Float64Range(b.Min[0]-5, b.Max[0]+5).Draw(t, "x")
			y := rapid.Float64Range(b.Min[1]-5, b.Max[1]+5).Draw(t, "y")
			in, clear := false, true
			for _, s := range f.at(y) {
				in = in || s.x0 <= x && x <= s.x1
				clear = clear && math.Abs(s.x0-x) > 0.01 && math.Abs(s.x1-x) > 0.01
			}
			for _, beside := range []float64{y - 0.01, y + 0.01} { // off edges that run along x too
				inside := slices.ContainsFunc(f.at(beside), func(s span) bool { return s.x0 <= x && x <= s.x1 })
				clear = clear && inside == in
			}
			p := geometry.PlyFrame(a).Inverse().Apply(orb.Point{x, y})
			if clear && in != r.Contains(p) {
				t.Fatalf("(%v, %v): fence %v", x, y, in)
			}
		}
	})
}

// star is a random outline round the origin, with a square hole at times.
func star(t *rapid.T) geometry.Region {
	n := rapid.IntRange(3, 24).Draw(t, "corners")
	var ring []orb.Point
	for i := range n {
		d := rapid.Float64Range(40, 300).Draw(t, "reach")
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		ring = append(ring, orb.Point{geometry.Snap(d * c), geometry.Snap(d * s)})
	}
	if rapid.Bool().Draw(t, "hole") && n > 6 {
		return region(ring, box4(-15, -15, 15, 15))
	}
	return region(ring)
}
