package content

import (
	"stripwright/laminate"
	"stripwright/laminate/zone"
)

// leastLap is the share of cloth laid twice that is no longer rounding.
const leastLap = 5e-4

// Laps gives how much cloth a ply has for each mm² of its blank: 1 where strips
// butt, more where they overlap. A gap does not make it less.
func Laps(y laminate.PlanPly) float64 {
	blank, laid := y.Blank.Area(), 0.0
	for _, s := range y.Strips {
		laid += s.Shape.Area()
	}
	if !(blank > 0) || laid/blank < 1+leastLap {
		return 1
	}
	return laid / blank
}

func plyOf(y laminate.PlanPly, c Cloth) Ply {
	out := Ply{Ply: y.Ply, Fabric: y.Fabric, Laps: Laps(y)}
	out.ThicknessMM = c.ThicknessMM.times(out.Laps)
	return out
}

// perMM2 gives the sums of 1 mm² of a ply.
func perMM2(c Cloth, laps float64) Sums {
	s := Sums{Thick: c.Thick(), Weighed: c.Weighed()}
	s.FibreG = c.WeightGSM * laps / 1e6
	s.ResinG = c.ResinGSM.times(laps / 1e6)
	s.ClothMM3 = c.ThicknessMM.times(laps)
	if c.Thick() {
		s.FibreMM3 = s.FibreG * 1000 / c.DensityGCM3.Value
	}
	return s
}

// zone sums the plies and cores that lie in a zone.
func (r *Report) zone(p laminate.Plan, z zone.Zone, cloth map[string]Cloth) Zone {
	out := Zone{Zone: z}
	each := Sums{Thick: true, Weighed: true}
	carbon := len(z.Plies) > 0
	for _, k := range z.Plies {
		y := r.Plies[k]
		c := cloth[y.Fabric]
		each = each.plus(perMM2(c, y.Laps))
		out.ThicknessMM = out.ThicknessMM.plus(y.ThicknessMM)
		out.ClothGSM += float64(c.WeightGSM * y.Laps)
		carbon = carbon && c.Carbon()
	}
	for _, k := range z.Cores {
		c := p.Cores[k]
		if !soundCore(c) {
			each.Thick, each.Weighed = false, false
			continue
		}
		out.CoreMM += c.ThicknessMM
		each.CoreG += c.ThicknessMM * c.DensityKGM3 / 1e6
		each.CoreTakeG += 2 * c.UptakeGSM.Value / 1e6
	}
	out.ThicknessMM = out.ThicknessMM.plus(exact(out.CoreMM))
	if carbon {
		out.WorkshopMM = Workshop(out.ClothGSM) + out.CoreMM
	}
	out.Sums = each.times(z.AreaMM2)
	return out
}

// soundCore says whether the figures of a core may be those of one.
func soundCore(c laminate.Core) bool {
	return c.ThicknessMM > 0 && c.ThicknessMM <= 1000 && c.DensityKGM3 >= 0 && c.DensityKGM3 <= 20000 && c.UptakeGSM.Value >= 0
}

// Apart tells whether the workshop rule and the fibre content differ by more
// than a tenth, in the laminate without its core.
func (z Zone) Apart() bool {
	rule, own := z.WorkshopMM-z.CoreMM, z.ThicknessMM.Value-z.CoreMM
	return z.WorkshopMM > 0 && z.Thick && (rule < 0.9*own || rule > 1.1*own)
}
