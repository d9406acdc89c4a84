package job

import (
	"gopkg.in/yaml.v3"

	"stripwright/geometry/length"
	"stripwright/laminate"
)

// assumedNarrowest is the narrowest piece where a job does not say, in mm.
const assumedNarrowest = 25.0

// joints reads the joint rules. Stagger and plies between have no default.
func (r *reading) joints(top block) {
	n := top.need("joints", "write joints: {stagger: 50, plies_between: 4}; they are never assumed")
	if n == nil {
		return
	}
	b, ok := r.block(n, top.keys["joints"], "joints", jointKeys)
	if !ok {
		return
	}
	rules := &r.job.Rules
	if n := b.need("stagger", "write stagger: 50, the least distance between parallel joints; it is never assumed"); n != nil {
		rules.StaggerMM = r.stagger(n)
	}
	if n := b.need("plies_between", "write plies_between: 4, the plies that let joints lie in line again; it is never assumed"); n != nil {
		rules.PliesBetween, _ = r.count(n, "plies_between", 0, mostPlies)
	}
	rules.NarrowestMM = r.lengthOr(b, "narrowest", assumedNarrowest, limits{0, 6000}, "narrowest %s", length.MM(assumedNarrowest))
	r.narrowest = b.keys["narrowest"]
	rules.CuttingGapMM = r.lengthOr(b, "cutting_gap", 0, limits{0, 100}, "no cutting gap between pieces")
	rules.LayingToleranceMM = r.lengthOr(b, "laying_tolerance", 0, limits{0, 100}, "laying tolerance 0 mm")
	if n := b.value("max_gap"); n != nil {
		if mm, ok := r.lengthIn(n, "max_gap", limits{0, 50}); ok {
			rules.MaxGapMM = &mm
		}
	}
	if n := b.value("ends"); n != nil {
		ends, _ := r.choice(n, "ends", "shaped", laminate.StraightEnds)
		rules.StraightEnds = ends == laminate.StraightEnds
	}
	r.styles(b)
	r.keepClear(b)
	r.inForce()
}

// lengthOr reads a length that may be left out, and notes what is assumed.
func (r *reading) lengthOr(b block, key string, otherwise float64, l limits, assumed string, args ...any) float64 {
	if n := b.value(key); n != nil {
		mm, _ := r.lengthIn(n, key, l)
		return mm
	}
	if !b.has(key) {
		r.assume(b.at, key, assumed, args...)
	}
	return otherwise
}

// styles refuses laps and end joints until they are planned.
func (r *reading) styles(b block) {
	r.only(b.value("style"), "style", "butt", "lap")
	r.only(b.value("end_joints"), "end_joints", "never", "stagger")
}

// only takes the one word that is planned, and refuses a block by name.
func (r *reading) only(n *yaml.Node, rule, word, later string) {
	switch {
	case n == nil:
	case n.Kind == yaml.MappingNode, n.Kind == yaml.ScalarNode && n.Value == later:
		r.refuse(n, ruleLater, "write "+rule+": "+word, "%s with a %s is not planned yet", rule, later)
	default:
		if text, ok := r.written(n, rule); ok && text != word {
			r.refuse(n, rule, "write "+word, "%q is no %s that is planned", text, rule)
		}
	}
}

// inForce gives each fabric the joint rule that holds for it: its own, else the
// job's.
func (r *reading) inForce() {
	for i := range r.job.Fabrics {
		f := &r.job.Fabrics[i]
		if f.StaggerMM == 0 {
			f.StaggerMM = r.job.Rules.StaggerMM
		}
		if f.PliesBetween < 0 {
			f.PliesBetween = r.job.Rules.PliesBetween
		}
	}
}

// keepClear reads the regions where no joint may run.
func (r *reading) keepClear(b block) {
	n := b.value("keep_clear")
	if n == nil {
		return
	}
	items, ok := r.list(n, "keep_clear", "[{circle: 60, at: [200, 140]}]")
	if !ok {
		return
	}
	for _, item := range items {
		c, ok := r.block(item, item, "keep_clear", clearKeys)
		if !ok {
			continue
		}
		angles := r.clearAngles(c)
		for _, g := range r.clearRegions(c) {
			r.job.Rules.KeepClear = append(r.job.Rules.KeepClear, laminate.KeepClear{Region: g, Angles: angles})
		}
	}
}
