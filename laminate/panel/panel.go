package panel

import (
	"slices"

	"stripwright/laminate"
	"stripwright/laminate/content"
	"stripwright/laminate/stack"
	"stripwright/laminate/theory"
)

// Report is what is known of the stiffness of a plan.
type Report struct {
	Constants []Constants // of the fabrics in use, in the plan's order
	Zones     []Zone      // as package content lists them
	Missing   []string    // what is to be written, each sentence once
}

// Zone is a zone with its stiffness. Of a sandwich Skins are those from the tool
// up, in the order in which cores part them; a zone without core has none.
type Zone struct {
	Name   string
	Core   bool
	Known  bool // false: something is missing
	Whole  theory.Stiffness
	Skins  []theory.Stiffness
	Layers []theory.Layer
}

// Of judges the zones of a plan; r is the same plan's report of package content.
func Of(p laminate.Plan, r content.Report) Report {
	var out Report
	constants := map[string]laminate.Elastic{}
	per := map[string]float64{}
	ask := func(words string) {
		if words != "" && !slices.Contains(out.Missing, words) {
			out.Missing = append(out.Missing, words)
		}
	}
	for i, c := range r.Cloths {
		if !slices.ContainsFunc(p.Plies, func(y laminate.PlanPly) bool { return y.Fabric == c.Fabric }) {
			continue
		}
		found := ConstantsOf(p, p.Fabrics[i], c)
		out.Constants = append(out.Constants, found)
		ask(found.Missing)
		for _, m := range c.Missing {
			ask(m)
		}
		if found.Known() && c.Thick() {
			constants[c.Fabric] = found.Elastic
			per[c.Fabric] = c.ThicknessMM.Value / c.WeightGSM
		}
	}
	cloths := stack.Cloths(p, func(fabric string) float64 { return per[fabric] })
	for _, z := range r.Zones {
		made, why := zoneOf(p, z, cloths, constants)
		ask(why)
		out.Zones = append(out.Zones, made)
	}
	return out
}

// zoneOf reckons one zone; why says what stands against it, where package content
// has not said it already.
func zoneOf(p laminate.Plan, z content.Zone, cloths map[string]stack.Cloth, constants map[string]laminate.Elastic) (out Zone, why string) {
	out = Zone{Name: z.Name, Core: len(z.Cores) > 0}
	for _, l := range stack.Layers(stack.Through(p, cloths, z.Plies, z.Cores)) {
		e, known := constants[l.Fabric]
		if !known && l.Kind != stack.CoreKind {
			return out, ""
		}
		out.Layers = append(out.Layers, layerOf(l, e))
	}
	if len(z.Plies) == 0 {
		return out, ""
	}
	var err error
	if out.Whole, err = theory.Of(out.Layers); err != nil {
		return out, without + err.Error()
	}
	out.Known = true
	if out.Core {
		out.Skins = skins(out.Layers)
	}
	return out, ""
}

func layerOf(l stack.Layer, e laminate.Elastic) theory.Layer {
	out := theory.Layer{ThicknessMM: l.ThicknessMM, Elastic: e, Core: l.Kind == stack.CoreKind, Random: l.Kind == stack.Random}
	switch l.Kind {
	case stack.Straight:
		out.AngleDeg = l.Angle().Degrees()
	case stack.Crossed:
		all := 0.0
		for _, d := range l.Lies {
			all += d.GSM
		}
		for _, d := range l.Lies {
			out.Crossed = append(out.Crossed, theory.Direction{AngleDeg: d.Angle.Degrees(), Part: d.GSM / all})
		}
	}
	return out
}

// skins judges what lies between cores.
func skins(layers []theory.Layer) []theory.Stiffness {
	var out []theory.Stiffness
	from := 0
	for i := 0; i <= len(layers); i++ {
		if i < len(layers) && !layers[i].Core {
			continue
		}
		if s, err := theory.Of(layers[from:i]); err == nil {
			out = append(out, s)
		}
		from = i + 1
	}
	return out
}
