package trace_test

import (
	"math"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry/drawing/trace"
)

func TestNumber(t *testing.T) {
	for v, want := range map[float64]string{
		0: "0", 350: "350", 12.25: "12.25", 12.256: "12.26", -0.001: "-0.001", 0.00012345: "0.000123", 1e6: "1000000", 0.1: "0.1", -7.5: "-7.5",
	} {
		if got := trace.Number(v); got != want {
			t.Errorf("%v is printed as %s, want %s", v, got, want)
		}
	}
	if got := trace.Place(orb.Point{350, 12.25}); got != "(350, 12.25)" {
		t.Error(got)
	}
	if got := trace.Count(1, "gap") + trace.Count(3, "gap"); got != "1 gap3 gaps" {
		t.Error(got)
	}
}

// A placement of a placement moves a point as one after the other does, and
// Stretch is the most that a unit vector grows.
func TestAffine(t *testing.T) {
	a := trace.Move(3, -4).Of(trace.Turn(30)).Of(trace.Scale(2, -0.5))
	b := trace.Affine{A: 1, B: 0.3, C: -0.7, D: 2, E: 5, F: 6}
	p := orb.Point{7, 11}
	one, two := a.Of(b).Apply(p), a.Apply(b.Apply(p))
	if math.Hypot(one[0]-two[0], one[1]-two[1]) > 1e-12 {
		t.Errorf("%v at once, %v one after the other", one, two)
	}
	most := 0.0
	for i := range 3600 {
		s, c := math.Sincos(float64(i) * math.Pi / 1800)
		most = math.Max(most, math.Hypot(b.A*c+b.C*s, b.B*c+b.D*s))
	}
	if math.Abs(b.Stretch()-most) > 1e-5 {
		t.Errorf("stretch %v, measured %v", b.Stretch(), most)
	}
	if q := trace.Turn(90).Apply(orb.Point{1, 0}); q != (orb.Point{0, 1}) {
		t.Errorf("a quarter turn takes (1, 0) to %v", q)
	}
}

// However many findings there are, the report stays short and counts the rest.
func TestReportStaysShort(t *testing.T) {
	r := &trace.Report{File: "x"}
	for i := range 1000 {
		r.Problem("number", r.Line(i), "cure", "%q is not a number", "a\x1bb")
		r.Note("spline", "note %d", i)
		r.LeaveOut(strings.Repeat("K", i))
	}
	r.Close()
	last := r.Notes[len(r.Notes)-1].Text
	if len(r.Problems) > 10 || len(r.Notes) > 20 || !strings.Contains(last, "992 notes (spline), 992 problems (number)") {
		t.Errorf("%d problems, %d notes, last %q", len(r.Problems), len(r.Notes), last)
	}
	if got := trace.Printable("a\x1b[31mb"); got != "a?[31mb" {
		t.Errorf("printable: %q", got)
	}
	const want = "x:7: unit: 3 is none — say which"
	if got := (trace.Problem{Rule: "unit", Where: r.Line(7), Text: "3 is none", Cure: "say which"}).Error(); got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
