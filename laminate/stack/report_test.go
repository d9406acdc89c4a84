package stack

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"
	"pgregory.net/rapid"

	"stripwright/geometry"
	"stripwright/laminate"
)

func plate(x0, y0, x1, y1 float64) geometry.Region {
	return geometry.Region{Outer: orb.Ring{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}}
}

// panel is a plan of full plies, one to a word: "biax 45 down".
func panel(fabrics []laminate.PlanFabric, plies ...string) laminate.Plan {
	p := laminate.Plan{Title: "panel", Fabrics: fabrics}
	p.Part.Net, p.Part.Blank = plate(0, 0, 1000, 600), plate(-20, -20, 1020, 620)
	for i, words := range plies {
		w := strings.Fields(words)
		y := laminate.PlanPly{Ply: i + 1, Fabric: w[0], Face: laminate.FaceUp, Blank: p.Part.Blank}
		fmt.Sscan(w[1], &y.AngleDeg)
		if slices.Contains(w, "down") {
			y.Face = laminate.FaceDown
		}
		if slices.Contains(w, "patch") {
			y.Outline, y.Blank = "patch", plate(100, 100, 300, 200)
		}
		p.Plies = append(p.Plies, y)
	}
	return p
}

var cloths = []laminate.PlanFabric{
	{Name: "ud", WeightGSM: 300, Fibre: "e-glass", Form: laminate.Unidirectional},
	{Name: "biax", WeightGSM: 450, Fibre: "e-glass", Form: laminate.Biaxial, Layers: lies(45, -45)},
	{Name: "weave", WeightGSM: 200, Fibre: "e-glass", Form: laminate.Woven},
}

func text(sections []Section) string {
	var b strings.Builder
	for _, s := range sections {
		b.WriteString("# " + s.Heading + "\n" + strings.Join(s.Lines, "\n") + "\n")
		for _, row := range s.Table {
			b.WriteString(strings.Join(row, " | ") + "\n")
		}
	}
	return b.String()
}

// The verdict in a line, for stacks whose verdict follows by hand.
func TestLine(t *testing.T) {
	for _, c := range []struct {
		plies []string
		line  string
	}{
		{[]string{"ud 0", "ud 90", "ud 0"}, "stack: 3 plies, 3 layers: symmetric; balanced"},
		{[]string{"ud 0", "ud 45", "ud 45", "ud 0"}, "stack: 4 plies, 4 layers: symmetric; not balanced"},
		{[]string{"ud 0", "ud 90"}, "stack: 2 plies, 2 layers: not symmetric (coupling 0.866); balanced"},
		{[]string{"biax 0", "biax 90", "biax 90", "biax 0"}, "stack: 4 plies, 8 layers: not a mirror, but does not couple (B = 0); balanced"},
		{[]string{"weave 0", "weave 90", "ud 0 patch"}, "stack: 2 plies, 2 layers: symmetric; balanced"},
	} {
		p := panel(cloths, c.plies...)
		if got := Read(p).Line(); got != c.line {
			t.Errorf("%q: %s", c.plies, got)
		}
	}
	// Of the same thickness glass and carbon would hide their difference: it is
	// not said that they do not couple.
	same := []laminate.PlanFabric{
		{Name: "a", WeightGSM: 254, Fibre: "e-glass", DensityGCM3: given(2.54), FibreVolume: given(.5)},
		{Name: "b", WeightGSM: 178, Fibre: "carbon", DensityGCM3: given(1.78), FibreVolume: given(.5)},
	}
	if got := Read(panel(same, "a 0", "b 0")).Line(); !strings.Contains(got, "not symmetric (no coupling by direction, but different cloth)") {
		t.Error(got)
	}
}

func given(v float64) laminate.Figure { return laminate.Figure{Value: v, Basis: laminate.Given} }

// Joints across the load are named by ply, as the check finds them by itself.
func TestLoadLines(t *testing.T) {
	p := panel(cloths, "biax 0", "biax 90", "ud 90", "weave 90", "weave 0")
	for i := range p.Plies {
		p.Plies[i].Joints = []laminate.Joint{{Kind: laminate.SideJoint}}
	}
	load := 0.0
	p.Part.LoadDeg = &load
	got := text(Report(p))
	for _, want := range []string{
		"Load at 0°: joints run across it and cut fibre that carries it in ply 2 (side joints, 100 % of the fibre of a ply), ply 4 (side joints, 50 % of the fibre of a ply).",
		"ud | unidirectional | 0 % | 100 %",
		"biax | biaxial, 45°, -45° from face to back | 100 % | 100 %",
		"weave | woven | 50 % | 50 %",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is missing in\n%s", want, got)
		}
	}
	load = 90
	if got := text(Report(p)); !strings.Contains(got, "in ply 1 (side joints, 100 % of the fibre of a ply), ply 5 (side joints, 50 %") {
		t.Error(got)
	}
}

// A patch makes a zone of its own, a core skins.
func TestZonesAndSkins(t *testing.T) {
	p := panel(cloths, "ud 0", "ud 90", "ud 45 patch", "ud 90", "ud 0")
	p.Cores = []laminate.Core{{Name: "foam", AfterPly: 2, ThicknessMM: 10, Blank: p.Part.Blank}}
	got := text(Report(p))
	for _, want := range []string{
		"4 plies from the tool up, 4 layers: ud [0/90]T, core foam, ud [90/0]T.",
		"Symmetric: layer by layer",
		"Z1 | 0.58 m2 | 1, 2, 4 and 5 | 4 | symmetric; balanced",
		"Z2 | 0.02 m2 | 1-5 | 5 | not symmetric",
		"Z2: ",
		"1 | 1 and 2 | not symmetric (coupling 0.866); balanced",
		"2 | 4 and 5 | not symmetric (coupling 0.866); balanced",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is missing in\n%s", want, got)
		}
	}
}

// An edited plan may hold anything: the report says what it can, in figures.
func TestReportOfAnyPlan(t *testing.T) {
	odd := rapid.SampledFrom([]float64{0, -1, 1e9, 300, math.SmallestNonzeroFloat64, 45})
	rapid.Check(t, func(t *rapid.T) {
		p := panel(nil)
		for i := range rapid.IntRange(0, 3).Draw(t, "fabrics") {
			f := laminate.PlanFabric{
				Name: string(rune('a' + i)), WeightGSM: odd.Draw(t, "gsm"),
				Form: rapid.SampledFrom([]string{"", laminate.Woven, laminate.Mat, laminate.Triaxial, "felt"}).Draw(t, "form"),
			}
			for range rapid.IntRange(0, 4).Draw(t, "layers") {
				f.Layers = append(f.Layers, laminate.Layer{AngleDeg: odd.Draw(t, "angle"), WeightGSM: odd.Draw(t, "weight")})
			}
			p.Fabrics = append(p.Fabrics, f)
		}
		for i := range rapid.IntRange(0, 5).Draw(t, "plies") {
			p.Plies = append(p.Plies, laminate.PlanPly{
				Ply: i + 1, Fabric: rapid.SampledFrom([]string{"a", "b", "c", "none"}).Draw(t, "fabric"), AngleDeg: odd.Draw(t, "angle"),
				Face: rapid.SampledFrom([]string{"up", "down", "", "left"}).Draw(t, "face"), Blank: p.Part.Blank,
				Joints: []laminate.Joint{{Kind: laminate.SideJoint}, {Kind: "odd"}},
			})
		}
		for range rapid.IntRange(0, 2).Draw(t, "cores") {
			p.Cores = append(p.Cores, laminate.Core{Name: "core", AfterPly: rapid.IntRange(-1, 9).Draw(t, "after"), ThicknessMM: odd.Draw(t, "mm"), Blank: p.Part.Blank})
		}
		load := odd.Draw(t, "load")
		p.Part.LoadDeg = &load
		if got := text(Report(p)); strings.Contains(got, "NaN") || strings.Contains(got, "%!") || strings.Contains(got, "Inf") {
			t.Fatal(got)
		}
	})
}
