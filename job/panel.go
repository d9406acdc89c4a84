package job

import (
	"gopkg.in/yaml.v3"

	"stripwright/geometry"
	"stripwright/geometry/length"
	"stripwright/laminate"
)

// panel reads what was weighed and measured on a finished panel.
func (r *reading) panel(top block) {
	n := top.value("measured")
	if n == nil {
		return
	}
	b, ok := r.block(n, top.keys["measured"], "measured", measuredKeys)
	if !ok {
		return
	}
	var m laminate.Measured
	if n := b.need("weight", "write what the panel weighs: weight: 798 g"); n != nil {
		m.WeightG, _ = r.measured(n, "weight", panelMasses)
	}
	m.AreaMM2 = r.pieceArea(b, "the panel")
	if n := b.need("thickness", "write its thickness, or a list of readings: thickness: [5.8, 5.9, 6.0]"); n != nil {
		r.readings(n, &m)
	}
	if n := b.value("dry"); n != nil {
		m.DryG, _ = r.measured(n, "dry", pieceMasses)
		if m.DryG >= m.WeightG && m.WeightG > 0 {
			r.refuse(n, "dry", "dry is the fibre alone, weight the cured panel", "the fibre weighs %s, and the panel no more", n.Value)
		}
	}
	m.ClothBand = r.figure(b, "cloth_band", bands)
	m.ScaleBand = r.figure(b, "scale_band", bands)
	m.WeightG, m.DryG = geometry.Snap(m.WeightG), geometry.Snap(m.DryG)
	m.ThicknessMM, m.ThinnestMM, m.ThickestMM = geometry.Snap(m.ThicknessMM), geometry.Snap(m.ThinnestMM), geometry.Snap(m.ThickestMM)
	r.job.Measured = &m
}

// pieceArea reads an area, or the width and height of a rectangle.
func (r *reading) pieceArea(b block, what string) float64 {
	switch r.atMostOne(b, "area", "size") {
	case "area":
		if n := b.value("area"); n != nil {
			v, _ := r.measured(n, "area", areas)
			return geometry.Snap(v)
		}
	case "size":
		if n := b.value("size"); n != nil {
			if s, ok := r.size(n, "size"); ok {
				return geometry.Snap(float64(s[0] * s[1]))
			}
		}
	default:
		b.need("area", "write area: 0.09 m2, or size: [300, 300], of "+what)
	}
	return 0
}

// readings reads a thickness, or several: then their mean, least and greatest.
func (r *reading) readings(n *yaml.Node, m *laminate.Measured) {
	panels := limits{0.1, 500}
	if n.Kind != yaml.SequenceNode {
		m.ThicknessMM, _ = r.lengthIn(n, "thickness", panels)
		return
	}
	items, ok := r.list(n, "thickness", "[5.8, 5.9, 6.0]")
	if !ok {
		return
	}
	sum := 0.0
	for i, item := range items {
		mm, ok := r.lengthIn(item, "thickness", panels)
		if !ok {
			return
		}
		if sum += mm; i == 0 {
			m.ThinnestMM, m.ThickestMM = mm, mm
		}
		m.ThinnestMM, m.ThickestMM = min(m.ThinnestMM, mm), max(m.ThickestMM, mm)
	}
	m.ThicknessMM = sum / float64(len(items))
	if m.ThickestMM > 1.5*m.ThinnestMM {
		r.refuse(n, "thickness", "check the list; a comma is no decimal point", "the readings run from %s to %s", length.MM(m.ThinnestMM), length.MM(m.ThickestMM))
	}
}
