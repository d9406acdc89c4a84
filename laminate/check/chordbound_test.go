package check

import (
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

// Three plies 1000 mm long and 430 mm across from a roll of 200: seven strips by
// the chords, worked out by hand; what is said beyond that is found.
func TestChordBound(t *testing.T) {
	blank := geometry.Region{Outer: orb.Ring{{0, 0}, {1000, 0}, {1000, 430}, {0, 430}}}
	for _, k := range []struct {
		length float64
		steps  int
		faults int
	}{{7000, 6, 0}, {6999, 6, 0}, {7001, 6, 1}, {7000, 2, 1}, {7000, 0, 1}} {
		m := &costing{f: &finding{rule: RuleCost}, area: 1290000, rolls: []laminate.PlanRoll{{UsableWidthMM: 200}}}
		m.c = laminate.Cost{Measure: laminate.ByLength, Bound: k.length, Proof: laminate.Proof{Bound: "chord", LengthMM: k.length, Steps: k.steps}}
		for range 3 {
			m.plies = append(m.plies, laidPly{PlanPly: laminate.PlanPly{Blank: blank}})
		}
		m.leastLength()
		if got := len(m.f.faults); got != k.faults {
			t.Errorf("%g mm by %d steps: %d faults, want %d", k.length, k.steps, got, k.faults)
		}
	}
}
