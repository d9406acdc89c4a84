package bound

import (
	"cmp"
	"slices"
	"sync"
)

// table holds what arguments prove of ranges of phase of each shape, µm² of roll.
type table struct {
	*chooser
	cells    [][]cell    // by shape
	profiles [][]profile // of the cells, where they are kept
	args     []walled
	least    [][][]float64 // by argument, shape and range
}

// table prepares ranges of phase and works arguments out for them.
func (f *fabric) table(args []walled, cells func(*shape, int64) []cell) *table {
	t := &table{chooser: f.chooser()}
	for _, s := range f.shapes {
		t.cells = append(t.cells, cells(s, f.Width))
	}
	t.add(args)
	return t
}

// keep works the profiles out, so that arguments may be found in them.
func (t *table) keep() {
	t.profiles = make([][]profile, len(t.shapes))
	var all sync.WaitGroup
	for k, s := range t.shapes {
		all.Go(func() { t.profiles[k] = s.profiles(t.cells[k], t.Width) })
	}
	all.Wait()
}

// add works arguments out.
func (t *table) add(args []walled) {
	first := len(t.args)
	t.args = append(t.args, args...)
	for range args {
		t.least = append(t.least, make([][]float64, len(t.shapes)))
	}
	var all sync.WaitGroup
	for k := range t.shapes {
		all.Go(func() { t.weigh(k, first) })
	}
	all.Wait()
}

// weigh works the arguments from the first on out for a shape.
func (t *table) weigh(k, first int) {
	list, args, rows := t.cells[k], t.args[first:], t.least[first:]
	room := make([]float64, len(args)*len(list))
	for a := range rows {
		rows[a][k] = room[a*len(list) : (a+1)*len(list)]
	}
	w := &weighing{width: float64(t.Width)}
	next := t.reader(k)
	for i := range list {
		for a, sum := range w.of(next(i), t.shapes[k], args) {
			rows[a][k][i] = float64(w.width * sum)
		}
	}
}

// reader gives the profiles of a shape by number: those that are kept, or each in
// the room of the one before.
func (t *table) reader(k int) func(i int) *profile {
	if t.profiles != nil {
		return func(i int) *profile { return &t.profiles[k][i] }
	}
	d, p := t.shapes[k].divider(t.Width), &profile{}
	return func(i int) *profile {
		d.divide(p, t.cells[k][i])
		return p
	}
}

// Bounds of the game: how often phases and mixture answer each other at single
// phases and at ranges of them, the steps of a game, and how many arguments a
// mixture keeps, from which share on.
const (
	drafts     = 16
	rounds     = 8
	gameSteps  = 300
	mostMixed  = 5
	leastShare = 0.01
)

// game is how phases and mixture came out: the mixture that proves most of those
// tried, and what it proves.
type game struct {
	mixture []float64
	value   float64
}

// play finds the mixture of arguments that proves most against all phases.
// Phases and mixture answer each other by turns: the phases by the search over
// all that the stagger leaves, the mixture by a game against all answers so far.
// At is a length that need not be passed.
func (t *table) play(mixture []float64, times int, at int64) game {
	var best game
	var answers [][]float64 // of each argument, by answer
	options := make([][]option, len(t.cells))
	for range times {
		for k := range options {
			options[k] = t.wastes(options[k][:0], mixture, k)
		}
		value, picks := t.leastOf(options)
		if value > best.value {
			best = game{mixture, value}
		}
		if at > 0 && value >= float64(at)*float64(t.Width) {
			break
		}
		answer := make([]float64, len(t.least))
		for a := range t.least {
			for i, c := range picks {
				answer[a] += t.least[a][t.of[i]][t.place(t.of[i], c)]
			}
		}
		answers = append(answers, answer)
		mixture = equilibrium(answers)
	}
	return best
}

// main gives the arguments of a mixture that matter, most first.
func (t *table) main(mixture []float64) []walled {
	order := make([]int, len(mixture))
	for a := range order {
		order[a] = a
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(mixture[b], mixture[a]) })
	var out []walled
	for _, a := range order[:min(mostMixed, len(order))] {
		if mixture[a] >= leastShare {
			out = append(out, t.args[a])
		}
	}
	return out
}

// place gives the range of a shape that begins a cell.
func (t *table) place(shape int, c cell) int {
	i, _ := slices.BinarySearchFunc(t.cells[shape], c.from, func(p cell, from int64) int { return int(p.from - from) })
	return i
}

// wastes adds what a mixture proves of each range of a shape.
func (t *table) wastes(out []option, mixture []float64, k int) []option {
	for i, c := range t.cells[k] {
		o := option{cell: c}
		for a, share := range mixture {
			if share > 0 {
				o.waste += float64(share * t.least[a][k][i])
			}
		}
		out = append(out, o)
	}
	return out
}
