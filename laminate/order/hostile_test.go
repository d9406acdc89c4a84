package order

import (
	"encoding/json"
	"math/rand/v2"
	"reflect"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/laminate"
)

// whole is a plan with everything that an order sums up.
func whole() laminate.Plan {
	p := plate()
	p.Resin.Mix = &laminate.Mix{ByVolume: true, PartsA: 2, PartsB: 1, DensityAGCM3: 1.13, DensityBGCM3: 0.98}
	p.Resin.BatchG, p.Resin.SoldByG, p.Resin.OnHandG, p.Resin.PricePerKG, p.Resin.HasPrice = 800, 500, 10, 18, true
	p.Consumables = append(p.Consumables,
		laminate.Consumable{Name: "film", Kind: laminate.Film, MarginMM: given(175), Pleats: given(6), PleatMM: given(50), Layers: 1, WidthMM: 900, SoldByMM: 1000, SparePercent: given(5), PricePerMetre: 2, HasPrice: true},
		laminate.Consumable{Name: "tape", Kind: laminate.Sealant, MarginMM: given(125), Pleats: given(6), PleatMM: given(50), SoldByMM: 15000, OnHandMM: 20},
		laminate.Consumable{Name: "feed", Kind: laminate.Tube, LengthMM: given(4000), Layers: 1},
	)
	p.Cores = []laminate.Core{{Name: "foam", AfterPly: 2, Blank: rectangle(1180, 740), ThicknessMM: 15, DensityKGM3: 80, UptakeGSM: given(300), SheetMM: [2]float64{1200, 600}, PricePerSheet: 20, HasPrice: true}}
	p.Lengths = []laminate.RollLength{{Fabric: "ud", WidthMM: 300, UsedMM: 20000, ToBuyMM: 22000}}
	p.Rolls = []laminate.PlanRoll{{Roll: "A", Fabric: "ud", WidthMM: 300, UsedLengthMM: 20000, PricePerMetre: 2, HasPrice: true}}
	p.Quantities = []laminate.PlyQuantity{{Ply: 1, AreaMM2: 873200, DryG: 523.92}}
	return p
}

// A plan read from a file may hold any figure within reason of the codec in any
// place: it is summed up without panic, without end, into figures that JSON can
// hold. Every figure of the plan is spoilt in turn, in several ways.
func TestHostileFigures(t *testing.T) {
	ways := []float64{0, -1, 1e-3, 1e12, -1e12}
	spoilt := 0
	for n := 0; ; n++ {
		p := whole()
		v := nth(reflect.ValueOf(&p).Elem(), new(int), n)
		if !v.IsValid() {
			break
		}
		for _, w := range ways {
			p := whole()
			v := nth(reflect.ValueOf(&p).Elem(), new(int), n)
			switch v.Kind() {
			case reflect.Float64:
				v.SetFloat(w)
			case reflect.Int:
				v.SetInt(int64(max(min(w, 1e9), -1e9)))
			}
			if _, err := json.Marshal(Of(p)); err != nil {
				t.Errorf("figure %d as %v: %v", n, w, err)
			}
			spoilt++
		}
	}
	if spoilt < 500 {
		t.Errorf("only %d figures spoilt", spoilt)
	}
}

// nth finds the n-th number of a value, in order.
func nth(v reflect.Value, seen *int, n int) reflect.Value {
	switch v.Kind() {
	case reflect.Float64, reflect.Int:
		if *seen++; *seen > n {
			return v
		}
	case reflect.Pointer:
		if !v.IsNil() {
			return nth(v.Elem(), seen, n)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			if f := nth(v.Index(i), seen, n); f.IsValid() {
				return f
			}
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if f := nth(v.Field(i), seen, n); f.IsValid() {
				return f
			}
		}
	}
	return reflect.Value{}
}

// Of sheets and lanes, whatever the outline: no fewer than its area needs, and no
// more than its box needs, one piece at a time.
func TestCoverOfRandomOutlines(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 5))
	for range 200 {
		p := rectangle(200+float64(rng.IntN(2000)), 200+float64(rng.IntN(2000)))
		w, h := p.Size()
		cut := rectangle(w*rng.Float64(), h*rng.Float64()) // a corner cut off: an L
		cw, ch := cut.Size()
		p.Outer = append(p.Outer[:0], []orb.Point{{cw, 0}, {w, 0}, {w, h}, {0, h}, {0, ch}, {cw, ch}}...)
		a, b := 100+float64(rng.IntN(900)), 100+float64(rng.IntN(900))
		n := sheets(p.Rings(), a, b)
		if float64(n)*a*b < p.Area()-1 {
			t.Errorf("%d sheets of %v by %v do not cover %v", n, a, b, p.Outer)
		}
		long, k := lanes(p.Rings(), b)
		if long*b < p.Area()-1 || long > float64(k)*w+1e-6 {
			t.Errorf("%d lanes, %v mm of %v over %v", k, long, b, p.Outer)
		}
	}
}
