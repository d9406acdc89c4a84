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
	s := &plySheet{board: &board{plan: p}, ply: laminate.PlanPly{Outline: "C", Blank: patch}}
	marks := s.patchMarks()
	if len(marks) != 4 {
		t.Fatalf("%d marks, want one at each corner", len(marks))
	}
	want := [2][2]string{{"78 mm", "straight from A"}, {"752.5 mm", "straight from D"}}
	if marks[0].ends != want {
		t.Errorf("lower left corner: %v, want %v", marks[0].ends, want)
	}
	s.ply.Outline = ""
	if marks := s.patchMarks(); marks != nil {
		t.Errorf("a ply over the whole part has marks: %v", marks)
	}
}

// A ply that ends on the net edge is marked along it.
func TestAPlyDropOnTheEdge(t *testing.T) {
	net := geometry.Region{Outer: orb.Ring{{0, 0}, {1500, 0}, {1500, 800}, {0, 800}}}
	drop := geometry.Region{Outer: orb.Ring{{0, 0}, {1290, 0}, {1290, 610}, {0, 690}}}
	p := laminate.Plan{Units: "mm", Part: laminate.PlanPart{Net: net, Corners: laminate.NamedCorners(net)}}
	s := &plySheet{board: &board{plan: p}, ply: laminate.PlanPly{Outline: "B", Blank: drop}}
	marks := s.patchMarks()
	if got := marks[1].ends[0]; got != [2]string{"1290 mm", "from A, edge A-B"} {
		t.Errorf("the corner on the edge A-B: %v", got)
	}
	if got := marks[3].ends[0]; got != [2]string{"690 mm", "from A, edge D-A"} {
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
