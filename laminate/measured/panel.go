package measured

import (
	"math"

	"stripwright/laminate"
	"stripwright/laminate/content"
)

// Panel is a finished panel, or a test piece of it, beside what was reckoned.
// Shares are 0…1, weights g/m²; what is not known is 0.
type Panel struct {
	Of           string // what it is held against, in words: "zone Z1", "the whole part"
	Weighed      bool   // its fibre was weighed, not taken from the cloth
	PanelGSM     float64
	FibreGSM     float64
	ResinGSM     float64
	ThicknessMM  float64
	DensityGCM3  float64
	FibreVolume  content.Span
	FibreMass    content.Span
	Void         *Void // nil: a density is missing, or the figures contradict each other
	Reckoned     Reckoned
	Contradicted string   // why the figures cannot all be right, "" where they can
	Missing      []string // what is to be written, in sentences
}

// Reckoned is what package content says of the same place.
type Reckoned struct {
	PanelGSM    float64
	ThicknessMM content.Span
	FibreVolume float64
	FibreMass   float64
	DensityGCM3 float64
}

// whole is how near a measured area must be to the part's to be all of it.
const whole = 0.02

// tightest is a share of fibre by volume that no cloth reaches; round fibres side
// by side come to 0.79 in squares (geometry).
const tightest = 0.79

// Of judges the measured panel of a plan, nil where none was measured.
func Of(p laminate.Plan, r content.Report) *Panel {
	if p.Measured == nil || len(r.Zones) == 0 {
		return nil
	}
	m := *p.Measured
	out := &Panel{ThicknessMM: m.ThicknessMM}
	sums, mm2 := out.held(m, r)
	if !(m.WeightG > 0) || !(m.AreaMM2 > 0) || !(m.ThicknessMM > 0) {
		out.Contradicted = "weight, area and thickness of a measured panel must all be above 0"
		return out
	}
	out.PanelGSM = m.WeightG / m.AreaMM2 * 1e6
	out.DensityGCM3 = out.PanelGSM / (1000 * m.ThicknessMM)
	switch {
	case sums.CoreG > 0:
		out.Missing = append(out.Missing, "a panel with a core is not judged: weigh a piece of its skin")
		return out
	case sums.FibreG == 0:
		out.Missing = append(out.Missing, "no ply lies where the panel was measured")
		return out
	case !sums.Thick:
		out.Missing = append(out.Missing, r.Missing...)
		return out
	}
	b := newBench(m, sums, mm2, r.Resin.Value)
	out.judge(b)
	if !r.Resin.Known() {
		out.Missing = append(out.Missing, "voids cannot be estimated: write resin: with name: or density:")
	}
	return out
}

// held finds what the panel is held against: the whole part where it is as
// large, else the largest zone.
func (out *Panel) held(m laminate.Measured, r content.Report) (sums content.Sums, mm2 float64) {
	z := r.Zones[0]
	if len(r.Zones) == 1 {
		out.Of = "the part"
	} else {
		out.Of = "zone " + z.Name
	}
	sums, mm2 = z.Sums, z.AreaMM2
	thick := z.ThicknessMM
	if len(r.Zones) > 1 && math.Abs(m.AreaMM2-r.NetMM2) <= whole*r.NetMM2 {
		out.Of, sums, mm2 = "the whole part", r.Whole, r.NetMM2
		thick = content.Span{}
		for _, z := range r.Zones {
			f := z.AreaMM2 / r.NetMM2
			thick.Value += float64(z.ThicknessMM.Value * f)
			thick.Low += float64(z.ThicknessMM.Low * f)
			thick.High += float64(z.ThicknessMM.High * f)
		}
	}
	out.Reckoned = Reckoned{ThicknessMM: thick, FibreVolume: sums.FibreVolume(), FibreMass: sums.FibreMass(), DensityGCM3: sums.DensityGCM3()}
	if sums.Weighed {
		out.Reckoned.PanelGSM = sums.MassG().Value / mm2 * 1e6
	}
	return sums, mm2
}

// judge works out the shares and the voids.
func (out *Panel) judge(b bench) {
	at := b.at
	out.Weighed = b.weighed
	out.FibreGSM = at.fibre
	out.ResinGSM = at.panel - at.fibre
	out.FibreVolume = b.span(b.fibreVolume)
	out.FibreMass = b.span(func(w weights) float64 { return w.fibre / w.panel })
	switch {
	case out.ResinGSM <= 0:
		out.Contradicted = "the panel weighs less than the cloth in it"
		return
	case out.FibreVolume.Low > tightest:
		out.Contradicted = "no cloth packs so tightly as this thickness asks"
		return
	}
	if b.resin > 0 {
		out.Void = b.void()
		if out.Void.Percent < 0 && out.Void.High < 0 {
			out.Contradicted, out.Void = "fibre and resin of these weights need more room than the panel has", nil
		}
	}
}
