package order

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

func rectangle(w, h float64) geometry.Region {
	return geometry.Region{Outer: orb.Ring{{0, 0}, {w, 0}, {w, h}, {0, h}}}
}

func stock(v float64) *float64 { return &v }

// Worked out by hand: 12.345 m with 10 % are 13.5795 m, sold by the metre 14 m.
func TestToBuy(t *testing.T) {
	for _, c := range []struct{ needed, spare, soldBy, want float64 }{
		{12345, 10, 1000, 14000},
		{10000, 10, 1000, 11000}, // 10000 × 1.1 is 11000.000000000002 in binary
		{10000, 0, 1000, 10000},
		{10000.001, 0, 1000, 11000},
		{9999.9996, 0, 1000, 10000}, // less than half a micrometre short
		{12345, 10, 0, 13579.5},
		{12345, 10, 914.4, 13716}, // by the yard: 14.85 yd, so 15 yd of 914.4 mm
		{0, 10, 1000, 0},
		{1, 0, 50000, 50000},
		{3000, 33.3, 100, 4000}, // 3999 mm
		{-5, 0, 1000, 0},
	} {
		if got := ToBuy(c.needed, laminate.Order{SparePercent: c.spare, SoldByMM: c.soldBy}); got != c.want {
			t.Errorf("%v mm, %v %% spare, by %v: %v, want %v", c.needed, c.spare, c.soldBy, got, c.want)
		}
	}
}

func job(spare, soldBy float64) laminate.Job {
	return laminate.Job{Order: laminate.Order{SparePercent: spare, SoldByMM: soldBy}}
}

// Two fabrics, three widths, rolls on hand and rolls to buy: what is cut from
// rolls of a stated length is not bought, nor is spare for it.
func TestLengths(t *testing.T) {
	p := laminate.Plan{
		Fabrics: []laminate.PlanFabric{{Name: "ud"}, {Name: "biax"}},
		Rolls: []laminate.PlanRoll{
			{Fabric: "biax", WidthMM: 300, UsedLengthMM: 4100.5, StockLengthMM: stock(4200)},
			{Fabric: "biax", WidthMM: 300, UsedLengthMM: 5000},
			{Fabric: "biax", WidthMM: 1270, UsedLengthMM: 2500},
			{Fabric: "ud", WidthMM: 100, Copy: 1, UsedLengthMM: 40000, StockLengthMM: stock(40000)},
			{Fabric: "ud", WidthMM: 100, Copy: 2, UsedLengthMM: 312.125, StockLengthMM: stock(40000)},
		},
	}
	want := []laminate.RollLength{
		{Fabric: "ud", WidthMM: 100, UsedMM: 40312.125, ToBuyMM: 0},
		{Fabric: "biax", WidthMM: 1270, UsedMM: 2500, ToBuyMM: 3000},
		{Fabric: "biax", WidthMM: 300, UsedMM: 9100.5, ToBuyMM: 6000},
	}
	got := Fill(p, job(10, 1000))
	if diff := cmp.Diff(want, got.Lengths); diff != "" {
		t.Error(diff)
	}
	if p.Lengths != nil || p.Quantities != nil {
		t.Error("the plan that was given is altered")
	}
	for i, onHand := range []float64{40312.125, 0, 4100.5} {
		if f := OnHand(p, got.Lengths[i]); f != onHand {
			t.Errorf("%v: %v mm on hand, want %v", got.Lengths[i], f, onHand)
		}
	}
}

// What is on hand and what is bought make up what is used and the spare of what
// is bought, never less, and never a whole sold length more.
func TestNeverLessThanIsUsed(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 7))
	for range 300 {
		p := laminate.Plan{}
		for range 1 + rng.IntN(6) {
			r := laminate.PlanRoll{Fabric: []string{"a", "b"}[rng.IntN(2)], WidthMM: []float64{300, 500}[rng.IntN(2)], UsedLengthMM: float64(rng.IntN(40_000_000)) / 1000}
			if rng.IntN(2) == 0 {
				r.StockLengthMM = stock(r.UsedLengthMM + float64(rng.IntN(3000)))
			}
			p.Rolls = append(p.Rolls, r)
		}
		j := job(float64(rng.IntN(200))/10, []float64{0, 0.001, 914.4, 1000, 50000}[rng.IntN(5)])
		used := 0.0
		for _, l := range Fill(p, j).Lengths {
			used += l.UsedMM
			bought := l.UsedMM - OnHand(p, l)
			need := bought * (1 + j.Order.SparePercent/100)
			if l.ToBuyMM < need-0.001 || l.ToBuyMM > need+j.Order.SoldByMM+0.001 {
				t.Errorf("%+v, %v mm on hand, %+v: %v mm are needed with spare", l, OnHand(p, l), j.Order, need)
			}
		}
		for _, r := range p.Rolls {
			used -= r.UsedLengthMM
		}
		if math.Abs(used) > 0.01 {
			t.Errorf("the lengths are %v mm off what the rolls are cut by", used)
		}
	}
}

// Weight is area times areal weight: 1370 × 620 mm of 450 g/m² are 382.23 g.
// 12.5 oz/yd² are 423.821837 g/m² (1 oz = 28.349523125 g, 1 yd = 0.9144 m, both
// exact by definition), so a square yard weighs 12.5 oz = 354.369 g.
func TestQuantities(t *testing.T) {
	yard := 914.4
	ring := rectangle(1000, 1000)
	ring.Holes = []orb.Ring{{{100, 100}, {100, 600}, {600, 600}, {600, 100}}}
	p := laminate.Plan{
		Fabrics: []laminate.PlanFabric{{Name: "biax", WeightGSM: 450}, {Name: "cloth", WeightGSM: 12.5 * 28.349523125 / (0.9144 * 0.9144)}},
		Plies: []laminate.PlanPly{
			{Ply: 1, Fabric: "biax", Blank: rectangle(1370, 620)},
			{Ply: 2, Fabric: "cloth", Blank: rectangle(yard, yard)},
			{Ply: 3, Fabric: "biax", Blank: ring},
			{Ply: 4, Fabric: "biax", Blank: rectangle(0.5, 0.33)},
		},
	}
	want := []laminate.PlyQuantity{
		{Ply: 1, AreaMM2: 849400, DryG: 382.23},
		{Ply: 2, AreaMM2: 836127.36, DryG: 354.369},
		{Ply: 3, AreaMM2: 750000, DryG: 337.5},
		{Ply: 4, AreaMM2: 0.165, DryG: 0},
	}
	got := Fill(p, job(0, 0)).Quantities
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	for _, q := range got {
		if q.DryG != math.Round(q.DryG*1000)/1000 {
			t.Errorf("ply %d: %v g is off the grid of a plan file", q.Ply, q.DryG)
		}
	}
}

// A plan without rolls or plies has lists, not nothing.
func TestEmpty(t *testing.T) {
	p := Fill(laminate.Plan{}, job(10, 1000))
	if p.Lengths == nil || p.Quantities == nil || len(p.Lengths)+len(p.Quantities) != 0 {
		t.Errorf("%v %v", p.Lengths, p.Quantities)
	}
}

// The order of rolls within a plan changes no sum.
func TestOrderOfRollsChangesNothing(t *testing.T) {
	p := laminate.Plan{Rolls: []laminate.PlanRoll{
		{Fabric: "b", WidthMM: 300, UsedLengthMM: 0.1}, {Fabric: "a", WidthMM: 300, UsedLengthMM: 0.2}, {Fabric: "b", WidthMM: 300, UsedLengthMM: 0.3},
		{Fabric: "a", WidthMM: 200, UsedLengthMM: 0.7},
	}}
	want := Fill(p, job(7, 0)).Lengths
	p.Rolls = []laminate.PlanRoll{p.Rolls[3], p.Rolls[2], p.Rolls[1], p.Rolls[0]}
	if diff := cmp.Diff(want, Fill(p, job(7, 0)).Lengths); diff != "" {
		t.Error(diff)
	}
}
