package search

import (
	"cmp"
	"context"
	"math"
	"math/rand/v2"
	"slices"
)

// Run anneals from a clear set of phases for a number of steps and returns the
// best states met, each of a different cost, best first; the start is among
// them when it ranks. A cancelled context ends the run early.
func Run(ctx context.Context, p *Problem, start []int64, steps, keep int, seed uint64) []State {
	rng := rand.New(rand.NewPCG(seed, 0x1a40))
	w := newWalker(p, start)
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
		changes = w.propose(rng, changes[:0])
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
// the best of different cost.
func Best(runs [][]State, keep int) []State {
	b := newPodium(keep)
	for _, run := range runs {
		for _, s := range run {
			b.offer(s.Phases, s.Cost)
		}
	}
	return b.states
}
