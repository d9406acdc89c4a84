package panel

import (
	"math"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/laminate/content"
	"stripwright/laminate/theory"
)

func given(v float64) laminate.Figure { return laminate.Figure{Value: v, Basis: laminate.Given} }

func rectangle(x, y, w, h float64) geometry.Region {
	return geometry.Region{Outer: orb.Ring{{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}}}
}

func near(t *testing.T, what string, got, want, relative float64) {
	t.Helper()
	if !(math.Abs(got-want) <= relative*math.Abs(want)) {
		t.Errorf("%s: %.7g, want %.7g", what, got, want)
	}
}

// laid is one ply of a plan in words: fabric, angle, face.
type laid struct {
	fabric string
	deg    float64
	face   string
}

func planOf(fabrics []laminate.PlanFabric, plies ...laid) laminate.Plan {
	p := laminate.Plan{Fabrics: fabrics, Resin: &laminate.Resin{Name: "epoxy"}}
	p.Part.Net = rectangle(0, 0, 800, 500)
	p.Part.Blank = rectangle(-20, -20, 840, 540)
	for i, y := range plies {
		face := laminate.FaceUp
		if y.face != "" {
			face = y.face
		}
		p.Plies = append(p.Plies, laminate.PlanPly{Ply: i + 1, Fabric: y.fabric, AngleDeg: y.deg, Face: face, Blank: p.Part.Blank})
	}
	return p
}

func reported(p laminate.Plan) Report { return Of(p, content.Of(p)) }

var kaw = laminate.Elastic{E1: 181, E2: 10.3, G12: 7.17, Nu12: 0.28, Alpha1: 0.02, Alpha2: 22.5}

// Kaw, Mechanics of Composite Materials, 2nd ed. 2006, example 4.2 (from memory,
// worked again): the matrices of [0/30/-45] from a plan with given constants,
// plies of 5 mm.
func TestFromAPlan(t *testing.T) {
	ud := laminate.PlanFabric{Name: "ud", WeightGSM: 5000 * .5 * 1.8, Fibre: "carbon", DensityGCM3: given(1.8), FibreVolume: given(.5), Elastic: &kaw}
	r := reported(planOf([]laminate.PlanFabric{ud}, laid{"ud", 0, ""}, laid{"ud", 30, ""}, laid{"ud", -45, ""}))
	if len(r.Missing) > 0 || len(r.Zones) != 1 || r.Constants[0].Basis != laminate.Given {
		t.Fatalf("%+v", r)
	}
	s := r.Zones[0].Whole
	near(t, "A11", s.A[0][0], 1.7392e6, 6e-5)
	near(t, "B16", s.B[0][2], -1.0717e6, 6e-5)
	near(t, "D22", s.D[1][1], 9.3198e6, 6e-5)
}

// Stitched cloth is judged layer by layer, as its face lies: [0,90] up and then
// down is a mirror, twice up is not (worked by hand).
func TestFaces(t *testing.T) {
	biax := laminate.PlanFabric{Name: "b", WeightGSM: 600, Fibre: "e-glass", Layers: []laminate.Layer{{AngleDeg: 0}, {AngleDeg: 90}}}
	up := reported(planOf([]laminate.PlanFabric{biax}, laid{"b", 0, ""}, laid{"b", 0, ""}))
	over := reported(planOf([]laminate.PlanFabric{biax}, laid{"b", 0, ""}, laid{"b", 0, laminate.FaceDown}))
	if !up.Zones[0].Whole.Couples() || over.Zones[0].Whole.Couples() {
		t.Errorf("coupling up/up %v, up/down %v", up.Zones[0].Whole.Coupling(), over.Zones[0].Whole.Coupling())
	}
	if len(up.Zones[0].Layers) != 4 || up.Zones[0].Layers[0].AngleDeg != 90 {
		t.Errorf("face up, the tool sees the last listed layer: %+v", up.Zones[0].Layers)
	}
	if want := "generic e-glass in epoxy, 51.5 % fibre"; up.Constants[0].From != want || up.Constants[0].Basis != laminate.Assumed {
		t.Errorf("constants stand on %q (%s), want %q", up.Constants[0].From, up.Constants[0].Basis, want)
	}
}

// The nine-ply carbon panel, triaxial plies turned over at the middle: close to a
// mirror, and not one; two woven faces at one height do not couple.
func TestNinePlies(t *testing.T) {
	fabrics := []laminate.PlanFabric{
		{Name: "woven", WeightGSM: 200, Fibre: "carbon", Form: laminate.Woven},
		{Name: "triax", WeightGSM: 800, Fibre: "carbon", Form: laminate.Triaxial, Layers: []laminate.Layer{{AngleDeg: 0}, {AngleDeg: 45}, {AngleDeg: -45}}},
	}
	plies := []laid{{"woven", 0, ""}}
	for i := range 7 {
		face := laminate.FaceUp
		if i > 3 {
			face = laminate.FaceDown
		}
		plies = append(plies, laid{"triax", 0, face})
	}
	plies = append(plies, laid{"woven", 0, ""})
	z := reported(planOf(fabrics, plies...)).Zones[0]
	if c := z.Whole.Coupling(); c < 1e-3 || c > 0.05 {
		t.Errorf("coupling %v: close to a mirror is between", c)
	}
	if len(z.Layers) != 2+21 || len(z.Layers[0].Crossed) != 2 {
		t.Errorf("%d layers, the first %+v", len(z.Layers), z.Layers[0])
	}
	up := planOf(fabrics, plies...)
	for i := range up.Plies {
		up.Plies[i].Face = laminate.FaceUp
	}
	if all := reported(up).Zones[0].Whole.Coupling(); all <= z.Whole.Coupling() {
		t.Errorf("all face up couples by %v, turned at the middle by %v", all, z.Whole.Coupling())
	}
}

// A sandwich: the core adds no stiffness of its own, and each skin stands by
// itself.
func TestSandwich(t *testing.T) {
	ud := laminate.PlanFabric{Name: "ud", WeightGSM: 900, Fibre: "carbon", FibreVolume: given(.5), DensityGCM3: given(1.8), Elastic: &kaw}
	p := planOf([]laminate.PlanFabric{ud}, laid{"ud", 0, ""}, laid{"ud", 90, ""}, laid{"ud", 0, ""})
	p.Cores = []laminate.Core{{Name: "foam", AfterPly: 1, Blank: p.Part.Blank, ThicknessMM: 10, DensityKGM3: 80, UptakeGSM: given(300)}}
	z := reported(p).Zones[0]
	if !z.Core || !z.Known || len(z.Skins) != 2 {
		t.Fatalf("%+v", z)
	}
	near(t, "thickness", z.Whole.ThicknessMM, 13, 1e-12)
	near(t, "skin on the tool", z.Skins[0].ThicknessMM, 1, 1e-12)
	near(t, "its modulus", z.Skins[0].Membrane().Ex, 181, 1e-9)
	near(t, "the other skin", z.Skins[1].ThicknessMM, 2, 1e-12)
	near(t, "A is that of the skins", z.Whole.A[0][0], z.Skins[0].A[0][0]+z.Skins[1].A[0][0], 1e-12)
}

// Two crossed plies warp: by hand from the curvature of Kaw, example 4.5 (from
// memory, worked again; 0.127648 1/m for 10 mm and 75 K): 100 K and 10 mm give
// 0.170197 1/m, over 1 m 21.3 mm, to opposite sides.
func TestWarp(t *testing.T) {
	ud := laminate.PlanFabric{Name: "ud", WeightGSM: 4500, Fibre: "carbon", DensityGCM3: given(1.8), FibreVolume: given(.5), Elastic: &kaw}
	z := reported(planOf([]laminate.PlanFabric{ud}, laid{"ud", 0, ""}, laid{"ud", 90, ""})).Zones[0]
	w := WarpOf(z.Whole)
	near(t, "bow", w.MostMM, 0.127648/75*100*1000/8, 1e-5)
	near(t, "square to it", w.SquareMM, w.MostMM, 1e-9)
	if !w.Opposite || !w.Some() {
		t.Errorf("%+v", w)
	}
	flat := reported(planOf([]laminate.PlanFabric{ud}, laid{"ud", 0, ""}, laid{"ud", 90, ""}, laid{"ud", 90, ""}, laid{"ud", 0, ""})).Zones[0]
	if w := WarpOf(flat.Whole); w.Some() {
		t.Errorf("a mirror warps: %+v", w)
	}
}

// The direction of most warp is the one in which a strip bends most.
func TestWarpDirection(t *testing.T) {
	soft := theory.Layer{ThicknessMM: 1, Elastic: laminate.Elastic{E1: 20, E2: 20, G12: 20 / 2.66, Nu12: .33, Alpha1: 20, Alpha2: 20}}
	for _, deg := range []float64{0, 30, 90, -60} {
		s, err := theory.Of([]theory.Layer{soft, {ThicknessMM: 1, AngleDeg: deg, Elastic: kaw}})
		if err != nil {
			t.Fatal(err)
		}
		w := WarpOf(s)
		if off := geometry.NewAngle(w.AlongDeg).Between(geometry.NewAngle(deg)); off > 1e-6 {
			t.Errorf("fibre at %v°: most warp along %v°", deg, w.AlongDeg)
		}
	}
}

// What is missing is asked for.
func TestMissing(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*laminate.Plan)
		want   string
	}{
		{"fibre", func(p *laminate.Plan) { p.Fabrics[0].Fibre, p.Fabrics[0].DensityGCM3 = "", given(2.5) }, "write fibre: for fabric ud"},
		{"resin", func(p *laminate.Plan) { p.Resin = nil }, "write name: under resin: (epoxy, polyester, vinylester)"},
		{"constants of an own fibre", func(p *laminate.Plan) {
			p.Fibres = []laminate.FibreKind{{Name: "hemp", DensityGCM3: given(1.48), E1: given(40)}}
			p.Fabrics[0].Fibre = "hemp"
			p.Fabrics[0].FibreVolume = given(.4)
		}, "write e2, g12, nu12, alpha1, alpha2 for hemp under fibres:"},
		{"constants of an own resin", func(p *laminate.Plan) {
			p.Resins = []laminate.ResinKind{{Name: "acrylic", DensityGCM3: given(1.19)}}
			p.Resin.Name = "acrylic"
		}, "write e, nu, alpha for acrylic under resins:"},
		{"no material", func(p *laminate.Plan) { p.Fabrics[0].Elastic = &laminate.Elastic{E1: -1} }, "elastic: of fabric ud: moduli must be above 0 GPa"},
		{"layers", func(p *laminate.Plan) { p.Fabrics[0].Form = laminate.Triaxial }, "write layers: for fabric ud, which is triaxial"},
		{"thickness", func(p *laminate.Plan) {
			p.Fabrics[0].Fibre, p.Fabrics[0].Elastic = "", &kaw
		}, "write density: for fabric ud"},
	} {
		p := planOf([]laminate.PlanFabric{{Name: "ud", WeightGSM: 300, Fibre: "e-glass"}}, laid{"ud", 0, ""})
		c.change(&p)
		r := reported(p)
		if got := strings.Join(r.Missing, "; "); !strings.Contains(got, c.want) || r.Zones[0].Known {
			t.Errorf("%s: %q, want %q (known %v)", c.name, got, c.want, r.Zones[0].Known)
		}
	}
}

// Both packages stack the same laminate: its thickness is that of package
// content, with patches and cores.
func TestThicknessAgrees(t *testing.T) {
	fabrics := []laminate.PlanFabric{
		{Name: "triax", WeightGSM: 800, Fibre: "carbon", Layers: []laminate.Layer{{AngleDeg: 0, WeightGSM: 400}, {AngleDeg: 45, WeightGSM: 200}, {AngleDeg: -45, WeightGSM: 200}}},
		{Name: "mat", WeightGSM: 450, Fibre: "e-glass", Form: laminate.Mat},
		{Name: "woven", WeightGSM: 300, Fibre: "flax", Form: laminate.Woven, Layers: []laminate.Layer{{AngleDeg: 0, WeightGSM: 200}, {AngleDeg: 90, WeightGSM: 100}}},
	}
	p := planOf(fabrics, laid{"mat", 0, ""}, laid{"triax", 30, laminate.FaceDown}, laid{"woven", 45, ""}, laid{"triax", -45, ""})
	p.Plies[2].Blank, p.Plies[2].Outline = rectangle(100, 100, 200, 200), "patch"
	p.Cores = []laminate.Core{{Name: "foam", AfterPly: 2, Outline: "core", Blank: rectangle(200, 50, 300, 300), ThicknessMM: 8, DensityKGM3: 60, UptakeGSM: given(300)}}
	c := content.Of(p)
	r := Of(p, c)
	if len(r.Missing) > 0 || len(r.Zones) != 4 {
		t.Fatalf("%d zones, missing %v", len(r.Zones), r.Missing)
	}
	for i, z := range r.Zones {
		near(t, z.Name, z.Whole.ThicknessMM, c.Zones[i].ThicknessMM.Value, 1e-12)
		if len(z.Skins) != 2*len(c.Zones[i].Cores) {
			t.Errorf("%s: %d skins with %d cores", z.Name, len(z.Skins), len(c.Zones[i].Cores))
		}
	}
}
