package bound

import (
	"math"
	"sync"
)

// mostHeights bounds the vertices of a blank whose waste is worked out.
const mostHeights = 240

// interlockBound counts what convex pieces waste beside each other. Two that
// face each other along the roll lie on two sides of a line, and every level
// that they share wastes what lies between each of them and the line. A side
// that faces p others therefore wastes no less than the best polygon of p
// tangents about it.
//
// How many each side faces is limited. Who faces whom makes a planar graph, so
// that in a gap between two full-width pieces (or the ends of the roll) that
// holds m > 0 narrow ones there are at most 3m pairs; and each of the two
// full-width sides faces at most m + 1. Sides beyond the first face therefore
// number 4m - 2 at most in such a gap, 2m on its full-width sides, of which
// there are two. Multipliers put a price on each of these three limits.
func interlockBound(f *fabric, _ int64) Bound {
	best := f.area()
	best.Kind = Interlock
	for _, s := range f.shapes {
		if !s.convex || len(s.heights) > mostHeights {
			return best
		}
	}
	cells := make([][]ended, len(f.shapes))
	var all sync.WaitGroup
	for k, s := range f.shapes {
		all.Go(func() { cells[k] = s.endsOf(f.Width) })
	}
	all.Wait()
	prices := f.bestPrices(cells)
	options := make([][]option, len(cells))
	for k := range cells {
		options[k] = prices.options(cells[k])
	}
	return f.withWaste(Interlock, f.chooser().leastWaste(options))
}

// prices are what one more face costs: on any side, on a full-width side in
// addition, and once for a full-width side with any.
type prices struct{ any, full, first float64 }

// options prices all ranges of phase.
func (p prices) options(cells []ended) []option {
	out := make([]option, 0, len(cells))
	for i := range cells {
		out = append(out, option{cells[i].cell, p.of(&cells[i])})
	}
	return out
}

// of prices a range of phases. A narrow piece brings with it what its faces may
// save: four on any side, two of them on full-width sides, and a gap of two
// full-width sides; the gap's own two faces are given away where they would be
// worth more than its sides.
func (p prices) of(c *ended) float64 {
	sum := 0.0
	full, narrow := facesOf(p.any+p.full, p.first), facesOf(p.any, 0)
	for i := c.first; i < c.last; i++ {
		sum += full.least(&c.sides[i])
	}
	for i := range c.first {
		sum += narrow.least(&c.sides[i])
	}
	for i := c.last; i < len(c.sides); i++ {
		sum += narrow.least(&c.sides[i])
	}
	budget := float64(4*p.any) + float64(2*p.full) + float64(2*max(0, p.first-p.any))
	return sum - float64(budget*float64((len(c.sides)-c.last+c.first)/2))
}

// faces are the prices of a side's 0, 1, 2 … faces.
type faces [mostTangents + 1]float64

func facesOf(each, first float64) faces {
	var out faces
	for k := 1; k <= mostTangents; k++ {
		out[k] = first + float64(each*float64(k))
	}
	return out
}

// least gives the least that a side wastes, with the price of its faces.
func (f *faces) least(w *[mostTangents]float64) float64 {
	least := min(w[0], f[mostTangents])
	for k := 1; k < mostTangents; k++ {
		if waste := f[k] + w[k]; waste < least {
			least = waste
		}
	}
	return least
}

// bestPrices looks for the prices that prove most, the stagger left aside: each
// is raised and lowered in turn by ever smaller factors.
func (f *fabric) bestPrices(cells [][]ended) prices {
	typical := 0.0
	for _, list := range cells {
		for _, c := range list {
			for _, w := range c.sides {
				typical = max(typical, w[0])
			}
		}
	}
	known := make(map[prices]float64)
	value := func(p prices) float64 {
		v, ok := known[p]
		if !ok {
			v = f.proved(p, cells)
			known[p] = v
		}
		return v
	}
	var best prices
	most := value(best)
	for _, start := range []prices{{0, 0.1, 0}, {0.1, 0, 0.1}, {0.02, 0.1, 0.1}, {0, 0.02, 0.05}} {
		p := prices{start.any * typical, start.full * typical, start.first * typical}
		now := value(p)
		for step := 2.0; step > 1.05; {
			moved := false
			for _, q := range p.around(step, typical) {
				if v := value(q); v > now {
					p, now, moved = q, v, true
				}
			}
			if !moved {
				step = math.Sqrt(step)
			}
		}
		if now > most {
			best, most = p, now
		}
	}
	return best
}

// proved gives the least waste that prices prove, the stagger left aside.
func (f *fabric) proved(p prices, cells [][]ended) float64 {
	sum := 0.0
	for k := range cells {
		least := math.Inf(1)
		for i := range cells[k] {
			least = min(least, p.of(&cells[k][i]))
		}
		sum += float64(float64(f.count[k]) * least)
	}
	return sum
}

// around gives the prices with one of them raised or lowered.
func (p prices) around(step, typical float64) []prices {
	var out []prices
	for i := range 3 {
		for _, by := range []float64{step, 1 / step, 0} {
			q := p
			v := []*float64{&q.any, &q.full, &q.first}[i]
			switch {
			case *v == 0 && by > 1:
				*v = 0.05 * typical
			default:
				*v *= by
			}
			out = append(out, q)
		}
	}
	return out
}
