package search

import (
	"context"
	"math/rand/v2"
)

// doubt is by how much a state's estimate may exceed that of the best state and
// still be worth laying.
const doubt = 0.012

// Climb improves a state by its true cost: moves are drawn as in Run, those
// whose estimate is not hopeless are laid by cost, and a move that is no worse
// is kept. lays bounds the calls of cost, which reports ok false for phases
// that the stock does not hold.
func Climb(ctx context.Context, p *Problem, start State, lays int, seed uint64, cost func([]int64) (float64, bool)) State {
	rng := rand.New(rand.NewPCG(seed, 0xc11b))
	w := newWalker(p, start.Phases)
	best, ok := cost(w.phases)
	if !ok {
		return start
	}
	least := w.total()
	var changes []change
	var old []int64
	for tries := lays * 40; lays > 0 && tries > 0 && ctx.Err() == nil; tries-- {
		changes = w.propose(rng, changes[:0])
		estimate, ok := w.try(changes, &old)
		if !ok {
			continue
		}
		if estimate <= least*(1+doubt) {
			lays--
			if c, held := cost(w.phases); held && c <= best {
				best, least = c, min(least, estimate)
				continue
			}
		}
		w.undo(changes, old)
		w.refresh(changes)
	}
	return State{append([]int64(nil), w.phases...), best}
}
