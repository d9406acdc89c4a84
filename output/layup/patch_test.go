package layup

import (
	"math"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

// A patch of 430 × 300 mm, 60 and 50 mm off corner A of a plate of 1500 × 800 mm:
// its lower left corner lies hypot(60, 50) = 78.10 mm straight from A and
// hypot(60, 750) = 752.4 mm from D; read to half a millimetre.
func TestWhereAPatchLies(t *testing.T) {
	net := geometry.Region{Outer: orb.Ring{{0, 0}, {1500, 0}, {1500, 800}, {0, 800}}}
	patch := geometry.Region{Outer: orb.Ring{{60, 50}, {490, 50}, {490, 350}, {60, 350}}}
	p := laminate.Plan{Units: "mm", Part: laminate.PlanPart{Net: net, Corners: laminate.NamedCorners(net)}}
	ply := laminate.PlanPly{Outline: "C", Blank: patch}
	marks := Marks(p, ply)
	if len(marks) != 4 {
		t.Fatalf("%d marks, want one at each corner", len(marks))
	}
	want := [2][2]string{{"78 mm", "straight from A"}, {"752.5 mm", "straight from D"}}
	if marks[0].Ends != want {
		t.Errorf("lower left corner: %v, want %v", marks[0].Ends, want)
	}
	ply.Outline = ""
	if marks := Marks(p, ply); marks != nil {
		t.Errorf("a ply over the whole part has marks: %v", marks)
	}
}

// A ply that ends on the net edge is marked along it.
func TestAPlyDropOnTheEdge(t *testing.T) {
	net := geometry.Region{Outer: orb.Ring{{0, 0}, {1500, 0}, {1500, 800}, {0, 800}}}
	drop := geometry.Region{Outer: orb.Ring{{0, 0}, {1290, 0}, {1290, 610}, {0, 690}}}
	p := laminate.Plan{Units: "mm", Part: laminate.PlanPart{Net: net, Corners: laminate.NamedCorners(net)}}
	ply := laminate.PlanPly{Outline: "B", Blank: drop}
	marks := Marks(p, ply)
	if got := marks[1].Ends[0]; got != [2]string{"1290 mm", "from A, edge A-B"} {
		t.Errorf("the corner on the edge A-B: %v", got)
	}
	if got := marks[3].Ends[0]; got != [2]string{"690 mm", "from A, edge D-A"} {
		t.Errorf("the corner on the edge D-A: %v", got)
	}
}

// A round patch is marked where it lies farthest left, down, right and up.
func TestMarksOfARoundPatch(t *testing.T) {
	var ring orb.Ring
	for i := range 36 {
		sin, cos := math.Sincos(float64(i) * math.Pi / 18)
		ring = append(ring, orb.Point{1220 + 150*cos, 480 + 150*sin})
	}
	want := []orb.Point{{1070, 480}, {1220, 330}, {1370, 480}, {1220, 630}}
	for i, p := range outlineCorners(ring) {
		if distance(p, want[i]) > 0.001 {
			t.Errorf("mark %d at %v, want %v", i+1, p, want[i])
		}
	}
}

// Four plies of joints along x with one ply asked for between two joints: ply 2 is
// a patch over x 0…400, y 0…205. Ply 1 has its joint at y 200, ply 3 at y 210: the
// patch covers one of them only and parts nothing, so they count at 10 mm. Of a
// patch up to y 300 both lie under it from x 0 to 400 and count beyond it, where
// the upper joint has ended.
func TestAPatchBetweenPartsOnlyWhatItCovers(t *testing.T) {
	patch := func(high float64) geometry.Region {
		return geometry.Region{Outer: orb.Ring{{0, 0}, {400, 0}, {400, high}, {0, high}}}
	}
	joint := func(y, to float64) []laminate.Joint {
		return []laminate.Joint{{From: [2]float64{0, y}, To: [2]float64{to, y}}}
	}
	p := laminate.Plan{
		Fabrics: []laminate.PlanFabric{{Name: "f", StaggerMM: 50, PliesBetween: 1}},
		Plies: []laminate.PlanPly{
			{Ply: 1, Fabric: "f", Joints: joint(200, 1000)},
			{Ply: 2, Fabric: "f", Outline: "patch", Blank: patch(205)},
			{Ply: 3, Fabric: "f", Joints: joint(210, 400)},
		},
	}
	want := Pair{Lower: 1, Upper: 3, MM: 10, At: orb.Point{200, 205}}
	if got := Pairs(p); len(got) != 1 || got[0] != want {
		t.Errorf("a patch over one joint: %v, want %v", got, want)
	}
	p.Plies[1].Blank = patch(300)
	if got := Pairs(p); got != nil {
		t.Errorf("a patch over both joints: %v, want none", got)
	}
	p.Plies[2].Joints = joint(210, 1000)
	want.At = orb.Point{700, 205}
	if got := Pairs(p); len(got) != 1 || got[0] != want {
		t.Errorf("beyond the patch: %v, want %v", got, want)
	}
}
