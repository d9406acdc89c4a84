package bound

import "math"

// weight is a dual feasible function of a piece's extent across the roll, as a
// share of the roll's width: shares that fit side by side weigh one at most.
//
// With steps m it is x where (m+1)x is whole, else ⌊(m+1)x⌋/m. Without, it is 0
// below edge, 1 above 1 - edge, and x between (both: Fekete and Schepers,
// Mathematical Programming 91, 2001).
type weight struct {
	steps int
	edge  float64
}

// bare is the share below which the function weighs nothing.
func (w weight) bare() float64 {
	if w.steps > 0 {
		return 1 / float64(w.steps+1)
	}
	return w.edge
}

// over integrates the function over a stretch along the roll in which the share
// changes evenly from a to b. Shares may be off by so much.
func (w weight) over(long, a, b, off float64) float64 {
	if a > b {
		a, b = b, a
	}
	a, b = max(0, a-off), max(0, b-off)
	if w.steps > 0 {
		return float64(long * w.stepped(a, b))
	}
	return float64(long * w.cut(a, b))
}

// hairShare is a share too small to tell apart.
const hairShare = 1e-9

func (w weight) stepped(a, b float64) float64 {
	n := float64(w.steps + 1)
	if b-a > hairShare {
		a, b = float64(n*(a-hairShare)), float64(n*(b-hairShare))
		return (steps(max(0, b)) - steps(max(0, a))) / (b - a) / float64(w.steps)
	}
	if whole := math.Round(float64(n * a)); math.Abs(float64(n*a)-whole) < float64(n*hairShare) {
		return whole / n
	}
	return math.Floor(float64(n*a)) / float64(w.steps)
}

// cut is the mean of the function without steps.
func (w weight) cut(a, b float64) float64 {
	edge := w.edge + hairShare
	if edge <= hairShare {
		return (a + b) / 2
	}
	if b-a <= hairShare {
		switch {
		case a < edge:
			return 0
		case a > 1-w.edge+hairShare:
			return 1
		}
		return a
	}
	integral := func(z float64) float64 { // from 0 to z
		const half = 0.5
		top := 1 - w.edge + hairShare
		switch {
		case z <= edge:
			return 0
		case z <= top:
			return float64(half * (z - edge) * (z + edge))
		}
		return float64(half*(top-edge)*(top+edge)) + (z - top)
	}
	return (integral(b) - integral(a)) / (b - a)
}
