package stack

import (
	"slices"
	"strings"
)

// Limits of the search through all orders: how many different remainders of the
// plies there are, with plies as they lie and with plies that may be turned.
const (
	mostRemainders       = 10000
	mostTurnedRemainders = 3000
)

// shuffle finds an order of the plies that is a mirror, at the least cost of
// turns: like fold, from both faces to the middle, but any ply may come next.
// Plies of the same layers are of one sort and change places freely.
type shuffle struct {
	sorts [][]variant // how a ply of each sort may lie
	plies [][]int     // which plies are of a sort, rising
	memo  map[string]taken
}

// taken is the next ply of least cost: its sort and how it lies.
type taken struct{ cost, sort, variant int }

// rest is a state of a shuffle: how many plies of each sort are left, and which
// layers have no opposite yet.
type rest struct {
	left []int
	side int
	ids  []int // from outside in
}

func (r rest) key() string { return key(r.left) + "|" + key(append([]int{r.side}, r.ids...)) }

// sorted makes a shuffle of plies that may lie in several ways.
func sorted(choices [][]variant) *shuffle {
	s := &shuffle{memo: map[string]taken{}}
	at := map[string]int{}
	for i, c := range choices {
		var ways []string
		for _, v := range c {
			ways = append(ways, key(v.ids))
		}
		k := strings.Join(ways, "|")
		n, known := at[k]
		if !known {
			n = len(s.sorts)
			at[k] = n
			s.sorts, s.plies = append(s.sorts, c), append(s.plies, nil)
		}
		s.plies[n] = append(s.plies[n], i)
	}
	return s
}

// remainders counts the sets of plies that may be left.
func (s *shuffle) remainders() int {
	n := 1
	for _, p := range s.plies {
		if n *= len(p) + 1; n > mostRemainders {
			break
		}
	}
	return n
}

// order gives a mirror of least cost: the places of the plies from the tool up
// and how each lies, as a number of its variants.
func (s *shuffle) order() (order, lie []int, ok bool) {
	r := rest{left: make([]int, len(s.sorts)), side: even}
	for i, p := range s.plies {
		r.left[i] = len(p)
	}
	if s.least(r).cost >= never {
		return nil, nil, false
	}
	waiting := make([][]int, len(s.plies))
	for i, p := range s.plies {
		waiting[i] = slices.Clone(p)
	}
	var high, highLie []int
	for s.some(r) {
		t := s.least(r)
		w := waiting[t.sort]
		if r.side == lower {
			high, highLie = append(high, w[len(w)-1]), append(highLie, t.variant)
			waiting[t.sort] = w[:len(w)-1]
		} else {
			order, lie = append(order, w[0]), append(lie, t.variant)
			waiting[t.sort] = w[1:]
		}
		r, _ = s.step(r, t.sort, t.variant)
	}
	slices.Reverse(high)
	slices.Reverse(highLie)
	return append(order, high...), append(lie, highLie...), true
}

func (s *shuffle) some(r rest) bool {
	return slices.ContainsFunc(r.left, func(n int) bool { return n > 0 })
}

// least gives the least cost from a state on, and the ply to lay next.
func (s *shuffle) least(r rest) taken {
	k := r.key()
	if t, known := s.memo[k]; known {
		return t
	}
	best := taken{cost: never}
	if !s.some(r) {
		if reads(r.ids) {
			best.cost = 0
		}
		s.memo[k] = best
		return best
	}
	for sort, n := range r.left {
		if n == 0 {
			continue
		}
		for v, c := range s.sorts[sort] {
			next, fits := s.step(r, sort, v)
			if !fits {
				continue
			}
			if cost := s.least(next).cost + c.cost; cost < best.cost {
				best = taken{cost, sort, v}
			}
		}
	}
	s.memo[k] = best
	return best
}

// step lays a ply on the side that is behind, as fold does.
func (s *shuffle) step(r rest, sort, v int) (next rest, fits bool) {
	ids, side := s.sorts[sort][v].ids, lower
	if r.side == lower {
		ids, side = inward(ids), upper
	}
	m := min(len(r.ids), len(ids))
	if !slices.Equal(r.ids[:m], ids[:m]) {
		return r, false
	}
	next = rest{left: slices.Clone(r.left), side: r.side}
	next.left[sort]--
	switch {
	case len(r.ids) > m:
		next.ids = r.ids[m:]
	case len(ids) > m:
		next.side, next.ids = side, ids[m:]
	default:
		next.side = even
	}
	return next, true
}
