package way

import (
	"context"
	"math"
	"path/filepath"
	"slices"
	"testing"

	"stripwright/job"
	"stripwright/laminate"
	"stripwright/laminate/waste"
	"stripwright/nest"
)

// What is told of the waste of real plans adds up to what is used, to 0.1 mm of
// roll, and left-over rectangles lie in free cloth of the roll.
func TestWasteAddsUp(t *testing.T) {
	names, err := filepath.Glob(filepath.Join("..", "..", "testdata", "*", "*.yaml"))
	if err != nil || len(names) < 30 {
		t.Fatalf("%v %v", names, err)
	}
	lost := 0
	for _, name := range names {
		if base := filepath.Base(name); base == "s01-scale200.yaml" && testing.Short() {
			continue
		}
		j, problems := job.Read(name)
		if len(problems) > 0 {
			continue // fixtures of bad input
		}
		p, err := Plan(context.Background(), j, nest.Settings{Effort: laminate.Quick})
		if err != nil {
			continue // jobs that cannot be planned
		}
		used := 0.0
		for _, c := range waste.Of(p) {
			sum := c.LaidMM2
			for k, v := range c.Lost {
				if v < -0.1*c.WidthMM {
					t.Errorf("%s: kind %d: %v mm², less than none", name, k, v)
				}
				sum += v
			}
			if off := c.LengthMM(sum) - c.TotalMM; math.Abs(off) > 0.1 {
				t.Errorf("%s: the shares of %v mm of %s add up to %v mm more", name, c.TotalMM, c.Fabric, off)
			}
			used += c.TotalMM
			lost++
		}
		for _, c := range p.Cost {
			if c.Measure != laminate.ByPrice {
				used -= c.Used
			}
		}
		if priced := slices.ContainsFunc(p.Cost, func(c laminate.Cost) bool { return c.Measure == laminate.ByPrice }); !priced && math.Abs(used) > 0.01 {
			t.Errorf("%s: %v mm more are shared out than used", name, used)
		}
		holdLeftOver(t, name, p)
	}
	if lost < 30 {
		t.Errorf("only %d plans", lost)
	}
}

// holdLeftOver holds left-over rectangles against the boxes of the pieces with
// square ends, which they must not meet.
func holdLeftOver(t *testing.T, name string, p laminate.Plan) {
	for _, l := range waste.LeftOver(p) {
		for _, r := range p.Rolls {
			if r.Roll != l.Roll || r.Copy != l.Copy || r.Fabric != l.Fabric {
				continue
			}
			for _, piece := range r.Pieces {
				b := piece.Shape.Bounds()
				if square := len(piece.Shape.Outer) == 4 && math.Abs(piece.Shape.Area()-(b.Max[0]-b.Min[0])*(b.Max[1]-b.Min[1])) < 1; !square {
					continue
				}
				const rounding = 0.003
				if b.Max[0] > l.FromMM+rounding && b.Min[0] < l.FromMM+l.LengthMM-rounding &&
					b.Max[1] > l.AcrossMM+rounding && b.Min[1] < l.AcrossMM+l.WidthMM-rounding {
					t.Errorf("%s: %+v meets piece %s", name, l, piece.ID)
				}
			}
		}
	}
}
