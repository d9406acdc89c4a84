package search

import (
	"cmp"
	"context"
	"math"
	"math/rand/v2"
	"slices"

	"stripwright/nest/layout"
)

// Run anneals from a clear set of phases for a number of steps and returns the
// best states met, each of a different cost, best first; the start is among
// them when it ranks. With parts above 0 phases are kept to a raster of the
// measures of each group, divided into so many parts, where it has one. A
// cancelled context ends the run early.
func Run(ctx context.Context, p *Problem, start []int64, steps, keep int, parts int64, seed uint64) []State {
	rng := rand.New(rand.NewPCG(seed, 0x1a40))
	w := newWalker(p, start)
	for g := range w.raster {
		if parts > 0 {
			w.raster[g] = w.rasterOf(g, parts)
		}
	}
	best := newPodium(keep)
	now := w.total()
	best.offer(w.phases, now)
	hot := now * 0.004
	var changes []change
	var old []int64
	for k := range steps {
		if k%256 == 0 && ctx.Err() != nil {
			break
		}
		heat := hot * math.Pow(0.002, float64(k)/float64(steps))
		changes = w.onRaster(w.propose(rng, changes[:0]))
		next, ok := w.try(changes, &old)
		if !ok {
			continue
		}
		if next > now && rng.Float64() >= math.Exp((now-next)/heat) {
			w.undo(changes, old)
			w.refresh(changes)
			continue
		}
		now = next
		best.offer(w.phases, now)
	}
	return best.states
}

// try applies changes and gives the new total; false when a rule is broken.
func (w *walker) try(changes []change, old *[]int64) (float64, bool) {
	same := true
	for _, c := range changes {
		same = same && w.phases[c.ply] == c.phase
	}
	if same {
		return 0, false
	}
	var ok bool
	if *old, ok = w.apply(changes, *old); !ok {
		return 0, false
	}
	w.refresh(changes)
	return w.total(), true
}

// refresh estimates the groups of changed plies anew.
func (w *walker) refresh(changes []change) {
	done := -1
	for _, c := range changes {
		if g := w.Group[c.ply]; g != done {
			w.costs[g] = w.estimate(g)
			done = g
		}
	}
}

// podium keeps the best states of different cost.
type podium struct {
	keep   int
	states []State
}

func newPodium(keep int) *podium { return &podium{keep: keep} }

func (b *podium) offer(phases []int64, cost float64) {
	if len(b.states) == b.keep && cost >= b.states[b.keep-1].Cost {
		return
	}
	at, _ := slices.BinarySearchFunc(b.states, cost, func(s State, c float64) int { return cmp.Compare(s.Cost, c) })
	same := max(1, cost*2e-6) // µm
	if at < len(b.states) && b.states[at].Cost-cost < same || at > 0 && cost-b.states[at-1].Cost < same {
		return
	}
	b.states = slices.Insert(b.states, at, State{slices.Clone(phases), cost})
	if len(b.states) > b.keep {
		b.states = b.states[:b.keep]
	}
}

// Best merges the states of several runs, in the order of the runs, and keeps
// the best of different cost. Where all costs are whole steps of a raster, states
// of equal cost are kept as well unless plies of one kind only change places.
func (p *Problem) Best(runs [][]State, keep int) []State {
	if p.rastered() {
		return p.bestUnlike(runs, keep)
	}
	b := newPodium(keep)
	for _, run := range runs {
		for _, s := range run {
			b.offer(s.Phases, s.Cost)
		}
	}
	return b.states
}

func (p *Problem) bestUnlike(runs [][]State, keep int) []State {
	var all []State
	var seen [][]int64
	for _, run := range runs {
		for _, s := range run {
			sorted := p.sorted(s.Phases)
			if !slices.ContainsFunc(seen, func(o []int64) bool { return slices.Equal(o, sorted) }) {
				all, seen = append(all, s), append(seen, sorted)
			}
		}
	}
	slices.SortStableFunc(all, func(a, b State) int { return cmp.Compare(a.Cost, b.Cost) })
	return all[:min(keep, len(all))]
}

// sorted gives the phases with those of each kind of ply in rising order.
func (p *Problem) sorted(phases []int64) []int64 {
	out := slices.Clone(phases)
	byKind := make(map[*layout.Class][]int)
	for i := range phases {
		c := p.Web.Plies[i].Class
		byKind[c] = append(byKind[c], i)
	}
	for _, plies := range byKind {
		of := make([]int64, len(plies))
		for k, i := range plies {
			of[k] = phases[i]
		}
		slices.Sort(of)
		for k, i := range plies {
			out[i] = of[k]
		}
	}
	return out
}
