package nest

import (
	"cmp"
	"context"
	"errors"
	"slices"

	"stripwright/laminate"
	"stripwright/nest/roll"
	"stripwright/nest/search"
)

// Plan lays out, staggers and nests a job. The plan has everything but the
// checks and the quantities. The error is a *Refusal when the rules cannot be
// met or the stock does not hold the pieces. A cancelled context ends the
// search early; the plan is then sound and marked stopped. The same job,
// effort and seed give the same plan for any number of workers.
func Plan(ctx context.Context, j laminate.Job, s Settings) (laminate.Plan, error) {
	p, err := newPlanner(ctx, &j, s)
	if err != nil {
		return laminate.Plan{}, err
	}
	best, err := p.run()
	if err != nil {
		return laminate.Plan{}, err
	}
	return p.record(best), nil
}

// planner holds a run of Plan.
type planner struct {
	ctx     context.Context
	job     *laminate.Job
	set     Settings
	effort  string
	seed    int64
	workers int
	budget  budget
	cloths  []cloth
	zones   []laminate.KeepClear
	bound   float64 // least cost of all cloths together, µm by their measures
}

func newPlanner(ctx context.Context, j *laminate.Job, s Settings) (*planner, error) {
	p := &planner{ctx: ctx, job: j, set: s, cloths: clothsOf(j)}
	p.effort, p.seed, p.workers = s.resolved(j)
	p.budget = budgets[p.effort]
	if len(j.Plies) == 0 {
		return nil, errors.New("the schedule has no plies")
	}
	for k := range p.cloths {
		p.bound += 1000 * p.area(&p.cloths[k]) * p.cloths[k].perMM2()
	}
	p.bound += 1 // what snapping may take or add
	zones, err := clearZones(j)
	p.zones = zones
	return p, err
}

// answer is the best layout of one choice of widths.
type answer struct {
	choice choice
	placed *placed
}

// run looks at the choices of width worth it and keeps the best layout.
func (p *planner) run() (*answer, error) {
	starts, err := p.starts()
	if err != nil {
		return nil, err
	}
	var best *answer
	var failure error
	for _, s := range p.promising(starts) {
		if best != nil && best.placed.cost <= p.bound {
			break
		}
		a, err := p.explore(s)
		switch {
		case err != nil:
			failure = cmp.Or(failure, err)
		case best == nil || better(a.placed, best.placed):
			best = a
			if p.set.Progress != nil {
				p.set.Progress(best.placed.cost/1000, p.bound/1000)
			}
		}
	}
	if best == nil {
		return nil, failure
	}
	return best, nil
}

// better prefers the lower cost, then fewer pieces.
func better(a, b *placed) bool {
	return cmp.Or(cmp.Compare(a.cost, b.cost), cmp.Compare(a.count, b.count)) < 0
}

// begun is a choice of widths with a first set of phases that is clear.
type begun struct {
	choice choice
	phases []int64
	cost   float64 // estimate after a short search
}

// starts finds a first set of phases for every choice of widths; the error is
// the refusal of the first choice when none has one.
func (p *planner) starts() ([]begun, error) {
	var out []begun
	var refusal error
	for _, c := range choices(p.job, p.cloths) {
		m := newModel(p.job, p.cloths, p.zones, c)
		phases, ok, exhausted := m.problem.Web.Start()
		if !ok {
			if refusal == nil {
				refusal = p.refuse(m, exhausted)
			}
			continue
		}
		out = append(out, begun{choice: c, phases: phases})
	}
	if len(out) == 0 {
		return nil, refusal
	}
	return out, nil
}

// mostExplored is how many choices of width are explored in full.
const mostExplored = 4

// promising ranks several choices by a short search.
func (p *planner) promising(starts []begun) []begun {
	if len(starts) == 1 {
		return starts
	}
	inParallel(p.workers, len(starts), func(k int) {
		s := &starts[k]
		m := newModel(p.job, p.cloths, p.zones, s.choice)
		states := search.Run(p.ctx, m.problem, s.phases, p.steps()/4, 1, uint64(p.seed))
		s.cost = states[0].Cost
	})
	slices.SortStableFunc(starts, func(a, b begun) int { return cmp.Compare(a.cost, b.cost) })
	return starts[:min(len(starts), mostExplored)]
}

// steps gives the length of an annealing run: the more plies, the dearer a step.
func (p *planner) steps() int { return max(200, p.budget.work/(len(p.job.Plies)+8)) }

// explore anneals from a start and lays the best states on the rolls.
func (p *planner) explore(s begun) (*answer, error) {
	runs := make([][]search.State, p.budget.runs)
	inParallel(p.workers, len(runs), func(k int) {
		m := newModel(p.job, p.cloths, p.zones, s.choice)
		runs[k] = search.Run(p.ctx, m.problem, s.phases, p.steps(), p.budget.keep, uint64(p.seed)*1000+uint64(k))
	})
	states := append(search.Best(runs, p.keep(s)), search.State{Phases: s.phases})
	first, err := p.layAll(s.choice, states, p.budget.quick)
	if err != nil {
		return nil, err
	}
	slices.SortStableFunc(first, func(a, b *placed) int { return cmp.Compare(a.cost, b.cost) })
	if first[0].cost <= p.bound {
		return &answer{s.choice, first[0]}, nil
	}
	careful, err := p.layAll(s.choice, p.climb(s.choice, first), p.budget.careful)
	if err != nil {
		careful = nil
	}
	best := first[0]
	for _, a := range append(careful, first...) {
		if better(a, best) {
			best = a
		}
	}
	return &answer{s.choice, best}, nil
}

// climb improves the best layouts by laying variations of them.
func (p *planner) climb(c choice, first []*placed) []search.State {
	out := make([]search.State, min(len(first), p.polished(first[0].count)))
	inParallel(p.workers, len(out), func(k int) {
		m := newModel(p.job, p.cloths, p.zones, c)
		lays := p.budget.climb / max(1, first[k].count)
		if out[k] = (search.State{Phases: first[k].phases, Cost: first[k].cost}); lays < fewestLays {
			return
		}
		e := roll.Effort{ChainMoves: p.budget.quick.ChainMoves / 4, Order: first[k].layouts[0].Order}
		out[k] = search.Climb(p.ctx, m.problem, out[k], lays, uint64(p.seed)+uint64(k), func(phases []int64) (float64, bool) {
			got, _, err := m.lay(phases, e, uint64(p.seed))
			if err != nil {
				return 0, false
			}
			return got.cost, true
		})
	})
	return out
}

// fewestLays is the least number of variations worth laying.
const fewestLays = 10

// mostLaid bounds the pieces of all states that are laid, so that a large job
// lays fewer states.
const mostLaid = 12000

// keep gives the number of states to lay.
func (p *planner) keep(s begun) int {
	m := newModel(p.job, p.cloths, p.zones, s.choice)
	pieces := 0
	for i, c := range m.classes {
		d := c.Measure(s.phases[i])
		pieces += d.Fulls + len(d.Narrow)
	}
	keep := p.budget.keep
	if pieces <= fewPieces {
		keep *= 3
	}
	return max(1, min(keep, mostLaid/max(1, pieces)))
}

// fewPieces is the number of pieces up to which a layout costs so little that
// three times as many states are laid and improved.
const fewPieces = 24

// polished gives the number of layouts to improve.
func (p *planner) polished(pieces int) int {
	if pieces <= fewPieces {
		return 3 * p.budget.polished
	}
	return p.budget.polished
}

// layAll lays several states; states that the stock does not hold are left
// out, and the error is theirs when none is held.
func (p *planner) layAll(c choice, states []search.State, e roll.Effort) ([]*placed, error) {
	laid := make([]*placed, len(states))
	failed := make([]error, len(states))
	inParallel(p.workers, len(states), func(k int) {
		if p.ctx.Err() != nil && k > 0 {
			return
		}
		m := newModel(p.job, p.cloths, p.zones, c)
		got, g, err := m.lay(states[k].Phases, e, uint64(p.seed))
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
