package measured

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/laminate/content"
)

func given(v float64) laminate.Figure { return laminate.Figure{Value: v, Basis: laminate.Given} }

func near(t *testing.T, what string, got, want, digits float64) {
	t.Helper()
	if !(math.Abs(got-want) <= digits) {
		t.Errorf("%s: %.6g, want %.6g", what, got, want)
	}
}

// ASTM D3171 method II and D2734 (formulas from memory, arithmetic worked again).
func TestStandardFormulas(t *testing.T) {
	near(t, "D3171", FibrePercent(300, 8, 1.80, 2.4242), 55.0, 0.001)
	solid := SolidDensity(35, 1.20, 65, 2.56)
	near(t, "D2734, solid", solid, 1.83294, 5e-6)
	near(t, "D2734, voids", VoidPercent(solid, 1.79), 2.3424, 5e-5)
}

const squareFootMM2 = 304.8 * 304.8

// carbonPanel is nine plies of carbon, two woven faces of 200 g/m² and seven
// triaxial plies of 800 g/m², of which a square foot weighed 28.1 oz (797 g) at
// 5.9 mm.
func carbonPanel() laminate.Plan {
	square := geometry.Region{Outer: orb.Ring{{0, 0}, {900, 0}, {900, 600}, {0, 600}}}
	p := laminate.Plan{Fabrics: []laminate.PlanFabric{
		{Name: "woven", WeightGSM: 200, Fibre: "carbon", Form: laminate.Woven, DensityGCM3: given(1.80)},
		{Name: "triaxial", WeightGSM: 800, Fibre: "carbon", Form: laminate.Triaxial, DensityGCM3: given(1.80)},
	}}
	p.Part.Net = square
	for i := range 9 {
		f := "triaxial"
		if i == 0 || i == 8 {
			f = "woven"
		}
		p.Plies = append(p.Plies, laminate.PlanPly{Ply: i + 1, Fabric: f, Blank: square})
	}
	p.Resin = &laminate.Resin{Name: "epoxy"}
	p.Measured = &laminate.Measured{
		WeightG: 28.1 * 28.349523125, AreaMM2: squareFootMM2, ThicknessMM: 5.9, ThinnestMM: 5.7, ThickestMM: 5.9, ClothBand: given(5),
	}
	return p
}

// What came of that panel: 56 to 57 % fibre by volume, about 30 % resin by weight;
// the void estimate runs from about 2 % to 7 % for cloth ±5 % and 5.7 to 5.9 mm,
// and cannot be trusted (common practice, no source).
func TestCarbonPanel(t *testing.T) {
	p := carbonPanel()
	m := Of(p, content.Of(p))
	if m == nil || m.Contradicted != "" || len(m.Missing) > 0 || m.Of != "the part" {
		t.Fatalf("%+v", m)
	}
	if v := 100 * m.FibreVolume.Value; v < 56 || v > 57 {
		t.Errorf("fibre by volume %v %%, want 56 to 57", v)
	}
	near(t, "the same by D3171", 100*m.FibreVolume.Value, FibrePercent(6000, 1, 1.80, 5.9), 1e-9)
	near(t, "resin by weight", 100*(1-m.FibreMass.Value), 30, 0.5)
	near(t, "g/m²", m.PanelGSM, 8575, 1) // 28.1 oz/ft²
	v := m.Void
	near(t, "least void", v.OneLow, 2, 0.5)
	near(t, "most void", v.OneHigh, 7, 0.5)
	if v.Trusted() {
		t.Errorf("a void estimate of %.1f %%, %.1f to %.1f, is trusted", v.Percent, v.Low, v.High)
	}
	if len(v.Causes) != 2 || v.Causes[0].Words != "cloth ±5 % (given)" || v.Causes[1].Words != "thickness 5.7 to 5.9 mm (given)" {
		t.Errorf("causes %+v", v.Causes)
	}
	if v.Low > v.OneLow || v.High < v.OneHigh {
		t.Errorf("all at once %v to %v is within one at a time %v to %v", v.Low, v.High, v.OneLow, v.OneHigh)
	}
	near(t, "thickness reckoned", m.Reckoned.ThicknessMM.Value, 6000/(575*1.8), 1e-9)
}

// With figures weighed and measured well, the estimate may be trusted.
func TestTrustedVoid(t *testing.T) {
	p := carbonPanel()
	p.Measured.DryG = 6000 * squareFootMM2 / 1e6
	p.Measured.ThinnestMM, p.Measured.ThickestMM, p.Measured.ThicknessMM = 5.89, 5.91, 5.9
	p.Measured.ScaleBand = given(0.2)
	m := Of(p, content.Of(p))
	if !m.Weighed || !m.Void.Trusted() || m.Void.Causes[0].Words != "fibre weighed dry ±0.2 % (given)" {
		t.Errorf("%+v", m.Void)
	}
	near(t, "fibre", m.FibreGSM, 6000, 1e-9)
}

// A panel that is built on paper without voids, or with a stated share of them,
// gives its fibre and its voids back.
func TestPaperPanel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := carbonPanel()
		vf := rapid.Float64Range(0.3, 0.65).Draw(t, "fibre volume")
		void := rapid.Float64Range(0, 0.1).Draw(t, "voids")
		area := rapid.Float64Range(1e4, 5e5).Draw(t, "area")
		thick := 6000 / (1800 * vf)
		gsm := 6000 + (1-vf-void)*thick*1150
		p.Measured = &laminate.Measured{WeightG: gsm * area / 1e6, AreaMM2: area, ThicknessMM: thick}
		m := Of(p, content.Of(p))
		if math.Abs(m.FibreVolume.Value-vf) > 1e-9 || math.Abs(m.Void.Percent-100*void) > 1e-7 {
			t.Fatalf("fibre %v of %v, voids %v of %v", m.FibreVolume.Value, vf, m.Void.Percent, 100*void)
		}
		if m.Void.Low > m.Void.Percent || m.Void.High < m.Void.Percent || m.FibreMass.Low > m.FibreMass.Value {
			t.Fatalf("spans do not hold their figures: %+v", m)
		}
	})
}

// A piece is held against the largest zone, a panel of the part's size against
// the whole part.
func TestHeldAgainst(t *testing.T) {
	p := carbonPanel()
	patch := geometry.Region{Outer: orb.Ring{{100, 100}, {300, 100}, {300, 300}, {100, 300}}}
	p.Plies = append(p.Plies, laminate.PlanPly{Ply: 10, Fabric: "triaxial", Blank: patch})
	p.Measured.WeightG = p.Measured.WeightG / p.Measured.AreaMM2 * 535e3
	p.Measured.AreaMM2 = 535e3
	m := Of(p, content.Of(p))
	if m.Of != "the whole part" {
		t.Errorf("held against %s", m.Of)
	}
	near(t, "fibre", m.FibreGSM, 6000+800*40.0/540, 1e-9)
	p.Measured.AreaMM2, p.Measured.WeightG = 1e5, 857
	if m := Of(p, content.Of(p)); m.Of != "zone Z1" || m.FibreGSM != 6000 {
		t.Errorf("held against %s with %v g/m²", m.Of, m.FibreGSM)
	}
}

// Figures that contradict each other, or are missing, are named.
func TestWhatCannotBe(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*laminate.Plan)
		want   string
	}{
		{"lighter than its cloth", func(p *laminate.Plan) { p.Measured.WeightG = 500 }, "the panel weighs less than the cloth in it"},
		{"too thin", func(p *laminate.Plan) {
			p.Measured.ThicknessMM, p.Measured.ThinnestMM, p.Measured.ThickestMM = 3.5, 3.4, 3.6
		}, "no cloth packs so tightly"},
		{"no room for the resin", func(p *laminate.Plan) { p.Measured.WeightG = 900 }, "need more room than the panel has"},
		{"no weight", func(p *laminate.Plan) { p.Measured.WeightG = 0 }, "must all be above 0"},
		{"not a number", func(p *laminate.Plan) { p.Measured.AreaMM2 = math.NaN() }, "must all be above 0"},
		{"no density of fibre", func(p *laminate.Plan) { p.Fabrics[0].DensityGCM3, p.Fabrics[0].Fibre = laminate.Figure{}, "wool" }, "write density: for fabric woven"},
		{"no density of resin", func(p *laminate.Plan) { p.Resin = nil }, "voids cannot be estimated"},
		{"a core", func(p *laminate.Plan) {
			p.Cores = []laminate.Core{{Name: "foam", Blank: p.Part.Net, ThicknessMM: 10, DensityKGM3: 80, UptakeGSM: given(300)}}
		}, "weigh a piece of its skin"},
		{"no ply", func(p *laminate.Plan) { p.Plies = nil }, "no ply lies"},
	} {
		p := carbonPanel()
		c.change(&p)
		m := Of(p, content.Of(p))
		if m.Contradicted != "" && m.Void != nil {
			t.Errorf("%s: voids are estimated from figures that contradict each other: %+v", c.name, m.Void)
		}
		got := m.Contradicted + "|" + strings.Join(m.Missing, "|")
		if !strings.Contains(got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
	p := carbonPanel()
	p.Measured = nil
	if m := Of(p, content.Of(p)); m != nil {
		t.Errorf("nothing was measured: %+v", m)
	}
}

// A combined peel ply and flow medium took up about 763 g/m², 2.5 oz per square
// foot (common practice, no source).
func TestUptake(t *testing.T) {
	near(t, "g/m²", UptakeGSM(3.1*28.349523125, 5.6*28.349523125, squareFootMM2), 763, 0.5)
	p := laminate.Plan{
		Consumables: []laminate.Consumable{{Name: "mesh", UptakeGSM: given(500)}, {Name: "peel", UptakeGSM: given(100)}},
		Uptakes: []laminate.Uptake{
			{Consumable: "mesh", AreaMM2: 1e5, DryG: 20, WetG: 80},
			{Consumable: "peel", AreaMM2: 1e5, DryG: 8, WetG: 18.5},
			{Consumable: "mesh", AreaMM2: 1e5, DryG: 80, WetG: 20},
			{Consumable: "other", AreaMM2: 0, DryG: 1, WetG: 2},
		},
	}
	var got []string
	for _, u := range Uptakes(p) {
		got = append(got, fmt.Sprintf("%s %.0f %.0f %v %s", u.Consumable, u.GSM, u.StatedGSM, u.Differs(), u.Wrong))
	}
	want := []string{
		"mesh 600 500 true ", "peel 105 100 false ",
		"mesh 0 500 false it weighs less wet than dry: are the two weights exchanged?", "other 0 0 false its area must be above 0",
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got %q, want %q", got, want)
	}
}
