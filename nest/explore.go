package nest

import (
	"cmp"
	"slices"

	"stripwright/nest/roll"
	"stripwright/nest/search"
)

// steps gives the length of an annealing run: the more plies, the dearer a step.
func (p *planner) steps() int { return max(200, p.budget.work/(len(p.job.Plies)+8)/p.burden) }

// rasters is into how many parts the raster of measures is divided that the runs
// keep to by turns; 0: no raster.
var rasters = [...]int64{0, 1, 1, 2}

// explore anneals from a start and lays the best states on the rolls.
func (p *planner) explore(s begun) (*answer, error) {
	runs := make([][]search.State, p.budget.runs)
	inParallel(p.workers, len(runs), func(k int) {
		m := newModel(p.job, p.cloths, p.bases, s.choice)
		runs[k] = search.Run(p.ctx, m.problem, s.phases, p.steps(), p.budget.keep, rasters[k%len(rasters)], uint64(p.seed)*1000+uint64(k))
	})
	m := newModel(p.job, p.cloths, p.bases, s.choice)
	states := append(m.problem.Best(runs, p.keep(m, s.phases)), search.State{Phases: s.phases})
	first, err := p.layAll(s.choice, states, always(p.budget.quick), true)
	if err != nil {
		return nil, err
	}
	slices.SortStableFunc(first, func(a, b *placed) int { return cmp.Or(cmp.Compare(a.cost, b.cost), cmp.Compare(a.count, b.count)) })
	p.tell(first[0].cost)
	a, err := p.forGood(s.choice, first[:1], p.budget.quick)
	for _, c := range p.climb(s.choice, first) {
		if a == nil || better(c, a.placed) {
			a = &answer{s.choice, c}
		}
	}
	if a == nil {
		return nil, err
	}
	return a, nil
}

// forGood lays the best of sketched layouts from the outlines themselves.
func (p *planner) forGood(c choice, sketched []*placed, e roll.Effort) (*answer, error) {
	laid, err := p.layAll(c, []search.State{{Phases: sketched[0].phases}}, always(e), false)
	if err != nil {
		return nil, err
	}
	return &answer{c, laid[0]}, nil
}

// finite says whether rolls end: which pieces share a roll then matters more
// than anything else.
func (p *planner) finite() bool {
	return slices.ContainsFunc(p.cloths, func(c cloth) bool { return c.measure == roll.LastCut })
}

// always is the same effort for every state.
func always(e roll.Effort) func(int) roll.Effort { return func(int) roll.Effort { return e } }

// stopped says whether the search was cancelled.
func (p *planner) stopped() bool { return p.ctx.Err() != nil }

// mostLaid bounds the pieces of all states that are laid, so that a large job
// lays fewer states.
const mostLaid = 12000

// keep gives the number of states to lay.
func (p *planner) keep(m *model, phases []int64) int {
	pieces := 0
	for i, c := range m.classes {
		d := c.Measure(phases[i])
		pieces += d.Fulls + len(d.Narrow)
	}
	return max(1, min(p.budget.keep*p.eager(pieces), mostLaid/max(1, pieces)))
}

// fewPieces is the number of pieces up to which a layout costs little.
const fewPieces = 24

// eager gives how many times as many states are laid and improved: more where a
// layout costs little, and most where rolls end, because results then vary most.
func (p *planner) eager(pieces int) int {
	switch {
	case p.burden > 1:
		return 1
	case p.finite():
		return 3
	case pieces <= fewPieces:
		return 2
	}
	return 1
}

// polished gives the number of layouts to improve.
func (p *planner) polished(pieces int) int { return p.eager(pieces) * p.budget.polished }

// layAll lays several states; states that the stock does not hold are left
// out, and the error is theirs when none is held. Sketched layouts compare
// costs, they are not for cutting.
func (p *planner) layAll(c choice, states []search.State, effort func(int) roll.Effort, sketch bool) ([]*placed, error) {
	laid := make([]*placed, len(states))
	failed := make([]error, len(states))
	inParallel(p.workers, len(states), func(k int) {
		if p.ctx.Err() != nil && k > 0 {
			return
		}
		m := newModel(p.job, p.cloths, p.bases, c)
		m.sketch, m.stop = sketch, p.stopped
		got, g, err := m.lay(states[k].Phases, effort(k), uint64(p.seed))
		if err != nil {
			failed[k] = p.shortOf(m, g, states[k].Phases, err)
			return
		}
		laid[k] = got
	})
	var out []*placed
	var err error
	for k := range laid {
		if laid[k] != nil {
			out = append(out, laid[k])
		} else if err == nil {
			err = failed[k]
		}
	}
	if len(out) == 0 {
		return nil, err
	}
	return out, nil
}
