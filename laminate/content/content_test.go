package content

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

func given(v float64) laminate.Figure { return laminate.Figure{Value: v, Basis: laminate.Given} }

func rectangle(x, y, w, h float64) geometry.Region {
	return geometry.Region{Outer: orb.Ring{{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}}}
}

// panel is a plan of plies of one fabric, 1180 × 740 mm, trimmed by trim.
func panel(f laminate.PlanFabric, plies int, trim float64) laminate.Plan {
	f.Name = "cloth"
	p := laminate.Plan{Fabrics: []laminate.PlanFabric{f}}
	p.Part.Net = rectangle(0, 0, 1180, 740)
	p.Part.Blank = rectangle(-trim, -trim, 1180+2*trim, 740+2*trim)
	for i := range plies {
		p.Plies = append(p.Plies, laminate.PlanPly{Ply: i + 1, Fabric: "cloth", Blank: p.Part.Blank})
	}
	return p
}

func glass600() laminate.PlanFabric {
	return laminate.PlanFabric{WeightGSM: 600, Fibre: "e-glass", DensityGCM3: given(2.56), FibreVolume: given(.52)}
}

// Six plies of 600 g/m² glass, fibre density 2.56, fibre volume .52, resin 1.15,
// part 1180 × 740 mm: fibre 3.1435 kg, 2.7043 mm, resin 1.3035 kg, 4.447 kg
// (worked again by hand). The trim is not in the weight.
func TestPanelByHand(t *testing.T) {
	for _, trim := range []float64{0, 40} {
		p := panel(glass600(), 6, trim)
		p.Resin = &laminate.Resin{DensityGCM3: given(1.15)}
		r := Of(p)
		if len(r.Zones) != 1 || len(r.Missing) != 0 || !r.Whole.Weighed || !r.Whole.Thick {
			t.Fatalf("%+v", r)
		}
		near(t, "thickness", r.Zones[0].ThicknessMM.Value, 2.7043, 5e-5)
		near(t, "fibre", r.Whole.FibreG, 3143.5, 0.05)
		near(t, "resin", r.Whole.ResinG.Value, 1303.5, 0.05)
		near(t, "part", r.Whole.MassG().Value, 4447, 0.5)
		near(t, "fibre volume", r.Whole.FibreVolume(), .52, 1e-12)
		near(t, "density", r.Whole.DensityGCM3(), Density(.52, 2.56, 1.15), 1e-12)
		sum := 0.0
		for _, y := range r.Plies {
			sum += y.MassG().Value
		}
		near(t, "plies together", sum, r.Whole.MassG().Value, 1e-6)
		if r.Zones[0].WorkshopMM != 0 || r.Zones[0].ThicknessMM.Wide() {
			t.Errorf("glass has a workshop rule, or a spread where none is stated: %+v", r.Zones[0])
		}
	}
}

// The share of fibre comes from the fabric, else from the resin by mass or by
// volume, else from the form of cloth; what it stands on is said.
func TestWhereTheShareComesFrom(t *testing.T) {
	resin := func(change func(*laminate.Resin)) *laminate.Resin {
		r := &laminate.Resin{DensityGCM3: given(1.2)}
		change(r)
		return r
	}
	for _, c := range []struct {
		name   string
		fabric laminate.PlanFabric
		resin  *laminate.Resin
		want   string // value, span, basis
	}{
		{"the fabric's own", laminate.PlanFabric{Fibre: "e-glass", FibreVolume: given(.5)}, resin(func(r *laminate.Resin) { r.FibreVolume = given(.4) }), "0.5000 0.5000-0.5000 given "},
		{"the resin's", laminate.PlanFabric{Fibre: "e-glass"}, resin(func(r *laminate.Resin) { r.FibreVolume = given(.4) }), "0.4000 0.4000-0.4000 given "},
		{"with a band", laminate.PlanFabric{Fibre: "e-glass"}, resin(func(r *laminate.Resin) { r.FibreVolume, r.BandPoints = given(.4), given(3) }), "0.4000 0.3700-0.4300 given given: 3 points either way"},
		{"by mass", laminate.PlanFabric{DensityGCM3: given(2.56)}, resin(func(r *laminate.Resin) { r.FibreMass = given(.65) }), "0.4654 0.4654-0.4654 computed "},
		{"by mass, with a band", laminate.PlanFabric{DensityGCM3: given(2.56)}, resin(func(r *laminate.Resin) { r.FibreMass, r.BandPoints = given(.60), given(10) }), "0.4128 0.3191-0.5224 computed given: 10 points either way"},
		{"assumed", laminate.PlanFabric{Fibre: "carbon", Form: laminate.Woven}, nil, "0.5750 0.5500-0.6000 assumed usual span"},
		{"assumed, with a band", laminate.PlanFabric{Fibre: "carbon"}, resin(func(r *laminate.Resin) { r.BandPoints = given(1) }), "0.5750 0.5650-0.5850 assumed given: 1 points either way"},
		{"mat", laminate.PlanFabric{Fibre: "e-glass", Form: laminate.Mat}, nil, "0.2500 0.2000-0.3000 assumed usual span"},
	} {
		c.fabric.WeightGSM = 300
		p := panel(c.fabric, 1, 0)
		p.Resin = c.resin
		got := Of(p).Cloths[0]
		text := fmt.Sprintf("%.4f %.4f-%.4f %s %s", got.FibreVolume.Value, got.Band.Low, got.Band.High, got.FibreVolume.Basis, got.BandFrom)
		if text != c.want || !got.Thick() || len(got.Missing) > 0 {
			t.Errorf("%s: %q, want %q (missing %v)", c.name, text, c.want, got.Missing)
		}
		if got.ThicknessMM.Wide() != got.Band.Wide() || got.ThicknessMM.Low > got.ThicknessMM.Value || got.ThicknessMM.High < got.ThicknessMM.Value {
			t.Errorf("%s: thickness %v with fibre %v", c.name, got.ThicknessMM, got.Band)
		}
	}
}

// A stated share far from the usual one is remarked on: percent of mass taken for
// percent of volume, or one figure for cloth and mat.
func TestUnusualShares(t *testing.T) {
	for _, c := range []struct {
		form, fibre string
		vf          float64
		want        string
	}{
		{laminate.Mat, "e-glass", .52, "52.0 % fibre by volume in cloth is more than usual (chopped-strand mat, usually 0.20 to 0.30)"},
		{laminate.Woven, "e-glass", .70, "70.0 % fibre by volume in cloth is more than usual (infused glass cloth, usually 0.48 to 0.55)"},
		{"", "carbon", .40, "40.0 % fibre by volume in cloth is less than usual (infused carbon cloth, usually 0.55 to 0.60)"},
		{"", "carbon", .52, ""}, {"", "e-glass", .59, ""}, {"", "hemp", .9, ""},
	} {
		f := laminate.PlanFabric{WeightGSM: 300, Form: c.form, Fibre: c.fibre, DensityGCM3: given(2), FibreVolume: given(c.vf)}
		if got := Of(panel(f, 1, 0)).Cloths[0].Unusual; got != c.want {
			t.Errorf("%s %s at %v: %q, want %q", c.form, c.fibre, c.vf, got, c.want)
		}
	}
}

// What is missing is asked for, once, and nothing is invented in its place.
func TestMissingIsAskedFor(t *testing.T) {
	for _, c := range []struct {
		name    string
		fabric  laminate.PlanFabric
		resin   *laminate.Resin
		want    string
		thick   bool
		weighed bool
	}{
		{"no density", laminate.PlanFabric{}, &laminate.Resin{Name: "epoxy"}, "thickness cannot be worked out: write density: for fabric cloth; thickness cannot be worked out: write fibre_volume: for fabric cloth, or under resin:", false, false},
		{"a fibre nobody knows", laminate.PlanFabric{Fibre: "wool", FibreVolume: given(.4)}, &laminate.Resin{Name: "epoxy"}, "thickness cannot be worked out: write density: for fabric cloth", false, false},
		{"no resin", glass600(), nil, "weight and resin cannot be worked out: write resin: with name: or density:", true, false},
		{"a resin nobody knows", glass600(), &laminate.Resin{Name: "honey"}, "weight and resin cannot be worked out: write resin: with name: or density:", true, false},
		{"mass without resin density", laminate.PlanFabric{Fibre: "e-glass"}, &laminate.Resin{FibreMass: given(.6)}, "fibre content by mass needs the resin's density: write density: under resin:; weight and resin cannot be worked out: write resin: with name: or density:", false, false},
		{"a share of percent", laminate.PlanFabric{Fibre: "e-glass", FibreVolume: given(52)}, &laminate.Resin{Name: "epoxy"}, "thickness cannot be worked out: a fibre content of 5200.0 % in cloth is out of reason", false, false},
		{"a share of nothing", laminate.PlanFabric{Fibre: "e-glass"}, &laminate.Resin{Name: "epoxy", FibreMass: given(0)}, "thickness cannot be worked out: a fibre content of 0.0 % in cloth is out of reason", false, false},
		{"a density in kg/m3", laminate.PlanFabric{DensityGCM3: given(2540), FibreVolume: given(.5)}, &laminate.Resin{Name: "epoxy"}, "thickness cannot be worked out: write density: for fabric cloth", false, false},
		{"nothing", glass600(), &laminate.Resin{Name: "Epoxy"}, "", true, true},
	} {
		c.fabric.WeightGSM = 300
		p := panel(c.fabric, 2, 0)
		p.Resin = c.resin
		r := Of(p)
		if got := strings.Join(r.Missing, "; "); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
		if r.Whole.Thick != c.thick || r.Whole.Weighed != c.weighed {
			t.Errorf("%s: thickness known %v, weight known %v", c.name, r.Whole.Thick, r.Whole.Weighed)
		}
		if !c.thick && r.Zones[0].ThicknessMM.Value != 0 {
			t.Errorf("%s: invented a thickness of %v", c.name, r.Zones[0].ThicknessMM)
		}
	}
}

// Kinds of the job's own go before the library's.
func TestOwnKinds(t *testing.T) {
	p := panel(laminate.PlanFabric{WeightGSM: 300, Fibre: "hemp", FibreVolume: given(.4)}, 1, 0)
	p.Fibres = []laminate.FibreKind{{Name: "hemp", DensityGCM3: given(1.48)}}
	p.Resins = []laminate.ResinKind{{Name: "acrylic", DensityGCM3: given(1.19)}}
	p.Resin = &laminate.Resin{Name: "acrylic"}
	r := Of(p)
	near(t, "thickness", r.Zones[0].ThicknessMM.Value, 300/(1000*.4*1.48), 1e-12)
	near(t, "resin", r.Cloths[0].ResinGSM.Value, 300/(1000*.4*1.48)*1000*.6*1.19, 1e-9)
}

// A patch of 200 × 100 mm and a core under half of the part: zones by hand.
func TestZonesWithPatchAndCore(t *testing.T) {
	p := panel(glass600(), 2, 20)
	p.Resin = &laminate.Resin{DensityGCM3: given(1.15)}
	p.Plies = append(p.Plies, laminate.PlanPly{Ply: 3, Fabric: "cloth", Outline: "patch", Blank: rectangle(100, 100, 200, 100)})
	p.Cores = []laminate.Core{{Name: "foam", Blank: rectangle(590, -20, 700, 780), ThicknessMM: 12, DensityKGM3: 80, UptakeGSM: given(350)}}
	r := Of(p)
	one := 600 / (1000 * .52 * 2.56)
	var got []string
	for _, z := range r.Zones {
		got = append(got, fmt.Sprintf("%s %v %.0f %.4f", z.Name, z.Plies, z.AreaMM2, z.ThicknessMM.Value))
	}
	want := []string{
		fmt.Sprintf("Z1 [0 1] 436600 %.4f", 2*one+12),
		fmt.Sprintf("Z2 [0 1] 416600 %.4f", 2*one),
		fmt.Sprintf("Z3 [0 1 2] 20000 %.4f", 3*one),
	}
	if strings.Join(got, ", ") != strings.Join(want, ", ") {
		// The halves differ by the patch, so that the half with the core is larger.
		t.Errorf("%v, want %v", got, want)
	}
	near(t, "core", r.Whole.CoreG, 590*740*12*80/1e6, 1e-9)
	near(t, "resin in its faces", r.Whole.CoreTakeG, 590*740*2*350/1e6, 1e-9)
	near(t, "fibre", r.Whole.FibreG, (1180*740*2+20000)*600/1e6, 1e-9)
	near(t, "fibre volume", r.Whole.FibreVolume(), .52, 1e-12)
	near(t, "patch in the part", r.Plies[2].NetMM2, 20000, 1e-9)
	sum := 0.0
	for _, z := range r.Zones {
		sum += z.MassG().Value
	}
	near(t, "zones together", sum, r.Whole.MassG().Value, 1e-6)
}

// Laps: strips of 320 mm on a blank of 600 mm lie over each other by 40 mm.
func TestLaps(t *testing.T) {
	y := laminate.PlanPly{Ply: 1, Fabric: "cloth", Blank: rectangle(0, 0, 1000, 600), Strips: []laminate.Strip{
		{Shape: rectangle(0, 0, 1000, 320)}, {Shape: rectangle(0, 280, 1000, 320)},
	}}
	near(t, "laps", Laps(y), 640.0/600, 1e-12)
	p := panel(glass600(), 1, 0)
	p.Resin = &laminate.Resin{DensityGCM3: given(1.15)}
	plain := Of(p)
	p.Plies[0].Strips, p.Plies[0].Blank = y.Strips, rectangle(0, 0, 1180, 740)
	p.Plies[0].Strips = []laminate.Strip{{Shape: rectangle(0, 0, 1180, 390)}, {Shape: rectangle(0, 350, 1180, 390)}}
	lapped := Of(p)
	near(t, "weight", lapped.Whole.MassG().Value/plain.Whole.MassG().Value, 780.0/740, 1e-12)
	near(t, "thickness", lapped.Zones[0].ThicknessMM.Value/plain.Zones[0].ThicknessMM.Value, 780.0/740, 1e-12)
	y.Strips = []laminate.Strip{{Shape: rectangle(0, 0, 1000, 299)}, {Shape: rectangle(0, 300, 1000, 300)}}
	if Laps(y) != 1 {
		t.Errorf("a gap counts as %v", Laps(y))
	}
}

// The second estimate: only where all fibre is carbon, and a word where the two
// differ by more than a tenth.
func TestWorkshopBesideContent(t *testing.T) {
	for _, c := range []struct {
		fibre string
		vf    float64
		rule  float64
		apart bool
	}{
		{"carbon", .56, 2.4, false}, // 2.4 mm against 2.408
		{"Carbon intermediate", .56, 2.4, false},
		{"carbon", .45, 2.4, true}, // 2.4 mm against 3.0
		{"carbon", .63, 2.4, true}, // 2.4 mm against 2.14
		{"e-glass", .56, 0, false},
	} {
		f := laminate.PlanFabric{WeightGSM: 800, Fibre: c.fibre, FibreVolume: given(c.vf)}
		z := Of(panel(f, 3, 0)).Zones[0]
		if math.Abs(z.WorkshopMM-c.rule) > 1e-12 || z.Apart() != c.apart {
			t.Errorf("%s at %v: rule %v mm, content %v mm, apart %v", c.fibre, c.vf, z.WorkshopMM, z.ThicknessMM.Value, z.Apart())
		}
	}
	p := panel(laminate.PlanFabric{WeightGSM: 800, Fibre: "carbon", FibreVolume: given(.5)}, 2, 0)
	p.Fabrics = append(p.Fabrics, laminate.PlanFabric{Name: "veil", WeightGSM: 30, Fibre: "e-glass", FibreVolume: given(.2)})
	p.Plies = append(p.Plies, laminate.PlanPly{Ply: 3, Fabric: "veil", Blank: p.Part.Blank})
	if z := Of(p).Zones[0]; z.WorkshopMM != 0 {
		t.Errorf("the workshop rule is used with glass in the laminate: %v mm", z.WorkshopMM)
	}
}
