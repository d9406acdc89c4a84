package job

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/paulmach/orb"
	"github.com/peterstace/simplefeatures/geom"
	"pgregory.net/rapid"

	"stripwright/geometry"
	"stripwright/laminate"
)

// Areas of round shapes by formula: πd²/4, πwh/4, wh - (4-π)r². The points lie
// on the curve, so the area is short by at most perimeter times chord error;
// the sizes are exact.
func TestRoundShapes(t *testing.T) {
	for _, c := range []struct {
		shape                 string
		w, h, area, perimeter float64
		at                    orb.Point
	}{
		{"{circle: 600}", 600, 600, math.Pi * 600 * 600 / 4, math.Pi * 600, orb.Point{0, 0}},
		{"{circle: 600, at: [500, 400]}", 600, 600, math.Pi * 600 * 600 / 4, math.Pi * 600, orb.Point{200, 100}},
		{"{ellipse: [900, 540]}", 900, 540, math.Pi * 900 * 540 / 4, 2300, orb.Point{0, 0}},
		{"{rectangle: [1370, 620], corner: 40}", 1370, 620, 1370*620 - (4-math.Pi)*1600, 4000, orb.Point{0, 0}},
		{"{rectangle: [1370, 620], corner: 310, at: [-10, 20]}", 1370, 620, 1370*620 - (4-math.Pi)*310*310, 3500, orb.Point{-10, 20}},
		{"{rectangle: [1370, 620]}", 1370, 620, 1370 * 620, 0, orb.Point{0, 0}},
		{"{rectangle: [700, 500], holes: [{circle: 100, at: [350, 250]}]}", 700, 500, 350000 - math.Pi*2500, 2700, orb.Point{0, 0}},
	} {
		text := plain[:strings.Index(plain, "{points")] + c.shape + plain[strings.Index(plain, "\n  trim"):]
		net := read(t, text).Part.Net
		w, h := net.Size()
		b := net.Bounds()
		if w != c.w || h != c.h || b.Min != c.at {
			t.Errorf("%s: %v by %v at %v", c.shape, w, h, b.Min)
		}
		if off := net.Area() - c.area; math.Abs(off) > c.perimeter*partChord+1e-3 {
			t.Errorf("%s: area %v, want %v", c.shape, net.Area(), c.area)
		}
	}
}

// What is the same from both sides, by hand: turned over about the roll
// direction, the order of the layers reverses and their angles change sign.
func TestTwoSided(t *testing.T) {
	for layers, want := range map[string]bool{
		"[]": true, "[0]": true, "[90]": true, "[30]": false, "[45 -45]": true, "[-45 45]": true, "[0 90]": false, "[90 0]": false,
		"[0 45 -45]": false, "[45 0 -45]": true, "[0 90 0]": true, "[30 -60]": false, "[45 90 -45]": true,
	} {
		var ls []laminate.Layer
		for _, s := range strings.Fields(strings.Trim(layers, "[]")) {
			var deg float64
			if _, err := fmt.Sscan(s, &deg); err != nil {
				t.Fatal(err)
			}
			ls = append(ls, laminate.Layer{AngleDeg: deg})
		}
		if twoSided(ls) != want {
			t.Errorf("%s the same from both sides: %v", layers, !want)
		}
	}
	if twoSided([]laminate.Layer{{AngleDeg: 45, WeightGSM: 200}, {AngleDeg: -45, WeightGSM: 250}}) {
		t.Error("layers of different weight are taken for the same from both sides")
	}
}

// star draws a random outline round a centre.
func star(t *rapid.T, label string, at orb.Point, reach float64) geometry.Region {
	n := rapid.IntRange(3, 12).Draw(t, label+" corners")
	var ring orb.Ring
	for i := range n {
		r := rapid.Float64Range(0.3, 1).Draw(t, label) * reach
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		ring = append(ring, orb.Point{at[0] + r*c, at[1] + r*s})
	}
	return geometry.Region{Outer: ring}.Snapped()
}

// outsider turns a region into one of a general geometry library.
func outsider(t *rapid.T, g geometry.Region) geom.Geometry {
	var parts []string
	for _, ring := range g.Rings() {
		var ps []string
		for i := range len(ring) + 1 {
			p := ring[i%len(ring)]
			ps = append(ps, fmt.Sprintf("%v %v", p[0], p[1]))
		}
		parts = append(parts, "("+strings.Join(ps, ", ")+")")
	}
	out, err := geom.UnmarshalWKT("POLYGON(" + strings.Join(parts, ", ") + ")")
	if err != nil {
		t.Skip(err)
	}
	return out
}

// A patch sticks out of a blank with a hole exactly when the difference of the
// two has an area, and is apart from it when the intersection has none: second
// opinion from github.com/peterstace/simplefeatures.
func TestPatchAgainstSecondOpinion(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		blank := star(t, "blank", orb.Point{}, 1000)
		hole := star(t, "hole", orb.Point{50, 20}, 120)
		blank = geometry.Region{Outer: blank.Outer, Holes: []orb.Ring{hole.Outer}}.Oriented()
		at := orb.Point{rapid.Float64Range(-900, 900).Draw(t, "x"), rapid.Float64Range(-900, 900).Draw(t, "y")}
		patch := star(t, "patch", at, rapid.Float64Range(20, 500).Draw(t, "reach"))
		a, b := outsider(t, patch), outsider(t, blank)
		rest, err := geom.Difference(a, b)
		if err != nil {
			t.Skip(err)
		}
		shared, err := geom.Intersection(a, b)
		if err != nil {
			t.Skip(err)
		}
		_, by := sticksOut(patch, blank)
		// A strip of patchSlack round the patch is too thin to be told apart.
		thin := 4 * patchSlack * 1000
		if by == 0 && rest.Area() > thin || by > 1 && rest.Area() == 0 {
			t.Errorf("sticks out by %v, difference %v mm²", by, rest.Area())
		}
		if apart(patch, blank) && shared.Area() > 1 || !apart(patch, blank) && shared.IsEmpty() {
			t.Errorf("apart %v, intersection %v mm²", apart(patch, blank), shared.Area())
		}
	})
}

func TestPatchPlaces(t *testing.T) {
	square := func(x, y, side float64) orb.Ring {
		return orb.Ring{{x, y}, {x + side, y}, {x + side, y + side}, {x, y + side}}
	}
	frame := geometry.Region{Outer: square(0, 0, 1000), Holes: []orb.Ring{square(400, 400, 100)}}.Oriented()
	notched := geometry.Region{Outer: orb.Ring{{0, 0}, {1000, 0}, {1000, 1000}, {501, 1000}, {500, 200}, {499, 1000}, {0, 1000}}}
	for _, c := range []struct {
		what  string
		blank geometry.Region
		patch orb.Ring
		by    float64
	}{
		{"the whole", geometry.Region{Outer: square(0, 0, 1000)}, square(0, 0, 1000), 0},
		{"beside the hole", frame, square(10, 10, 300), 0},
		{"on the edge", frame, square(0, 0, 400), 0},
		{"a hair over the edge", frame, square(-0.009, 0, 300), 0},
		{"over the edge", frame, square(-0.02, 0, 300), 0.02},
		{"over the hole", frame, square(300, 300, 300), 50},
		{"touching the hole", frame, square(300, 300, 100), 0},
		{"in the hole", frame, square(420, 420, 10), 30},
		{"far away", frame, square(2000, 0, 10), 1010},
		{"across a notch", notched, square(450, 700, 100), 0.75},
	} {
		_, by := sticksOut(geometry.Region{Outer: c.patch}, c.blank)
		if math.Abs(by-c.by) > 1e-4*c.by+1e-9 {
			t.Errorf("%s: sticks out by %v, want %v", c.what, by, c.by)
		}
	}
}

func TestMiddleLiesInside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := star(t, "ring", orb.Point{}, 100)
		if p := middleOf(g.Outer); !g.Contains(p) {
			t.Errorf("%v is outside %v", p, g.Outer)
		}
	})
}

// Rows of edges answer like the plain loop over all edges.
func TestRowsAgreeWithAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := star(t, "outline", orb.Point{}, 100)
		p := orb.Point{rapid.Float64Range(-110, 110).Draw(t, "x"), rapid.Float64Range(-110, 110).Draw(t, "y")}
		s := indexed(g)
		if away := s.away(p); away > 1e-6 && s.holds(p) != g.Contains(p) {
			t.Errorf("%v is held: %v", p, s.holds(p))
		} else if mm := rapid.Float64Range(0, 50).Draw(t, "mm"); s.near(p, mm) != (away <= mm) {
			t.Errorf("%v lies %v away, near %v: %v", p, away, mm, s.near(p, mm))
		}
	})
}
