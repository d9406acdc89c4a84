package bound

import (
	"cmp"
	"math"
	"slices"
)

// acrossBound adds up what pieces weigh across the roll, place by place along it,
// with walls where pieces shut others out. It takes the mixture of such
// arguments that proves most: what holds for each holds for their mean.
func acrossBound(f *fabric, at int64, floor int64) Bound {
	best := f.area()
	best.Kind = Across
	round := true // convex pieces of many sides shut nothing off: the ends tell more
	for _, s := range f.shapes {
		if len(s.heights) > mostHeights {
			return best
		}
		round = round && s.convex && s.dear()
	}
	if round {
		return best
	}
	few := f.draft()
	hope := few.play(even(len(few.args)), drafts, at)
	args := few.main(hope.mixture)
	if hope.value < float64(floor)*float64(f.Width)*worthwhile {
		return best
	}
	full := f.table(args, (*shape).ranges)
	v := full.play(even(len(args)), rounds, at)
	return f.withWaste(Across, v.value-f.blanks())
}

// worthwhile is which part of the best bound so far a mixture must come to at
// single phases for it to be worked out in full; at all phases it proves less.
const worthwhile = 1.001

// blanks is the area of all plies, µm².
func (f *fabric) blanks() float64 {
	sum := 0.0
	for k, s := range f.shapes {
		sum += float64(float64(f.count[k]) * s.area)
	}
	return sum
}

// ranges divides the phases of a blank. Weights of a right-angled blank jump
// where a cut comes a share of the roll from an edge, and stay between.
func (s *shape) ranges(width int64) []cell {
	if s.only != nil {
		return s.only
	}
	breaks := slices.Clone(s.heights)
	if s.snapped == 0 && len(breaks) < fewHeights {
		for _, y := range s.heights {
			for _, share := range []int64{2, 3, 4} {
				for j := range share {
					breaks = append(breaks, y+width*j/share, y-width*j/share)
				}
			}
		}
	} else if s.dear() {
		breaks = nil
	}
	parts := int64(coarseParts)
	if !s.dear() {
		parts = fineParts
	}
	var out []cell
	for _, c := range cellsOf(breaks, width) {
		out = append(out, split(c, max(1, width/parts))...)
	}
	return out
}

// dear says whether a blank has so many vertices that every range of phase costs
// much.
func (s *shape) dear() bool { return len(s.heights) > fewHeights }

// Into how many ranges the phases are divided where a range costs much, and where
// it costs little.
const (
	coarseParts = 96
	fineParts   = 256
)

// fewHeights is the number of heights of vertices up to which the ranges of
// phase keep to them.
const fewHeights = 16

// spots are single phases to try arguments at.
func (s *shape) spots(width int64) []cell {
	if s.only != nil {
		return s.only
	}
	breaks := s.heights
	if s.dear() {
		breaks = nil
	}
	var out []cell
	for _, c := range cellsOf(slices.Clone(breaks), width) {
		mid := c.from + (c.to-c.from)/2
		out = append(out, cell{mid, mid})
	}
	const spread = 10
	for k := range int64(spread) {
		out = append(out, cell{width * k / spread, width * k / spread})
	}
	slices.SortFunc(out, func(a, b cell) int { return cmp.Compare(a.from, b.from) })
	return slices.Compact(out)
}

// draft tries all arguments at single phases.
func (f *fabric) draft() *table {
	t := f.table(nil, (*shape).spots)
	t.keep()
	t.add(f.arguments(t.gaps()))
	return t
}

// arguments lists what is tried: weights that tell apart halves, thirds and so
// on of the width, without walls and with walls up to so far apart.
func (f *fabric) arguments(gaps []float64) []walled {
	var out []walled
	for _, w := range []weight{{0, 0}, {1, 0}, {2, 0}, {3, 0}, {5, 0}, {0, 0.25}, {0, 0.4}} {
		out = append(out, walled{weight: w})
	}
	for _, g := range gaps {
		for _, w := range []weight{{0, 0}, {1, 0}, {3, 0}, {0, 0.25}, {0, 0.4}} {
			out = append(out, walled{weight: w, walls: fullWalls, gap: g})
		}
		for _, w := range []weight{{1, 0}, {2, 0}, {4, 0}, {6, 0}, {0, 0.1}, {0, 0.25}, {0, 0.4}} {
			out = append(out, walled{weight: w, walls: bareWalls, gap: g})
		}
		for _, thin := range []float64{0.2, 0.34, 0.45} {
			out = append(out, walled{weight{0, 0}, narrowWalls, thin, g})
		}
		for _, w := range []weight{{2, 0}, {5, 0}, {8, 0}} {
			out = append(out, walled{w, narrowWalls, 0.34, g})
		}
	}
	return out
}

// Bounds of the distances of walls that are told apart, where they cost little
// and where they cost much.
const (
	mostGaps   = 5
	fewestGaps = 3
)

// gaps gives distances between walls that are worth telling apart: the lengths of
// holes, and some of what pieces leave open.
func (t *table) gaps() []float64 {
	most := mostGaps
	if slices.ContainsFunc(t.shapes, (*shape).dear) {
		most = fewestGaps
	}
	few := t.holes()
	few = few[:min(len(few), most)]
	all := t.openLengths()
	for k := 1; k <= most && len(all) > 0; k++ {
		few = append(few, all[(len(all)-1)*k/most])
	}
	slices.SortFunc(few, func(a, b float64) int { return cmp.Compare(b, a) })
	var out []float64 // from the widest, without those that are nearly the same
	for _, g := range few {
		if n := len(out); n == 0 || g < float64(nearly*out[n-1]) {
			out = append(out, g)
		}
	}
	return out
}

// holes gives the lengths of the blanks' holes, rising.
func (t *table) holes() []float64 {
	var out []float64
	for _, s := range t.shapes {
		for _, r := range s.outline.Rings[1:] {
			from, to := math.Inf(1), math.Inf(-1)
			for _, p := range r {
				from, to = min(from, float64(p.X)), max(to, float64(p.X))
			}
			out = append(out, to-from+float64(2*s.off)+1)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// openLengths gives how far apart walls, feet and heads of pieces are, rising.
func (t *table) openLengths() []float64 {
	const wide = 0.7
	var out []float64
	add := func(list []stretch) {
		for _, s := range between(nil, list, math.Inf(1)) {
			out = append(out, math.Ceil(s.to-s.from)+1)
		}
	}
	for _, list := range t.profiles {
		for _, p := range list {
			for _, c := range p.clusters {
				for i := range c {
					add(c[i].stretches(nil, float64(wide*float64(t.Width))))
					add(c[i].feet)
					add(c[i].heads)
				}
			}
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// nearly is the ratio from which two distances of walls are told apart.
const nearly = 0.98
