package nest

import (
	"cmp"
	"slices"

	"stripwright/nest/search"
)

const (
	mostMixes = 2  // directions in which plies take several widths
	mostTried = 24 // ways to do so that are looked at for each

	// leastMixed is the share of the cost that a mix must save: it makes the
	// work on the table harder.
	leastMixed = 0.001
)

// mixed goes on from the best of some ranked choices: while that helps, the
// first or last plies of a direction take another width than the others, where
// the joints allow it. Plies that follow each other change width but once, so
// that few joints of two widths lie near each other.
func (p *planner) mixed(ranked []begun) []begun {
	best := ranked[0]
	for range mostMixes {
		if best.cost*(1-leastMixed) <= p.bound {
			break
		}
		tried := p.changed(best.choice)
		p.rank(tried)
		if len(tried) == 0 || tried[0].cost > best.cost*(1-leastMixed) {
			break
		}
		best = tried[0]
		ranked = slices.Insert(ranked, 0, best)
	}
	return ranked
}

// changed lists the mixes of one direction that have a set of phases that is
// clear, and these phases.
func (p *planner) changed(c choice) []begun {
	var out []begun
	for _, next := range mixes(sameWidth(p.job, p.cloths), c) {
		if p.stopped() {
			break
		}
		m := newModel(p.job, p.cloths, p.bases, next)
		if phases, ok, _ := m.problem.Web.Start(); ok {
			out = append(out, begun{choice: next, phases: phases})
		}
	}
	return out
}

// mixes lists choices in which the first or the last plies of one set take
// another width than in c.
func mixes(sets []widthSet, c choice) []choice {
	var out []choice
	for _, s := range sets {
		for w := range s.widths {
			for n := 1; n < len(s.plies); n++ {
				for _, part := range [2][]int{s.plies[:n], s.plies[len(s.plies)-n:]} {
					next := slices.Clone(c)
					widthSet{plies: part}.set(next, w)
					if !slices.Equal(next, c) && len(out) < mostTried {
						out = append(out, next)
					}
				}
			}
		}
	}
	return out
}

// rank sorts choices by what a short search makes of them.
func (p *planner) rank(list []begun) {
	inParallel(p.workers, len(list), func(k int) {
		s := &list[k]
		m := newModel(p.job, p.cloths, p.bases, s.choice)
		states := search.Run(p.ctx, m.problem, s.phases, p.steps()/4, 1, 0, uint64(p.seed))
		s.cost = states[0].Cost
	})
	slices.SortStableFunc(list, func(a, b begun) int { return cmp.Compare(a.cost, b.cost) })
}
