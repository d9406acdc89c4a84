package roll

// Columns of very many cells are thinned: neighbouring cells become one that
// holds them all and stands out by no more than a slack, in µm, which is
// doubled from the least to the most while many cells are left. Pieces are then
// laid up to twice the slack further apart than they need be, never closer.
const (
	manyCells  = 64
	leastSlack = 20.0
	mostSlack  = 160.0
)

// thinned gives a column's cells, joined where they are very many.
func thinned(cells []cell) []cell {
	for slack := leastSlack; len(cells) > manyCells && slack <= mostSlack; slack *= 2 {
		cells = joined(cells, slack)
	}
	return cells
}

// joined joins runs of cells as long as one trapezoid holds them.
func joined(cells []cell, slack float64) []cell {
	var out []cell
	for i := 0; i < len(cells); {
		one, n := cells[i], 1
		for step := 1; step > 0; { // gallop: longer steps while they succeed, shorter when not
			to := min(i+n+step, len(cells))
			if c, ok := cover(cells[i:to], slack); ok && to > i+n {
				one, n, step = c, to-i, 2*step
			} else {
				step /= 2
			}
		}
		out = append(out, one)
		i += n
	}
	return out
}

// cover gives the trapezoid that holds a run of cells: its sides join the ends
// of the run and are moved out by what stands beyond them.
func cover(cells []cell, slack float64) (cell, bool) {
	first, last := cells[0], cells[len(cells)-1]
	c := trapezoid(first.v0, last.v1, first.l0, last.l1, first.r0, last.r1)
	left, right := 0.0, 0.0
	for _, x := range cells {
		for _, v := range [2]int64{x.v0, x.v1} {
			left = max(left, at(c.v0, c.v1, c.l0, c.l1, v)-at(x.v0, x.v1, x.l0, x.l1, v))
			right = max(right, at(x.v0, x.v1, x.r0, x.r1, v)-at(c.v0, c.v1, c.r0, c.r1, v))
		}
	}
	c.l0, c.l1, c.r0, c.r1 = c.l0-left, c.l1-left, c.r0+right, c.r1+right
	return c, left <= slack && right <= slack
}
