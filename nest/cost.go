package nest

import (
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
		p.setBound(c, &out[k])
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

// area gives the blank area of a cloth's plies in mm².
func (p *planner) area(c *cloth) float64 {
	area := 0.0
	for _, i := range c.plies {
		area += p.job.Plies[i].Blank.Area()
	}
	return area
}

// setBound sets the area bound: every mm² of blank costs at least a mm² of the
// cheapest roll.
func (p *planner) setBound(c *cloth, out *laminate.Cost) {
	area := p.area(c)
	out.Proof = laminate.Proof{Bound: "area", AreaMM2: area, PerMM2: c.perMM2()}
	out.Bound = float64(area * out.Proof.PerMM2)
	// Snapping may take a few mm² from the blanks: a plan below the bound by no
	// more than that meets it.
	if lack := out.Bound - out.Used; lack > 0 && lack < 1e-6*out.Bound {
		out.Bound = out.Used
	}
	if out.Bound > 0 {
		out.Gap = (out.Used - out.Bound) / out.Bound
	}
	out.Status = laminate.Feasible
	if out.Used-out.Bound < 0.001 {
		out.Status = laminate.Optimal
	}
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
	for s, st := range w.stock {
		for range st.Copies {
			rolls = append(rolls, practice.Roll{Length: st.Length})
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
