package list

import (
	"strings"
	"testing"

	"stripwright/laminate"
)

// The report of the panel of issue 5, of two woven faces and seven triaxial
// plies turned over above the middle (common practice, no source): what it says
// is what package stack finds.
func TestStackReport(t *testing.T) {
	p := laminate.Plan{Title: "Tooling plate", Part: laminate.PlanPart{Name: "plate"}, Checks: []laminate.CheckResult{{Rule: "plies", Pass: true}}}
	p.Fabrics = []laminate.PlanFabric{
		{Name: "woven 200", WeightGSM: 200, Fibre: "carbon", Form: laminate.Woven},
		{Name: "triax 800", WeightGSM: 800, Fibre: "carbon", Form: laminate.Triaxial, Layers: []laminate.Layer{{AngleDeg: 0}, {AngleDeg: 45}, {AngleDeg: -45}}},
	}
	for i := range 9 {
		y := laminate.PlanPly{Ply: i + 1, Fabric: "triax 800", Face: laminate.FaceUp}
		if i == 0 || i == 8 {
			y.Fabric = "woven 200"
		} else if i > 4 {
			y.Face = laminate.FaceDown
		}
		p.Plies = append(p.Plies, y)
	}
	data, err := StackReport(p)
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Join(strings.Fields(string(data)), " ")
	for _, want := range []string{
		"9 plies from the tool up, 23 layers: woven 200 [0f]T, triax 800 [0_4]T, triax 800 [0_3]T face down, woven 200 [0f]T.",
		"Close to symmetric, but not symmetric: it couples by 0.05",
		"ply 2 and ply 8: -45° opposite 45°, 45° opposite -45°",
		"Nothing of this cloth mends it: no turn or flip",
		"It needs the opposite-hand cloth: add one ply of the opposite-hand cloth of triax 800 at 0°, face down, after ply 8, and cut plies 6-8 from",
		"0° 2066.7 g/m2 34.4 %",
		"triax 800 triaxial, 0°, 45°, -45° from face to back 66.7 % 100 %",
		"Estimates only",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing in\n%s", want, data)
		}
	}
}
