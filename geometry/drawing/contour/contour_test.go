package contour_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/geometry/drawing/contour"
	"stripwright/geometry/drawing/trace"
)

func line(xy ...float64) trace.Line {
	l := trace.Line{}
	for i := 0; i < len(xy); i += 2 {
		l.Points = append(l.Points, orb.Point{xy[i], xy[i+1]})
	}
	return l
}

func closed(xy ...float64) trace.Line {
	l := line(xy...)
	l.Closed = true
	return l
}

// areas gives the sizes of the contours in whole mm², smallest first.
func areas(rings []orb.Ring) []int {
	var out []int
	for _, r := range rings {
		out = append(out, int(math.Round(math.Abs(geometry.SignedArea(r)))))
	}
	slices.Sort(out)
	return out
}

func TestJoin(t *testing.T) {
	square := []trace.Line{line(0, 0, 100, 0), line(100, 100, 100, 0), line(100, 100, 0, 100), line(0, 0, 0, 100)}
	with := func(more ...trace.Line) []trace.Line { return append(slices.Clone(square), more...) }
	cases := []struct {
		name               string
		lines              []trace.Line
		limit              float64
		areas              []int
		duplicates, cut    int
		gaps, open, branch int
	}{
		{"nothing", nil, 0, nil, 0, 0, 0, 0, 0},
		{"square, any order and direction", square, 0, []int{10000}, 0, 0, 0, 0, 0},
		{"one line that comes back", []trace.Line{line(0, 0, 100, 0, 100, 100, 0.004, 0.003)}, 0, []int{5000}, 0, 0, 0, 0, 0},
		{"closed line and its sides again", append([]trace.Line{closed(0, 0, 100, 0, 100, 100, 0, 100)}, square...), 0, []int{10000}, 1, 0, 0, 0, 0},
		{"a side twice, there and back", with(line(100, 0, 0, 0), line(0, 0, 100, 0)), 0, []int{10000}, 2, 0, 0, 0, 0},
		{"a closed line twice, begun elsewhere, the other way", []trace.Line{closed(0, 0, 9, 0, 9, 9), closed(9, 0, 0, 0, 9, 9)}, 0, []int{41}, 1, 0, 0, 0, 0},
		{"a side in halves on the whole", with(line(0, 0, 50, 0), line(50, 0, 100, 0)), 0, []int{10000}, 0, 2, 0, 0, 0},
		{"two sides that overlap", []trace.Line{line(0, 0, 60, 0), line(40, 0, 100, 0), line(100, 0, 100, 100, 0, 100, 0, 0)}, 0, []int{10000}, 0, 1, 0, 0, 0},
		{"one side of a closed line again", []trace.Line{closed(0, 0, 100, 0, 100, 100, 0, 100), line(20, 0, 100, 0)}, 0, []int{10000}, 0, 1, 0, 0, 0},
		{"gap of a hundredth is silent", []trace.Line{line(0, 0, 100, 0), line(100, 0.01, 100, 100, 0, 100, 0, 0)}, 0, []int{10000}, 0, 0, 0, 0, 0},
		{"gap of a tenth is told", []trace.Line{line(0, 0, 100, 0), line(100, 0.1, 100, 100, 0, 100, 0, 0)}, 0, []int{10000}, 0, 0, 1, 0, 0},
		{"gap that is too wide", []trace.Line{line(0, 0, 100, 0), line(100, 0.11, 100, 100, 0, 100, 0, 0)}, 0, nil, 0, 0, 0, 1, 0},
		{"gap that is allowed", []trace.Line{line(0, 0, 100, 0), line(100, 0.9, 100, 100, 0, 100, 0, 0)}, 1, []int{10000}, 0, 0, 1, 0, 0},
		{"the narrower gap wins", []trace.Line{line(0, 0, 100, 0), line(100, 0.3, 100, 100, 0, 100, 0, 0), line(100.5, 0, 200, 0)}, 1, []int{10000}, 0, 0, 1, 1, 0},
		{"overshoot on both sides", []trace.Line{line(0, 0, 100.05, 0), line(100, -0.05, 100, 100, 0, 100, 0, 0)}, 0, []int{10000}, 0, 0, 1, 0, 0},
		{"a side is missing", square[:3], 0, nil, 0, 0, 0, 1, 0},
		{"a line inside", with(line(0, 0, 100, 100)), 0, nil, 0, 0, 0, 0, 2},
		{"a dot", with(line(30, 30, 30.001, 30)), 0, []int{10000}, 0, 0, 0, 0, 0},
		{"two squares that touch in a corner", with(line(100, 100, 180, 100), line(180, 100, 180, 180), line(180, 180, 100, 180), line(100, 180, 100, 100)), 0, []int{6400, 10000}, 0, 0, 0, 0, 0},
	}
	for _, c := range cases {
		j := contour.Join(c.lines, c.limit)
		var rings []orb.Ring
		for _, r := range j.Rings {
			rings = append(rings, contour.AtPinches(r)...)
		}
		if got := areas(rings); !slices.Equal(got, c.areas) {
			t.Errorf("%s: contours of %v mm², want %v", c.name, got, c.areas)
		}
		got := [5]int{j.Duplicates, j.Overlaps, len(j.Gaps), len(j.Open), len(j.Branches)}
		if want := [5]int{c.duplicates, c.cut, c.gaps, c.open, c.branch}; got != want {
			t.Errorf("%s: duplicates, overlaps, gaps, open, branches are %v, want %v", c.name, got, want)
		}
	}
}

func TestFlat(t *testing.T) {
	for name, c := range map[string]struct {
		ring orb.Ring
		flat bool
	}{
		"none":          {nil, true},
		"out and back":  {line(0, 50, 100, 50, 20, 50).Points, true},
		"sloping":       {line(0, 0, 100, 50, 40, 20).Points, true},
		"thin":          {line(0, 0, 100, 0, 100, 0.1).Points, false},
		"figure of 8":   {line(0, 0, 700, 500, 700, 0, 0, 500).Points, false},
		"one long side": {line(0, 0, 1, 0, 1, 1, 0, 1).Points, false},
	} {
		if _, flat := contour.Flat(c.ring); flat != c.flat {
			t.Errorf("%s: flat is %v", name, flat)
		}
	}
}

// Rings in rings, each a square of its name's size about (500, 500), and some
// beside: outlines, holes and islands follow from how deep they lie.
func TestNest(t *testing.T) {
	square := func(x, y, side float64) orb.Ring {
		return line(x-side/2, y-side/2, x+side/2, y-side/2, x+side/2, y+side/2, x-side/2, y+side/2).Points
	}
	rings := []orb.Ring{
		square(500, 500, 200), square(500, 500, 800), square(500, 500, 400), square(500, 500, 600), square(500, 500, 100),
		square(2000, 500, 300), square(2000, 500, 50), square(150, 150, 60),
	}
	var got []string
	for _, n := range contour.Nest(rings) {
		w, _ := n.Region.Size()
		words := []string{trace.Number(w), "deep " + trace.Number(float64(n.Depth))}
		for _, h := range n.Region.Holes {
			words = append(words, "hole "+trace.Number(h.Bound().Max[0]-h.Bound().Min[0]))
		}
		got = append(got, strings.Join(words, " "))
		if geometry.SignedArea(n.Region.Outer) <= 0 {
			t.Errorf("outline of %v does not run counter-clockwise", w)
		}
	}
	want := []string{"800 deep 0 hole 600 hole 60", "400 deep 2 hole 200", "300 deep 0 hole 50", "100 deep 4"}
	if !slices.Equal(got, want) {
		t.Errorf("nested %q, want %q", got, want)
	}
}

// A hole that touches its outline in a corner is still a hole, and a ring that
// pinches falls in two.
func TestAtPinches(t *testing.T) {
	eight := orb.Ring(line(0, 0, 50, 40, 100, 0, 100, 100, 50, 40, 0, 100).Points)
	if got := areas(contour.AtPinches(eight)); !slices.Equal(got, []int{2500, 2500}) {
		t.Errorf("pinched ring: %v", got)
	}
	whole := orb.Ring(line(0, 0, 100, 0, 100, 100, 0, 100).Points)
	if got := areas(contour.AtPinches(whole)); !slices.Equal(got, []int{10000}) {
		t.Errorf("whole ring: %v", got)
	}
}
