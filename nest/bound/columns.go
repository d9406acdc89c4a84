package bound

import (
	"cmp"
	"slices"

	"stripwright/geometry/band"
)

// column is a trapezoid of a blank between two places along the roll, its lower
// and its upper edge at both, in µm.
//
//	H0 +-----
//	   |     \
//	   |      + H1
//	L0 +------+ L1
//	   x0     x1
type column struct{ x0, x1, l0, l1, h0, h1 float64 }

// joined says between which heights two columns meet.
type joined struct {
	a, b     int
	from, to float64
}

// columnsOf divides an outline at the places of its vertices along the roll, in
// rising order, and tells which columns meet.
func columnsOf(o *band.Outline) ([]column, []joined) {
	var out []column
	for _, s := range slabsOf(transposed(o)) {
		out = append(out, column{float64(s.Y0), float64(s.Y1), s.L0, s.L1, s.R0, s.R1})
	}
	slices.SortStableFunc(out, func(a, b column) int { return cmp.Or(cmp.Compare(a.x0, b.x0), cmp.Compare(a.l0+a.l1, b.l0+b.l1)) })
	var links []joined
	before, now := 0, 0 // first column of the place before and of this one
	for i := range out {
		if out[i].x0 != out[now].x0 {
			before, now = now, i
		}
		for k := before; k < now && out[k].x1 == out[i].x0; k++ {
			if from, to := max(out[k].l1, out[i].l0), min(out[k].h1, out[i].h0); to > from {
				links = append(links, joined{k, i, from, to})
			}
		}
	}
	return out, links
}

// transposed swaps the directions along and across the roll.
func transposed(o *band.Outline) *band.Outline {
	t := &band.Outline{MinX: o.MinY, MaxX: o.MaxY, MinY: o.MinX, MaxY: o.MaxX}
	for _, r := range o.Rings {
		ring := make(band.Ring, len(r))
		for i, p := range r {
			ring[len(r)-1-i] = band.Point{X: p.Y, Y: p.X}
		}
		t.Rings = append(t.Rings, ring)
	}
	return t
}

// shared gives the heights that all places of a column have.
func (c *column) shared() (low, high float64) { return max(c.l0, c.l1), min(c.h0, c.h1) }

// common gives the heights that all places of two columns have.
func (c *column) common(d *column) (low, high float64) {
	return max(c.l0, c.l1, d.l0, d.l1), min(c.h0, c.h1, d.h0, d.h1)
}

// stretch is where a column is along the roll.
func (c *column) stretch() stretch { return stretch{c.x0, c.x1} }

// post is a column of a core, and how much of it is in the band at least at all
// its places alike.
type post struct {
	*column
	least float64
}

// across gives where a column takes in all heights from low to high.
func (c *column) across(low, high float64) (stretch, bool) {
	a, ok := line{c.x0, c.x1, low - c.l0, low - c.l1, 0}.above(0)
	b, also := line{c.x0, c.x1, c.h0 - high, c.h1 - high, 0}.above(0)
	s := stretch{max(a.from, b.from), min(a.to, b.to)}
	return s, ok && also && s.from < s.to
}
