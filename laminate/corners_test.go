package laminate

import (
	"math"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
)

func region(points ...orb.Point) geometry.Region {
	return geometry.Region{Outer: orb.Ring(points)}.Snapped()
}

// arc gives points of a circle about a centre, within 0.05 mm of it.
func arc(cx, cy, radius, from, to float64) []orb.Point {
	step := 2 * math.Acos(1-0.05/radius) * 180 / math.Pi
	n := int(math.Ceil(math.Abs(to-from) / step))
	var points []orb.Point
	for i := 0; i <= n; i++ {
		s, c := math.Sincos((from + (to-from)*float64(i)/float64(n)) * math.Pi / 180)
		points = append(points, orb.Point{cx + radius*c, cy + radius*s})
	}
	return points
}

func roundedPlate(w, h, r float64) geometry.Region {
	p := arc(r, r, r, 180, 270)
	p = append(p, arc(w-r, r, r, 270, 360)...)
	p = append(p, arc(w-r, h-r, r, 0, 90)...)
	p = append(p, arc(r, h-r, r, 90, 180)...)
	return region(p...)
}

// chamfered is a plate with its lower right corner rounded by 60 mm and its
// upper right corner cut off.
func chamfered() geometry.Region {
	p := append([]orb.Point{{0, 0}}, arc(940, 60, 60, 270, 360)...)
	return region(append(p, orb.Point{1000, 500}, orb.Point{900, 600}, orb.Point{0, 600})...)
}

func hatchPlate() geometry.Region {
	return region(orb.Point{0, 0}, orb.Point{1370, 0}, orb.Point{1370, 400},
		orb.Point{1100, 400}, orb.Point{1100, 620}, orb.Point{0, 620})
}

func TestNamedCorners(t *testing.T) {
	half := region(arc(0, 0, 300, 0, 180)...) // half round: two true corners
	for _, c := range []struct {
		name string
		net  geometry.Region
		want []Corner
	}{
		{"step plate", hatchPlate(), []Corner{
			{"A", [2]float64{0, 0}}, {"B", [2]float64{1370, 0}}, {"C", [2]float64{1370, 400}},
			{"D", [2]float64{1100, 400}}, {"E", [2]float64{1100, 620}}, {"F", [2]float64{0, 620}},
		}},
		{"middle of an edge is no corner", region(orb.Point{0, 0}, orb.Point{500, 0}, orb.Point{1000, 0},
			orb.Point{1000, 600}, orb.Point{0, 600}), []Corner{
			{"A", [2]float64{0, 0}}, {"B", [2]float64{1000, 0}}, {"C", [2]float64{1000, 600}}, {"D", [2]float64{0, 600}},
		}},
		{"diamond: the lower of two equally near", region(orb.Point{0, -400}, orb.Point{400, 0}, orb.Point{0, 400},
			orb.Point{-400, 0}), []Corner{
			{"A", [2]float64{0, -400}}, {"B", [2]float64{400, 0}}, {"C", [2]float64{0, 400}}, {"D", [2]float64{-400, 0}},
		}},
		{"half round", half, []Corner{{"A", [2]float64{-300, 0}}, {"B", [2]float64{300, 0}}}},
		{"disc", region(arc(0, 0, 300, 0, 359.9)...), nil},
		{"rounded corners, at the middle of the rounding", roundedPlate(1000, 600, 40), []Corner{
			{"A", [2]float64{11.716, 11.716}}, {"B", [2]float64{988.284, 11.716}},
			{"C", [2]float64{988.284, 588.284}}, {"D", [2]float64{11.716, 588.284}},
		}},
		{"more rounding than straight edge: two marks", roundedPlate(1000, 600, 150), []Corner{
			{"A", [2]float64{500, 0}}, {"B", [2]float64{500, 600}},
		}},
		{"one rounding, one chamfer", chamfered(), []Corner{
			{"A", [2]float64{0, 0}}, {"B", [2]float64{982.426, 17.574}}, {"C", [2]float64{1000, 500}},
			{"D", [2]float64{900, 600}}, {"E", [2]float64{0, 600}},
		}},
		{"empty", geometry.Region{}, nil},
	} {
		got := NamedCorners(c.net)
		if c.name == "disc" {
			if len(got) != 2 || got[0].At[1] > -299.9 || got[1].At[1] < 299.9 {
				t.Errorf("disc: marks %v, want the lowest and the highest point", got)
			}
			continue
		}
		if len(got) != len(c.want) {
			t.Fatalf("%s: %v, want %v", c.name, got, c.want)
		}
		for i := range got {
			if got[i].Name != c.want[i].Name || math.Hypot(got[i].At[0]-c.want[i].At[0], got[i].At[1]-c.want[i].At[1]) > 0.06 {
				t.Errorf("%s: corner %d is %v, want %v", c.name, i, got[i], c.want[i])
			}
		}
	}
}

// Corners go with the part: moved far off, turned, mirrored, or begun at
// another vertex, the same places of the part are found. (Which of them is A
// depends on the lower left, so the set is compared.)
func TestNamedCornersFollowThePart(t *testing.T) {
	plate := hatchPlate()
	begun := geometry.Region{Outer: append(append(orb.Ring{}, plate.Outer[3:]...), plate.Outer[:3]...)}
	moves := map[string]func(orb.Point) orb.Point{
		"far":      func(p orb.Point) orb.Point { return orb.Point{p[0] + 5.2e6, p[1] - 3.4e6} },
		"turned":   geometry.Turned(30).Apply,
		"mirrored": geometry.MirrorX().Apply,
		"begun":    func(p orb.Point) orb.Point { return p },
	}
	for name, move := range moves {
		net := plate.Map(move)
		if name == "begun" {
			net = begun
		}
		got := NamedCorners(net)
		if len(got) != 6 {
			t.Fatalf("%s: %d corners, want 6", name, len(got))
		}
		for _, p := range plate.Outer {
			if q := move(p); !hasCorner(got, q) {
				t.Errorf("%s: no corner at %v in %v", name, q, got)
			}
		}
		if ring := ringOf(got); geometry.SignedArea(ring) <= 0 {
			t.Errorf("%s: letters run clockwise: %v", name, got)
		}
		assertDatumNearest(t, name, net, got)
	}
}

func hasCorner(cs []Corner, p orb.Point) bool {
	for _, c := range cs {
		if math.Hypot(c.At[0]-p[0], c.At[1]-p[1]) < 0.002 {
			return true
		}
	}
	return false
}

func ringOf(cs []Corner) orb.Ring {
	var ring orb.Ring
	for _, c := range cs {
		ring = append(ring, orb.Point(c.At))
	}
	return ring
}

func assertDatumNearest(t *testing.T, name string, net geometry.Region, cs []Corner) {
	t.Helper()
	o := net.Bounds().Min
	a := math.Hypot(cs[0].At[0]-o[0], cs[0].At[1]-o[1])
	for _, c := range cs[1:] {
		if d := math.Hypot(c.At[0]-o[0], c.At[1]-o[1]); d < a-0.001 {
			t.Errorf("%s: %s is %.3f mm from the lower left, A is %.3f mm", name, c.Name, d, a)
		}
	}
}

// A saw edge of 40 teeth and four plate corners: 26 letters at most, and the
// plate's own corners are among them.
func TestNamedCornersKeepTheMostSignificant(t *testing.T) {
	points := []orb.Point{{0, 0}, {2000, 0}, {2000, 500}}
	for i := 39; i >= 0; i-- {
		x := 200 + 40*float64(i)
		points = append(points, orb.Point{x + 20, 500}, orb.Point{x + 10, 480}, orb.Point{x, 500})
	}
	points = append(points, orb.Point{0, 500})
	got := NamedCorners(region(points...))
	if len(got) != 26 || got[25].Name != "Z" {
		t.Fatalf("%d corners, last %v; want 26 up to Z", len(got), got[len(got)-1])
	}
	for _, p := range []orb.Point{{0, 0}, {2000, 0}, {2000, 500}, {0, 500}} {
		if !hasCorner(got, p) {
			t.Errorf("the plate's corner %v is not named", p)
		}
	}
}

// A rounding is one corner however it is drawn, never a corner at each of its
// points; discs and regular polygons of 24 corners up have none.
func TestPointsOfCurvesAreNoCorners(t *testing.T) {
	for _, r := range []float64{1, 2, 5, 20, 100} {
		if got := NamedCorners(roundedPlate(1000, 600, r)); len(got) != 4 {
			t.Errorf("radius %g: %d corners, want 4", r, len(got))
		}
	}
	for _, r := range []float64{1, 3, 10, 100, 1000, 5000} {
		for _, n := range []int{24, 36, 90} {
			if got := NamedCorners(regular(r, n)); len(got) != 2 {
				t.Errorf("%d-sided, radius %g: %d corners, want two marks", n, r, len(got))
			}
		}
		if got := NamedCorners(region(arc(7, 9, r, 0, 359.9)...)); len(got) != 2 {
			t.Errorf("disc of radius %g: %d corners, want two marks", r, len(got))
		}
	}
}

func regular(radius float64, n int) geometry.Region {
	var points []orb.Point
	for i := range n {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		points = append(points, orb.Point{radius * c, radius * s})
	}
	return region(points...)
}
