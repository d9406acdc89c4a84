package job

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"stripwright/laminate"
)

// supplied is a job with every key of resin, consumables, cores, measurements
// and of the library.
const supplied = `title: Hatch
units: mm
part: {outline: {rectangle: [1000, 600]}, trim: 25, drawn_from: laying side}
outlines: {doubler: {rectangle: [300, 200], at: [0, 0]}}
fibres:
  hemp: {density: 1.48 g/cm3, e1: 35, e2: 5, g12: 3 GPa, nu12: 0.3, alpha1: -1.5, alpha2: 60}
  e-glass: {density: 2.58 g/cm3}
resins:
  bio: {density: 1160 kg/m3, e: 3100 MPa, nu: 0.35, alpha: 65}
resin:
  name: bio
  resin_ratio: 0.6
  band: 3 %
  lines_and_pot: 12 oz
  spare: 10 %
  mix: {by: volume, parts: [2, 1], densities: [1.13, 0.98 g/cm3]}
  batch: 2 kg
  sold_by: 6.5 kg
  on_hand: 8 oz
  price: 8/lb
fabrics:
  hemp cloth:
    weight: 300 g/m2
    fibre: Hemp
    form: woven
    fibre_mass: 50 %
    rolls: [{id: A, width: 600}]
  biax:
    weight: 450 g/m2
    fibre: e-glass
    layers: [45, -45]
    elastic: {e1: 40, e2: 10, g12: 4000 MPa, nu12: 0.28, alpha1: 6, alpha2: 28}
    rolls: [{id: B, width: 600}]
cores:
  foam: {thickness: 15, density: 80 kg/m3, uptake: 350 g/m2, sheet: [1200, 600], on_hand: 1, price: 21}
  balsa: {thickness: 3/8 in, density: 0.15 g/cm3, uptake: 1 oz/ft2}
schedule:
  - {fabric: hemp cloth, angle: 0}
  - {core: foam}
  - {core: balsa, outline: doubler}
  - {fabric: biax, angle: 0, times: 2}
joints: {stagger: 50, plies_between: 4}
consumables:
  peel ply: {margin: 60, uptake: 90, width: 1.5 m, sold_by: 1 yd, spare: 5 %, on_hand: 2 m, price: 2.40, layers: 2}
  mesh: {kind: flow media, test: {size: [200, 200], dry: 12 g, wet: 28 g}}
  film: {pleats: 6, pleat: 40}
  sealant tape: {sold_by: 15 m}
  feed: {kind: tube, length: 4 m, price: 0.8}
  pad: {kind: other, uptake: 500}
order: {spare: 8 %}
measured: {weight: 28.1 oz, area: 1 ft2, thickness: [5.8, 5.9, 6], dry: 550 g, cloth_band: 5 %, scale_band: 1 %}
`

func of(v float64, basis, from string) laminate.Figure {
	return laminate.Figure{Value: v, Basis: basis, From: from}
}

func TestSupplies(t *testing.T) {
	j := read(t, supplied)
	mass := 1 / 1.6
	hemp := (0.5 / 1.48) / (0.5/1.48 + 0.5/1.16)
	near := cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) <= 1.1e-9*math.Max(1, math.Abs(b)) })
	for _, c := range []struct {
		what      string
		got, want any
	}{
		{"resin", *j.Resin, laminate.Resin{
			Name: "bio", DensityGCM3: given(1.16), FibreMass: of(mass, laminate.Computed, "resin ratio 0.6"), BandPoints: given(3), LinesAndPotG: given(12 * 28.349523125),
			SparePercent: given(10), BatchG: 2000, SoldByG: 6500, OnHandG: 226.796, PricePerKG: 8 / 0.45359237, HasPrice: true,
			Mix: &laminate.Mix{ByVolume: true, PartsA: 2, PartsB: 1, DensityAGCM3: 1.13, DensityBGCM3: 0.98},
		}},
		{"consumables", j.Consumables, []laminate.Consumable{
			{Name: "peel ply", Kind: laminate.PeelPly, MarginMM: given(60), UptakeGSM: given(90), Layers: 2, WidthMM: 1500, SoldByMM: 914.4, SparePercent: given(5), OnHandMM: 2000, PricePerMetre: 2.4, HasPrice: true},
			{Name: "mesh", Kind: laminate.FlowMedia, MarginMM: of(-20, laminate.Assumed, "20 mm short of the trim line"), UptakeGSM: of(400, laminate.Computed, "a piece weighed dry and wet"), Layers: 1, SparePercent: of(8, laminate.Assumed, "spare of the cloth")},
			{Name: "film", Kind: laminate.Film, MarginMM: of(175, laminate.Assumed, "the sealant tape and 50 mm"), Pleats: given(6), PleatMM: given(40), Layers: 1, SparePercent: of(8, laminate.Assumed, "spare of the cloth")},
			{Name: "sealant tape", Kind: laminate.Sealant, MarginMM: of(125, laminate.Assumed, "the trim allowance and 100 mm"), Pleats: of(6, laminate.Given, "as film"), PleatMM: of(40, laminate.Given, "as film"), Layers: 1, SoldByMM: 15000, SparePercent: of(8, laminate.Assumed, "spare of the cloth")},
			{Name: "feed", Kind: laminate.Tube, LengthMM: given(4000), Layers: 1, SparePercent: of(8, laminate.Assumed, "spare of the cloth"), PricePerMetre: 0.8, HasPrice: true},
			{Name: "pad", Kind: laminate.Other, MarginMM: of(25, laminate.Assumed, "the trim allowance"), UptakeGSM: given(500), Layers: 1, SparePercent: of(8, laminate.Assumed, "spare of the cloth")},
		}},
		{"uptakes", j.Uptakes, []laminate.Uptake{{Consumable: "mesh", AreaMM2: 40000, DryG: 12, WetG: 28}}},
		{"measured", *j.Measured, laminate.Measured{WeightG: 796.622, AreaMM2: 92903.04, ThicknessMM: 5.9, ThinnestMM: 5.8, ThickestMM: 6, DryG: 550, ClothBand: given(5), ScaleBand: given(1)}},
		{"cores", j.Cores, []laminate.Core{
			{Name: "foam", AfterPly: 1, Blank: j.Part.Blank, ThicknessMM: 15, DensityKGM3: 80, UptakeGSM: given(350), SheetMM: [2]float64{1200, 600}, OnHand: 1, PricePerSheet: 21, HasPrice: true},
			{Name: "balsa", AfterPly: 1, Outline: "doubler", Blank: j.Cores[1].Blank, ThicknessMM: 9.525, DensityKGM3: 150, UptakeGSM: given(28.349523125 / (0.3048 * 0.3048))},
		}},
		{"doubler", j.Cores[1].Blank.Area(), 60000.0},
		{"plies", len(j.Plies), 3},
		{"forms", []string{j.Fabrics[0].Form, j.Fabrics[1].Form}, []string{laminate.Woven, laminate.Biaxial}},
		{"densities", []laminate.Figure{j.Fabrics[0].DensityGCM3, j.Fabrics[1].DensityGCM3}, []laminate.Figure{given(1.48), given(2.58)}},
		{"hemp", j.Fabrics[0].FibreVolume, of(hemp, laminate.Computed, "fibre by mass 50 %")},
		{"biax", j.Fabrics[1].FibreVolume, laminate.Figure{}},
		{"elastic", *j.Fabrics[1].Elastic, laminate.Elastic{E1: 40, E2: 10, G12: 4, Nu12: 0.28, Alpha1: 6, Alpha2: 28}},
		{"fibre", j.Fibres[0], laminate.FibreKind{Name: "hemp", DensityGCM3: given(1.48), E1: given(35), E2: given(5), G12: given(3), Nu12: given(0.3), Alpha1: given(-1.5), Alpha2: given(60)}},
		{"resin kind", j.Resins[0], laminate.ResinKind{Name: "bio", DensityGCM3: given(1.16), E: given(3.1), Nu: given(0.35), Alpha: given(65)}},
	} {
		if diff := cmp.Diff(c.want, c.got, near); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.what, diff)
		}
	}
}

// What a job leaves out of resin and consumables is said; what is not known is
// not made up.
func TestSuppliesAssumed(t *testing.T) {
	j := read(t, `part: {outline: {rectangle: [700, 500]}, trim: 10, drawn_from: laying side}
fabrics:
  ud: {weight: 300 g/m2, fibre: e-glass, form: unidirectional, rolls: [{id: A, width: 300}]}
cores: {foam: {thickness: 10, density: 60 kg/m3}, spare: {thickness: 5, density: 60 kg/m3}}
schedule: [{core: foam}, {fabric: ud, angle: 90}]
joints: {stagger: 50, plies_between: 4}
resin: {name: Epoxy}
consumables:
  peel ply: {}
  flow media: {margin: 5}
  film: {}
  sealant tape: {}
`)
	var got []string
	for _, n := range j.Notes {
		switch n.Rule {
		case "units", "title", "corners", "bad_edge", "turn", "spare", "sold_by", "effort", "seed", "narrowest", "cutting_gap", "laying_tolerance":
			if n.Rule != "spare" || !strings.Contains(n.Text, "resin") {
				continue
			}
		}
		got = append(got, strings.TrimPrefix(n.Where, "lid.yaml")+": "+n.Rule+": "+n.Text)
	}
	want := []string{
		":7: density: assumed resin density 1.15 g/cm3 of epoxy, a table value",
		":7: lines_and_pot: assumed no resin held by feed lines and pot: write lines_and_pot: with what yours hold",
		":7: spare: assumed no spare resin: spare 0 %",
		":7: mix: no mix is written: resin and hardener cannot be told apart; write mix: {by: weight, parts: [100, 30]} from the data sheet",
		":3: density: assumed fibre density 2.54 g/cm3 of e-glass, a table value",
		":3: fibre_volume: assumed 51.5 % of fibre by volume in ud (48 to 55 % is usual)",
		":4: uptake: no uptake is written for core foam: the resin that its faces, cuts and grooves take up is not in the sum; write uptake: in g/m2 of each face",
		":4: uptake: no uptake is written for core spare: the resin that its faces, cuts and grooves take up is not in the sum; write uptake: in g/m2 of each face",
		":9: uptake: no uptake is written for peel ply: the resin it takes up is not in the sum; weigh a piece dry and after an infusion, and write test: {size: [200, 200], dry: 12 g, wet: 28 g}",
		":10: uptake: no uptake is written for flow media: the resin it takes up is not in the sum; weigh a piece dry and after an infusion, and write test: {size: [200, 200], dry: 12 g, wet: 28 g}",
		":9: margin: assumed a margin of 60 mm from the net edge for peel ply: the trim allowance and 50 mm",
		":10: margin: flow media reaches the trim line: it is to stop short of it, else resin runs round the cloth to the vent",
		":12: margin: assumed a margin of 110 mm from the net edge for sealant tape: the trim allowance and 100 mm",
		":11: margin: assumed a margin of 160 mm from the net edge for film: 50 mm past the sealant tape",
		":11: pleats: assumed 4 pleats in film",
		":11: pleat: assumed pleats 50 mm high in film",
		":4: cores: core spare is not in the schedule",
		":4: cores: core foam has no ply on one side of it",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if j.Resin.DensityGCM3 != of(1.15, laminate.Assumed, "generic epoxy") || j.Consumables[0].UptakeGSM.Known() || j.Cores[0].UptakeGSM.Known() || j.Resin.Mix != nil {
		t.Errorf("%+v", j.Resin)
	}
}

// What the starter shows in comments is read as it stands there.
func TestStarterWithoutItsComments(t *testing.T) {
	commented := regexp.MustCompile(`(?m)^# ( *[a-z][a-z 0-9_]*:( .*)?)$`)
	text := commented.ReplaceAllString(string(Starter()), "$1")
	j, problems := Parse("job.yaml", []byte(text), nil)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if j.Resin == nil || j.Resin.Mix == nil || len(j.Consumables) != 5 || len(j.Uptakes) != 1 || j.Measured == nil {
		t.Errorf("resin %v, %d consumables, measured %v", j.Resin, len(j.Consumables), j.Measured)
	}
}
