package theory

import (
	"fmt"
	"math"

	"stripwright/geometry"
	"stripwright/laminate"
)

// Layer is one layer of a laminate: fibre along AngleDeg; or Crossed, in several
// directions at one height; or Random, in all directions. A Core has a thickness
// and, beside its skins, no stiffness.
type Layer struct {
	AngleDeg    float64
	ThicknessMM float64
	Elastic     laminate.Elastic // with all fibre along direction 1
	Crossed     []Direction      // woven: in place of AngleDeg
	Random      bool             // mat
	Core        bool
}

// Direction is a part of a layer's fibre, 0…1, that lies along one angle.
type Direction struct {
	AngleDeg float64
	Part     float64
}

// Woven gives the directions of a weave with as much fibre along the roll, at an
// angle in degrees, as across it.
func Woven(deg float64) []Direction { return []Direction{{deg, 0.5}, {deg + 90, 0.5}} }

// Fault says why the constants are those of no material, or "".
func Fault(e laminate.Elastic) string {
	for _, v := range []float64{e.E1, e.E2, e.G12, e.Nu12, e.Alpha1, e.Alpha2} {
		if math.IsNaN(v) || math.Abs(v) > 1e6 {
			return fmt.Sprintf("%v is out of reason", v)
		}
	}
	switch {
	case e.E1 <= 0 || e.E2 <= 0 || e.G12 <= 0:
		return fmt.Sprintf("moduli must be above 0 GPa: E1 %v, E2 %v, G12 %v", e.E1, e.E2, e.G12)
	case float64(e.Nu12*e.Nu12)*e.E2 >= e.E1:
		return fmt.Sprintf("nu12 %v is too great for E1 %v and E2 %v GPa: its square must be below E1/E2", e.Nu12, e.E1, e.E2)
	}
	return ""
}

// Reduced gives Q, the stiffness of a layer in plane stress along and across its
// fibre, in GPa.
func Reduced(e laminate.Elastic) Mat {
	nu21 := e.Nu12 * e.E2 / e.E1
	f := 1 - float64(e.Nu12*nu21)
	return Mat{
		{e.E1 / f, e.Nu12 * e.E2 / f, 0},
		{e.Nu12 * e.E2 / f, e.E2 / f, 0},
		{0, 0, e.G12},
	}
}

// Turned gives a stiffness in GPa for fibre turned by an angle,
// counter-clockwise.
func Turned(q Mat, deg float64) Mat {
	s, c := geometry.NewAngle(deg).SinCos()
	c2, s2, sc := float64(c*c), float64(s*s), float64(s*c)
	c4, s4, s2c2 := float64(c2*c2), float64(s2*s2), float64(s2*c2)
	q11, q12, q22, q66 := q[0][0], q[0][1], q[1][1], q[2][2]
	cross := q12 + float64(2*q66)
	a, b := q11-q12-float64(2*q66), q12-q22+float64(2*q66)
	r11 := float64(q11*c4) + float64(2*cross*s2c2) + float64(q22*s4)
	r22 := float64(q11*s4) + float64(2*cross*s2c2) + float64(q22*c4)
	r12 := float64((q11+q22-float64(4*q66))*s2c2) + float64(q12*(s4+c4))
	r66 := float64((q11+q22-float64(2*q12)-float64(2*q66))*s2c2) + float64(q66*(s4+c4))
	r16 := float64(a*c2*sc) + float64(b*s2*sc)
	r26 := float64(a*s2*sc) + float64(b*c2*sc)
	return Mat{{r11, r12, r16}, {r12, r22, r26}, {r16, r26, r66}}
}

// turnedExpansion gives the free expansion of a layer in 1e-6/K, in the frame of
// the laminate.
func turnedExpansion(e laminate.Elastic, deg float64) Vec {
	s, c := geometry.NewAngle(deg).SinCos()
	c2, s2, sc := float64(c*c), float64(s*s), float64(s*c)
	return Vec{
		float64(e.Alpha1*c2) + float64(e.Alpha2*s2),
		float64(e.Alpha1*s2) + float64(e.Alpha2*c2),
		2 * float64((e.Alpha1-e.Alpha2)*sc),
	}
}

// stiffness gives a layer's stiffness in GPa and the stress in 1e-6 GPa/K by
// which it would expand, both in the frame of the laminate.
func (l Layer) stiffness() (q Mat, heat Vec) {
	if l.Random {
		return inAllDirections(l.Elastic)
	}
	lies := l.Crossed
	if len(lies) == 0 {
		lies = []Direction{{l.AngleDeg, 1}}
	}
	for _, d := range lies {
		turned := Turned(Reduced(l.Elastic), d.AngleDeg)
		q = q.plus(turned, d.Part)
		heat = heat.plus(turned.Times(turnedExpansion(l.Elastic, d.AngleDeg)), d.Part)
	}
	return q, heat
}

// fault says what is wrong with a layer, or "".
func (l Layer) fault() string {
	if !(l.ThicknessMM > 0) || l.ThicknessMM > 1e4 {
		return fmt.Sprintf("a thickness of %v mm is out of reason", l.ThicknessMM)
	}
	if l.Core {
		return ""
	}
	all := 0.0
	for _, d := range append([]Direction{{l.AngleDeg, 0}}, l.Crossed...) {
		all += d.Part
		switch {
		case math.IsNaN(d.AngleDeg) || math.IsInf(d.AngleDeg, 0):
			return "a direction of its fibre is no angle"
		case !(d.Part >= 0) || math.IsInf(d.Part, 1):
			return fmt.Sprintf("the part of its fibre at %v° is out of reason", d.AngleDeg)
		}
	}
	if len(l.Crossed) > 0 && math.Abs(all-1) > 1e-9 {
		return fmt.Sprintf("the parts of its fibre add up to %v, not to 1", all)
	}
	return Fault(l.Elastic)
}

// inAllDirections gives the mean over all angles: of the stiffness, by the
// invariants of Tsai and Pagano (1968), and of the thermal stress.
func inAllDirections(e laminate.Elastic) (Mat, Vec) {
	q := Reduced(e)
	q11, q12, q22, q66 := q[0][0], q[0][1], q[1][1], q[2][2]
	u1 := float64((float64(3*q11) + float64(3*q22) + float64(2*q12) + float64(4*q66)) / 8)
	u4 := float64((q11 + q22 + float64(6*q12) - float64(4*q66)) / 8)
	heat := (float64((q11+q12)*e.Alpha1) + float64((q12+q22)*e.Alpha2)) / 2
	return Mat{{u1, u4, 0}, {u4, u1, 0}, {0, 0, (u1 - u4) / 2}}, Vec{heat, heat, 0}
}
