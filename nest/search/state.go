package search

import (
	"stripwright/nest/layout"
	"stripwright/nest/stagger"
)

// Problem is what a search works on. It belongs to one goroutine: classes
// remember their divisions.
type Problem struct {
	Web    *stagger.Web
	Group  []int     // group of each ply: plies that share rolls
	Weight []float64 // cost of a µm of roll, by group
	Gap    int64     // cutting gap, µm
	Down   []bool    // plies that lie face down
	Turn   []bool    // groups whose pieces may be turned end for end
}

// State is a phase for each ply and its estimated cost.
type State struct {
	Phases []int64
	Cost   float64
}

// walker is one run of the search.
type walker struct {
	*Problem
	members [][]int // plies of each group
	turns   map[*layout.Class]*turns
	phases  []int64
	costs   []float64 // by group
	scratch []layout.Narrow
	sky     skyline
	ahead   runs
	back    runs
	raster  []int64 // by group, step that phases are kept to; 0: none
	fine    bool    // few enough pieces to fit their ends at every step
}

// mostFitted is the number of full-width pieces up to which ends are fitted at
// every step.
const mostFitted = 400

func newWalker(p *Problem, phases []int64) *walker {
	w := &walker{Problem: p, phases: append([]int64(nil), phases...), costs: make([]float64, len(p.Weight)),
		members: make([][]int, len(p.Weight)), raster: make([]int64, len(p.Weight)), turns: make(map[*layout.Class]*turns)}
	for i, g := range p.Group {
		w.members[g] = append(w.members[g], i)
		if c := w.class(i); w.turns[c] == nil {
			w.turns[c] = turnsOf(c)
		}
	}
	fulls := 0
	for i := range w.phases {
		fulls += w.division(i).Fulls
	}
	w.fine = fulls <= mostFitted
	for g := range w.costs {
		w.costs[g] = w.estimate(g)
	}
	return w
}

// Estimate gives the estimated cost of some phases.
func (p *Problem) Estimate(phases []int64) float64 { return newWalker(p, phases).total() }

func (w *walker) class(i int) *layout.Class { return w.Web.Plies[i].Class }

func (w *walker) division(i int) *layout.Division { return w.class(i).Measure(w.phases[i]) }

// estimate gives the cost of a group at the current phases.
func (w *walker) estimate(g int) float64 {
	if len(w.members[g]) == 0 {
		return 0
	}
	sum := 0.0
	w.scratch = w.scratch[:0]
	for _, i := range w.members[g] {
		d := w.division(i)
		sum += d.Full + float64(int64(d.Fulls)*w.Gap)
		w.scratch = append(w.scratch, d.Narrow...)
	}
	if w.fine {
		sum += w.fit(g)
	}
	width := w.class(w.members[g][0]).Width
	return w.Weight[g] * (sum + pack(w.scratch, width, w.Gap, &w.sky))
}

// fit estimates what is lost where ends of full-width pieces meet: ends sorted
// by slant are matched with their neighbours.
func (w *walker) fit(g int) float64 {
	w.ahead.reset()
	w.back.reset()
	back := &w.back
	if w.Turn[g] { // any end may meet any
		back = &w.ahead
	}
	for _, i := range w.members[g] {
		w.ahead.add(w.division(i).Fit(w.Down[i]).Ahead)
	}
	for _, i := range w.members[g] {
		back.add(w.division(i).Fit(w.Down[i]).Back)
	}
	sum := 0.0
	ahead := w.ahead.merged()
	if !w.Turn[g] {
		back := w.back.merged()
		for k := range ahead {
			sum += float64(ahead[k].Meet(back[k]))
		}
		return sum
	}
	for k := 0; k+1 < len(ahead); k += 2 {
		sum += float64(ahead[k].Meet(ahead[k+1]))
	}
	return sum
}

func (w *walker) total() float64 {
	sum := 0.0
	for _, c := range w.costs {
		sum += c
	}
	return sum
}

// change is a new phase for a ply.
type change struct {
	ply   int
	phase int64
}

// apply applies changes and says whether all rules hold; if not, the phases
// are put back. old holds the former phases.
func (w *walker) apply(changes []change, old []int64) ([]int64, bool) {
	old = old[:0]
	for _, c := range changes {
		old = append(old, w.phases[c.ply])
		w.phases[c.ply] = c.phase
	}
	for _, c := range changes { // what costs least is asked first
		if !w.class(c.ply).Comb(c.phase).Clear || w.slivers(c.ply, c.phase) || !w.Web.Clear(c.ply, c.phase, w.phases) {
			w.undo(changes, old)
			return old, false
		}
	}
	for _, c := range changes {
		if w.class(c.ply).FaultAt(c.phase) != layout.None {
			w.undo(changes, old)
			return old, false
		}
	}
	return old, true
}

func (w *walker) undo(changes []change, old []int64) {
	for k := len(changes) - 1; k >= 0; k-- {
		w.phases[changes[k].ply] = old[k]
	}
}
