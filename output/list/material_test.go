package list

import (
	"flag"
	"os"
	"strings"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/output/internal/handmade"
)

var update = flag.Bool("update", false, "write the golden reports anew")

func given(v float64) laminate.Figure { return laminate.Figure{Value: v, Basis: laminate.Given} }

// carbonPanel is nine plies of carbon, triaxial plies turned over at the middle,
// with a patch and a measured piece.
func carbonPanel() laminate.Plan {
	rectangle := func(x, y, w, h float64) geometry.Region {
		return geometry.Region{Outer: orb.Ring{{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}}}
	}
	p := laminate.Plan{Fabrics: []laminate.PlanFabric{
		{Name: "carbon twill 200", WeightGSM: 200, Fibre: "carbon", Form: laminate.Woven, DensityGCM3: given(1.80)},
		{Name: "carbon triax 800", WeightGSM: 800, Fibre: "carbon", Form: laminate.Triaxial, DensityGCM3: given(1.80),
			Layers: []laminate.Layer{{AngleDeg: 0}, {AngleDeg: 45}, {AngleDeg: -45}}},
	}}
	p.Part.Net, p.Part.Blank = rectangle(0, 0, 900, 600), rectangle(-25, -25, 950, 650)
	for i := range 9 {
		y := laminate.PlanPly{Ply: i + 1, Fabric: "carbon triax 800", Face: laminate.FaceUp, Blank: p.Part.Blank}
		if i > 4 {
			y.Face = laminate.FaceDown
		}
		if i == 0 || i == 8 {
			y.Fabric = "carbon twill 200"
		}
		p.Plies = append(p.Plies, y)
	}
	p.Plies = append(p.Plies, laminate.PlanPly{Ply: 10, Fabric: "carbon triax 800", Face: laminate.FaceUp, Outline: "patch", Blank: rectangle(100, 100, 200, 150)})
	p.Resin = &laminate.Resin{Name: "epoxy"}
	p.Measured = &laminate.Measured{
		WeightG: 28.1 * 28.349523125, AreaMM2: 304.8 * 304.8, ThicknessMM: 5.9, ThinnestMM: 5.7, ThickestMM: 5.9, ClothBand: given(5),
	}
	p.Consumables = []laminate.Consumable{{Name: "peel ply and mesh", UptakeGSM: given(600)}}
	p.Uptakes = []laminate.Uptake{{Consumable: "peel ply and mesh", AreaMM2: 304.8 * 304.8, DryG: 88, WetG: 158.87}}
	return p
}

func materialText(p laminate.Plan) string {
	var b strings.Builder
	for _, s := range Material(p) {
		b.WriteString(s.Text())
	}
	return b.String()
}

// sandwich is a hatch lid of stitched glass with a foam core under its middle,
// in a resin of the job's own, which lacks a constant.
func sandwich() laminate.Plan {
	p := handmade.Hatch()
	p.Fabrics[0].Layers = []laminate.Layer{{AngleDeg: 45}, {AngleDeg: -45}}
	p.Fabrics[0].FibreVolume = given(0.5)
	p.Resin = &laminate.Resin{Name: "polyester", BandPoints: given(3)}
	p.Cores = []laminate.Core{{Name: "foam 12", AfterPly: 4, Outline: "core", ThicknessMM: 12, DensityKGM3: 80, UptakeGSM: given(350),
		Blank: geometry.Region{Outer: orb.Ring{{200, 150}, {780, 150}, {780, 550}, {200, 550}}}}}
	return p
}

// Both reports, letter by letter; a change is looked at, then written with
// -update. The figures themselves are held by the packages that work them out.
func TestMaterialReports(t *testing.T) {
	for name, p := range map[string]laminate.Plan{"carbon-panel": carbonPanel(), "sandwich": sandwich()} {
		path := "testdata/" + name + ".txt"
		got := materialText(p)
		if *update {
			if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(path)
		if err != nil || got != string(want) {
			t.Errorf("%s differs: %v\n%s", path, err, got)
		}
	}
}

// What a laminator must find in the report of the panel that was measured.
func TestMaterialReportSays(t *testing.T) {
	text := strings.Join(strings.Fields(materialText(carbonPanel())), " ")
	for _, want := range []string{
		"Z1 6 mm (0.236 in), Z2 6.8 mm (0.268 in)", "(common practice, no source)",
		"THE VOID FIGURE CANNOT BE TRUSTED", "write uptake: 763 g/m2", "cure shrinkage and moisture not included",
		"carbon twill 200: density given; fibre volume assumed, infused carbon cloth, usually 0.55 to 0.60",
		"generic carbon in epoxy",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in the report", want)
		}
	}
}

// A job that states no more than its cloth gets what can be worked out, and what
// to write for the rest; nothing is invented.
func TestMaterialReportAsks(t *testing.T) {
	p := handmade.Hatch()
	text := strings.Join(strings.Fields(materialText(p)), " ")
	for _, want := range []string{
		"MISSING: weight and resin cannot be worked out: write resin: with name: or density:",
		"MISSING: stiffness cannot be worked out: write name: under resin:",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in the report:\n%s", want, text)
		}
	}
	p.Fabrics[0].Fibre = ""
	text = materialText(p)
	if !strings.Contains(text, "write density: for fabric biax450") || strings.Contains(text, "NaN") {
		t.Errorf("%s", text)
	}
}

// Whatever figures stand in a plan that was edited by hand, the reports say what
// is unknown or wrong and print no figure that is none.
func TestMaterialReportOfSpoiledPlans(t *testing.T) {
	odd := rapid.SampledFrom([]float64{0, -1, 1e-9, 1e-3, 0.3, 0.55, 1, 1.2, 2.5, 80, 450, 1e6, 1e12})
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) float64 { return odd.Draw(t, name) }
		some := func(name string) laminate.Figure {
			if rapid.Bool().Draw(t, name+" stated") {
				return given(draw(name))
			}
			return laminate.Figure{}
		}
		p := rapid.SampledFrom([]func() laminate.Plan{carbonPanel, sandwich, handmade.Disc}).Draw(t, "plan")()
		for i := range p.Fabrics {
			f := &p.Fabrics[i]
			f.WeightGSM, f.DensityGCM3, f.FibreVolume = draw("weight"), some("density"), some("fibre volume")
			f.Form = rapid.SampledFrom([]string{"", laminate.Mat, laminate.Woven, "felt"}).Draw(t, "form")
			if rapid.Bool().Draw(t, "elastic") {
				f.Elastic = &laminate.Elastic{E1: draw("e1"), E2: draw("e2"), G12: draw("g12"), Nu12: draw("nu"), Alpha1: draw("a1"), Alpha2: draw("a2")}
			}
			for k := range f.Layers {
				f.Layers[k].AngleDeg, f.Layers[k].WeightGSM = draw("angle"), draw("layer")
			}
		}
		p.Resin = &laminate.Resin{Name: "epoxy", DensityGCM3: some("resin"), FibreVolume: some("of resin"), FibreMass: some("by mass"), BandPoints: some("band")}
		p.Cores = append(p.Cores, laminate.Core{AfterPly: int(draw("after") / 1e6), Blank: p.Part.Net, ThicknessMM: draw("core"), DensityKGM3: draw("core density"), UptakeGSM: some("uptake")})
		p.Measured = &laminate.Measured{WeightG: draw("panel"), AreaMM2: draw("area"), ThicknessMM: draw("thick"), ThinnestMM: draw("thin"), ThickestMM: draw("thickest"), DryG: draw("dry"), ClothBand: some("cloth"), ScaleBand: some("scale")}
		p.Uptakes = []laminate.Uptake{{AreaMM2: draw("u area"), DryG: draw("u dry"), WetG: draw("u wet")}}
		p.Plies[0].Fabric = rapid.SampledFrom([]string{p.Plies[0].Fabric, "nobody's"}).Draw(t, "fabric")
		text := materialText(p)
		for _, bad := range []string{"NaN", "Inf", "--"} {
			if strings.Contains(text, bad) {
				t.Fatalf("%s in\n%s", bad, text)
			}
		}
	})
}

// The one line of the summary.
func TestMaterialLine(t *testing.T) {
	bare, unknown := handmade.Hatch(), handmade.Hatch()
	unknown.Fabrics[0].Fibre = ""
	for want, p := range map[string]laminate.Plan{
		"laminate: 5.8 mm (0.228 in) thick, 2 zones from 5.8 to 6.57 mm; 4.805 kg (10.59 lb) without trim; 57.5 % fibre by volume (assumed)": carbonPanel(),
		"laminate: 2.13 mm (0.084 in) thick, 4 zones from 2.13 to 14.48 mm; 3.483 kg (7.68 lb) without trim; 50 % fibre by volume":           sandwich(),
		"laminate: 2.06 mm (0.081 in) thick, 2 zones from 2.06 to 2.41 mm; 51.5 % fibre by volume (assumed)":                                 bare,
		"laminate: thickness cannot be worked out: write density: for fabric biax450":                                                        unknown,
		"": {},
	} {
		if got := materialLine(p); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
