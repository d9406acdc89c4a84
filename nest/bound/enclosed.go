package bound

import (
	"math"

	"stripwright/geometry/band"
)

// found is a piece or an opening of a band: its area and extent along the roll.
type found struct{ area, from, to float64 }

func (f found) length() float64 { return f.to - f.from }

func (f *found) add(s band.Slab) {
	if f.area == 0 {
		f.from, f.to = math.Inf(1), math.Inf(-1)
	}
	f.area += size(s)
	f.from = min(f.from, s.L0, s.L1)
	f.to = max(f.to, s.R0, s.R1)
}

// extentOf sums slabs that hang together.
func extentOf(slabs []band.Slab) found {
	var f found
	for _, s := range slabs {
		f.add(s)
	}
	return f
}

// look finds the openings and the narrow pieces of one band after another, in the
// same room; it belongs to one goroutine. The zero value is ready.
type look struct {
	open, narrow []found // since they were last cut to nothing
	slabs        []band.Slab
	piece        []band.Slab
	free         []band.Slab
	pieces       parts
	rooms        parts
	sums         []found
}

// openingsIn finds in the slabs of a band what its full-width pieces enclose,
// alone or with the edges of the roll, and the pieces that are narrower.
func (l *look) openingsIn(slabs []band.Slab, from, to int64) {
	l.pieces.find(slabs)
	for k := range l.pieces.count {
		piece := l.pieceOf(slabs, k)
		low, high := to, from
		for i := range piece {
			low, high = min(low, piece[i].Y0), max(high, piece[i].Y1)
		}
		if low > from || high < to {
			l.narrow = append(l.narrow, extentOf(piece))
			continue
		}
		l.enclosed(piece)
	}
}

// pieceOf gives the slabs of one of the pieces that were found in them.
func (l *look) pieceOf(slabs []band.Slab, k int) []band.Slab {
	if l.pieces.count == 1 {
		return slabs
	}
	l.piece = l.piece[:0]
	for i, of := range l.pieces.of {
		if of == k {
			l.piece = append(l.piece, slabs[i])
		}
	}
	return l.piece
}

// enclosed finds the openings of one piece: the free stretches between its
// slabs that do not lead out to either side.
func (l *look) enclosed(piece []band.Slab) {
	if single(piece) {
		return
	}
	l.free = free(l.free[:0], piece)
	l.rooms.find(l.free)
	l.sums = l.sums[:0]
	for range l.rooms.count {
		l.sums = append(l.sums, found{})
	}
	for i, of := range l.rooms.of {
		l.sums[of].add(l.free[i])
	}
	for _, o := range l.sums {
		if !math.IsInf(o.from, 0) && !math.IsInf(o.to, 0) {
			l.open = append(l.open, o)
		}
	}
}

// single says whether a piece has one slab at every level: all beside it leads out.
func single(piece []band.Slab) bool {
	for i := 1; i < len(piece); i++ {
		if piece[i].Y0 == piece[i-1].Y0 {
			return false
		}
	}
	return true
}

// free adds the slabs beside and between those of a piece; the outer ones
// reach to infinity. A piece that takes a whole band has slabs at every level.
func free(out, piece []band.Slab) []band.Slab {
	for i := 0; i < len(piece); {
		y0, y1 := piece[i].Y0, piece[i].Y1
		left := band.Slab{Y0: y0, Y1: y1, L0: math.Inf(-1), L1: math.Inf(-1)}
		for ; i < len(piece) && piece[i].Y0 == y0; i++ {
			left.R0, left.R1 = piece[i].L0, piece[i].L1
			out = append(out, left)
			left.L0, left.L1 = piece[i].R0, piece[i].R1
		}
		left.R0, left.R1 = math.Inf(1), math.Inf(1)
		out = append(out, left)
	}
	return out
}

// parts numbers the connected parts of slabs in the order of their first slabs.
type parts struct {
	of    []int // part of each slab
	head  []int
	count int
}

// find puts together the slabs that share a stretch of a level.
func (p *parts) find(slabs []band.Slab) {
	p.head = p.head[:0]
	below, level := 0, 0 // first slab of the level below and of this one
	for i := range slabs {
		p.head = append(p.head, i)
		if slabs[i].Y0 != slabs[level].Y0 {
			below, level = level, i
		}
		for k := below; k < level && slabs[k].Y1 == slabs[i].Y0; k++ {
			if min(slabs[k].R1, slabs[i].R0) > max(slabs[k].L1, slabs[i].L0) {
				merge(p.head, i, k)
			}
		}
	}
	p.number()
}

// number counts the parts. The head of each is its first slab.
func (p *parts) number() {
	p.of, p.count = p.of[:0], 0
	for i := range p.head {
		h := top(p.head, i)
		if h == i {
			p.of = append(p.of, p.count)
			p.count++
			continue
		}
		p.of = append(p.of, p.of[h])
	}
}

func top(head []int, i int) int {
	for head[i] != i {
		i = head[i]
	}
	return i
}

func merge(head []int, i, k int) {
	a, b := top(head, i), top(head, k)
	head[max(a, b)] = min(a, b)
}
