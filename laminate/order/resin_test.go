package order

import (
	"strings"
	"testing"

	"stripwright/laminate"
)

// Recomputed by hand from t = W/(1000 Vf ρf): 6 × 600 g/m² on 0.8732 m² at 2.56
// g/cm³ and 52 % are 2.7043 mm thick, and 48 % of that volume at 1.15 g/cm³ is
// resin: 1.3035 kg. Peel ply and mesh hold (0.09 + 0.40) × 0.8732 = 0.4279 kg,
// with 0.35 kg in lines and pot 2.0814 kg, with a tenth more 2.2895 kg.
func TestResin(t *testing.T) {
	o := Of(plate())
	r := o.Resin
	if len(r.Lines) != 4 || !r.Whole || r.Mix != nil || len(o.Missing) != 1 || !strings.Contains(o.Missing[0], "mix:") {
		t.Fatalf("%+v, missing %q", r, o.Missing)
	}
	for i, want := range []float64{1303.503, 78.588, 349.28, 350} {
		holds(t, r.Lines[i].What, r.Lines[i].MassG.Value, want, 0.01)
	}
	holds(t, "net", r.NetG, 2081.371, 0.02)
	holds(t, "total", r.TotalG, 2289.508, 0.02)
	if last := o.Items[len(o.Items)-3]; last.Kind != ResinItem || last.ToBuy.Value != 2.290 || last.ToBuy.Unit != Kilos {
		t.Errorf("%+v", last)
	}
}

// By weight 100 : 30 of 2289.508 g: 1761.160 and 528.348 g. By volume 2 : 1 with
// 1.13 and 0.98 g/cm³ the masses are as 2.26 : 0.98, and the volumes as 2 : 1.
func TestMix(t *testing.T) {
	p := plate()
	p.Resin.Mix = &laminate.Mix{PartsA: 100, PartsB: 30}
	p.Resin.BatchG, p.Resin.PricePerKG, p.Resin.HasPrice = 800, 18, true
	o := Of(p)
	m := o.Resin.Mix
	holds(t, "A", m.A.G, 1761.160, 0.02)
	holds(t, "B", m.B.G, 528.348, 0.02)
	if m.Batches != 3 || m.Ratio != "100 : 30 by weight" || m.A.ML != 0 {
		t.Errorf("%+v", m)
	}
	holds(t, "batch", m.BatchG, 763.169, 0.02)
	holds(t, "batch of parts", m.EachA.G+m.EachB.G, m.BatchG, 0.002)
	holds(t, "price", o.Items[0].Price+o.Items[1].Price, 18*2.289508, 0.04)
	if o.Items[1].Kind != HardenerItem || len(o.Unpriced) != 2 {
		t.Errorf("%+v, unpriced %q", o.Items[1], o.Unpriced)
	}

	p.Resin.Mix = &laminate.Mix{ByVolume: true, PartsA: 2, PartsB: 1, DensityAGCM3: 1.13, DensityBGCM3: 0.98}
	p.Resin.BatchG = o.Resin.TotalG / 2 // exactly two
	m = Of(p).Resin.Mix
	if m.Batches != 2 {
		t.Errorf("%d batches of %v g for %v g", m.Batches, p.Resin.BatchG, o.Resin.TotalG)
	}
	holds(t, "masses", m.A.G/m.B.G, 2.26/0.98, 1e-5)
	holds(t, "volumes", m.A.ML/m.B.ML, 2, 1e-5)
	p.Resin.Mix.DensityBGCM3 = 0
	if Of(p).Resin.Mix != nil {
		t.Error("mixed by volume without a density")
	}
}

// 2289.5 g with 400 g on hand take three packs of 650 g: 1500 and 450 g.
func TestResinInPacks(t *testing.T) {
	p := plate()
	p.Resin.Mix = &laminate.Mix{PartsA: 100, PartsB: 30}
	p.Resin.SoldByG, p.Resin.OnHandG = 650, 400
	o := Of(p)
	a, b := o.Items[0], o.Items[1]
	if a.ToBuy.Value != 1.5 || b.ToBuy.Value != 0.45 || a.SoldBy.Value != 0.5 || b.SoldBy.Value != 0.15 {
		t.Errorf("%+v, %+v", a, b)
	}
	holds(t, "on hand", a.OnHand.Value+b.OnHand.Value, 0.4, 0.001)
	p.Resin.OnHandG = 5000
	if o = Of(p); o.Items[0].ToBuy.Value != 0 || o.Items[0].ToBuy.US != 0 {
		t.Errorf("%+v", o.Items[0])
	}
}

// However the batches fall, they are equal, no larger than stated, and one fewer
// would be too large.
func TestBatches(t *testing.T) {
	for _, limit := range []float64{50, 333.3, 762.5, 1000, 2289, 2289.5, 4000} {
		m := mixed(&laminate.Resin{Mix: &laminate.Mix{PartsA: 100, PartsB: 41}, BatchG: limit}, 2289.5)
		if m.BatchG > limit+0.001 || m.Batches > 1 && 2289.5/float64(m.Batches-1) <= limit-0.001 {
			t.Errorf("%d batches of %v g, at most %v", m.Batches, m.BatchG, limit)
		}
		holds(t, "all batches", float64(m.Batches)*m.BatchG, 2289.5, 0.001*float64(m.Batches))
	}
}

// What is not known is named, and nothing is made up for it.
func TestMissing(t *testing.T) {
	p := plate()
	p.Fabrics[0].DensityGCM3 = laminate.Figure{}
	p.Fabrics[0].Fibre = "wool"
	p.Consumables[1].UptakeGSM = laminate.Figure{}
	p.Cores = []laminate.Core{{Name: "foam", Blank: p.Part.Blank, ThicknessMM: 15, DensityKGM3: 80}}
	o := Of(p)
	if o.Resin.Whole || len(o.Resin.Lines) != 2 {
		t.Errorf("%+v", o.Resin)
	}
	said := strings.Join(o.Missing, "\n")
	for _, words := range []string{"density: for fabric ud", "mesh takes up", "core foam takes up", "mix:"} {
		if !strings.Contains(said, words) {
			t.Errorf("%q does not tell of %q", said, words)
		}
	}
	p.Resin = nil
	if o := Of(p); o.Resin != nil || len(o.Missing) != 0 {
		t.Errorf("without resin: %+v, %q", o.Resin, o.Missing)
	}
}
