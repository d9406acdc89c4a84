package stock

import (
	"cmp"
	"slices"
)

// tighten looks for plans of less and less waste, first for one of none, then
// allowing more and more. It says whether the best is proved.
func (s *search) tighten() bool {
	none := int64(-1) // no plan wastes so little
	for allowed := int64(0); s.best == nil || none+1 < s.waste; {
		if s.best != nil {
			allowed = min(allowed, s.waste-1)
		}
		found, whole := s.within(allowed)
		switch {
		case found:
			allowed = none + 1 + (s.waste-none-1)/2
		case !whole:
			return false
		default:
			none = allowed
			if s.best == nil && allowed > s.room() {
				return false
			}
			allowed = 2*allowed + max(1, s.total/4096)
		}
	}
	return true
}

// room is more than any plan can waste.
func (s *search) room() int64 {
	sum := int64(0)
	for _, r := range s.rolls {
		sum += r
	}
	return sum
}

// within looks for a plan that wastes no more than allowed; whole says that
// all ways were tried.
func (s *search) within(allowed int64) (found, whole bool) {
	s.chosen = s.chosen[:0]
	found = s.roll(0, s.count(), allowed)
	return found, s.steps > 0
}

// roll fills roll i and those behind it with the pieces left.
func (s *search) roll(i int, left []int, allowed int64) bool {
	rest := s.length(left)
	switch {
	case rest == 0:
		s.consider(s.chosen, true)
		return true
	case i == len(s.rolls):
		return false
	case holds(s.rolls[i], rest):
		s.consider(append(s.chosen, left), true)
		return true
	}
	for _, f := range s.fills(i, left, allowed) {
		next := slices.Clone(left)
		for k, n := range f.count {
			next[k] -= n
		}
		s.chosen = append(s.chosen, f.count)
		if s.roll(i+1, next, allowed-f.waste) {
			return true
		}
		s.chosen = s.chosen[:len(s.chosen)-1]
		if s.steps <= 0 {
			return false
		}
	}
	return false
}

// fill is one way to fill a roll.
type fill struct {
	count []int
	waste int64
}

// fills lists the ways to fill roll i that waste no more than allowed and leave
// no room for a further piece, least waste first. Equal rolls that follow each
// other are filled in falling order, which leaves out no plan but copies. Where
// all rolls that follow are equal, pieces longer than the longest of this one
// can then only come from the last.
func (s *search) fills(i int, left []int, allowed int64) []fill {
	var most []int
	if i > 0 && s.rolls[i] == s.rolls[i-1] {
		most = s.chosen[i-1]
	}
	last := s.alike(i)
	var out []fill
	count := make([]int, len(left))
	ahead, shortest := s.ahead(left), s.shortest(left)
	var put func(k int, free int64, level bool)
	put = func(k int, free int64, level bool) {
		s.steps--
		if s.steps <= 0 || free-ahead[k] > allowed || free > allowed && free < shortest || last && free == s.rolls[i] && ahead[0]-ahead[k] > free {
			return
		}
		if k == len(left) {
			if s.maximal(left, count, free) {
				out = append(out, fill{slices.Clone(count), free})
			}
			return
		}
		n := min(left[k], int(free/s.kinds[k].Length))
		if level && n > most[k] {
			n = most[k]
		}
		for ; n >= 0; n-- {
			count[k] = n
			put(k+1, free-int64(n)*s.kinds[k].Length, level && n == most[k])
		}
		count[k] = 0
	}
	put(0, s.rolls[i], most != nil)
	slices.SortStableFunc(out, func(a, b fill) int { return cmp.Compare(a.waste, b.waste) })
	return out
}

// alike says whether all rolls from i on are equal.
func (s *search) alike(i int) bool {
	return !slices.ContainsFunc(s.rolls[i:], func(r int64) bool { return r != s.rolls[i] })
}

// ahead sums what is left of each kind and the shorter ones.
func (s *search) ahead(left []int) []int64 {
	out := make([]int64, len(left)+1)
	for k := len(left) - 1; k >= 0; k-- {
		out[k] = out[k+1] + s.kinds[k].Length*int64(left[k])
	}
	return out
}

// shortest gives the length of the shortest piece left.
func (s *search) shortest(left []int) int64 {
	k := len(left) - 1
	for k > 0 && left[k] == 0 {
		k--
	}
	return s.kinds[k].Length
}

func (s *search) maximal(left, count []int, free int64) bool {
	for k := range left {
		if count[k] < left[k] && s.kinds[k].Length <= free {
			return false
		}
	}
	return true
}

// fullest fills a roll as far as it goes, within some steps.
func (s *search) fullest(left []int, roll int64) []int {
	best, least := make([]int, len(left)), roll+1
	count := make([]int, len(left))
	ahead := s.ahead(left)
	steps := 2000
	var put func(k int, free int64)
	put = func(k int, free int64) {
		if steps--; steps <= 0 && least <= roll || free-ahead[k] >= least || least == 0 {
			return
		}
		if k == len(left) || ahead[k] == 0 {
			if free < least {
				least = free
				copy(best, count)
			}
			return
		}
		for n := min(left[k], int(free/s.kinds[k].Length)); n >= 0; n-- {
			count[k] = n
			put(k+1, free-int64(n)*s.kinds[k].Length)
		}
		count[k] = 0
	}
	put(0, roll)
	return best
}
