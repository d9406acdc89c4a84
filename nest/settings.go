package nest

import (
	"runtime"

	"stripwright/laminate"
	"stripwright/nest/roll"
)

// Settings steer a search. Zero values mean: as the job says, all processors.
type Settings struct {
	Effort   string
	Seed     int64
	Workers  int         // processors to use; the plan does not depend on it
	Progress func(Found) // called from one goroutine when a better layout is found; may be nil
}

// Found is how far a search has come: the best layout so far and what no layout
// can go below, both over all fabrics, in mm of roll where Lengths says so and
// else in the job's prices or a mix of both.
type Found struct {
	Best, Bound float64
	Lengths     bool
}

// Gap is how far the best lies above the bound, as a share of it.
func (f Found) Gap() float64 {
	if f.Bound <= 0 {
		return 0
	}
	return max(0, f.Best/f.Bound-1)
}

// budget is what an effort buys: counts, never times.
type budget struct {
	runs     int   // annealing runs
	work     int   // steps of a run, times plies and a little
	keep     int   // states that are laid on rolls
	polished int   // of these, improved
	rounds   int   // of improving them
	climb    int64 // work in improving them
	quick    roll.Effort
	careful  roll.Effort
}

var budgets = map[string]budget{
	laminate.Quick:    {runs: 2, work: 20000, keep: 4, polished: 2, rounds: 1, climb: 500_000, quick: roll.Effort{ChainMoves: 4000, Trials: 300}, careful: roll.Effort{ChainMoves: 40000, Trials: 2000}},
	laminate.Normal:   {runs: 4, work: 40000, keep: 6, polished: 4, rounds: 3, climb: 88_000_000, quick: roll.Effort{ChainMoves: 8000, Trials: 300}, careful: roll.Effort{ChainMoves: 100000, Trials: 3000}},
	laminate.Thorough: {runs: 8, work: 300000, keep: 16, polished: 8, rounds: 4, climb: 1_200_000_000, quick: roll.Effort{ChainMoves: 40000, Trials: 2000}, careful: roll.Effort{ChainMoves: 1000000, Trials: 30000}},
}

func (s Settings) resolved(j *laminate.Job) (effort string, seed int64, workers int) {
	effort, seed, workers = s.Effort, j.Search.Seed, s.Workers
	if effort == "" {
		effort = j.Search.Effort
	}
	if _, ok := budgets[effort]; !ok {
		effort = laminate.Normal
	}
	if s.Seed != 0 {
		seed = s.Seed
	}
	if workers <= 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	return effort, seed, workers
}
