package nest

import (
	"fmt"
	"slices"
)

// piece is a strip narrower than the roll.
type piece struct{ long, high int }

// pack gives the least length that narrow strips take, or most when they take
// that much or more. They begin at sums of lengths.
func (s *small) pack(narrow []piece, most int) int {
	slices.SortFunc(narrow, func(a, b piece) int { return b.long*1000 + b.high - a.long*1000 - a.high })
	key := fmt.Sprint(narrow)
	area := 0
	for _, p := range narrow {
		area += p.long * p.high
	}
	for n := max(s.short[key], (area+s.width-1)/s.width); n < most; n++ {
		if s.sums[n] && s.fits(narrow, n, n*s.width-area) {
			s.short[key] = n
			return n
		}
	}
	s.short[key] = max(s.short[key], most)
	return most
}

// fits says whether strips find room in a length of roll, with so much area to
// spare.
func (s *small) fits(narrow []piece, length, spare int) bool {
	var at []int
	for n := range length {
		if s.sums[n] {
			at = append(at, n)
		}
	}
	t := &tray{s.width, length, append(at, length), make([]bool, len(at)*s.width), narrow, make([]bool, len(narrow))}
	return t.fill(0, spare)
}

// tray is a length of roll being filled, by stretches between the places where
// strips may begin, each of so many steps across.
type tray struct {
	width, length int
	at            []int
	taken         []bool
	pieces        []piece
	laid          []bool
}

// fill goes over the cells of the tray: the first free one is the corner of a
// strip, or is left free at the cost of the area to spare.
func (t *tray) fill(cell, spare int) bool {
	for cell < len(t.taken) && t.taken[cell] {
		cell++
	}
	if !slices.Contains(t.laid, false) {
		return true
	}
	if cell == len(t.taken) {
		return false
	}
	for k, p := range t.pieces {
		again := k > 0 && !t.laid[k-1] && t.pieces[k-1] == p
		if t.laid[k] || again || !t.put(cell, p, true) {
			continue
		}
		t.laid[k] = true
		if t.fill(cell+1, spare) {
			return true
		}
		t.laid[k] = false
		t.put(cell, p, false)
	}
	here := t.at[cell/t.width+1] - t.at[cell/t.width]
	if here > spare {
		return false
	}
	t.taken[cell] = true
	ok := t.fill(cell+1, spare-here)
	t.taken[cell] = false
	return ok
}

// put lays a strip with its corner in a cell where it is free, or takes it away.
func (t *tray) put(cell int, p piece, lay bool) bool {
	u, v := cell/t.width, cell%t.width
	to := t.at[u] + p.long
	if v+p.high > t.width || to > t.length {
		return false
	}
	var cells []int
	for ; t.at[u] < to; u++ {
		for y := v; y < v+p.high; y++ {
			if c := u*t.width + y; t.taken[c] == lay {
				return false
			} else {
				cells = append(cells, c)
			}
		}
	}
	for _, c := range cells {
		t.taken[c] = lay
	}
	return true
}
