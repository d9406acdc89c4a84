package nest

import (
	"cmp"
	"slices"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/nest/practice"
	"stripwright/nest/roll"
)

// costs sets what each cloth takes beside its bound and shop practice.
func (p *planner) costs(m *model, a *placed) []laminate.Cost {
	out := make([]laminate.Cost, len(p.cloths))
	for k := range p.cloths {
		c := &p.cloths[k]
		out[k] = laminate.Cost{Fabric: c.fabric.Name, Measure: measureName(c.measure), Practice: p.practice(c)}
		for g := range m.groups {
			if m.groups[g].cloth == k {
				out[k].Used += a.layouts[g].Cost / 1000
			}
		}
		p.setBound(k, a.phases, &out[k])
	}
	return out
}

func measureName(m roll.Measure) string {
	switch m {
	case roll.Price:
		return laminate.ByPrice
	case roll.LastCut:
		return laminate.ByLastCut
	}
	return laminate.ByLength
}

// practice gives what simple shop practice takes, by the cloth's measure; 0
// when the stock would not hold it.
func (p *planner) practice(c *cloth) float64 {
	plies := make([]practice.Ply, 0, len(c.plies))
	for _, i := range c.plies {
		pl := &p.job.Plies[i]
		plies = append(plies, practice.Ply{Number: pl.Number, Angle: pl.Angle(), Turns: c.fabric.Turn, Blank: pl.Blank})
	}
	w := &c.widths[0]
	pieces := practice.Pieces(plies, w.usable, practice.Step(plies, c.fabric.PliesBetween))
	var rolls []practice.Roll
	var stock []int
	for _, s := range inListOrder(w) {
		for range w.stock[s].Copies {
			rolls = append(rolls, practice.Roll{Length: w.stock[s].Length})
			stock = append(stock, s)
		}
	}
	used, ok := practice.Used(pieces, rolls)
	if !ok {
		return 0
	}
	sum := 0.0
	for k, u := range used {
		length := geometry.Micrometre(u).MM()
		switch {
		case c.measure == roll.Price:
			sum += float64(length * w.stock[stock[k]].Price)
		case c.measure == roll.LastCut && k+1 < len(used):
			sum += geometry.Micrometre(rolls[k].Length).MM()
		default:
			sum += length
		}
	}
	return sum
}

// inListOrder gives the numbers of a width's stock as the job lists its rolls.
func inListOrder(w *width) []int {
	out := make([]int, len(w.stock))
	for s := range out {
		out[s] = s
	}
	slices.SortFunc(out, func(a, b int) int { return cmp.Compare(w.rolls[a], w.rolls[b]) })
	return out
}
