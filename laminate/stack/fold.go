package stack

import (
	"math"
	"slices"
)

// fold finds the least change that makes a stack in its order a mirror: it goes
// from both faces to the middle and lays, on the side that is behind, the next
// ply in each way it may lie.
//
//	tool  | 0 | 1 | … i-1 |   not yet laid   | j+1 | … | n-1 |  bag
//	                  ^^^^ layers that have no opposite yet
type fold struct {
	choices [][]variant
	memo    map[place]found
}

// place is how far a fold has come: plies below low and above high are laid,
// and of the last one, on the lower or upper side, the layers from rest on have
// no opposite yet.
type place struct {
	low, high int
	side      int // 0: none is left over
	variant   int
	rest      int
}

// Sides of a fold.
const (
	even = iota
	lower
	upper
)

type found struct {
	cost   int
	choose int
}

const never = math.MaxInt32

// folded gives the variants of least cost that make a mirror; ok is false where
// none do.
func folded(choices [][]variant) (chosen []variant, cost int, ok bool) {
	f := fold{choices, map[place]found{}}
	at := place{0, len(choices) - 1, even, 0, 0}
	if cost = f.least(at).cost; cost >= never {
		return nil, 0, false
	}
	chosen = make([]variant, len(choices))
	for at.low <= at.high {
		next := f.least(at).choose
		if at.side == lower {
			chosen[at.high] = choices[at.high][next]
		} else {
			chosen[at.low] = choices[at.low][next]
		}
		at, _ = f.step(at, next)
	}
	return chosen, cost, true
}

// least gives the least cost from a place on, and the variant to lay next.
func (f *fold) least(at place) found {
	if v, known := f.memo[at]; known {
		return v
	}
	best := found{cost: never}
	if at.low > at.high {
		if reads(f.left(at)) {
			best.cost = 0
		}
		f.memo[at] = best
		return best
	}
	ply := at.low
	if at.side == lower {
		ply = at.high
	}
	for v, c := range f.choices[ply] {
		next, fits := f.step(at, v)
		if !fits {
			continue
		}
		if cost := f.least(next).cost + c.cost; cost < best.cost {
			best = found{cost, v}
		}
	}
	f.memo[at] = best
	return best
}

// left gives the layers that have no opposite yet, from outside in.
func (f *fold) left(at place) []int {
	switch at.side {
	case lower:
		return f.choices[at.low-1][at.variant].ids[at.rest:]
	case upper:
		return inward(f.choices[at.high+1][at.variant].ids)[at.rest:]
	}
	return nil
}

// step lays the next ply on the side that is behind; fits is false where its
// layers are no mirror of those left over.
func (f *fold) step(at place, v int) (next place, fits bool) {
	rest := f.left(at)
	next = at
	side, ids := lower, []int(nil)
	if at.side == lower {
		side, ids = upper, inward(f.choices[at.high][v].ids)
		next.high--
	} else {
		ids = f.choices[at.low][v].ids
		next.low++
	}
	m := min(len(rest), len(ids))
	if !slices.Equal(rest[:m], ids[:m]) {
		return next, false
	}
	switch {
	case len(rest) > m:
		next.rest = at.rest + m
	case len(ids) > m:
		next.side, next.variant, next.rest = side, v, m
	default:
		next.side, next.variant, next.rest = even, 0, 0
	}
	return next, true
}

// inward gives layers of the upper side from outside in.
func inward(ids []int) []int {
	out := slices.Clone(ids)
	slices.Reverse(out)
	return out
}
