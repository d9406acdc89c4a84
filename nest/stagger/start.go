package stagger

import (
	"slices"
)

// steps bounds the tries of one search for a first set of phases.
const steps = 60000

// Start finds phases that are clear everywhere, or ok false: exhausted tells
// whether all candidate phases were tried. The plies are set in order; ply
// after ply takes the first candidate that is clear of those before it.
func (w *Web) Start() (phases []int64, ok, exhausted bool) {
	phases = make([]int64, len(w.Plies))
	for i := range phases {
		phases[i] = -1
	}
	for _, group := range w.groups() {
		if ok, exhausted = w.startGroup(group, phases); !ok {
			return phases, false, exhausted
		}
	}
	return phases, true, true
}

// groups lists the sets of plies that conflicts connect, each in ply order.
func (w *Web) groups() [][]int {
	seen := make([]bool, len(w.Plies))
	var out [][]int
	for i := range w.Plies {
		if seen[i] {
			continue
		}
		seen[i] = true
		group := []int{i}
		for k := 0; k < len(group); k++ {
			for _, c := range w.Conflicts[group[k]] {
				if !seen[c.With] {
					seen[c.With] = true
					group = append(group, c.With)
				}
			}
		}
		slices.Sort(group)
		out = append(out, group)
	}
	return out
}

// startGroup looks for phases on one lattice first, whole staggers or even
// slots from one anchor: where room is tight that is the only way. Then it
// searches all candidates.
func (w *Web) startGroup(group []int, phases []int64) (ok, exhausted bool) {
	clique := w.clique(group)
	cands := make([][]int64, len(group))
	for _, a := range w.anchors(group[0]) {
		for k, i := range group {
			cands[k] = w.lattice(i, k, clique, a)
		}
		if ok, _ = w.descend(group, cands, phases, steps/20); ok {
			return true, true
		}
	}
	for k, i := range group {
		cands[k] = w.Candidates(i, k, clique)
	}
	return w.descend(group, cands, phases, steps)
}

// descend searches depth first over candidates of each ply, with a bound on
// the tries; exhausted says that all were tried.
func (w *Web) descend(group []int, cands [][]int64, phases []int64, left int) (ok, exhausted bool) {
	next := make([]int, len(group))
	for _, i := range group {
		phases[i] = -1
	}
	for k := 0; k < len(group); {
		i := group[k]
		phases[i] = -1
		for next[k] < len(cands[k]) && !w.Clear(i, cands[k][next[k]], phases) {
			next[k]++
			left--
		}
		if left <= 0 {
			return false, false
		}
		if next[k] < len(cands[k]) {
			phases[i] = cands[k][next[k]]
			next[k]++
			left--
			if k++; k < len(group) {
				next[k] = 0
			}
			continue
		}
		if k--; k < 0 {
			return false, true
		}
	}
	return true, true
}
