package stack

import (
	"stripwright/geometry"
	"stripwright/laminate"
)

// Ply is one ply of a stack, or a core sheet between plies.
type Ply struct {
	Number int // of the plan; 0 for a core or a ply that is not in the plan
	Cloth  Cloth
	Angle  geometry.Angle
	Down   bool           // laid face down
	Patch  bool           // has an outline of its own
	Core   *laminate.Core // a core: Cloth and Angle mean nothing
}

// Layers expands plies from the tool up into layers with their heights.
func Layers(plies []Ply) []Layer {
	var out []Layer
	for _, p := range plies {
		out = append(out, p.layers()...)
	}
	return heights(out)
}

func (p Ply) layers() []Layer {
	if p.Core != nil {
		return []Layer{{Fabric: p.Core.Name, Kind: CoreKind, ThicknessMM: p.Core.ThicknessMM}}
	}
	out := p.Cloth.layers(p.Angle, p.Down)
	for i := range out {
		out[i].Ply = p.Number
	}
	return out
}

// Cloths reads the fabrics of a plan, by name. perGSM gives the thickness in mm
// of a fabric for each g/m² of its fibre; nil: all alike, 1 mm for each 1000
// g/m², which leaves shares, symmetry and coupling as they are where all cloth
// is of one fibre and is laid with the same resin.
func Cloths(p laminate.Plan, perGSM func(fabric string) float64) map[string]Cloth {
	out := map[string]Cloth{}
	for _, f := range p.Fabrics {
		per := 1e-3
		if perGSM != nil {
			per = perGSM(f.Name)
		}
		out[f.Name] = clothOf(f, per)
	}
	return out
}

// Through gives the plies of a plan that lie at a place, from the tool up: of
// the plies and cores given by their index in the plan. A core lies on its ply.
func Through(p laminate.Plan, cloths map[string]Cloth, plies, cores []int) []Ply {
	var out []Ply
	rest := cores
	laidUpTo := func(ply int) {
		for len(rest) > 0 && p.Cores[rest[0]].AfterPly <= ply {
			out = append(out, Ply{Core: &p.Cores[rest[0]]})
			rest = rest[1:]
		}
	}
	for _, i := range plies {
		q := p.Plies[i]
		laidUpTo(q.Ply - 1)
		out = append(out, Ply{Number: q.Ply, Cloth: cloths[q.Fabric], Angle: geometry.NewAngle(q.AngleDeg), Down: q.Face == laminate.FaceDown, Patch: q.Outline != ""})
	}
	laidUpTo(len(p.Plies))
	return out
}

// Whole gives the plies and cores of a plan that cover the whole part, by index.
func Whole(p laminate.Plan) (plies, cores []int) {
	for i, q := range p.Plies {
		if q.Outline == "" {
			plies = append(plies, i)
		}
	}
	for i, c := range p.Cores {
		if c.Outline == "" {
			cores = append(cores, i)
		}
	}
	return plies, cores
}
