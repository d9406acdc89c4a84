package stock

import "math"

// tableau is the simplex: one pattern for each kind of piece is in the basis,
// and the inverse of the basis is kept.
type tableau struct {
	basis   [][]int
	times   []float64 // how often each is used
	inverse [][]float64
	price   []float64 // of each kind, in rolls
}

// newTableau begins with patterns of one kind each.
func newTableau(s *search, roll int64) *tableau {
	n := len(s.kinds)
	t := &tableau{price: make([]float64, n)}
	for k := range s.kinds {
		most := min(int(roll/s.kinds[k].Length), s.kinds[k].Count)
		count, row := make([]int, n), make([]float64, n)
		count[k], row[k] = most, 1/float64(most)
		t.basis = append(t.basis, count)
		t.inverse = append(t.inverse, row)
		t.times = append(t.times, float64(s.kinds[k].Count)/float64(most))
	}
	return t
}

// prices works out the price of each kind and gives the number of rolls.
func (t *tableau) prices() float64 {
	value := 0.0
	for k := range t.price {
		t.price[k] = 0
		for i := range t.inverse {
			t.price[k] += t.inverse[i][k]
		}
	}
	for _, x := range t.times {
		value += x
	}
	return value
}

// enter takes a pattern into the basis in place of the one that is used up
// first; false when none is.
func (t *tableau) enter(count []int) bool {
	n := len(t.basis)
	d := make([]float64, n)
	for i := range d {
		for k, c := range count {
			d[i] += float64(t.inverse[i][k] * float64(c))
		}
	}
	out, step := -1, math.Inf(1)
	for i := range d {
		if d[i] > 1e-9 && t.times[i]/d[i] < step-1e-12 {
			out, step = i, t.times[i]/d[i]
		}
	}
	if out < 0 {
		return false
	}
	for k := range t.inverse[out] {
		t.inverse[out][k] /= d[out]
	}
	for i := range d {
		if i == out {
			continue
		}
		t.times[i] = max(0, t.times[i]-float64(step*d[i]))
		for k := range t.inverse[i] {
			t.inverse[i][k] -= float64(d[i] * t.inverse[out][k])
		}
	}
	t.basis[out], t.times[out] = count, step
	return true
}
