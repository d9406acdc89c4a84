package bound

import (
	"cmp"
	"math"
	"slices"
	"sync"
)

// openingsBound counts what cannot be filled of the openings that full-width
// pieces enclose. A piece of full width parts the roll, so whatever lies in an
// opening of it lies there whole, and is no longer than the opening. For any
// share that does not rise with length, what is wasted is no less than the
// openings, each by the share of its length, less the narrow pieces, each by
// the share of its own.
func openingsBound(f *fabric, at int64) Bound {
	best := f.area()
	best.Kind = Openings
	hollow := false
	for _, s := range f.shapes {
		if len(s.heights) > mostHeights {
			return best
		}
		hollow = hollow || !s.convex
	}
	if !hollow { // a convex piece encloses nothing
		return best
	}
	cells := make([][]opened, len(f.shapes))
	var all sync.WaitGroup
	for k, s := range f.shapes {
		all.Go(func() { cells[k] = s.openedAt(f.Width) })
	}
	all.Wait()
	steps := thresholds(cells)
	c := f.chooser()
	options := make([][]option, len(cells))
	try := func(s share) bool {
		for k := range cells {
			options[k] = openOptions(options[k][:0], cells[k], s)
		}
		if b := f.withWaste(Openings, c.leastWaste(options)); b.Length > best.Length {
			best = b
			return true
		}
		return false
	}
	var single share
	for _, l := range steps {
		if s := (share{{l, 1}}); try(s) || single == nil {
			single = s
		}
	}
	if single == nil {
		return best
	}
	for _, l := range steps { // mixed with another
		for _, part := range []float64{1. / 2, 1. / 3, 2. / 3, 1. / 4, 3. / 4} {
			if at > 0 && best.Length >= at {
				return best
			}
			if l != single[0].below {
				try(share{{single[0].below, 1 - part}, {l, part}})
			}
		}
	}
	return best
}

// share is a function of length that does not rise: the sum of the parts of all
// thresholds above the length.
type share []struct{ below, part float64 }

func (s share) of(length float64) float64 {
	sum := 0.0
	for _, t := range s {
		if length < t.below {
			sum += t.part
		}
	}
	return sum
}

// thresholds are lengths worth telling apart: just above those of openings, at
// most a few.
func thresholds(cells [][]opened) []float64 {
	var all []float64
	for _, list := range cells {
		for _, c := range list {
			for _, o := range c.open {
				all = append(all, math.Ceil(o.length)+1)
			}
		}
	}
	slices.SortFunc(all, cmp.Compare[float64])
	all = slices.Compact(all)
	const most = 8
	if len(all) > most {
		few := make([]float64, 0, most)
		for k := 1; k <= most; k++ {
			few = append(few, all[(len(all)-1)*k/most])
		}
		all = few
	}
	return slices.Compact(all)
}

// openOptions adds the waste of ranges of phase for one share.
func openOptions(out []option, cells []opened, s share) []option {
	for i := range cells {
		c := &cells[i]
		var room [mostSamples]float64
		total := curve{at: c.at, values: room[:len(c.at)]}
		c.total(s, total.values)
		for _, r := range c.ranges {
			out = append(out, option{r, total.least(r.from, r.to)})
		}
	}
	return out
}

// total adds up the openings less the narrow pieces, each by its share. Openings
// count as long as they get in the cell, pieces as short.
func (c *opened) total(s share, values []float64) {
	for _, o := range c.open {
		part := s.of(o.length)
		for i, v := range o.area {
			values[i] += float64(part * v)
		}
	}
	for _, n := range c.narrow {
		part := s.of(n.length)
		for i, v := range n.area {
			values[i] -= float64(part * v)
		}
	}
}

// opened is a cell of a blank with the openings of its full-width pieces and its
// narrow pieces.
type opened struct {
	cell
	at     []int64  // samples
	ranges []cell   // that are told apart
	open   []extent // length: the longest in the cell
	narrow []extent // length: the shortest in the cell
}

// extent is an area at every sample of a cell, and a length.
type extent struct {
	area   []float64
	length float64
}

// openedAt works out all cells of a blank.
func (s *shape) openedAt(width int64) []opened {
	cells := s.cells(slices.Clone(s.heights), width)
	out := make([]opened, len(cells))
	var l look
	for k, c := range cells {
		out[k] = opened{cell: c, at: c.samples(), ranges: narrowed(c, width)}
		for i, phase := range out[k].at {
			l.band(s, phase, width)
			out[k].gather(i, &l)
		}
	}
	return out
}

// band finds the openings and the narrow pieces of all bands of a phase.
func (l *look) band(s *shape, phase, width int64) {
	l.open, l.narrow = l.open[:0], l.narrow[:0]
	for _, y := range s.bands(phase, width) {
		whole, plain := y >= s.outline.MinY && y+width <= s.outline.MaxY, s.plain(y, y+width)
		if whole && plain { // encloses nothing
			continue
		}
		l.slabs = clip(l.slabs[:0], s.slabs, y, y+width)
		if plain {
			l.narrow = append(l.narrow, extentOf(l.slabs))
			continue
		}
		l.openingsIn(l.slabs, y, y+width)
	}
}

// gather adds what was found at sample i to what the earlier samples gave.
func (o *opened) gather(i int, l *look) {
	o.open = gather(o.open, l.open, i, len(o.at), math.Max)
	o.narrow = gather(o.narrow, l.narrow, i, len(o.at), math.Min)
}

// gather adds what was found at sample i of so many. In a cell the same things
// are found at every sample, in the same order; should snapping lose one, it
// counts as nothing there.
func gather(to []extent, list []found, i, samples int, pick func(a, b float64) float64) []extent {
	for len(to) < len(list) {
		to = append(to, extent{make([]float64, samples), list[len(to)].length()})
	}
	for k, f := range list {
		to[k].area[i] = f.area
		to[k].length = pick(to[k].length, f.length())
	}
	return to
}
