package search

import (
	"math"
	"math/rand/v2"
)

// propose draws the next changes to try.
func (w *walker) propose(rng *rand.Rand, out []change) []change {
	i := rng.IntN(len(w.phases))
	switch r := rng.IntN(100); {
	case r < 40:
		return append(out, change{i, w.exactFit(i, rng)})
	case r < 48:
		return append(out, change{i, w.onEdge(i, rng)})
	case r < 62:
		return append(out, change{i, w.besideNeighbour(i, rng)})
	case r < 76:
		return w.exchange(i, rng, out)
	case r < 86:
		return w.together(i, w.anyPhase(i, rng), out)
	case r < 93:
		return w.shiftAll(i, rng, out)
	}
	return append(out, change{i, w.anyPhase(i, rng)})
}

// nudge moves ply i by 1 µm to 20 mm, by every order of size as often.
func (w *walker) nudge(i int, rng *rand.Rand) int64 {
	step := int64(math.Exp(rng.Float64() * math.Log(20*millimetre)))
	if rng.IntN(2) == 0 {
		step = -step
	}
	return w.class(i).Phase(w.phases[i] + step)
}

const millimetre = 1000 // µm

// anyPhase draws an exact fit, an edge, or a phase of whole millimetres.
func (w *walker) anyPhase(i int, rng *rand.Rand) int64 {
	switch rng.IntN(4) {
	case 0:
		return w.exactFit(i, rng)
	case 1:
		return w.onEdge(i, rng)
	}
	return w.class(i).Phase(rng.Int64N(w.class(i).Width/millimetre+1) * millimetre)
}

// exactFit makes a piece at an edge of ply i fill what a narrow piece of its
// group leaves of the width, or two of them.
func (w *walker) exactFit(i int, rng *rand.Rand) int64 {
	c := w.class(i)
	target := c.Width
	for range 1 + rng.IntN(2)*rng.IntN(2) {
		if h := w.someNarrow(i, rng); h > 0 && target-h-w.Gap > 0 {
			target -= h + w.Gap
		}
	}
	e := c.Edges[rng.IntN(len(c.Edges))]
	if e.Begins {
		return c.Phase(e.At + target)
	}
	return c.Phase(e.At - target)
}

// someNarrow draws the height of a narrow piece of ply i's group, 0 for none.
func (w *walker) someNarrow(i int, rng *rand.Rand) int64 {
	members := w.members[w.Group[i]]
	for range 4 {
		j := members[rng.IntN(len(members))]
		if d := w.division(j); len(d.Narrow) > 0 && (j != i || len(members) == 1) {
			return d.Narrow[rng.IntN(len(d.Narrow))].Height
		}
	}
	return 0
}

// onEdge puts a joint on an edge of the blank.
func (w *walker) onEdge(i int, rng *rand.Rand) int64 {
	c := w.class(i)
	return c.Phase(c.Edges[rng.IntN(len(c.Edges))].At)
}

// besideNeighbour stands exactly a stagger beside a ply that is in conflict.
func (w *walker) besideNeighbour(i int, rng *rand.Rand) int64 {
	list := w.Web.Conflicts[i]
	if len(list) == 0 {
		return w.exactFit(i, rng)
	}
	c := list[rng.IntN(len(list))]
	d := c.Stagger
	if rng.IntN(2) == 0 {
		d = -d
	}
	return w.class(i).Phase(w.phases[c.With] + d)
}

// alike says whether two plies stand on one comb: same angle and width.
func (w *walker) alike(i, j int) bool {
	a, b := w.class(i), w.class(j)
	return a.Angle == b.Angle && a.Width == b.Width
}

// exchange gives two plies of one comb each other's phase.
func (w *walker) exchange(i int, rng *rand.Rand, out []change) []change {
	for range 8 {
		j := rng.IntN(len(w.phases))
		if j != i && w.alike(i, j) && w.phases[i] != w.phases[j] {
			return append(out, change{i, w.phases[j]}, change{j, w.phases[i]})
		}
	}
	return append(out, change{i, w.exactFit(i, rng)})
}

// together moves all plies of ply i's comb that share its phase.
func (w *walker) together(i int, to int64, out []change) []change {
	for j := range w.phases {
		if w.alike(i, j) && w.phases[j] == w.phases[i] {
			out = append(out, change{j, to})
		}
	}
	return out
}

// shiftAll moves all plies of ply i's comb by the step that brings ply i to a
// phase drawn for it.
func (w *walker) shiftAll(i int, rng *rand.Rand, out []change) []change {
	step := w.anyPhase(i, rng) - w.phases[i]
	for j := range w.phases {
		if w.alike(i, j) {
			out = append(out, change{j, w.class(j).Phase(w.phases[j] + step)})
		}
	}
	return out
}
