package stack

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"stripwright/laminate/zone"
)

// mostZones is how many zones are listed.
const mostZones = 20

// zones judges each zone of the part, where there is more than one.
func (r Reading) zones() []Section {
	all := zone.Of(r.plan)
	if len(all) < 2 {
		return nil
	}
	s := Section{Heading: "Zones", Table: [][]string{{"zone", "area", "plies", "layers", "verdict"}}}
	for i, z := range all {
		if i == mostZones {
			s.Lines = append(s.Lines, "and "+counted(len(all)-i, "smaller zone", "smaller zones"))
			break
		}
		j := Judge(Through(r.plan, r.cloths, z.Plies, z.Cores))
		var plies []int
		for _, k := range z.Plies {
			plies = append(plies, r.plan.Plies[k].Ply)
		}
		s.Table = append(s.Table, []string{
			zone.Name(i), decimal(z.AreaMM2/1e6, 3) + " m2", ranges(plies), strconv.Itoa(fibreLayers(j.Layers)), j.Short(),
		})
	}
	s.Lines = append(s.Lines, r.patchCures(all)...)
	s.Lines = append(s.Lines, "Where outlines differ the stack differs too: a patch makes its place unsymmetric unless its plies are mirrored about the middle as well.")
	return []Section{s}
}

// mostPatches is how many zones are searched for cures.
const mostPatches = 6

// patchCures says what would mend a zone with patches by its patch plies alone,
// where the stack of the whole part needs no mending.
func (r Reading) patchCures(all []zone.Zone) []string {
	var out []string
	if r.Mendable() || len(r.Plies) == 0 {
		return nil
	}
	searched := 0
	for i, z := range all {
		plies := Through(r.plan, r.cloths, z.Plies, z.Cores)
		at := Reading{Plies: plies, Now: Judge(plies)}
		if !slices.ContainsFunc(plies, func(p Ply) bool { return p.Patch }) || !at.Mendable() {
			continue
		}
		if searched++; searched > mostPatches {
			return append(out, "Further zones were not searched for what would mend them.")
		}
		m := MendPatch(plies, r.offered())
		words := "nothing that was tried with its patch plies alone mends it"
		if !at.Now.Mirror && len(m.Cures) > 0 {
			words = "by its patch plies alone, symmetric: " + m.Cures[0].Words + m.Cures[0].notes(at.Now)
		} else if at.Now.Mirror && len(m.Balances) > 0 {
			words = "by its patch plies alone, balanced: " + m.Balances[0].Words + m.Balances[0].notes(at.Now)
		}
		out = append(out, zone.Name(i)+": "+words+".")
	}
	return out
}

// skins judges the skins of a sandwich apart: what lies under, between and over
// the cores.
func (r Reading) skins() []Section {
	s := Section{Heading: "Skins of the sandwich", Table: [][]string{{"skin", "plies", "verdict by itself"}}}
	from, cores := 0, 0
	for i := 0; i <= len(r.Plies); i++ {
		if i < len(r.Plies) && r.Plies[i].Core == nil {
			continue
		}
		if i < len(r.Plies) {
			cores++
		}
		if i > from {
			s.Table = append(s.Table, []string{strconv.Itoa(len(s.Table)), pliesOfSkin(r.Plies[from:i]), Judge(r.Plies[from:i]).Short()})
		}
		from = i + 1
	}
	if cores == 0 {
		return nil
	}
	s.Lines = []string{"The verdict above is of skins and core together. A skin that couples is held flat by the core and the other skin, but pulls at the core when it cools."}
	return []Section{s}
}

func pliesOfSkin(plies []Ply) string {
	var out []int
	for _, p := range plies {
		out = append(out, p.Number)
	}
	return ranges(out)
}

// joints tells what joints cut of each fabric in use, and which joints run
// across the load.
func (r Reading) joints() Section {
	s := Section{
		Heading: "What the joints cut",
		Table:   [][]string{{"fabric", "form", "a side joint cuts", "an end joint cuts"}},
		Lines: []string{
			"Share of a ply's fibre, by weight, that ends at a joint: a side joint runs along the roll, an end joint across it. A layer within 1° of the joint is not cut.",
		},
	}
	for _, f := range r.plan.Fabrics {
		c := r.cloths[f.Name]
		cut := CutOf(c)
		s.Table = append(s.Table, []string{f.Name, c.describe(), percent(cut.Side), percent(cut.End)})
	}
	if r.plan.Part.LoadDeg == nil {
		s.Lines = append(s.Lines, "No load direction is stated (load:), so no joint is held against it.")
		return s
	}
	s.Lines = append(s.Lines, r.loadLines(*r.plan.Part.LoadDeg)...)
	return s
}

// loadLines names the plies whose joints run across the load.
func (r Reading) loadLines(load float64) []string {
	var ways []string
	plies := map[string][]int{}
	for _, q := range r.plan.Plies {
		for _, kind := range []string{sideJoint, endJoint} {
			if !has(q, kind) {
				continue
			}
			if part := AcrossLoad(r.cloths[q.Fabric], q, kind, load); part > 0 {
				way := fmt.Sprintf(" (%s joints, %s of the fibre of a ply)", kind, percent(part))
				if plies[way] == nil {
					ways = append(ways, way)
				}
				plies[way] = append(plies[way], q.Ply)
			}
		}
	}
	var words []string
	for _, way := range ways {
		words = append(words, pliesWord(plies[way])+way)
	}
	at := "Load at " + degrees(load) + ": "
	if len(words) == 0 {
		return []string{at + "no joint runs across it and cuts fibre that carries it."}
	}
	return []string{at + "joints run across it and cut fibre that carries it in " + strings.Join(words, ", ") +
		". A continuous ply is not butt-spliced across the load (MIL-HDBK-17-3F, 2002, §12.3.1, item A-29)."}
}
