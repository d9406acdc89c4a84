package job

import (
	"stripwright/geometry"
	"stripwright/laminate"
)

// bag fills in the margins and pleats that a job leaves out, and holds tape and
// film against each other.
func (r *reading) bag(blocks []block) {
	trim := r.job.Part.TrimMM
	cs := r.job.Consumables
	for i := range cs {
		c, b := &cs[i], blocks[i]
		margin := func(v float64, from string) {
			v = geometry.Snap(v)
			c.MarginMM = r.otherwise(b, "margin", c.MarginMM, v, from, "a margin of %s from the net edge for %s: %s", r.spoken(v), c.Name, from)
		}
		switch c.Kind {
		case laminate.PeelPly:
			margin(trim+peelPlyPast, "the trim allowance and 50 mm")
			if c.MarginMM.Known() && c.MarginMM.Value < trim {
				r.note(b.keys["margin"], "margin", "%s ends within the trim allowance: it is to run past the cloth, else nothing leads the resin out", c.Name)
			}
		case laminate.FlowMedia:
			margin(-flowMediaShort, "20 mm short of the trim line")
			if c.MarginMM.Known() && c.MarginMM.Value >= 0 {
				r.note(b.keys["margin"], "margin", "%s reaches the trim line: it is to stop short of it, else resin runs round the cloth to the vent", c.Name)
			}
		case laminate.Sealant:
			margin(trim+sealantPast, "the trim allowance and 100 mm")
		case laminate.Other:
			margin(trim, "the trim allowance")
		}
	}
	r.film(blocks)
}

// film settles the bag: outside of the tape, with pleats that the tape follows.
func (r *reading) film(blocks []block) {
	tape, laid := r.job.Part.TrimMM+sealantPast, false
	for _, c := range r.job.Consumables {
		if c.Kind == laminate.Sealant && c.MarginMM.Known() {
			tape, laid = c.MarginMM.Value, true
		}
	}
	var bag *laminate.Consumable
	for i := range r.job.Consumables {
		c, b := &r.job.Consumables[i], blocks[i]
		if c.Kind != laminate.Film {
			continue
		}
		if bag == nil {
			bag = c
		}
		c.MarginMM = r.otherwise(b, "margin", c.MarginMM, geometry.Snap(tape+filmPast), "the sealant tape and 50 mm", "a margin of %s from the net edge for %s: 50 mm past the sealant tape", r.spoken(tape+filmPast), c.Name)
		if laid && c.MarginMM.Known() && c.MarginMM.Value < tape {
			r.refuse(b.keys["margin"], "margin", "write a larger margin for the film, or a smaller one for the tape", "the film ends %s from the net edge, and the sealant tape lies at %s", r.spoken(c.MarginMM.Value), r.spoken(tape))
		}
		r.pleated(b, c, usualPleats, usualPleatMM, "common practice, no source")
	}
	for i := range r.job.Consumables {
		if c := &r.job.Consumables[i]; c.Kind == laminate.Sealant {
			r.tapePleats(blocks[i], c, bag)
		}
	}
}

// pleated fills in the pleats that a job leaves out.
func (r *reading) pleated(b block, c *laminate.Consumable, n, mm float64, from string) {
	if !c.Pleats.Known() && !b.has("pleats") {
		c.Pleats = r.otherwise(b, "pleats", c.Pleats, n, from, "%.0f pleats in %s", n, c.Name)
	}
	if c.Pleats.Value > 0 && !c.PleatMM.Known() && !b.has("pleat") {
		c.PleatMM = r.otherwise(b, "pleat", c.PleatMM, mm, from, "pleats %s high in %s", r.spoken(mm), c.Name)
	}
}

// tapePleats lets the tape follow the pleats of the bag, which lie on it.
func (r *reading) tapePleats(b block, c, bag *laminate.Consumable) {
	if bag == nil {
		r.pleated(b, c, usualPleats, usualPleatMM, "common practice, no source")
		return
	}
	if !c.Pleats.Known() && !b.has("pleats") {
		c.Pleats = laminate.Figure{Value: bag.Pleats.Value, Basis: bag.Pleats.Basis, From: "as " + bag.Name}
	}
	if !c.PleatMM.Known() && !b.has("pleat") && bag.PleatMM.Known() {
		c.PleatMM = laminate.Figure{Value: bag.PleatMM.Value, Basis: bag.PleatMM.Basis, From: "as " + bag.Name}
	}
}
