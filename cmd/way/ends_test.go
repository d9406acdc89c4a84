package way

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"stripwright/laminate"
	"stripwright/laminate/check"
	"stripwright/laminate/waste"
	"stripwright/nest"
)

// Ends cut straight: every piece is an oblong as long and as wide as its strip, the
// note tells what that costs, and what is trimmed is told apart.
func TestStraightEnds(t *testing.T) {
	j := read(t, "job_square_45")
	shaped, err := Plan(context.Background(), j, nest.Settings{})
	if err != nil {
		t.Fatal(err)
	}
	j.Rules.StraightEnds = true
	p, err := Plan(context.Background(), j, nest.Settings{})
	if err != nil {
		t.Fatal(err)
	}
	if !check.Sound(p.Checks) || p.Rules.Ends != laminate.StraightEnds || p.Cost[0].Used <= shaped.Cost[0].Used {
		t.Errorf("ends %q, %g mm, cut to shape %g: %v", p.Rules.Ends, p.Cost[0].Used, shaped.Cost[0].Used, p.Checks)
	}
	if !slices.ContainsFunc(p.Notes, func(n laminate.Note) bool { return strings.Contains(n.Text, "trimmed on the tool: ") }) {
		t.Errorf("no note of what it costs: %v", p.Notes)
	}
	cut, strips := 0.0, 0.0
	for _, r := range p.Rolls {
		for _, c := range r.Pieces {
			w, h := c.Shape.Size()
			if len(c.Shape.Outer) != 4 || math.Abs(c.Shape.Area()-w*h) > 1 {
				t.Errorf("%s is no oblong: %v", c.ID, c.Shape)
			}
			cut += c.Shape.Area()
		}
	}
	for _, y := range p.Plies {
		for _, s := range y.Strips {
			strips += s.Shape.Area()
		}
	}
	if w := waste.Of(p)[0]; math.Abs(w.Lost[waste.Trimmed]-(cut-strips)) > 1 || math.Abs(w.LaidMM2-strips) > 1 {
		t.Errorf("%g mm² trimmed and %g laid, the pieces have %g more than %g", w.Lost[waste.Trimmed], w.LaidMM2, cut-strips, strips)
	}

	spoilt := p
	spoilt.Rules.Ends = ""
	if check.Sound(check.Plan(spoilt)) {
		t.Error("oblongs pass for pieces cut to shape")
	}
	spoilt = shaped
	spoilt.Rules.Ends = laminate.StraightEnds
	if check.Sound(check.Plan(spoilt)) {
		t.Error("pieces cut to shape pass for oblongs")
	}
}
