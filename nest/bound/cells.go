package bound

import (
	"slices"
)

// cell is a range of phases, ends included, between two breaks: inside it what
// is wasted is a quadratic function of the phase.
type cell struct{ from, to int64 }

// cellsOf divides the phases [0, width) at the breaks. A break is a cell of its
// own, because the waste may jump there.
func cellsOf(breaks []int64, width int64) []cell {
	for i := range breaks {
		breaks[i] = modulo(breaks[i], width)
	}
	slices.Sort(breaks)
	breaks = slices.Compact(breaks)
	var out []cell
	next := int64(0)
	for _, b := range breaks {
		if b > next {
			out = append(out, cell{next, b - 1})
		}
		out = append(out, cell{b, b})
		next = b + 1
	}
	if next < width {
		out = append(out, cell{next, width - 1})
	}
	return out
}

// cells are the phases that are asked about, divided at breaks.
func (s *shape) cells(breaks []int64, width int64) []cell {
	if s.only != nil {
		return s.only
	}
	return cellsOf(breaks, width)
}

func modulo(a, m int64) int64 {
	if a %= m; a < 0 {
		a += m
	}
	return a
}

// bands lists the lower heights of the bands of a phase that meet the blank.
func (s *shape) bands(phase, width int64) []int64 {
	first := s.outline.MinY - modulo(s.outline.MinY-phase, width)
	var out []int64
	for y := first; y < s.outline.MaxY; y += width {
		out = append(out, y)
	}
	return out
}

// mostSamples is how many phases of a cell are worked out at most.
const mostSamples = 3

// samples are the phases at which a cell is worked out: enough to know a
// quadratic function.
func (c cell) samples() []int64 {
	switch c.to - c.from {
	case 0:
		return []int64{c.from}
	case 1:
		return []int64{c.from, c.to}
	}
	return []int64{c.from, c.from + (c.to-c.from)/2, c.to}
}

// curve is a quantity over a cell, known at its samples.
type curve struct {
	at     []int64
	values []float64
}

// least gives the smallest value within a range of the cell.
func (c curve) least(from, to int64) float64 {
	least := min(c.value(from), c.value(to))
	if len(c.at) < 3 {
		return least
	}
	if turn, ok := c.turn(); ok && float64(from) < turn && turn < float64(to) {
		least = min(least, c.eval(turn))
	}
	return least
}

func (c curve) value(phase int64) float64 {
	if i := slices.Index(c.at, phase); i >= 0 {
		return c.values[i]
	}
	return c.eval(float64(phase))
}

// eval is the parabola through the samples (Lagrange), of three samples.
func (c curve) eval(x float64) float64 {
	a, b, d := float64(c.at[0]), float64(c.at[1]), float64(c.at[2])
	sum := float64(c.values[0] * ((x - b) / (a - b) * ((x - d) / (a - d))))
	sum += float64(c.values[1] * ((x - a) / (b - a) * ((x - d) / (b - d))))
	sum += float64(c.values[2] * ((x - a) / (d - a) * ((x - b) / (d - b))))
	return sum
}

// turn gives where the parabola through the samples turns.
func (c curve) turn() (float64, bool) {
	a, b, d := float64(c.at[0]), float64(c.at[1]), float64(c.at[2])
	left := (c.values[1] - c.values[0]) / (b - a)
	right := (c.values[2] - c.values[1]) / (d - b)
	bend := (right - left) / (d - a)
	if bend <= 0 {
		return 0, false // a parabola that opens downwards is least at an end
	}
	return float64((a+b)/2) - float64(left/float64(2*bend)), true
}
