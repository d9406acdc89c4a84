package roll

import "slices"

// Longest gives the length of the longest piece in µm.
func (t *Task) Longest() int64 {
	most := int64(0)
	for i := range t.Pieces {
		most = max(most, t.Pieces[i].Shape.Length()-t.Gap)
	}
	return most
}

// Held gives the length of all rolls in stock and that of the longest, in µm.
func (t *Task) Held() (total, longest int64) {
	for _, s := range t.Stock {
		if s.Length == 0 {
			return endless, endless
		}
		total += s.Length * int64(max(1, s.Copies))
		longest = max(longest, s.Length)
	}
	return total, longest
}

// Wanted gives the length that the pieces take on one endless roll, and how
// much of a further roll they take behind the stock.
func (t *Task) Wanted(e Effort, seed uint64) (alone, further int64) {
	one := *t
	one.Measure, one.Stock = Length, []Stock{{}}
	if l, err := Lay(&one, e, seed); err == nil {
		alone = int64(l.Cost)
	}
	more := *t
	more.Measure, more.Stock = LastCut, append(slices.Clone(t.Stock), Stock{Copies: 1})
	if l, err := Lay(&more, e, seed); err == nil {
		for _, u := range l.Rolls {
			if u.Stock == len(t.Stock) {
				further = u.Length
			}
		}
	}
	return alone, further
}
