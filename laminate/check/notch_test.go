package check

import (
	"testing"

	"stripwright/geometry"
	"stripwright/laminate"
)

// A strip may lie against itself for less than a millimetre, no further; two
// strips never without a joint.
func TestStripAgainstItself(t *testing.T) {
	for _, c := range []struct {
		below, above int
		long         float64
		faults       int
	}{{0, 0, 0.14, 0}, {0, 0, 1.2, 1}, {0, 1, 0.14, 1}} {
		y := &laidPly{PlanPly: laminate.PlanPly{Ply: 2, Strips: []laminate.Strip{{ID: "P02-S01"}, {ID: "P02-S02"}}}, frame: geometry.PlyFrame(0)}
		f := &finding{}
		made := strand{seam: seam{kind: laminate.SideJoint, x0: 5, x1: 5 + c.long, y: 300, below: c.below, above: c.above}}
		y.match(f, []strand{made}, nil)
		if len(f.faults) != c.faults {
			t.Errorf("strips %d and %d for %g mm: %d faults, want %d", c.below, c.above, c.long, len(f.faults), c.faults)
		}
	}
}
