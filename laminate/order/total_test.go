package order

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

func given(v float64) laminate.Figure { return laminate.Figure{Value: v, Basis: laminate.Given} }

func assume(v float64) laminate.Figure {
	return laminate.Figure{Value: v, Basis: laminate.Assumed, From: "custom"}
}

func holds(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}

// plate is a plan of six plies of glass on 1180 by 740 mm, no trim, with resin.
func plate() laminate.Plan {
	p := laminate.Plan{
		Title:   "plate",
		Part:    laminate.PlanPart{Name: "plate", Net: rectangle(1180, 740), Blank: rectangle(1180, 740)},
		Fabrics: []laminate.PlanFabric{{Name: "ud", WeightGSM: 600, Fibre: "e-glass", DensityGCM3: given(2.56)}},
		Resin:   &laminate.Resin{Name: "epoxy", DensityGCM3: given(1.15), FibreVolume: given(0.52), LinesAndPotG: given(350), SparePercent: given(10)},
		Consumables: []laminate.Consumable{
			{Name: "peel ply", Kind: laminate.PeelPly, MarginMM: given(0), UptakeGSM: given(90), Layers: 1},
			{Name: "mesh", Kind: laminate.FlowMedia, MarginMM: given(0), UptakeGSM: given(400), Layers: 1},
		},
	}
	for i := range 6 {
		p.Plies = append(p.Plies, laminate.PlanPly{Ply: i + 1, Fabric: "ud", Blank: p.Part.Blank, Strips: []laminate.Strip{{ID: "x", Shape: p.Part.Blank}}})
	}
	return p
}

// A window frame 100 wide round an opening of 1000 by 400: what lies in the
// opening needs no sheet.
func TestSheets(t *testing.T) {
	frame := rectangle(1200, 600)
	frame.Holes = []orb.Ring{{{100, 100}, {100, 500}, {1100, 500}, {1100, 100}}}
	for _, c := range []struct {
		what        string
		net         geometry.Region
		along, wide float64
		want        int
	}{
		{"exactly one", rectangle(1200, 600), 1200, 600, 1},
		{"a hair more", rectangle(1200.001, 600), 1200, 600, 2},
		{"less than a micrometre more", rectangle(1200.0004, 600), 1200, 600, 1},
		{"two rows", rectangle(1180, 740), 1200, 600, 2},
		{"frame in bars", frame, 400, 100, 3 + 3 + 4*2},
		{"frame in squares", frame, 200, 200, 6*2 + 2},
	} {
		if got := sheets(c.net.Rings(), c.along, c.wide); got != c.want {
			t.Errorf("%s: %d sheets, want %d", c.what, got, c.want)
		}
	}
	b := boards(laminate.Core{Name: "foam", Blank: rectangle(590, 1190), ThicknessMM: 15, DensityKGM3: 80, SheetMM: [2]float64{1200, 600}})
	if b.Sheets.Value != 1 || b.Along != "y" || b.ByArea != 1 {
		t.Errorf("%+v", b)
	}
	holds(t, "mass", b.MassG, 0.59*1.19*0.015*80*1000, 0.01)
	if got := boards(laminate.Core{Blank: rectangle(500, 500), SheetMM: [2]float64{1e-9, 300}}); got.Sheets.Known() {
		t.Errorf("%+v", got)
	}
}

// A core that lies twice is one item; it takes up resin on both faces each time.
func TestCores(t *testing.T) {
	p := plate()
	foam := laminate.Core{Name: "foam", AfterPly: 2, Blank: rectangle(1180, 740), ThicknessMM: 15, DensityKGM3: 80, UptakeGSM: given(300), SheetMM: [2]float64{1200, 600}, PricePerSheet: 20, HasPrice: true}
	second := foam
	second.AfterPly, second.Blank = 4, rectangle(600, 500)
	p.Cores = []laminate.Core{foam, second}
	o := Of(p)
	last := o.Items[len(o.Items)-1]
	if last.Kind != CoreItem || last.ToBuy.Value != 3 || last.Price != 60 || last.ToBuy.USUnit != Sheets || last.ToBuy.US != 3 {
		t.Errorf("%+v", last)
	}
	p.Cores[0].OnHand = 2
	if left := Of(p).Items[len(o.Items)-1]; left.ToBuy.Value != 1 || left.Price != 20 || left.Net.Value != 3 {
		t.Errorf("with two on hand: %+v", left)
	}
	holds(t, "resin", o.Resin.Lines[3].MassG.Value, 2*300*0.8732, 0.01)
	holds(t, "resin", o.Resin.Lines[4].MassG.Value, 2*300*0.3, 0.01)
}

// A yard is 0.9144 m, a pound 0.45359237 kg: read back from either unit, the
// amount is the same.
func TestUnitsRoundTrip(t *testing.T) {
	for _, c := range []struct {
		unit string
		each float64
	}{{Metres, 0.9144}, {Kilos, 0.45359237}, {Squares, 0.9144 * 0.9144}, {Sheets, 1}} {
		for _, v := range []float64{0, 0.001, 0.914, 1, 29, 1234.567} {
			for _, a := range []Amount{amount(v, c.unit), atLeast(v, c.unit)} {
				holds(t, c.unit, a.US*c.each, v, 0.0001)
				if a.Value != v {
					t.Errorf("%v %s is %v", v, c.unit, a.Value)
				}
			}
			if up := atLeast(v+0.00012, c.unit); up.Value < v+0.00012 || up.US*c.each < v+0.00012 {
				t.Errorf("%v %s is %v, less than needed", v+0.00012, c.unit, up)
			}
		}
	}
}

// The order is never less than what is used, whatever spare, stock and sizes.
func TestOrderIsNeverLess(t *testing.T) {
	p := plate()
	for i, margin := range []float64{-100, 0, 33.3, 250} {
		for _, width := range []float64{0, 37, 600, 1524} {
			for _, hand := range []float64{0, 500} {
				p.Consumables = append(p.Consumables, laminate.Consumable{
					Name: "x", Kind: laminate.Other, MarginMM: given(margin), Layers: 1 + i%2, WidthMM: width, OnHandMM: hand, SoldByMM: []float64{0, 1000, 914.4}[i%3], SparePercent: given(float64(i) * 2.5),
				})
			}
		}
	}
	o := Of(p)
	for _, i := range o.Items {
		if i.Kind != ConsumableItem {
			continue
		}
		need := i.Net.Value*(1+i.SparePercent.Value/100) - i.OnHand.Value
		if i.ToBuy.Value < need-0.0006 || i.SoldBy.Value > 0 && i.ToBuy.Value > math.Max(need, 0)+i.SoldBy.Value+0.001 {
			t.Errorf("%+v: %v are needed", i, need)
		}
	}
	for _, s := range o.Supplies {
		if s.Lanes > 0 && s.LengthMM.Value*s.WidthMM < s.AreaMM2-1 {
			t.Errorf("%+v does not cover its area", s)
		}
	}
}

func TestOrderLeavesThePlanAlone(t *testing.T) {
	p := plate()
	p.Part.Net.Outer = orb.Ring{{0, 0}, {0, 740}, {1180, 740}, {1180, 0}} // clockwise
	before := append(orb.Ring{}, p.Part.Net.Outer...)
	Of(p)
	if diff := cmp.Diff(before, p.Part.Net.Outer); diff != "" || p.Lengths != nil {
		t.Error(diff)
	}
}
