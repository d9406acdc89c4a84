package roll

import (
	"testing"

	"github.com/paulmach/orb"
)

// A piece counts as full-width where none of the others finds room beside it, but
// not when it has an opening across the roll that others may lie in.
func TestFullWidth(t *testing.T) {
	oblong := func(high float64) *Shape { return shapeOf(orb.Ring{{0, 0}, {40, 0}, {40, high}, {0, high}}) }
	u := shapeOf(orb.Ring{{0, 0}, {90, 0}, {90, 90}, {60, 90}, {60, 30}, {30, 30}, {30, 90}, {0, 90}})
	cases := []struct {
		shape *Shape
		with  float64 // height of the lowest other piece
		full  bool
	}{
		{oblong(100), 1, true},
		{oblong(99.96), 1, true}, // a slip of 0.04 mm is left
		{oblong(90), 10, false},  // they fill the roll side by side
		{oblong(90), 10.001, true},
		{oblong(55), 50, false}, // too low: others may reach in beside it
		{u, 20, false},
	}
	for _, c := range cases {
		task := &Task{Width: um(100), Stock: []Stock{{Copies: 1}}, Pieces: []Piece{{c.shape, Either}, {oblong(c.with), Either}}}
		if few := task.full(0); few != (c.shape.Height() > um(99.95)) {
			t.Errorf("height %g µm: full %v among a few pieces", float64(c.shape.Height()), few)
		}
		for len(task.Pieces) <= mostMixed {
			task.Pieces = append(task.Pieces, task.Pieces[1])
		}
		if got := task.full(0); got != c.full {
			t.Errorf("height %g µm beside one of %g mm: full %v", float64(c.shape.Height()), c.with, got)
		}
	}
}
