package order

import (
	"math"
	"strings"
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

func moved(r geometry.Region, dx, dy float64) geometry.Region {
	return r.Map(func(p orb.Point) orb.Point { return orb.Point{p[0] + dx, p[1] + dy} })
}

// round is a circle of so many points.
func round(diameter float64, n int) geometry.Region {
	var ring orb.Ring
	for i := range n {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		ring = append(ring, orb.Point{diameter / 2 * c, diameter / 2 * s})
	}
	return geometry.Region{Outer: ring}
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

// Tape round a rectangle with a margin m measures 2(L+W) + 8m, and 2np more for n
// pleats of height p (geometry); the bag's girth grows by as much.
func TestTapeAndBag(t *testing.T) {
	p := plate()
	p.Consumables = []laminate.Consumable{
		{Name: "tape", Kind: laminate.Sealant, MarginMM: given(125), Pleats: given(6), PleatMM: given(50), SoldByMM: 15000, SparePercent: given(10)},
		{Name: "film", Kind: laminate.Film, MarginMM: given(175), Pleats: given(6), PleatMM: given(50), Layers: 1, WidthMM: 2000, SparePercent: given(0), SoldByMM: 1000, PricePerMetre: 3, HasPrice: true, OnHandMM: 200},
		{Name: "feed", Kind: laminate.Tube, LengthMM: given(4000), SparePercent: assume(10)},
	}
	o := Of(p)
	holds(t, "tape", o.Supplies[0].LengthMM.Value, 2*(1180+740)+8*125+2*6*50, 0.01)
	holds(t, "film", o.Supplies[1].AreaMM2, (1180+2*250)*(740+2*250), 1)
	tape, film, feed := o.Items[1], o.Items[2], o.Items[3]
	if tape.ToBuy.Value != 15 || film.Net.Value != 1.24 || film.ToBuy.Value != 2 || film.Price != 6 || o.Supplies[1].Along != "y" {
		t.Errorf("tape %+v, film %+v", tape.ToBuy, film)
	}
	if feed.Net.Value != 4 || feed.ToBuy.Value != 4.4 || feed.Basis != laminate.Given || len(feed.Assumed) != 1 {
		t.Errorf("%+v", feed)
	}
}

// An opening is covered, a margin below zero stops short all round, of a round
// part as of a square one, and may leave nothing.
func TestMargins(t *testing.T) {
	frame := rectangle(1000, 600)
	frame.Holes = []orb.Ring{{{200, 200}, {200, 400}, {800, 400}, {800, 200}}}
	for _, c := range []struct {
		name         string
		net          geometry.Region
		margin, want float64
		within       float64
	}{
		{"square", rectangle(1000, 600), 50, 1100 * 700, 1},
		{"far off", moved(rectangle(1000, 600), 5e4, -9e4), 50, 1100 * 700, 1},
		{"opening", frame, 50, 1100 * 700, 1},
		{"short", frame, -20, 960 * 560, 1},
		{"nothing left", rectangle(1000, 600), -300, 0, 0},
		{"round", round(800, 720), 50, math.Pi * 450 * 450, 100},
		{"round short", round(800, 720), -50, math.Pi * 350 * 350, 100},
		{"none", frame, 0, 600000, 0},
	} {
		p := plate()
		p.Part.Net = c.net
		p.Consumables = []laminate.Consumable{{Name: "x", Kind: laminate.Other, MarginMM: given(c.margin), UptakeGSM: given(100), Layers: 2}}
		o := Of(p)
		holds(t, c.name, o.Supplies[0].AreaMM2, 2*c.want, 2*c.within)
		holds(t, c.name+", resin", o.Resin.Lines[1].MassG.Value, 2*c.want/1e4, 2*c.within/1e4+0.001)
	}
	p := plate()
	p.Part.Net = geometry.Region{}
	if o := Of(p); len(o.Missing) != 3 {
		t.Errorf("without an outline: %q", o.Missing)
	}
}

// An L of two arms 300 wide in goods 300 wide: one lane of each arm, whichever
// way; the outline decides, not the box round it.
func TestLanesFollowTheOutline(t *testing.T) {
	l := geometry.Region{Outer: orb.Ring{{0, 0}, {1000, 0}, {1000, 300}, {300, 300}, {300, 900}, {0, 900}}}
	if long, n := lanes(l.Rings(), 300); long != 1000+300+300 || n != 3 {
		t.Errorf("%v mm in %d lanes", long, n)
	}
	if long, n := lanes(turned(l.Rings()), 300); long != 900+300+300+300 || n != 4 {
		t.Errorf("%v mm in %d lanes", long, n)
	}
	for w := 50.0; w < 1000; w *= 1.37 {
		long, n := lanes(l.Rings(), w)
		if long*w < l.Area()-1e-6 || n != int(math.Ceil(900/w)) {
			t.Errorf("%v mm of %v do not cover %v mm²", long, w, l.Area())
		}
	}
	if long, n := lanes(l.Rings(), 1e-9); long != 0 || n != 0 {
		t.Errorf("%v mm in %d lanes of no width", long, n)
	}
}

// A mesh of 580 by 1330 from a roll 1200 wide is one length of 1330, not two of
// 580; a panel of 1050 by 5000 from a roll 1000 wide is not two lengths of 5000.
func TestFewLanesUnlessManySaveMuch(t *testing.T) {
	for _, c := range []struct {
		net         geometry.Region
		width, long float64
		lanes       int
		along       string
	}{
		{rectangle(1330, 580), 1200, 1330, 1, "x"},
		{rectangle(580, 1330), 1200, 1330, 1, "y"},
		{rectangle(1050, 5000), 1000, 5 * 1050, 5, "x"},
		{rectangle(900, 700), 1000, 700, 1, "y"},
	} {
		s := Supply{WidthMM: c.width, Layers: 1}
		s.cover(c.net.Rings())
		if s.LengthMM.Value != c.long || s.Lanes != c.lanes || s.Along != c.along {
			t.Errorf("%v: %+v", c.net, s)
		}
	}
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
