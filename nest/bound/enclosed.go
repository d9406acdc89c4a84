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

// openingsIn finds in the slabs of a band what its full-width pieces enclose,
// alone or with the edges of the roll, and the pieces that are narrower.
func openingsIn(slabs []band.Slab, from, to int64) (open, narrow []found) {
	for _, piece := range grouped(slabs) {
		low, high := to, from
		for _, s := range piece {
			low, high = min(low, s.Y0), max(high, s.Y1)
		}
		if low > from || high < to {
			narrow = append(narrow, extentOf(piece))
			continue
		}
		open = append(open, enclosed(piece)...)
	}
	return open, narrow
}

// enclosed finds the openings of one piece: the free stretches between its
// slabs that do not lead out to either side.
func enclosed(piece []band.Slab) []found {
	var out []found
	for _, room := range grouped(free(piece)) {
		o := extentOf(room)
		if !math.IsInf(o.from, 0) && !math.IsInf(o.to, 0) {
			out = append(out, o)
		}
	}
	return out
}

// free gives the slabs beside and between those of a piece; the outer ones
// reach to infinity. A piece that takes a whole band has slabs at every level.
func free(piece []band.Slab) []band.Slab {
	var out []band.Slab
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

// grouped puts together the slabs that share a stretch of a level: connected
// parts, in the order of their first slabs.
func grouped(slabs []band.Slab) [][]band.Slab {
	head := make([]int, len(slabs))
	below, level := 0, 0 // first slab of the level below and of this one
	for i := range slabs {
		head[i] = i
		if slabs[i].Y0 != slabs[level].Y0 {
			below, level = level, i
		}
		for k := below; k < level && slabs[k].Y1 == slabs[i].Y0; k++ {
			if min(slabs[k].R1, slabs[i].R0) > max(slabs[k].L1, slabs[i].L0) {
				merge(head, i, k)
			}
		}
	}
	var out [][]band.Slab
	at := make(map[int]int)
	for i := range slabs {
		h := top(head, i)
		if _, ok := at[h]; !ok {
			at[h] = len(out)
			out = append(out, nil)
		}
		out[at[h]] = append(out[at[h]], slabs[i])
	}
	return out
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
