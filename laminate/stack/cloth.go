package stack

import (
	"fmt"
	"strings"

	"stripwright/geometry"
	"stripwright/laminate"
)

// Cloth is a fabric as it lies in a stack.
type Cloth struct {
	Name   string
	Fibre  string
	Form   string // as stated, or taken from its layers
	GSM    float64
	Lies   []laminate.Layer // its layers with their weights, from the face to the back; none for mat
	Hand   bool             // the same cloth of the other hand: its angles change sign
	PerGSM float64          // mm of thickness for each g/m²
}

// clothOf reads a fabric of a plan. The layers of a fabric share its weight
// where theirs is not stated; perGSM is its thickness for each g/m² of fibre.
func clothOf(f laminate.PlanFabric, perGSM float64) Cloth {
	c := Cloth{Name: f.Name, Fibre: strings.ToLower(f.Fibre), Form: formOf(f), GSM: f.WeightGSM, PerGSM: perGSM}
	switch {
	case c.Form == laminate.Mat:
		return c
	case len(f.Layers) > 0:
		c.Lies = append(c.Lies, f.Layers...)
	case c.Form == laminate.Woven:
		c.Lies = []laminate.Layer{{AngleDeg: 0}, {AngleDeg: 90}}
	default:
		c.Lies = []laminate.Layer{{AngleDeg: 0}}
	}
	for i := range c.Lies {
		if c.Lies[i].WeightGSM == 0 {
			c.Lies[i].WeightGSM = f.WeightGSM / float64(len(c.Lies))
		}
	}
	return c
}

// formOf gives the form of a fabric, from the number of its layers where it is
// not stated.
func formOf(f laminate.PlanFabric) string {
	if f.Form != "" {
		return f.Form
	}
	switch len(f.Layers) {
	case 0, 1:
		return laminate.Unidirectional
	case 2:
		return laminate.Biaxial
	case 3:
		return laminate.Triaxial
	}
	return laminate.Quadraxial
}

// otherHand gives the cloth with its angles of the other sign.
func (c Cloth) otherHand() Cloth {
	c.Lies = append([]laminate.Layer{}, c.Lies...)
	for i := range c.Lies {
		c.Lies[i].AngleDeg = geometry.NewAngle(-c.Lies[i].AngleDeg).Degrees()
	}
	c.Hand = !c.Hand
	return c
}

// layers gives the layers of a ply of the cloth from the tool up, without
// heights.
func (c Cloth) layers(theta geometry.Angle, down bool) []Layer {
	whole := Layer{Fabric: c.Name, Fibre: c.Fibre, GSM: c.GSM, ThicknessMM: float64(c.GSM * c.PerGSM)}
	switch c.Form {
	case laminate.Mat:
		whole.Kind = Random
		return []Layer{whole}
	case laminate.Woven:
		whole.Kind = Crossed
		for _, l := range c.Lies {
			whole.Lies = append(whole.Lies, laid(l, theta, down))
		}
		return []Layer{whole}
	}
	sum := 0.0
	for _, l := range c.Lies {
		sum += l.WeightGSM
	}
	out := make([]Layer, len(c.Lies))
	for i := range c.Lies {
		of := len(c.Lies) - 1 - i // face up: the last lies on the tool
		if down {
			of = i
		}
		l := whole
		l.GSM = c.Lies[of].WeightGSM
		l.ThicknessMM *= quotient(l.GSM, sum) // stitching yarn fills its share of each
		l.Lies = []Direction{laid(c.Lies[of], theta, down)}
		if len(c.Lies) > 1 {
			l.Of = of + 1
		}
		out[i] = l
	}
	return out
}

// laid gives the direction in the part of a layer of a ply at theta.
func laid(l laminate.Layer, theta geometry.Angle, down bool) Direction {
	alpha := l.AngleDeg
	if down {
		alpha = -alpha
	}
	return Direction{Angle: geometry.NewAngle(tidy(theta.Degrees() + alpha)), GSM: l.WeightGSM}
}

// describe names the layers of a cloth: "triaxial 0, 45, -45 from face to back".
func (c Cloth) describe() string {
	switch {
	case c.Form == laminate.Mat || c.Form == laminate.Woven || len(c.Lies) == 1:
		return c.Form
	}
	var angles []string
	for _, l := range c.Lies {
		angles = append(angles, degrees(l.AngleDeg))
	}
	return fmt.Sprintf("%s, %s from face to back", c.Form, strings.Join(angles, ", "))
}
