package theory

import (
	"math"
	"strings"
	"testing"

	"stripwright/laminate"
)

// The graphite/epoxy ply of Kaw, Mechanics of Composite Materials, 2nd ed. 2006,
// table 2.1 (digits from memory, arithmetic worked again).
var kaw = laminate.Elastic{E1: 181, E2: 10.3, G12: 7.17, Nu12: 0.28, Alpha1: 0.02, Alpha2: 22.5}

// stackOf makes layers of one thickness from the tool up.
func stackOf(t float64, e laminate.Elastic, degrees ...float64) []Layer {
	var ls []Layer
	for _, d := range degrees {
		ls = append(ls, Layer{AngleDeg: d, ThicknessMM: t, Elastic: e})
	}
	return ls
}

func must(t *testing.T, layers []Layer) Stiffness {
	t.Helper()
	s, err := Of(layers)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// near compares to the digits in which a value is printed.
func near(t *testing.T, what string, got, want, relative float64) {
	t.Helper()
	if !(math.Abs(got-want) <= relative*math.Abs(want)) {
		t.Errorf("%s: %.7g, want %.7g", what, got, want)
	}
}

// Kaw, example 2.6 (from memory, worked again): Q of the ply.
func TestReducedStiffness(t *testing.T) {
	q := Reduced(kaw)
	for _, c := range []struct{ got, want float64 }{{q[0][0], 181.811}, {q[0][1], 2.8969}, {q[1][1], 10.3462}, {q[2][2], 7.17}} {
		near(t, "Q", c.got, c.want, 1e-5)
	}
}

// Kaw, example 4.2 (from memory, worked again): [0/30/-45], three layers of
// 5 mm. A in Pa·m, B in Pa·m², D in Pa·m³.
func TestThreeLayers(t *testing.T) {
	s := must(t, stackOf(5, kaw, 0, 30, -45))
	for _, c := range []struct {
		name string
		m    Mat
		unit float64 // of the book in ours
		want [6]float64
	}{
		{"A", s.A, 1e3, [6]float64{1.7392e9, 3.8839e8, 5.6634e7, 4.5325e8, -1.1406e8, 4.5248e8}},
		{"B", s.B, 1, [6]float64{-3.1288e6, 9.8552e5, -1.0717e6, 1.1578e6, -1.0717e6, 9.8552e5}},
		{"D", s.D, 1e-3, [6]float64{3.3432e4, 6.4610e3, -5.2403e3, 9.3198e3, -5.5959e3, 7.6628e3}},
	} {
		got := [6]float64{c.m[0][0], c.m[0][1], c.m[0][2], c.m[1][1], c.m[1][2], c.m[2][2]}
		for i := range got {
			near(t, c.name, got[i]*c.unit, c.want[i], 6e-5)
		}
	}
	if !s.Couples() || s.ThicknessMM != 15 {
		t.Errorf("coupling %v, thickness %v", s.Coupling(), s.ThicknessMM)
	}
}

// Kaw, example 4.3 (from memory, worked again): the same laminate, free, under Nx
// = Ny = 1000 N/m. Strains, and curvatures in 1/m.
func TestStrainUnderLoad(t *testing.T) {
	e, k := must(t, stackOf(5, kaw, 0, 30, -45)).Strain(Vec{1, 1, 0}, Vec{})
	for i, want := range [3]float64{3.123e-7, 3.492e-6, -7.598e-7} {
		near(t, "strain", e[i], want, 5e-4)
	}
	for i, want := range [3]float64{2.971e-5, -3.285e-4, 4.101e-4} {
		near(t, "curvature", k[i]*1e3, want, 5e-4)
	}
}

// The same ply in all directions alike: E, nu and G (worked again).
func TestQuasiIsotropic(t *testing.T) {
	for _, layers := range [][]Layer{
		stackOf(0.125, kaw, 0, 45, -45, 90, 90, -45, 45, 0),
		stackOf(0.2, kaw, 0, 60, -60, -60, 60, 0),
		{{AngleDeg: 17, ThicknessMM: 1, Random: true, Elastic: kaw}},
	} {
		s := must(t, layers)
		c := s.Membrane()
		near(t, "Ex", c.Ex, 69.6757, 1e-5)
		near(t, "Ey", c.Ey, 69.6757, 1e-5)
		near(t, "nu", c.Nuxy, 0.29603, 2e-5)
		near(t, "G", c.Gxy, 26.8804, 1e-5)
		if h := s.Held(); math.Abs(h.Ex-c.Ex) > 1e-9 {
			t.Errorf("held flat %v, free %v: they differ without coupling", h.Ex, c.Ex)
		}
	}
	// Tsai and Pagano (1968), from memory: about 3/8 E1 + 5/8 E2 and 1/8 E1 + 1/4 E2.
	c := must(t, []Layer{{ThicknessMM: 1, Random: true, Elastic: kaw}}).Membrane()
	near(t, "3/8 E1 + 5/8 E2", 3.0/8*kaw.E1+5.0/8*kaw.E2, c.Ex, 0.08)
	near(t, "1/8 E1 + 1/4 E2", kaw.E1/8+kaw.E2/4, c.Gxy, 0.08)
}

// Two crossed layers that cool (Kaw, example 4.5, from memory, worked again).
func TestWarpOfTwoLayers(t *testing.T) {
	for _, c := range []struct{ thick, dT, strain, curve float64 }{
		{5, -75, -3.90715e-4, 0.127648},
		{0.125, -100, math.NaN(), 6.80787},
	} {
		e, k := must(t, stackOf(c.thick, kaw, 0, 90)).Warp(c.dT)
		if !math.IsNaN(c.strain) {
			near(t, "strain x", e[0], c.strain, 1e-5)
			near(t, "strain y", e[1], c.strain, 1e-5)
		}
		near(t, "curvature x, 1/m", k[0]*1e3, -c.curve, 1e-5)
		near(t, "curvature y, 1/m", k[1]*1e3, c.curve, 1e-5)
		if math.Abs(k[2]) > 1e-12 {
			t.Errorf("twist %v, want none", k[2])
		}
	}
}

// The same from Timoshenko's strip of two metals (J. Opt. Soc. Am. 11 (1925)
// 233, from memory): layers of equal thickness h/2, ratio of moduli n, curvature
// 24·(α2-α1)·ΔT / (h·(14 + n + 1/n)); the theory gives it for layers without
// Poisson's ratio.
func TestTwoMetals(t *testing.T) {
	soft := laminate.Elastic{E1: 70, E2: 70, G12: 35, Alpha1: 23, Alpha2: 23}
	hard := laminate.Elastic{E1: 210, E2: 210, G12: 105, Alpha1: 12, Alpha2: 12}
	s := must(t, []Layer{{ThicknessMM: 1, Elastic: hard}, {ThicknessMM: 1, Elastic: soft}})
	_, k := s.Warp(100)
	near(t, "curvature", k[0], 24*11e-6*100/(2*(14+3+1.0/3)), 1e-9)
	near(t, "both ways", k[1], k[0], 1e-9)
}

// Expansion of the same ply's laminates, 1e-6/K (worked again).
func TestExpansion(t *testing.T) {
	for _, c := range []struct {
		degrees []float64
		x, y    float64
	}{
		{[]float64{0, 45, -45, 90, 90, -45, 45, 0}, 1.523929, 1.523929},
		{[]float64{0, 90, 90, 0}, 1.523929, 1.523929},
		{[]float64{45, -45, -45, 45}, 1.523929, 1.523929},
		{[]float64{30, -30, -30, 30}, -2.36885, 11.36468},
	} {
		a := must(t, stackOf(0.125, kaw, c.degrees...)).Expansion()
		near(t, "x", a[0], c.x, 4e-6)
		near(t, "y", a[1], c.y, 4e-6)
		if math.Abs(a[2]) > 1e-9 {
			t.Errorf("%v: shear %v, want none", c.degrees, a[2])
		}
	}
}

// A laminate that looks quasi-isotropic and couples; and one that is no mirror
// and does not ([a/-a2/a/-a/a2/-a]; known from the literature, worked again).
func TestCouplingIsNotTheMirror(t *testing.T) {
	s := must(t, stackOf(0.25, kaw, 0, 45, 90, -45))
	near(t, "Ex held flat", s.Held().Ex, 69.6757, 1e-5)
	if s.Coupling() < 0.05 {
		t.Errorf("[0/45/90/-45] couples by %v only", s.Coupling())
	}
	// Lamination parameters of B -.5 -.5 -.5 0 and the invariants of Tsai and
	// Pagano give B11 = t²/4·(U2·cos2 + U3·cos4), worked again.
	q := Reduced(kaw)
	u2 := (q[0][0] - q[1][1]) / 2
	u3 := (q[0][0] + q[1][1] - 2*q[0][1] - 4*q[2][2]) / 8
	near(t, "B11", s.B[0][0], 1e3/4*(-0.5*u2-0.5*u3), 1e-9)
	near(t, "B16", s.B[0][2], 1e3/4*(-0.5*u2/2), 1e-9)
	if got := must(t, stackOf(0.25, kaw, 20, -20, -20, 20, -20, 20, 20, -20)); got.Couples() {
		t.Errorf("[a/-a2/a/-a/a2/-a] couples by %v", got.Coupling())
	}
}

// Two halves, one far stiffer than the other: √3/2.
func TestCouplingAtMost(t *testing.T) {
	soft := kaw
	soft.E1, soft.E2, soft.G12 = kaw.E1/1e4, kaw.E2/1e4, kaw.G12/1e4
	s := must(t, []Layer{{ThicknessMM: 1, Elastic: kaw}, {ThicknessMM: 1, Elastic: soft}})
	near(t, "coupling", s.Coupling(), math.Sqrt(3)/2, 1e-3)
}

// In bending the outer layers count: [0/90/0] of equal layers, by hand: D11 is
// 26/27 of all-0° and 1/27 of all-90°.
func TestBending(t *testing.T) {
	c := must(t, stackOf(1, laminate.Elastic{E1: 100, E2: 10, G12: 5}, 0, 90, 0))
	near(t, "Ex in bending", c.Bending().Ex, (26*100+10)/27.0, 1e-12)
	near(t, "Ey in bending", c.Bending().Ey, (26*10+100)/27.0, 1e-12)
	near(t, "Ex in the plane", c.Membrane().Ex, 70, 1e-12)
}

// Woven cloth is two halves at one height: no coupling, and both ways alike.
func TestWoven(t *testing.T) {
	s := must(t, []Layer{{ThicknessMM: 1, Crossed: Woven(0), Elastic: kaw}})
	two := must(t, stackOf(0.5, kaw, 0, 90))
	near(t, "Ex", s.Membrane().Ex, two.Held().Ex, 1e-12)
	near(t, "Ey", s.Membrane().Ey, s.Membrane().Ex, 1e-12)
	if s.Couples() || !two.Couples() {
		t.Errorf("coupling woven %v, two layers %v", s.Coupling(), two.Coupling())
	}
	near(t, "expansion", s.Expansion()[0], 1.523929, 1e-6)
}

// A sandwich of two equal skins, by hand: A is twice a skin's, D that of the
// skins at their distance from the middle; the core adds none.
func TestSandwich(t *testing.T) {
	skin := Layer{ThicknessMM: 1, Elastic: laminate.Elastic{E1: 100, E2: 10, G12: 5}}
	s := must(t, []Layer{skin, {ThicknessMM: 10, Core: true}, skin})
	near(t, "A11", s.A[0][0], 2*100*1e3, 1e-12)
	near(t, "D11", s.D[0][0], 2*100e3*(5.5*5.5+1.0/12), 1e-12)
	if s.ThicknessMM != 12 || s.Couples() {
		t.Errorf("thickness %v, coupling %v", s.ThicknessMM, s.Coupling())
	}
}

func TestPrincipalAndBow(t *testing.T) {
	for _, c := range []struct {
		curve            Vec
		most, least, deg float64
	}{
		{Vec{2, -1, 0}, 2, -1, 0},
		{Vec{-1, 2, 0}, 2, -1, 90},
		{Vec{0, 0, 2}, 1, -1, 45},
		{Vec{0, 0, -2}, 1, -1, -45},
		{Vec{0, 0, 0}, 0, 0, 0},
	} {
		most, least, deg := Principal(c.curve)
		if most != c.most || least != c.least || math.Abs(deg-c.deg) > 1e-12 {
			t.Errorf("%v: %v %v %v", c.curve, most, least, deg)
		}
	}
	// An arc of 24 m radius over a chord of 1 m: its height is R - √(R²-0.25).
	near(t, "bow", Bow(-1/24e3, 1000), 24e3-math.Sqrt(24e3*24e3-500*500), 2e-4)
}

func TestFaults(t *testing.T) {
	bad := func(change func(*laminate.Elastic)) []Layer {
		e := kaw
		change(&e)
		return append(stackOf(1, kaw, 0), Layer{ThicknessMM: 1, Elastic: e})
	}
	for _, c := range []struct {
		layers []Layer
		want   string
	}{
		{nil, "needs a layer of fibre"},
		{[]Layer{{ThicknessMM: 10, Core: true}}, "needs a layer of fibre"},
		{[]Layer{{ThicknessMM: 1, Elastic: kaw, Crossed: []Direction{{0, .5}, {90, .4}}}}, "layer 1: the parts of its fibre add up to 0.9"},
		{[]Layer{{ThicknessMM: 1, Elastic: kaw, Crossed: []Direction{{0, math.NaN()}}}}, "layer 1: the part of its fibre at 0° is out of reason"},
		{[]Layer{{ThicknessMM: 1, Elastic: kaw, Crossed: []Direction{{30, math.Inf(-1)}}}}, "layer 1: the part of its fibre at 30° is out of reason"},
		{[]Layer{{ThicknessMM: 1, Elastic: kaw, Crossed: []Direction{{30, math.Inf(1)}}}}, "layer 1: the part of its fibre at 30° is out of reason"},
		{bad(func(e *laminate.Elastic) { e.E2 = 0 }), "layer 2: moduli must be above 0 GPa"},
		{bad(func(e *laminate.Elastic) { e.G12 = math.NaN() }), "layer 2: NaN is out of reason"},
		{bad(func(e *laminate.Elastic) { e.Alpha2 = math.Inf(1) }), "layer 2: +Inf is out of reason"},
		{bad(func(e *laminate.Elastic) { e.Nu12 = 4.3 }), "layer 2: nu12 4.3 is too great"},
		{[]Layer{{ThicknessMM: 0, Elastic: kaw}}, "layer 1: a thickness of 0 mm"},
		{[]Layer{{ThicknessMM: -1, Elastic: kaw}}, "layer 1: a thickness of -1 mm"},
		{[]Layer{{ThicknessMM: 1, AngleDeg: math.NaN(), Elastic: kaw}}, "layer 1: a direction of its fibre is no angle"},
		{[]Layer{{ThicknessMM: 1, Elastic: laminate.Elastic{E1: 100, E2: 100, G12: 1, Nu12: 1 - 1e-15}}}, "no sound laminate"},
	} {
		if _, err := Of(c.layers); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%v, want %q", err, c.want)
		}
	}
}
