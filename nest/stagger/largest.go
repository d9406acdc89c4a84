package stagger

import (
	"slices"
)

// clique gives the largest number of plies of a group that all conflict with
// each other, found as runs in ply order.
func (w *Web) clique(group []int) int {
	return len(w.largestRun(group))
}

func (w *Web) largestRun(group []int) []int {
	var best []int
	for k, i := range group {
		run := []int{i}
		for _, j := range group[k+1:] {
			if w.conflictsAll(j, run) {
				run = append(run, j)
			}
		}
		if len(run) > len(best) {
			best = run
		}
	}
	return best
}

func (w *Web) conflictsAll(j int, run []int) bool {
	for _, i := range run {
		if !slices.ContainsFunc(w.Conflicts[j], func(c Conflict) bool { return c.With == i }) {
			return false
		}
	}
	return true
}

// Largest gives the largest stagger in µm, up to the one asked for, at which
// Start succeeds; found by halving, to a micrometre of the largest stagger of
// the plies.
func (w *Web) Largest() int64 {
	asked := int64(0)
	for i := range w.Plies {
		asked = max(asked, w.Plies[i].Stagger)
	}
	defer func() { w.rescale = 1 }()
	lo, hi := int64(0), asked
	for hi-lo > 1 {
		mid := (lo + hi) / 2
		w.rescale = float64(mid) / float64(asked)
		if _, ok, _ := w.Start(); ok {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// Tightest gives the plies that press each other most: the largest set that
// must all be kept apart, of the group that has no clear phases.
func (w *Web) Tightest() []int {
	phases := make([]int64, len(w.Plies))
	for i := range phases {
		phases[i] = -1
	}
	var best []int
	for _, group := range w.groups() {
		ok, _ := w.startGroup(group, phases)
		if run := w.largestRun(group); !ok && len(run) > len(best) {
			best = run
		}
	}
	return best
}

// OneComb says whether all of some plies share one angle and width.
func (w *Web) OneComb(plies []int) bool {
	for _, i := range plies {
		a, b := w.Plies[i].Class, w.Plies[plies[0]].Class
		if a.Angle != b.Angle || a.Width != b.Width {
			return false
		}
	}
	return true
}
