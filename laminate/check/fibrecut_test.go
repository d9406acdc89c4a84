package check

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"stripwright/laminate"
	"stripwright/laminate/stack"
)

// Shares cut, by hand: nothing of unidirectional cloth by a side joint, all of
// stitched ±45, half of a woven, all of a mat, two thirds of an even triaxial.
func TestCutShare(t *testing.T) {
	l := func(angles ...float64) (out []laminate.Layer) {
		for _, a := range angles {
			out = append(out, laminate.Layer{AngleDeg: a})
		}
		return out
	}
	weighed := []laminate.Layer{{AngleDeg: 0, WeightGSM: 400}, {AngleDeg: 45, WeightGSM: 200}, {AngleDeg: -45, WeightGSM: 200}}
	for _, c := range []struct {
		what      string
		cloth     laminate.PlanFabric
		side, end string
	}{
		{"ud", laminate.PlanFabric{}, "none", "all"},
		{"biax", laminate.PlanFabric{Layers: l(45, -45)}, "all", "all"},
		{"0/90", laminate.PlanFabric{Layers: l(0, 90)}, "50 %", "50 %"},
		{"woven", laminate.PlanFabric{Form: laminate.Woven}, "50 %", "50 %"},
		{"mat", laminate.PlanFabric{Form: laminate.Mat}, "all", "all"},
		{"triax", laminate.PlanFabric{Layers: l(0, 45, -45)}, "66.7 %", "all"},
		{"heavy triax", laminate.PlanFabric{Layers: weighed}, "50 %", "all"},
		{"within a degree", laminate.PlanFabric{Layers: l(0.9)}, "none", "all"},
		{"beyond a degree", laminate.PlanFabric{Layers: l(1.1)}, "all", "all"},
		{"weft only", laminate.PlanFabric{Layers: l(90)}, "all", "none"},
	} {
		any := func(float64) bool { return true }
		if side, end := part(cutShare(c.cloth, 0, any)), part(cutShare(c.cloth, 90, any)); side != c.side || end != c.end {
			t.Errorf("%s: side %s, end %s", c.what, side, end)
		}
	}
}

// A continuous ply is not butt-spliced across the load direction: MIL-HDBK-17-3F
// (17 Jun 2002) vol. 3 ch. 12 §12.3.1 item A-29, seen. What counts as across is
// this program's own.
func TestJointsAcrossTheLoad(t *testing.T) {
	at := func(deg float64) *float64 { return &deg }
	for _, c := range []struct {
		what  string
		load  *float64
		cloth func(*laminate.PlanFabric)
		plies []string // warned of, with the share; "" for none
	}{
		{"no load stated", nil, func(f *laminate.PlanFabric) { f.Form = laminate.Woven }, nil},
		{"unidirectional: side joints cut nothing", at(0), func(*laminate.PlanFabric) {}, nil},
		{"unidirectional, load across it", at(90), func(*laminate.PlanFabric) {}, nil},
		{"woven at 90°, load at 0°", at(0), func(f *laminate.PlanFabric) { f.Form = laminate.Woven },
			[]string{"ply 2: side joints run across the load and cut 50 % of its fibre", "ply 6: side joints run across the load and cut 50 % of its fibre"}},
		{"woven at 0°, load at 90°", at(90), func(f *laminate.PlanFabric) { f.Form = laminate.Woven },
			[]string{"ply 1: side joints run across the load and cut 50 %", "ply 5: ", "ply 7: "}},
		{"stitched ±45, load along half the rolls", at(0), func(f *laminate.PlanFabric) { f.Layers = []laminate.Layer{{AngleDeg: 45}, {AngleDeg: -45}} },
			[]string{"ply 2: side joints run across the load and cut all of its fibre", "ply 6: "}},
		{"load within 15° of the joints", at(15), func(f *laminate.PlanFabric) { f.Layers = []laminate.Layer{{AngleDeg: 45}, {AngleDeg: -45}} },
			[]string{"ply 2: side joints run across the load and cut 50 %", "ply 6: "}},
		{"load beyond 15° of the joints", at(16), func(f *laminate.PlanFabric) { f.Layers = []laminate.Layer{{AngleDeg: 45}, {AngleDeg: -45}} },
			[]string{"ply 1: side joints run across the load and cut 50 %", "ply 2: ", "ply 5: ", "ply 6: "}},
		{"one layer off the roll", at(45), func(f *laminate.PlanFabric) { f.Layers = []laminate.Layer{{AngleDeg: 60}} },
			[]string{"ply 1: side joints run across the load and cut all", "ply 6: side", "ply 7: "}},
		{"mat", at(0), func(f *laminate.PlanFabric) { f.Form = laminate.Mat }, []string{"ply 2: side joints run across the load and cut all", "ply 6: "}},
	} {
		p := lshape(t)
		p.Part.LoadDeg = c.load
		c.cloth(&p.Fabrics[0])
		rs := Plan(p)
		r := verdict(rs, RuleFibreCut)
		if !r.Pass || !Sound(rs) {
			t.Errorf("%s: a warning is a fault: %s", c.what, r.Text)
		}
		text, warned := strings.CutPrefix(r.Text, laminate.Warning)
		if warned != (len(c.plies) > 0) || warned != (r.Worst != nil) {
			t.Errorf("%s: warned %v, worst %+v: %s", c.what, warned, r.Worst, r.Text)
			continue
		}
		for _, want := range c.plies {
			if !strings.Contains(text, want) {
				t.Errorf("%s: %q is missing in %s", c.what, want, text)
			}
		}
		if got := strings.Count(text, "across the load"); got != min(len(c.plies), told) {
			t.Errorf("%s: %d plies named: %s", c.what, got, text)
		}
	}
}

// Face down the layers lie the other way.
func TestAcrossFaceDown(t *testing.T) {
	p := lshape(t)
	load := 45.0
	p.Part.LoadDeg = &load
	p.Fabrics[0].Layers = []laminate.Layer{{AngleDeg: 60}}
	text := verdict(Plan(p), RuleFibreCut).Text
	// Plies at 0° face up lie at 60°, within 45° of the load; face down (ply 5) at
	// -60°, 105° off. At 90° face up (ply 2) 150° = -30°, 75° off; face down (ply
	// 6) 30°.
	for ply, want := range map[string]bool{"ply 1:": true, "ply 2:": false, "ply 5:": false, "ply 6:": true, "ply 7:": true} {
		if strings.Contains(text, ply) != want {
			t.Errorf("%s warned %v: %s", ply, !want, text)
		}
	}
}

// Fibre cut by the check's own words of a plan with two fabrics.
func TestFibreCutText(t *testing.T) {
	p := lshape(t)
	p.Fabrics[1].Layers = []laminate.Layer{{AngleDeg: 45}, {AngleDeg: -45}}
	if got := verdict(Plan(p), RuleFibreCut).Text; got != "side joints cut none of the fibre of glass, all of the fibre of biax" {
		t.Error(got)
	}
}

// The check works by itself what the stack report works out too: both must find
// the same shares, cut and across the load.
func TestFibreCutAgreesWithTheStackReport(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		angle := rapid.Custom(func(t *rapid.T) float64 { return float64(rapid.IntRange(-180, 180).Draw(t, "half degrees")) / 2 })
		c := laminate.PlanFabric{Name: "cloth", WeightGSM: 600, Form: rapid.SampledFrom([]string{"", laminate.Woven, laminate.Mat}).Draw(t, "form")}
		weighed := rapid.Bool().Draw(t, "weighed")
		for range rapid.IntRange(0, 4).Draw(t, "layers") {
			l := laminate.Layer{AngleDeg: angle.Draw(t, "layer")}
			if weighed {
				l.WeightGSM = float64(rapid.IntRange(1, 4).Draw(t, "weight"))
			}
			c.Layers = append(c.Layers, l)
		}
		y := laidPly{PlanPly: laminate.PlanPly{Fabric: "cloth", AngleDeg: angle.Draw(t, "ply"), Face: rapid.SampledFrom([]string{laminate.FaceUp, laminate.FaceDown}).Draw(t, "face")}}
		load := angle.Draw(t, "load")
		l := &laid{plan: laminate.Plan{Fabrics: []laminate.PlanFabric{c}}, fabrics: map[string]laminate.PlanFabric{"cloth": c}}
		cloth := stack.Cloths(l.plan, nil)["cloth"]
		any := func(float64) bool { return true }
		cut := stack.CutOf(cloth)
		for _, v := range [][2]float64{
			{cutShare(c, 0, any), cut.Side}, {cutShare(c, 90, any), cut.End},
			{l.across(&y, laminate.SideJoint, load), stack.AcrossLoad(cloth, y.PlanPly, laminate.SideJoint, load)},
			{l.across(&y, laminate.EndJoint, load), stack.AcrossLoad(cloth, y.PlanPly, laminate.EndJoint, load)},
		} {
			if math.Abs(v[0]-v[1]) > 1e-9 {
				t.Fatalf("the check finds %v, the report %v", v[0], v[1])
			}
		}
	})
}
