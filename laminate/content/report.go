package content

import (
	"slices"

	"stripwright/laminate"
	"stripwright/laminate/zone"
)

// Report is the thickness, weight and fibre content of a plan's net part.
type Report struct {
	Resin   laminate.Figure // density, unknown: no weight
	Cloths  []Cloth         // in the order of the plan's fabrics
	Plies   []Ply           // of the plan
	Zones   []Zone          // the largest first
	Whole   Sums            // of the net part
	NetMM2  float64
	Missing []string // what is to be written, each once
}

// Ply is one ply, as far as it lies in the net part.
type Ply struct {
	Ply         int
	Fabric      string
	NetMM2      float64
	Laps        float64 // cloth laid for each mm² of blank: 1 where strips butt
	ThicknessMM Span
	Sums
}

// Zone is a region of the net part with the same plies. CoreMM is in ThicknessMM.
type Zone struct {
	zone.Zone
	Name        string
	ThicknessMM Span
	CoreMM      float64
	ClothGSM    float64
	WorkshopMM  float64 // by the workshop rule, core included; 0: not all its fibre is carbon
	Sums
}

// Sums are masses in g. Thick says that all thicknesses, Weighed that all masses
// of them are known.
type Sums struct {
	FibreG    float64
	ResinG    Span // in the cloth
	CoreG     float64
	CoreTakeG float64 // resin taken up by the core's faces
	FibreMM3  float64 // volume of fibre
	ClothMM3  Span    // volume of fibre and the resin in it
	Thick     bool
	Weighed   bool
}

// MassG gives the mass of all together.
func (s Sums) MassG() Span { return s.ResinG.plus(exact(s.FibreG + s.CoreG + s.CoreTakeG)) }

// FibreVolume gives the share of fibre in the volume without the core, 0 where it
// is not known.
func (s Sums) FibreVolume() float64 {
	if !s.Thick || s.ClothMM3.Value == 0 {
		return 0
	}
	return s.FibreMM3 / s.ClothMM3.Value
}

// FibreMass gives the share of fibre in the mass without the core, 0 where it is
// not known.
func (s Sums) FibreMass() float64 {
	if !s.Weighed || s.FibreG == 0 {
		return 0
	}
	return s.FibreG / (s.FibreG + s.ResinG.Value)
}

// DensityGCM3 gives that of the laminate without the core, 0 where not known.
func (s Sums) DensityGCM3() float64 {
	if !s.Weighed || !s.Thick || s.ClothMM3.Value == 0 {
		return 0
	}
	return (s.FibreG + s.ResinG.Value) / (s.ClothMM3.Value / 1000)
}

func (s Sums) plus(t Sums) Sums {
	return Sums{
		s.FibreG + t.FibreG, s.ResinG.plus(t.ResinG), s.CoreG + t.CoreG, s.CoreTakeG + t.CoreTakeG,
		s.FibreMM3 + t.FibreMM3, s.ClothMM3.plus(t.ClothMM3), s.Thick && t.Thick, s.Weighed && t.Weighed,
	}
}

// times gives the sums of f times the area.
func (s Sums) times(f float64) Sums {
	return Sums{
		s.FibreG * f, s.ResinG.times(f), s.CoreG * f, s.CoreTakeG * f,
		s.FibreMM3 * f, s.ClothMM3.times(f), s.Thick, s.Weighed,
	}
}

// Of works out a plan from what stands in it.
func Of(p laminate.Plan) Report {
	r := Report{Resin: ResinDensity(p)}
	cloth := map[string]Cloth{}
	for _, f := range p.Fabrics {
		c := ClothOf(p, f)
		r.Cloths = append(r.Cloths, c)
		cloth[f.Name] = c
	}
	for _, y := range p.Plies {
		r.Plies = append(r.Plies, plyOf(y, cloth[y.Fabric]))
	}
	r.Whole = Sums{Thick: true, Weighed: true}
	for i, z := range zone.Of(p) {
		made := r.zone(p, z, cloth)
		made.Name = zone.Name(i)
		r.Zones = append(r.Zones, made)
		r.Whole = r.Whole.plus(made.Sums)
		r.NetMM2 += z.AreaMM2
		for _, k := range z.Plies {
			y := &r.Plies[k]
			y.NetMM2 += z.AreaMM2
		}
	}
	for i := range r.Plies {
		y := &r.Plies[i]
		y.Sums = perMM2(cloth[y.Fabric], y.Laps).times(y.NetMM2)
	}
	r.ask(p)
	return r
}

// ask gathers what is missing, each sentence once.
func (r *Report) ask(p laminate.Plan) {
	for _, c := range r.Cloths {
		used := slices.ContainsFunc(r.Plies, func(y Ply) bool { return y.Fabric == c.Fabric })
		for _, m := range c.Missing {
			if used && !slices.Contains(r.Missing, m) {
				r.Missing = append(r.Missing, m)
			}
		}
	}
	for _, c := range p.Cores {
		if !soundCore(c) {
			r.Missing = append(r.Missing, "thickness and weight of core "+c.Name+" are out of reason: correct them")
		}
		if !c.UptakeGSM.Known() {
			r.Missing = append(r.Missing, "the resin that core "+c.Name+" takes up is not in the weight: write uptake: for it, per face")
		}
	}
	const need = "weight and resin cannot be worked out: write resin: with name: or density:"
	if !r.Resin.Known() && len(p.Plies) > 0 {
		r.Missing = append(r.Missing, need)
	}
}
