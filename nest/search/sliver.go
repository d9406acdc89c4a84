package search

import (
	"slices"

	"stripwright/geometry/band"
	"stripwright/nest/layout"
)

// turns is where a blank begins and ends across the roll, modulo the width of
// the roll, sorted.
type turns struct{ begins, ends []int64 }

func turnsOf(c *layout.Class) *turns {
	t := &turns{}
	for _, e := range c.Edges {
		if e.Begins {
			t.begins = append(t.begins, c.Phase(e.At))
		} else {
			t.ends = append(t.ends, c.Phase(e.At))
		}
	}
	slices.Sort(t.begins)
	slices.Sort(t.ends)
	return t
}

// slivers says whether a joint at a phase runs just above a place where the
// blank begins, or just below one where it ends.
func (w *walker) slivers(i int, phase int64) bool {
	c := w.class(i)
	t := w.turns[c]
	return anyBetween(t.begins, c.Phase(phase-band.Slip), c.Phase(phase)) || anyBetween(t.ends, c.Phase(phase), c.Phase(phase+band.Slip))
}

// anyBetween says whether one of some sorted places lies between two others on
// a circle, neither of them counted.
func anyBetween(list []int64, from, to int64) bool {
	after, _ := slices.BinarySearch(list, from+1)
	if from < to {
		return after < len(list) && list[after] < to
	}
	return after < len(list) || len(list) > 0 && list[0] < to
}
