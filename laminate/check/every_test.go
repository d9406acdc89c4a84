package check

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

// figures calls f with every float64 within a value and the way to it.
func figures(v reflect.Value, path string, f func(path string, at reflect.Value)) {
	switch v.Kind() {
	case reflect.Float64:
		f(path, v)
	case reflect.Struct:
		for i := range v.NumField() {
			figures(v.Field(i), path+"."+v.Type().Field(i).Name, f)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			figures(v.Index(i), fmt.Sprintf("%s[%d]", path, i), f)
		}
	case reflect.Pointer:
		if !v.IsNil() {
			figures(v.Elem(), path, f)
		}
	}
}

// harmless says whether a figure may be half a millimetre more without
// anything being wrong: cloth may be wider than it is said to be usable, more
// may be bought, shop practice is a reference, and a price matters where cost is
// counted by price.
func harmless(path string) bool {
	roll := strings.HasPrefix(path, "PlanRoll[")
	return roll && strings.HasSuffix(path, "idthMM") || strings.HasSuffix(path, ".ToBuyMM") || strings.HasSuffix(path, ".Practice") || strings.HasSuffix(path, ".PricePerMetre")
}

// Every single figure of plies, rolls, costs, lengths and weights is held: when
// it alone is off by half a millimetre, the plan is not sound.
func TestEveryFigureIsHeld(t *testing.T) {
	p := cornered(t)
	if !Sound(Plan(p)) {
		t.Fatal("the good plan is not sound")
	}
	tried := 0
	for _, part := range []any{&p.Plies, &p.Rolls, &p.Cost, &p.Lengths, &p.Quantities} {
		figures(reflect.ValueOf(part), reflect.TypeOf(part).Elem().Elem().Name(), func(path string, at reflect.Value) {
			if harmless(path) {
				return
			}
			tried++
			held := at.Float()
			at.SetFloat(held + 0.5)
			if Sound(Plan(p)) {
				t.Errorf("%s: %v instead of %v is found sound", path, held+0.5, held)
			}
			at.SetFloat(held)
		})
	}
	if tried < 200 {
		t.Errorf("only %d figures tried", tried)
	}
}

// cornered is a small plan in which every vertex is a corner.
func cornered(tb testing.TB) laminate.Plan {
	tb.Helper()
	blank := region(box4(0, 0, 500, 400), box4(200, 100, 300, 170))
	net := region(box4(5, 5, 495, 395), box4(195, 95, 305, 175))
	p := build(tb, net, blank, []clothSpec{{"tape", 300, 200, true, 30, 4}}, []plySpec{
		tape(0, 150, 350), {cloth: "tape", angle: 45, down: true, cuts: []float64{-170, 20, 190}}})
	for i := range p.Plies {
		for k := range p.Plies[i].Strips {
			s := &p.Plies[i].Strips[k]
			s.Shape = corners(s.Shape)
		}
	}
	for k := range p.Rolls[0].Pieces {
		c := &p.Rolls[0].Pieces[k]
		c.Shape = corners(c.Shape)
	}
	return p
}

// corners drops the vertices that lie along an edge.
func corners(r geometry.Region) geometry.Region {
	out := geometry.Region{}
	for i, ring := range r.Rings() {
		var kept orb.Ring
		for k, p := range ring {
			a, b := ring[(k+len(ring)-1)%len(ring)], ring[(k+1)%len(ring)]
			if d, _ := apartPoint(p, a, b); d > tolerance {
				kept = append(kept, p)
			}
		}
		if i == 0 {
			out.Outer = kept
		} else {
			out.Holes = append(out.Holes, kept)
		}
	}
	return out
}
