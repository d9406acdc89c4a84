package nest

import (
	"cmp"
	"context"
	"errors"
	"slices"

	"stripwright/laminate"
	"stripwright/nest/layout"
	"stripwright/nest/roll"
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
	p.settleTies(best)
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
	bases   map[baseKey]*layout.Base
	choices int64 // of width that are explored in full
	burden  int   // by how much an outline of many vertices makes every step dearer
	proofs  []proved
	bound   float64 // least cost of all cloths together, µm by their measures
	told    float64 // best cost that was told, 0 for none
}

func newPlanner(ctx context.Context, j *laminate.Job, s Settings) (*planner, error) {
	p := &planner{ctx: ctx, job: j, set: s, cloths: clothsOf(j)}
	p.effort, p.seed, p.workers = s.resolved(j)
	p.budget = budgets[p.effort]
	if len(j.Plies) == 0 {
		return nil, errors.New("the schedule has no plies")
	}
	bases, err := basesOf(j, p.workers)
	p.bases, p.burden = bases, 1
	for _, b := range bases {
		p.burden = max(p.burden, burdenOf(b))
	}
	return p, err
}

// manyVertices is the number of vertices up to which an outline costs as usual.
const manyVertices = 500

// burdenOf gives by how much an outline makes every step dearer: drawn with very
// many points it is planned with an eighth of the steps or fewer, so that the
// answer comes as soon.
func burdenOf(b *layout.Base) int {
	if b.Blank.Vertices() < manyVertices {
		return 1
	}
	return max(8, b.Vertices()/50)
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
	p.prove(newModel(p.job, p.cloths, p.bases, starts[0].choice))
	starts = p.promising(starts)
	p.choices = int64(len(starts))
	for _, s := range starts {
		if best != nil && best.placed.cost <= p.bound {
			break
		}
		a, err := p.explore(s)
		switch {
		case err != nil:
			failure = cmp.Or(failure, err)
		case best == nil || better(a.placed, best.placed):
			best = a
			p.tell(best.placed.cost)
		}
	}
	if best == nil {
		return nil, failure
	}
	return best, nil
}

// tell says how far the search has come, where it has come further.
func (p *planner) tell(cost float64) {
	if p.set.Progress == nil || p.told > 0 && cost >= p.told {
		return
	}
	p.told = cost
	lengths := !slices.ContainsFunc(p.cloths, func(c cloth) bool { return c.measure == roll.Price })
	p.set.Progress(Found{cost / 1000, p.bound / 1000, lengths})
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
		m := newModel(p.job, p.cloths, p.bases, c)
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

// promising ranks several choices by a short search, and mixes widths where
// that search says it pays.
func (p *planner) promising(starts []begun) []begun {
	if len(starts) == 1 {
		return starts
	}
	p.rank(starts)
	starts = p.mixed(starts)
	return starts[:min(len(starts), mostExplored)]
}
