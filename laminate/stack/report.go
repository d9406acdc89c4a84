package stack

import (
	"fmt"
	"strconv"

	"stripwright/laminate"
	"stripwright/laminate/content"
	"stripwright/laminate/stack/code"
	"stripwright/laminate/zone"
)

// Section is a part of a report: a heading, sentences, and a table whose first
// row is its head.
type Section struct {
	Heading string
	Table   [][]string
	Lines   []string
}

// Reading is a plan read for judging: its cloth with the thickness it lies in,
// and the stack through the whole part.
type Reading struct {
	plan    laminate.Plan
	cloths  map[string]Cloth
	Plies   []Ply // those that cover the whole part, cores among them
	Now     Judgement
	Assumed bool // the thickness of some cloth is not known: heights by areal weight
}

// Read reads a plan. A plan whose plies all have outlines of their own is judged
// where its largest zone lies.
func Read(p laminate.Plan) Reading {
	r := Reading{plan: p}
	per := map[string]float64{}
	for _, f := range p.Fabrics {
		c := content.ClothOf(p, f)
		if !c.Thick() || f.WeightGSM <= 0 {
			r.Assumed = true
			continue
		}
		per[f.Name] = c.ThicknessMM.Value / f.WeightGSM
	}
	if r.Assumed {
		r.cloths = Cloths(p, nil)
	} else {
		r.cloths = Cloths(p, func(fabric string) float64 { return per[fabric] })
	}
	plies, cores := Whole(p)
	if len(plies) == 0 {
		if z := zone.Of(p); len(z) > 0 {
			plies, cores = z[0].Plies, z[0].Cores
		}
	}
	r.Plies = Through(p, r.cloths, plies, cores)
	r.Now = Judge(r.Plies)
	return r
}

// Line gives the verdict in one line: "stack: 8 plies, 8 layers: symmetric;
// balanced".
func (r Reading) Line() string {
	return fmt.Sprintf("stack: %s, %s: %s", counted(r.pliesCounted(), "ply", "plies"), counted(r.layersCounted(), "layer", "layers"), r.Now.Short())
}

func (r Reading) pliesCounted() int {
	n := 0
	for _, p := range r.Plies {
		if p.Core == nil {
			n++
		}
	}
	return n
}

func (r Reading) layersCounted() int { return fibreLayers(r.Now.Layers) }

// fibreLayers counts layers without cores.
func fibreLayers(layers []Layer) int {
	n := 0
	for _, l := range layers {
		if l.Kind != CoreKind {
			n++
		}
	}
	return n
}

// Report gives all that is to be said of a plan's stack, for printing: the
// verdict, what would mend it, the shares of fibre, the layers, the zones and
// the skins where there are any, and what the joints cut.
func Report(p laminate.Plan) []Section {
	r := Read(p)
	out := []Section{r.verdict()}
	if m := r.mending(); len(m.Lines) > 0 {
		out = append(out, m)
	}
	out = append(out,
		Section{Heading: "Fibre in each direction", Lines: []string{r.Now.quasi()}, Table: r.Now.shareRows()},
		Section{Heading: "Lamination parameters", Table: r.Now.Moments.lamination()},
		r.layerTable())
	out = append(out, r.zones()...)
	out = append(out, r.skins()...)
	return append(out, r.joints(), r.howJudged())
}

func (r Reading) verdict() Section {
	s := Section{Heading: "The stack"}
	s.Lines = append(s.Lines, fmt.Sprintf("%s from the tool up, %s: %s.",
		counted(r.pliesCounted(), "ply", "plies"), counted(r.layersCounted(), "layer", "layers"), schedule(r.Plies)))
	if len(r.Plies) == 0 {
		s.Lines[0] = "No ply covers the whole part."
		return s
	}
	s.Lines = append(s.Lines, r.Now.symmetry())
	for _, l := range r.Now.oddLines() {
		s.Lines = append(s.Lines, "  "+l)
	}
	s.Lines = append(s.Lines, r.Now.balance())
	s.Lines = append(s.Lines, r.Now.groupLines()...)
	s.Lines = append(s.Lines, r.Now.surface())
	return s
}

// schedule writes the plies as schedule codes, run by run of one cloth and face.
func schedule(plies []Ply) string {
	text := ""
	for i := 0; i < len(plies); {
		if text != "" {
			text += ", "
		}
		if c := plies[i].Core; c != nil {
			text += "core " + c.Name
			i++
			continue
		}
		k := i
		var run []code.Ply
		for k < len(plies) && plies[k].Core == nil && plies[k].Cloth.Name == plies[i].Cloth.Name && plies[k].Down == plies[i].Down {
			run = append(run, code.Ply{Angle: plies[k].Angle.Degrees(), Woven: plies[k].Cloth.Form == laminate.Woven})
			k++
		}
		text += plies[i].Cloth.Name + " " + code.Write(run).String()
		if plies[i].Down {
			text += " face down"
		}
		i = k
	}
	return text
}

// Mendable says whether the stack is one to look for cures of: it couples, or is
// out of balance.
func (r Reading) Mendable() bool {
	uncoupled := r.Now.Mirror || !r.Now.Couples() && r.Now.Alike
	return len(r.Plies) > 0 && !(uncoupled && r.Now.Balanced)
}

// mending searches for cures of the stack through the whole part.
func (r Reading) mending() Section {
	if !r.Mendable() {
		return Section{}
	}
	s := Section{Heading: "What would mend it", Lines: Mend(r.Plies, r.offered()).lines(r.Now)}
	if len(r.plan.Plies) > r.pliesCounted() {
		s.Lines = append(s.Lines, "Plies with an outline of their own are left as they are.")
	}
	return s
}

// offered gives the cloth of the plan.
func (r Reading) offered() []Cloth {
	var out []Cloth
	for _, f := range r.plan.Fabrics {
		out = append(out, r.cloths[f.Name])
	}
	return out
}

// layerTable lists the layers with what lies opposite.
func (r Reading) layerTable() Section {
	s := Section{Heading: "Layers from the tool up", Table: [][]string{{"layer", "ply", "cloth", "its layer", "direction", "fibre", "thickness", "opposite", "mirror"}}}
	n := len(r.Now.Layers)
	for i, l := range r.Now.Layers {
		o := r.Now.Layers[n-1-i]
		mirror := "yes"
		if l.identity() != o.identity() {
			mirror = "NO"
		}
		ply, of := number(l.Ply), "-"
		if l.Kind == CoreKind {
			ply = "core"
		}
		if l.Of > 0 {
			of = fmt.Sprintf("%d of %d", l.Of, len(r.cloths[l.Fabric].Lies))
		}
		s.Table = append(s.Table, []string{
			strconv.Itoa(i + 1), ply, l.Fabric, of, l.lie(), fibre(l), thickness(l.ThicknessMM), o.lie(), mirror,
		})
	}
	return s
}

func fibre(l Layer) string {
	if l.Kind == CoreKind {
		return "-"
	}
	return gsm(l.GSM)
}

func thickness(mm float64) string { return strconv.FormatFloat(mm, 'f', 3, 64) + " mm" }

// howJudged says what the verdict stands on.
func (r Reading) howJudged() Section {
	s := Section{Heading: "How this was judged"}
	s.Lines = append(s.Lines,
		"A stitched ply counts layer by layer: face up, its last listed layer lies on the tool; face down, its first, with the angles turned the other way.",
		"Woven cloth counts as two directions at one height, mat as fibre without direction. The number for coupling is |B| over the root of |A| times |D| where fibre alone carries; with the resin, as among the stiffnesses, it comes out a little lower.")
	if r.Assumed {
		s.Lines = append(s.Lines, "The thickness of some cloth is not known: heights are by areal weight (assumed).")
	}
	for _, f := range r.plan.Fabrics {
		if f.Form == "" {
			s.Lines = append(s.Lines, fmt.Sprintf("Fabric %s does not state its form: taken as %s (assumed).", f.Name, r.cloths[f.Name].Form))
		}
	}
	return s
}
