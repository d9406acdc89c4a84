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
	t := &bound.Task{Width: c.widths[0].usable, Nodes: boundNodes, Gap: m.problem.Gap, Rolls: c.rollsInList(), Straight: p.job.Rules.StraightEnds}
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

// proved is what a cloth takes at least, and why.
type proved struct {
	proof laminate.Proof
	least float64     // by the cloth's measure
	each  float64     // cost of a mm of roll
	task  *bound.Task // nil where only the area tells
}

// prove works out what all cloths take at least, before anything is laid: a search
// that comes to that may end.
func (p *planner) prove(m *model) {
	p.proofs, p.bound = make([]proved, len(p.cloths)), 0
	for k := range p.cloths {
		p.proofs[k] = p.proveCloth(m, k)
		p.bound += float64(1000 * p.proofs[k].least)
	}
	p.bound += 1 // what snapping may take or add
}

// proveCloth begins with the area. Where a cloth comes in several widths every mm²
// of blank costs at least a mm² of the cheapest roll, and that is all that is known.
func (p *planner) proveCloth(m *model, k int) proved {
	c := &p.cloths[k]
	out := proved{each: 1, least: float64(c.area * c.perMM2())}
	out.proof = laminate.Proof{Bound: string(bound.Area), AreaMM2: c.area, PerMM2: c.perMM2()}
	if len(c.widths) > 1 {
		return out
	}
	if c.measure == roll.Price {
		out.each = c.weight(0)
	}
	out.task = p.task(m, k)
	if b := bound.Least(out.task, 0); b.Kind != bound.Area {
		out.proof.Bound = string(b.Kind)
		out.proof.LengthMM = geometry.Micrometre(b.Length).MM()
		out.proof.WasteMM2 = b.Waste / 1e6
		out.proof.Steps = b.Steps
		out.least = float64(out.proof.LengthMM * out.each)
	}
	return out
}

// setBound sets what the cloth takes at least and why, and where that is not
// reached what it takes with the joints where they are.
func (p *planner) setBound(k int, phases []int64, out *laminate.Cost) {
	is := &p.proofs[k]
	out.Proof, out.Bound = is.proof, is.least
	used := int64(geometry.Micrometres(out.Used / is.each))
	if is.task != nil && int64(geometry.Micrometres(out.Bound/is.each)) < used {
		if here := p.boundHere(is.task, k, phases, used); here > 0 {
			out.BoundHere = min(out.Used, max(out.Bound, float64(geometry.Micrometre(here).MM()*is.each)))
		}
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
