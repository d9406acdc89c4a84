package stock

import (
	"cmp"
	"slices"
)

// Piece is a kind of piece: its length, at least 1, and how many of it.
type Piece struct {
	Length int64
	Count  int
}

// Plan says what is cut from each roll.
type Plan struct {
	Rolls  [][]int // by roll, how many of each kind of piece; rolls of no pieces at the end are left out
	Last   int64   // place of the last cut
	Proved bool    // no plan has its last cut earlier
}

// Fill fills rolls of the given lengths in their order; a length of 0 is as long
// as needed. steps bounds the search. ok is false when no plan was found: the
// rolls are too short, or it would take a longer search to find one.
func Fill(rolls []int64, pieces []Piece, steps int) (p Plan, ok bool) {
	s := newSearch(rolls, pieces, steps)
	s.consider(s.greedy(s.count(), nil))
	if len(s.kinds) <= mostPatterned {
		s.consider(s.byPatterns())
	}
	proved := s.tighten()
	if s.best == nil {
		return Plan{}, false
	}
	return Plan{Rolls: s.inOrder(len(pieces)), Last: s.total + s.waste, Proved: proved}, true
}

// mostPatterned is the number of different lengths up to which patterns are
// looked for: of very many lengths some always fill a roll.
const mostPatterned = 50

// search is a run of Fill. Kinds are sorted, the longest first.
type search struct {
	rolls  []int64
	kinds  []Piece
	order  []int // of the kinds in the caller's list
	total  int64 // all lengths
	steps  int
	best   [][]int
	waste  int64 // of best
	chosen [][]int
}

func newSearch(rolls []int64, pieces []Piece, steps int) *search {
	s := &search{rolls: rolls, steps: steps}
	for i, p := range pieces {
		if p.Count > 0 {
			s.order = append(s.order, i)
		}
	}
	slices.SortStableFunc(s.order, func(a, b int) int { return cmp.Compare(pieces[b].Length, pieces[a].Length) })
	for _, i := range s.order {
		s.kinds = append(s.kinds, pieces[i])
		s.total += pieces[i].Length * int64(pieces[i].Count)
	}
	return s
}

func (s *search) count() []int {
	out := make([]int, len(s.kinds))
	for k := range s.kinds {
		out[k] = s.kinds[k].Count
	}
	return out
}

// inOrder gives the best plan by the caller's n kinds.
func (s *search) inOrder(n int) [][]int {
	var out [][]int
	for _, r := range s.best {
		list := make([]int, n)
		for k, c := range r {
			list[s.order[k]] = c
		}
		out = append(out, list)
	}
	return out
}

// consider keeps a plan that wastes less than the best.
func (s *search) consider(plan [][]int, ok bool) {
	if !ok {
		return
	}
	waste := int64(0)
	for i := range plan[:max(0, len(plan)-1)] {
		waste += s.rolls[i] - s.length(plan[i])
	}
	if s.best == nil || waste < s.waste {
		s.best, s.waste = [][]int{}, waste
		for _, r := range plan {
			s.best = append(s.best, slices.Clone(r))
		}
	}
}

func (s *search) length(count []int) int64 {
	sum := int64(0)
	for k, n := range count {
		sum += s.kinds[k].Length * int64(n)
	}
	return sum
}

// holds says whether a roll holds a length.
func holds(roll, length int64) bool { return roll == 0 || length <= roll }

// greedy fills the rolls after those of a plan begun with the pieces left, each
// as far as it goes.
func (s *search) greedy(left []int, plan [][]int) ([][]int, bool) {
	left = slices.Clone(left)
	for i := len(plan); i < len(s.rolls); i++ {
		rest := s.length(left)
		if rest == 0 {
			return plan, true
		}
		if holds(s.rolls[i], rest) {
			return append(plan, left), true
		}
		fill := s.fullest(left, s.rolls[i])
		for k, n := range fill {
			left[k] -= n
		}
		plan = append(plan, fill)
	}
	return plan, s.length(left) == 0
}
