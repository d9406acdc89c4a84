package layup

import (
	"fmt"
	"math"
	"testing"

	"github.com/paulmach/orb"
	"github.com/peterstace/simplefeatures/geom"

	"stripwright/laminate"
	"stripwright/output/internal/handmade"
)

// Distances worked out by hand on the step-shaped hatch: A (0, 0), B (1370, 0),
// C (1370, 400), D (1100, 400), E (1100, 620), F (0, 620).
func TestMeasureByHand(t *testing.T) {
	p := handmade.Hatch()
	m := Measure(p)
	for _, c := range []struct {
		ply, joint int
		ends       [2]string
		below      string
	}{
		{1, 1, [2]string{"175.000 from A on F-A", "175.000 from B on B-C"}, ""},
		{1, 2, [2]string{"475.000 from A on F-A", "75.000 from D on D-E"}, ""},
		{2, 2, [2]string{"1050.000 from A on A-B", "1050.000 from F on E-F"}, ""},
		// +45°, through (0, 141.42) and (478.58, 620): 100 mm off the origin.
		{3, 4, [2]string{"141.421 from A on F-A", "478.579 from F on E-F"}, ""},
		// The doubler's joint at y 300 is carried on to the edge of the part.
		{5, 1, [2]string{"300.000 from A on F-A", "300.000 from B on B-C"}, "125.000 to ply 1"},
		{6, 1, [2]string{"233.000 from A on F-A", "233.000 from B on B-C"}, "58.000 to ply 1"},
		{7, 1, [2]string{"1350.000 from A on A-B", "250.000 from D on C-D"}, "50.000 to ply 2"},
	} {
		got := m[c.ply-1].Joints[c.joint-1]
		for i, e := range got.Ends {
			if s := fmt.Sprintf("%.3f from %s on %s", e.AlongMM, e.From, e.Edge); s != c.ends[i] {
				t.Errorf("ply %d %s, end %d: %s, want %s", c.ply, got.Name, i+1, s, c.ends[i])
			}
		}
		below := ""
		if got.Below != nil {
			below = fmt.Sprintf("%.3f to ply %d", got.Below.MM, got.Below.Ply)
		}
		if below != c.below {
			t.Errorf("ply %d %s, nearest below: %q, want %q", c.ply, got.Name, below, c.below)
		}
	}
}

// Both marks of every joint lie on its line and on the net edge, found again
// with simplefeatures, and a walk of the distance along the edge from the named
// corner ends on them.
func TestMeasureAgainstAnotherLibrary(t *testing.T) {
	for name, p := range map[string]laminate.Plan{
		"hatch": handmade.Hatch(), "disc": handmade.Disc(), "batten": handmade.Batten(), "small": handmade.Small(),
	} {
		ring := p.Part.Net.Oriented().Outer
		for i, ply := range Measure(p) {
			for _, m := range ply.Joints {
				if m.InTrim {
					t.Errorf("%s: ply %d %s is said to lie in the trim", name, i+1, m.Name)
					continue
				}
				crossings := edgeCrossings(t, ring, m.Joint)
				for _, e := range m.Ends {
					if !nearAnyPoint(crossings, e.At) {
						t.Errorf("%s: ply %d %s: mark %v is not where the line meets the edge %v", name, i+1, m.Name, e.At, crossings)
					}
					if got := walk(ring, cornerNamed(p, e.From), e.Way == "clockwise", e.AlongMM); distance(got, e.At) > 0.01 {
						t.Errorf("%s: ply %d %s: %v walked from %s ends at %v, mark is %v", name, i+1, m.Name, e.AlongMM, e.From, got, e.At)
					}
				}
			}
		}
	}
}

func edgeCrossings(t *testing.T, ring orb.Ring, j laminate.Joint) []orb.Point {
	t.Helper()
	dx, dy := j.To[0]-j.From[0], j.To[1]-j.From[1]
	l := math.Hypot(dx, dy)
	wkt := "LINESTRING("
	for _, p := range append(append(orb.Ring{}, ring...), ring[0]) {
		wkt += fmt.Sprintf("%f %f,", p[0], p[1])
	}
	edge, err := geom.UnmarshalWKT(wkt[:len(wkt)-1] + ")")
	if err != nil {
		t.Fatal(err)
	}
	line, err := geom.UnmarshalWKT(fmt.Sprintf("LINESTRING(%f %f,%f %f)",
		j.From[0]-9999*dx/l, j.From[1]-9999*dy/l, j.To[0]+9999*dx/l, j.To[1]+9999*dy/l))
	if err != nil {
		t.Fatal(err)
	}
	cut, err := geom.Intersection(edge, line)
	if err != nil {
		t.Fatal(err)
	}
	var out []orb.Point
	for _, g := range cut.Dump() {
		if xy, ok := g.MustAsPoint().XY(); ok {
			out = append(out, orb.Point{xy.X, xy.Y})
		}
	}
	return out
}

func nearAnyPoint(points []orb.Point, p orb.Point) bool {
	for _, q := range points {
		if distance(p, q) < 0.01 {
			return true
		}
	}
	return false
}

func cornerNamed(p laminate.Plan, name string) orb.Point {
	for _, c := range p.Part.Corners {
		if c.Name == name {
			return orb.Point(c.At)
		}
	}
	return orb.Point{}
}

// walk goes a distance along a ring from a point on it.
func walk(ring orb.Ring, from orb.Point, back bool, far float64) orb.Point {
	if back {
		turned := make(orb.Ring, len(ring))
		for i, p := range ring {
			turned[len(ring)-1-i] = p
		}
		ring = turned
	}
	start := 0
	for i, p := range ring { // the edge that the corner lies on
		q := ring[(i+1)%len(ring)]
		if distance(p, from)+distance(from, q) < distance(p, q)+1e-4 && distance(from, q) > 1e-9 {
			start = i
			break
		}
	}
	at := from
	for k := 1; ; k++ {
		q := ring[(start+k)%len(ring)]
		if d := distance(at, q); d >= far {
			f := far / d
			return orb.Point{at[0] + f*(q[0]-at[0]), at[1] + f*(q[1]-at[1])}
		}
		far -= distance(at, q)
		at = q
	}
}

// A joint in the trim alone has no marks; a patch between counts only where it
// lies.
func TestMeasureInTrimAndUnderPatches(t *testing.T) {
	p := handmade.Hatch()
	p.Plies = p.Plies[:1]
	p.Plies[0].Joints = []laminate.Joint{{Kind: laminate.SideJoint, From: [2]float64{-25, -10}, To: [2]float64{1395, -10}}}
	if m := Measure(p)[0].Joints[0]; !m.InTrim {
		t.Errorf("joint at y -10 has marks %v, want none: it lies in the trim", m.Ends)
	}
	p = handmade.Hatch()
	for i := range p.Fabrics {
		p.Fabrics[i].PliesBetween = 1
	}
	// Ply 5, the doubler, lies between plies 4 and 6 at x 300 to 700 only: with
	// one ply between asked for, it keeps nothing apart outside it.
	p.Plies[3] = p.Plies[0]
	p.Plies[3].Ply = 4
	if b := Measure(p)[5].Joints[0].Below; b == nil || b.Ply != 4 && b.Ply != 5 {
		t.Errorf("nearest below %v, want ply 4 or 5", b)
	}
	p.Plies[4].Outline = "" // as if ply 5 covered the part
	if b := Measure(p)[5].Joints[0].Below; b == nil || b.Ply != 5 {
		t.Errorf("nearest below %v, want ply 5: ply 4 has one ply between", b)
	}
}
