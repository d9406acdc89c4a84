package bound

import (
	"math"
	"slices"
)

// straightBound counts what is trimmed off where pieces are cut as oblongs: a piece
// takes as much roll as it is long and high, hollows and all.
func straightBound(f *fabric, _ int64) Bound {
	best := f.area()
	best.Kind = Straight
	if !f.Straight {
		return best
	}
	options := make([][]option, len(f.shapes))
	for k, s := range f.shapes {
		options[k] = s.oblongs(f.Width)
	}
	return f.withWaste(Straight, f.chooser().leastWaste(options))
}

// oblongs gives ranges of phase of a blank with the least that its oblongs take
// beyond its own area. Only what is in a band at all phases of a range counts, away
// from its edges by as much as the boundary may be off: there it is as long, or as
// surely in one piece, as the blank itself is in the band.
func (s *shape) oblongs(width int64) []option {
	if len(s.heights) > mostHeights {
		var out []option
		for _, c := range s.cells(nil, width) {
			out = append(out, option{cell: c})
		}
		return out
	}
	own, off := extentOf(s.slabs).area, int64(math.Ceil(s.off))
	own += float64(2 * s.off * (extentOf(s.slabs).length() + float64(s.outline.Across())))
	var out []option
	var l look
	for _, whole := range s.cells([]int64{s.outline.MinY, s.outline.MaxY}, width) {
		for _, c := range split(whole, max(1, width/mostOptions)) {
			sum := 0.0
			for _, y := range s.bands(c.from, width) {
				l.slabs = clip(l.slabs[:0], s.slabs, y+c.to-c.from+off, y+width-off)
				if s.convex {
					sum += float64(extentOf(l.slabs).length() * float64(s.leastHeight(y, width, c.to-c.from)))
				} else {
					sum += l.boxed()
				}
			}
			out = append(out, option{c, max(0, sum-own)})
		}
	}
	return out
}

// leastHeight gives how much of a blank's height is in a band at least, while the
// band moves up from y by so much: the height is a concave function of the place.
func (s *shape) leastHeight(y, width, move int64) int64 {
	at := func(y int64) int64 { return max(0, min(y+width, s.outline.MaxY)-max(y, s.outline.MinY)) }
	return min(at(y), at(y+move))
}

// box is the oblong about slabs that hang together.
type box struct {
	stretch
	low, high int64
}

// boxed gives the area that the boxes about the parts of some slabs cover together:
// parts may belong to one piece, whose oblong then holds all their boxes.
func (l *look) boxed() float64 {
	var boxes []box
	var levels []int64
	l.pieces.find(l.slabs)
	for k := range l.pieces.count {
		piece := l.pieceOf(l.slabs, k)
		e := extentOf(piece)
		b := box{stretch{e.from, e.to}, piece[0].Y0, piece[len(piece)-1].Y1}
		boxes, levels = append(boxes, b), append(levels, b.low, b.high)
	}
	slices.Sort(levels)
	sum := 0.0
	for i := 1; i < len(levels); i++ {
		long := 0.0
		for _, s := range united(over(boxes, levels[i-1], levels[i])) {
			long += s.to - s.from
		}
		sum += float64(long * float64(levels[i]-levels[i-1]))
	}
	return sum
}

// over gives where boxes lie that span two heights.
func over(boxes []box, low, high int64) []stretch {
	var out []stretch
	for _, b := range boxes {
		if b.low <= low && high <= b.high {
			out = append(out, b.stretch)
		}
	}
	return out
}
