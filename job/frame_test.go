package job

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/laminate"
)

// From the tool side everything is mirrored, x to -x, and then turned by -zero:
// outline, hole, keep-clear region and patch alike. The expected places are
// worked out here with a plain turn.
func TestFrame(t *testing.T) {
	for _, c := range []struct {
		side string
		zero float64
	}{{"laying side", 0}, {"tool side", 0}, {"laying side", 30}, {"tool side", 30}, {"laying side", -90}, {"tool side", 180}} {
		text := changed(t, "laying side", fmt.Sprintf("%s\n  zero: %v", c.side, c.zero), "angle: 0", "angle: 0, outline: p", "plies_between: 4", "plies_between: 4, keep_clear: [{points: [[10, 20], [30, 20], [30, 60]]}]") +
			"outlines: {p: {points: [[200, 50], [300, 50], [300, 90]]}}\n"
		j := read(t, text)
		moved := func(x, y float64) orb.Point {
			if c.side == "tool side" {
				x = -x
			}
			s, k := math.Sincos(-c.zero * math.Pi / 180)
			return orb.Point{k*x - s*y, s*x + k*y}
		}
		for _, ring := range []struct {
			what string
			ring orb.Ring
			at   orb.Point
		}{
			{"outline", j.Part.Net.Outer, moved(400, 500)}, {"hole", j.Part.Net.Holes[0], moved(160, 140)}, {"blank", j.Part.Blank.Outer, moved(700, 300)},
			{"keep clear", j.Rules.KeepClear[0].Region.Outer, moved(30, 60)}, {"patch", j.Plies[0].Blank.Outer, moved(300, 90)},
		} {
			if !slices.ContainsFunc(ring.ring, func(p orb.Point) bool { return math.Hypot(p[0]-ring.at[0], p[1]-ring.at[1]) < 0.001 }) {
				t.Errorf("%s, zero %v: %s has no vertex at %v: %v", c.side, c.zero, ring.what, ring.at, ring.ring)
			}
		}
		if area := j.Part.Net.Area(); math.Abs(area-(350000-300*200/2-60*40/2)) > 0.5 {
			t.Errorf("%s, zero %v: area %v", c.side, c.zero, area)
		}
		said := slices.ContainsFunc(j.Notes, func(n laminate.Note) bool { return n.Rule == "drawn_from" && strings.Contains(n.Text, "mirrored") })
		if said != (c.side == "tool side") {
			t.Errorf("%s: the mirror is said: %v", c.side, said)
		}
	}
}

// The same part written in any unit is the same part.
func TestUnitsAreOne(t *testing.T) {
	want := read(t, changed(t, "trim: 0", "trim: 12.7"))
	for unit, mm := range map[string]float64{"cm": 10, "m": 1000, "in": 25.4, "ft": 304.8, "yd": 914.4} {
		scaled := func(v float64) string { return fmt.Sprintf("%.12f", v/mm) }
		text := changed(t, "units: mm", "units: "+unit, "trim: 0", "trim: 1/2 in", "stagger: 50", "stagger: 50 mm", "width: 300", "width: 300 mm")
		from := strings.Index(text, "[[0, 0]")
		to := strings.Index(text, "\n  trim")
		var b strings.Builder
		b.WriteString(text[:from])
		for i, p := range []orb.Point{{0, 0}, {700, 0}, {700, 300}, {400, 500}, {0, 500}} {
			b.WriteString([]string{"[", ", "}[min(i, 1)] + "[" + scaled(p[0]) + ", " + scaled(p[1]) + "]")
		}
		b.WriteString("], holes: [[")
		for i, p := range []orb.Point{{100, 100}, {160, 100}, {160, 140}} {
			b.WriteString([]string{"", ", "}[min(i, 1)] + "[" + scaled(p[0]) + ", " + scaled(p[1]) + "]")
		}
		b.WriteString("]]}" + text[to:])
		got := read(t, b.String())
		if fmt.Sprint(got.Part.Net) != fmt.Sprint(want.Part.Net) || fmt.Sprint(got.Part.Blank) != fmt.Sprint(want.Part.Blank) {
			t.Errorf("in %s the part is %v, want %v", unit, got.Part.Net, want.Part.Net)
		}
	}
}
