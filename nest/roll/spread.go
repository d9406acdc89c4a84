package roll

import (
	"cmp"
	"slices"
)

// orders are the orders of the full-width pieces that are worth laying: the
// shortest chain found, and where that takes more than one stretch of roll, the
// longest pieces first, and one that fills the stretches as far as the pieces
// allow.
var orders = [...]func(*Task, []int32, Effort) []link{
	shortest,
	func(t *Task, full []int32, e Effort) []link { return byLength(t, shortest(t, full, e)) },
	func(t *Task, full []int32, e Effort) []link {
		if chain := shortest(t, full, e); t.square(full) {
			return t.shared(chain, e)
		} else {
			return t.fitted(chain, e)
		}
	},
}

// ends says whether any lane is finite.
func (t *Task) ends() bool { return t.Table > 0 || len(t.Stock) > 0 && t.Stock[0].Length > 0 }

// shortest gives the best chain found of some full-width pieces.
func shortest(t *Task, full []int32, e Effort) []link {
	g := linkageOf(t, full)
	chain := g.paired()
	if len(chain) > 1 && g.cost != nil {
		chain = g.improve(chain, e.ChainMoves)
	}
	for i := range chain {
		chain[i].piece = full[chain[i].piece]
	}
	return chain
}

func linkageOf(t *Task, full []int32) *linkage {
	shapes := make([]*Shape, len(full))
	ways := make([]Ways, len(full))
	for i, p := range full {
		shapes[i], ways[i] = t.Pieces[p].Shape, t.Pieces[p].Ways
	}
	return newLinkage(shapes, ways)
}

// byLength orders a chain by falling length, keeping the order of equals: first
// fit then fills the ends of rolls with the short pieces.
func byLength(t *Task, chain []link) []link {
	out := slices.Clone(chain)
	slices.SortStableFunc(out, func(a, b link) int {
		return cmp.Compare(t.Pieces[b.piece].Shape.Chord, t.Pieces[a.piece].Shape.Chord)
	})
	return out
}

// fitted chooses for each roll in turn the pieces that fill it best (subset sum
// of the mean lengths), chains each choice, and leaves the rest for the
// next roll.
func (t *Task) fitted(chain []link, e Effort) []link {
	f := &filler{task: t}
	var out, left, never []link
	for _, l := range chain {
		if f.fits(&t.Pieces[l.piece].Shape.ways[0]) {
			left = append(left, l)
		} else {
			never = append(never, l)
		}
	}
	for len(left) > 0 && f.grow() {
		capacity := f.lanes[len(f.lanes)-1].capacity
		chosen, rest := t.choose(left, capacity)
		if len(rest) > 0 && len(chosen) > 0 {
			chosen, rest = t.trim(chosen, rest, capacity, e)
		}
		out = append(out, chosen...)
		left = rest
	}
	return slices.Concat(out, left, never)
}

// choose takes the pieces whose lengths add up to most within a capacity.
// Lengths are counted in 1,000 steps of the capacity, rounded up.
func (t *Task) choose(links []link, capacity int64) (chosen, rest []link) {
	const steps = 1000
	if capacity >= endless {
		return links, nil
	}
	cost := func(l link) int {
		c := int64(t.Pieces[l.piece].Shape.Chord) + t.Gap
		return int((c*steps + capacity - 1) / capacity)
	}
	sum := 0
	for _, l := range links {
		sum += cost(l)
	}
	if sum <= steps {
		return links, nil
	}
	from := make([]int, steps+1) // 1 + number of the last piece of a sum, 0 for none
	reached := make([]bool, steps+1)
	reached[0] = true
	for i, l := range links {
		for s := steps - cost(l); s >= 0; s-- {
			if to := s + cost(l); reached[s] && !reached[to] {
				reached[to], from[to] = true, i+1
			}
		}
	}
	s := steps
	for !reached[s] {
		s--
	}
	taken := make([]bool, len(links))
	for s > 0 {
		i := from[s] - 1
		taken[i] = true
		s -= cost(links[i])
	}
	for i, l := range links {
		if taken[i] {
			chosen = append(chosen, l)
		} else {
			rest = append(rest, l)
		}
	}
	return chosen, rest
}

// trim chains the chosen pieces and gives back those that the interlocked
// chain leaves beyond the capacity.
func (t *Task) trim(chosen, rest []link, capacity int64, e Effort) (fit, left []link) {
	pieces := make([]int32, len(chosen))
	for i, l := range chosen {
		pieces[i] = l.piece
	}
	lane := newLane(t.Width+t.Gap, capacity, t.Memory)
	for _, l := range shortest(t, pieces, e) {
		if lane.append(l.piece, l.way, &t.Pieces[l.piece].Shape.ways[l.way]) {
			fit = append(fit, l)
		} else {
			rest = append(rest, l)
		}
	}
	return fit, rest
}
