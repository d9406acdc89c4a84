package stock

import (
	"cmp"
	"slices"
)

// byPatterns fills equal rolls with the patterns of the linear programme, as
// often as they are used in full, and the rest greedily.
func (s *search) byPatterns() ([][]int, bool) {
	if len(s.kinds) == 0 || len(s.rolls) == 0 {
		return nil, len(s.kinds) == 0
	}
	roll := s.rolls[0]
	if s.kinds[0].Length > roll || slices.ContainsFunc(s.rolls, func(r int64) bool { return r != roll }) {
		return nil, false
	}
	left := s.count()
	var plan [][]int
	patterns, _ := s.programme(roll)
	for _, p := range patterns {
		for times := int(p.times + 1e-6); times > 0 && among(p.count, left); times-- {
			plan = append(plan, p.count)
			for k, n := range p.count {
				left[k] -= n
			}
		}
	}
	if len(plan) > len(s.rolls) {
		return nil, false
	}
	return s.greedy(left, plan)
}

// among says whether a pattern can be cut from what is left.
func among(count, left []int) bool {
	for k, n := range count {
		if n > left[k] {
			return false
		}
	}
	return true
}

// pattern is a way to cut a roll and how often it is used.
type pattern struct {
	count []int
	times float64
}

// programme solves the linear programme: patterns used so often, in parts, that
// the rolls are fewest and every kind of piece is cut often enough. The bound is
// a number of rolls that no plan goes below, also where the simplex stopped
// short (Farley 1990).
func (s *search) programme(roll int64) (patterns []pattern, bound float64) {
	t := newTableau(s, roll)
	for range 50 * (len(s.kinds) + 10) {
		value := t.prices()
		best, worth := s.knapsack(roll, t.price)
		bound = max(bound, value/max(1, worth))
		if worth <= 1+1e-9 || !t.enter(best) {
			break
		}
	}
	for i := range t.basis {
		patterns = append(patterns, pattern{t.basis[i], t.times[i]})
	}
	return patterns, bound
}

// knapsack finds the pattern worth most at the prices, by branch and bound.
func (s *search) knapsack(roll int64, price []float64) (best []int, worth float64) {
	var order []int
	for k := range s.kinds {
		if price[k] > 0 {
			order = append(order, k)
		}
	}
	per := func(k int) float64 { return price[k] / float64(s.kinds[k].Length) }
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(per(b), per(a)) })
	best = make([]int, len(s.kinds))
	count := make([]int, len(s.kinds))
	var put func(i int, free int64, sum float64)
	put = func(i int, free int64, sum float64) {
		if sum > worth {
			worth = sum
			copy(best, count)
		}
		if i == len(order) || sum+float64(float64(free)*per(order[i])) <= worth+1e-12 {
			return
		}
		k := order[i]
		for n := min(s.kinds[k].Count, int(free/s.kinds[k].Length)); n >= 0; n-- {
			count[k] = n
			put(i+1, free-int64(n)*s.kinds[k].Length, sum+float64(float64(n)*price[k]))
		}
		count[k] = 0
	}
	put(0, roll, 0)
	return best, worth
}
