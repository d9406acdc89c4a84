package nest

import (
	"slices"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/nest/bound"
	"stripwright/nest/roll"
)

// boundNodes bounds the search for the phases that waste least.
const boundNodes = 100000

// task states what is to be proved of a cloth that comes in one width.
func (p *planner) task(m *model, k int) *bound.Task {
	c := &p.cloths[k]
	t := &bound.Task{Width: c.widths[0].usable, Nodes: boundNodes, Gap: m.problem.Gap, Rolls: c.rollsInList()}
	if c.measure == roll.Price && c.ends() { // how many rolls a length is cut from is not known
		t.Gap = 0
	}
	index := make(map[int]int)
	for n, i := range c.plies {
		index[i] = n
		t.Plies = append(t.Plies, bound.Ply{Base: m.classes[i].Base})
	}
	for n, i := range c.plies {
		for _, f := range m.problem.Web.Conflicts[i] {
			with, ours := index[f.With]
			if ours && with < n && f.SameComb && len(f.Partly) == 0 {
				t.Plies[n].Near = append(t.Plies[n].Near, bound.Near{Ply: with, Stagger: f.Stagger})
			}
		}
	}
	return t
}

// mostProved bounds the plies for which it is proved how little the chosen joints
// could take: each ply then counts by itself.
const mostProved = 40

// boundHere gives the least length of a cloth with its joints where they are; 0
// where that is not worked out.
func (p *planner) boundHere(t *bound.Task, k int, phases []int64, at int64) int64 {
	if len(t.Plies) > mostProved {
		return 0
	}
	here := *t
	here.Plies = nil
	for n, i := range p.cloths[k].plies {
		here.Plies = append(here.Plies, bound.Ply{Base: t.Plies[n].Base})
		here.Phases = append(here.Phases, phases[i])
	}
	return bound.Least(&here, at).Length
}

// setBound sets what the cloth takes at least and why. Where it comes in
// several widths every mm² of blank costs at least a mm² of the cheapest roll.
func (p *planner) setBound(m *model, k int, phases []int64, out *laminate.Cost) {
	c := &p.cloths[k]
	area := c.area
	out.Proof = laminate.Proof{Bound: string(bound.Area), AreaMM2: area, PerMM2: c.perMM2()}
	out.Bound = float64(area * out.Proof.PerMM2)
	if len(c.widths) == 1 {
		p.sharpen(m, k, phases, out)
	}
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

// sharpen looks for a better bound than the area, and where that is not reached
// for one that holds with the joints where they are.
func (p *planner) sharpen(m *model, k int, phases []int64, out *laminate.Cost) {
	c := &p.cloths[k]
	each := 1.0 // cost of a mm of roll
	if c.measure == roll.Price {
		each = c.weight(0)
	}
	used := int64(geometry.Micrometres(out.Used / each))
	t := p.task(m, k)
	b := bound.Least(t, used)
	if b.Kind != bound.Area {
		out.Proof.Bound = string(b.Kind)
		out.Proof.LengthMM = geometry.Micrometre(b.Length).MM()
		out.Proof.WasteMM2 = b.Waste / 1e6
		out.Proof.Steps = b.Steps
		out.Bound = float64(out.Proof.LengthMM * each)
	}
	if b.Length >= used {
		return
	}
	if here := p.boundHere(t, k, phases, used); here > 0 {
		out.BoundHere = min(out.Used, max(out.Bound, float64(geometry.Micrometre(here).MM()*each)))
	}
}

// ends says whether a roll of the cloth ends.
func (c *cloth) ends() bool {
	return slices.ContainsFunc(c.fabric.Rolls, func(r laminate.Roll) bool { return !r.Endless() })
}

// rollsInList gives the length of every roll in list order, where the place of the
// last cut counts.
func (c *cloth) rollsInList() []int64 {
	var out []int64
	if c.measure != roll.LastCut {
		return nil
	}
	for _, s := range c.widths[0].stock {
		for range s.Copies {
			out = append(out, s.Length)
		}
	}
	return out
}
