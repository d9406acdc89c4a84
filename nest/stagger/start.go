package stagger

import (
	"slices"

	"stripwright/nest/layout"
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

// lattice lists the allowed phases of ply i that lie whole staggers, or even
// slots, from an anchor.
func (w *Web) lattice(i, k, clique int, anchor int64) []int64 {
	c := w.Plies[i].Class
	var out []int64
	add := func(y int64) {
		if y = c.Phase(y); !slices.Contains(out, y) && c.Measure(y).Fault == layout.None {
			out = append(out, y)
		}
	}
	d := w.widest(i)
	for m := range clique {
		add(anchor + slot(k+m, clique, c.Width))
	}
	for m := range clique {
		add(anchor + int64((k+m)%clique)*d)
	}
	return out
}

// anchors lists heights that joints of a ply may best be counted from.
func (w *Web) anchors(i int) []int64 {
	const most = 40
	c := w.Plies[i].Class
	out := append([]int64{c.Blank.MinY, c.Blank.MaxY}, c.Barriers()...)
	return out[:min(len(out), most)]
}

// widest gives the largest stagger that ply i must keep.
func (w *Web) widest(i int) int64 {
	d := w.scaled(w.Plies[i].Stagger)
	for _, x := range w.Conflicts[i] {
		d = max(d, w.scaled(x.Stagger))
	}
	return d
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

// Candidates lists allowed phases for ply i, the k-th of its group: even slots
// from the lowest edge of the blank first, then whole staggers from the edges
// and from the borders of what is not allowed. With phases of one comb these
// are enough: a clear set can be pushed down until every phase stands at a
// border or a stagger above another.
func (w *Web) Candidates(i, k, clique int) []int64 {
	c := w.Plies[i].Class
	d := w.widest(i)
	var out []int64
	seen := make(map[int64]bool)
	add := func(y int64) {
		if y = c.Phase(y); !seen[y] {
			seen[y] = true
			if c.Measure(y).Fault == layout.None {
				out = append(out, y)
			}
		}
	}
	for m := range clique {
		add(c.Blank.MinY + slot(k+m, clique, c.Width))
	}
	for m := 0; m <= clique && m <= 12; m++ {
		for _, a := range w.anchors(i) {
			add(a + int64(m)*d)
			add(a - int64(m)*d)
		}
	}
	for y := int64(0); len(out) == 0 && y < c.Width; y += max(scan, c.Width/2000) {
		add(y)
	}
	return out
}

// scan is the step in µm at which phases are tried when no candidate is allowed.
const scan = 500

// slot gives the k-th of n even places on a comb, rounded so that neighbours
// are never nearer than the pitch over n, rounded down.
func slot(k, n int, pitch int64) int64 { return int64(k%n) * pitch / int64(n) }

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

// Alone says whether ply i has an allowed phase at all.
func (w *Web) Alone(i int) bool { return len(w.Candidates(i, 0, 1)) > 0 }

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
