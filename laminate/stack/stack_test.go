package stack

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/laminate/stack/code"
)

// Cloth of the tests, all of one fibre.
var (
	ud       = cloth(laminate.PlanFabric{Name: "ud", WeightGSM: 300})
	woven    = cloth(laminate.PlanFabric{Name: "woven", WeightGSM: 200, Form: laminate.Woven})
	biax     = cloth(laminate.PlanFabric{Name: "biax", WeightGSM: 450, Layers: lies(45, -45)})
	zeroNine = cloth(laminate.PlanFabric{Name: "0/90", WeightGSM: 600, Layers: lies(0, 90)})
	triax    = cloth(laminate.PlanFabric{Name: "triax", WeightGSM: 800, Layers: lies(0, 45, -45)})
	heavy    = cloth(laminate.PlanFabric{Name: "heavy", WeightGSM: 800, Layers: []laminate.Layer{
		{AngleDeg: 0, WeightGSM: 400}, {AngleDeg: 45, WeightGSM: 200}, {AngleDeg: -45, WeightGSM: 200},
	}})
	mat = cloth(laminate.PlanFabric{Name: "mat", WeightGSM: 450, Form: laminate.Mat})
)

func cloth(f laminate.PlanFabric) Cloth { f.Fibre = "carbon"; return clothOf(f, 1e-3) }

func lies(angles ...float64) []laminate.Layer {
	var out []laminate.Layer
	for _, a := range angles {
		out = append(out, laminate.Layer{AngleDeg: a})
	}
	return out
}

// of stacks one cloth by a schedule code; faces says u or d for each ply, ""
// for all up.
func of(t testing.TB, c Cloth, schedule, faces string) []Ply {
	t.Helper()
	got, err := code.Parse(schedule)
	if err != nil {
		t.Fatal(err)
	}
	var out []Ply
	for i, p := range got.Plies() {
		out = append(out, Ply{
			Number: i + 1, Cloth: c, Angle: geometry.NewAngle(p.Angle), Down: faces != "" && faces[i] == 'd',
		})
	}
	return out
}

func directions(layers []Layer) string {
	var words []string
	for _, l := range layers {
		words = append(words, decimal(l.Angle().Degrees(), 3))
	}
	return strings.Join(words, " ")
}

// The orientation codes of ASTM D6507 as described in US Army TM
// 1-1500-204-23-11 §5-7 (rules seen), symmetric and balanced worked out by hand
// and again by program.
func TestStandardStacks(t *testing.T) {
	for _, c := range []struct {
		code             string
		mirror, balanced bool
	}{
		{"[0/±45/90]s", true, true},
		{"[±45]2s", true, true},
		{"[0/90]2", false, true},
		{"[0/90̅]s", true, true},
		{"[(0/90)2/45]s", true, false},
		{"[0_2/90]s", true, true},
		{"[∓30/0]T", false, true},
		{"[0/60/−60]s", true, true},
		{"[0/45/90]s", true, false},
		{"[90/-90]", true, true},
	} {
		j := Judge(of(t, ud, c.code, ""))
		if j.Mirror != c.mirror || j.Balanced != c.balanced {
			t.Errorf("%s: symmetric %v, balanced %v", c.code, j.Mirror, j.Balanced)
		}
		if j.Mirror && j.Couples() {
			t.Errorf("%s: a mirror that couples by %v", c.code, j.Coupling)
		}
	}
}

// Stitched cloth, layer by layer (worked out by hand from the rule that face up
// the tool sees the last listed layer, and searched by program).
func TestStitchedLayers(t *testing.T) {
	for _, c := range []struct {
		cloth         Cloth
		code, faces   string
		layers        string
		mirror, still bool
	}{
		{triax, "[0]", "", "-45 45 0", false, false},
		{triax, "[0]", "d", "0 -45 45", false, false},
		{triax.otherHand(), "[0]", "d", "0 45 -45", false, false},
		{triax, "[0/0]", "ud", "-45 45 0 0 -45 45", false, false},
		{biax, "[0]s", "", "-45 45 -45 45", false, false},
		{biax, "[0]s", "ud", "-45 45 -45 45", false, false},
		{biax, "[0/90]", "", "-45 45 45 -45", true, true},
		{biax, "[0/90]2s", "", "-45 45 45 -45 -45 45 45 -45 45 -45 -45 45 45 -45 -45 45", false, true},
		{zeroNine, "[0_2]", "ud", "90 0 0 90", true, true},
		{zeroNine, "[0_2]", "", "90 0 90 0", false, false},
		{woven, "[0]", "", "0", true, true},
		{woven, "[0/90]", "", "0 90", true, true},
		{woven, "[0/45]", "", "0 45", false, false},
		{mat, "[0/30]", "", "0 0", true, true},
	} {
		j := Judge(of(t, c.cloth, c.code, c.faces))
		if got := directions(j.Layers); got != c.layers {
			t.Errorf("%s %s %s: layers %s, want %s", c.cloth.Name, c.code, c.faces, got, c.layers)
		}
		if j.Mirror != c.mirror || j.Couples() == c.still {
			t.Errorf("%s %s %s: symmetric %v, coupling %v", c.cloth.Name, c.code, c.faces, j.Mirror, j.Coupling)
		}
	}
}

// Triaxial cloth of the other hand, face down, is the mirror of the cloth face
// up; the same cloth in no turn or flip is.
func TestOppositeHandMirrors(t *testing.T) {
	up := Ply{Number: 1, Cloth: triax}
	if j := Judge([]Ply{up, {Number: 2, Cloth: triax.otherHand(), Down: true}}); !j.Mirror {
		t.Errorf("layers %s", directions(j.Layers))
	}
	for turn := -89.0; turn <= 90; turn++ {
		for _, down := range []bool{false, true} {
			if j := Judge([]Ply{up, {Number: 2, Cloth: triax, Angle: geometry.NewAngle(turn), Down: down}}); j.Mirror {
				t.Errorf("turned by %v, face down %v: symmetric", turn, down)
			}
		}
	}
}

// Lamination parameters (worked out by hand, and again by program).
func TestParameters(t *testing.T) {
	for _, c := range []struct {
		code    string
		a, b, d Parameters
	}{
		{"[0/45/-45/90]s", Parameters{}, Parameters{}, Parameters{.5625, .1875, .1875, 0}},
		{"[0/45/90/-45]", Parameters{}, Parameters{-.5, -.5, -.5, 0}, Parameters{}},
		{"[0]", Parameters{1, 0, 1, 0}, Parameters{}, Parameters{1, 0, 1, 0}},
		{"[0/90]", Parameters{0, 0, 1, 0}, Parameters{-1, 0, 0, 0}, Parameters{0, 0, 1, 0}},
	} {
		j := Judge(of(t, ud, c.code, ""))
		for k := range 4 {
			for _, v := range []struct {
				what      string
				got, want float64
			}{{"A", j.Moments.A[k], c.a[k]}, {"B", j.Moments.B[k], c.b[k]}} {
				if math.Abs(v.got-v.want) > 1e-12 {
					t.Errorf("%s: %s%d is %v, want %v", c.code, v.what, k+1, v.got, v.want)
				}
			}
			if c.d != (Parameters{}) && math.Abs(j.Moments.D[k]-c.d[k]) > 1e-12 {
				t.Errorf("%s: D%d is %v, want %v", c.code, k+1, j.Moments.D[k], c.d[k])
			}
		}
	}
	for code, want := range map[string]float64{"[0/45/-45/90]s": 0, "[0]": 1, "[30_3]": 1, "[0/90]": math.Sqrt(.5)} {
		if got := Judge(of(t, ud, code, "")).Moments.A.fromQuasi(); math.Abs(got-want) > 1e-12 {
			t.Errorf("%s: %v from quasi-isotropic, want %v", code, got, want)
		}
	}
}

// [a/-a2/a/-a/a2/-a] has B = 0 without being a mirror (Caprino and Crivelli
// Visconti 1982, from memory; worked out by program): a mirror test alone would
// call it coupled.
func TestNoMirrorThatDoesNotCouple(t *testing.T) {
	for _, a := range []string{"15", "30", "45", "60"} {
		s := strings.ReplaceAll("[a/-a_2/a/-a/a_2/-a]", "a", a)
		j := Judge(of(t, ud, s, ""))
		if j.Mirror || j.Couples() || !j.Alike {
			t.Errorf("%s: symmetric %v, coupling %v", s, j.Mirror, j.Coupling)
		}
	}
}

// Two equal layers at right angles: by hand, ‖A‖ = h/√2, ‖B‖ = h²/4 · 1/√2,
// ‖D‖ = h³/12 · 1/√2, so √12/4.
func TestCouplingOfTwo(t *testing.T) {
	for _, s := range []string{"[0/90]", "[30/-60]", "[-45/45]"} {
		if j := Judge(of(t, ud, s, "")); math.Abs(j.Coupling-math.Sqrt(12)/4) > 1e-12 {
			t.Errorf("%s couples by %v", s, j.Coupling)
		}
	}
}

// drawn gives any stack of the cloth above.
func drawn(t *rapid.T, least, most int) []Ply {
	n := rapid.IntRange(least, most).Draw(t, "plies")
	var out []Ply
	for i := range n {
		out = append(out, Ply{
			Number: i + 1,
			Cloth:  rapid.SampledFrom([]Cloth{ud, woven, biax, zeroNine, triax, heavy, mat}).Draw(t, "cloth"),
			Angle:  geometry.NewAngle(rapid.SampledFrom([]float64{0, 90, 45, -45, 30, -60, 22.5}).Draw(t, "angle")),
			Down:   rapid.Bool().Draw(t, "down"),
		})
	}
	return out
}

// mirrored gives the plies that lie as in a looking glass: the other hand, the
// other face, the other order.
func mirrored(plies []Ply) []Ply {
	var out []Ply
	for i := len(plies) - 1; i >= 0; i-- {
		p := plies[i]
		p.Cloth, p.Down = p.Cloth.otherHand(), !p.Down
		out = append(out, p)
	}
	return out
}

// A stack with its looking-glass image on top is symmetric and does not couple,
// whatever it is.
func TestRandomMirrors(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		half := drawn(t, 1, 8)
		plies := append(append([]Ply{}, half...), mirrored(half)...)
		j := Judge(plies)
		if !j.Mirror || j.Couples() {
			t.Fatalf("%s: symmetric %v, coupling %v", directions(j.Layers), j.Mirror, j.Coupling)
		}
		if _, c := moments(j.Layers); c > Still {
			t.Fatalf("%s: a coupling of %v is left", directions(j.Layers), c)
		}
	})
}

// Turning the whole part keeps verdict, coupling and distance from
// quasi-isotropic; laying it upside down keeps the coupling. Shares add up.
func TestTurnedStacks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plies := drawn(t, 1, 10)
		turn := rapid.Float64Range(-90, 90).Draw(t, "turn")
		turned := append([]Ply{}, plies...)
		for i := range turned {
			turned[i].Angle = geometry.NewAngle(turned[i].Angle.Degrees() + turn)
		}
		a, b, c := Judge(plies), Judge(turned), Judge(mirrored(plies))
		if a.Mirror != b.Mirror || a.Mirror != c.Mirror || a.Balanced != c.Balanced {
			t.Fatalf("verdicts %v %v %v", a.Mirror, b.Mirror, c.Mirror)
		}
		for _, v := range [][2]float64{
			{a.Coupling, b.Coupling}, {a.Coupling, c.Coupling}, {a.Moments.A.fromQuasi(), b.Moments.A.fromQuasi()},
		} {
			if math.Abs(v[0]-v[1]) > 1e-6 { // angles are kept to a millionth of a degree
				t.Fatalf("%v became %v", v[0], v[1])
			}
		}
		if a.Coupling < 0 || a.Coupling > 1+1e-12 {
			t.Fatalf("coupling %v", a.Coupling)
		}
		sum := a.Random
		for _, s := range a.Shares {
			sum += s.Part
		}
		if math.Abs(sum-1) > 1e-9 {
			t.Fatalf("shares add up to %v", sum)
		}
	})
}

// Equal layers on each other are counted by layer, across plies.
func TestGroups(t *testing.T) {
	for code, want := range map[string]string{
		"[0_4/90]": "[]", "[0_5/90]": "[{0 4}]", "[90/0_3]s": "[{1 6}]", "[0/180/0/-180/0]": "[{0 4}]",
	} {
		if got := fmt.Sprint(Judge(of(t, ud, code, "")).Groups); got != want {
			t.Errorf("%s: %s, want %s", code, got, want)
		}
	}
}

// Shares cut by a joint, by hand.
func TestCut(t *testing.T) {
	for _, c := range []struct {
		cloth     Cloth
		side, end float64
	}{
		{ud, 0, 1}, {woven, .5, .5}, {biax, 1, 1}, {zeroNine, .5, .5}, {triax, 2. / 3, 1}, {heavy, .5, 1}, {mat, 1, 1},
		{cloth(laminate.PlanFabric{Name: "askew", WeightGSM: 300, Layers: lies(0.9)}), 0, 1},
		{cloth(laminate.PlanFabric{Name: "more askew", WeightGSM: 300, Layers: lies(1.1)}), 1, 1},
		{cloth(laminate.PlanFabric{Name: "weft", WeightGSM: 300, Layers: lies(-89.5)}), 1, 0},
	} {
		if got := CutOf(c.cloth); math.Abs(got.Side-c.side) > 1e-12 || math.Abs(got.End-c.end) > 1e-12 {
			t.Errorf("%s: %+v", c.cloth.Name, got)
		}
	}
}
