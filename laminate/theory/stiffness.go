package theory

import (
	"errors"
	"fmt"
	"math"
)

// Stiffness is what a laminate of one thickness does under load and heat. With
// strains ε of the middle and curvatures κ in 1/mm, loads N in N/mm and moments M
// in N:
//
//	N = A·ε + B·κ
//	M = B·ε + D·κ
type Stiffness struct {
	ThicknessMM float64
	A           Mat // N/mm
	B           Mat // N
	D           Mat // N·mm
	HeatN       Vec // load of hindered expansion, N/mm per K
	HeatM       Vec // moment of it, N per K

	inverse six
}

// Of sums the layers, listed from the tool up. No layer, a thickness that is no
// length, or constants of no material are errors, which name the layer by its
// place, 1 first.
func Of(layers []Layer) (Stiffness, error) {
	var s Stiffness
	fibre := false
	for i, l := range layers {
		if why := l.fault(); why != "" {
			return s, fmt.Errorf("layer %d: %s", i+1, why)
		}
		s.ThicknessMM += l.ThicknessMM
		fibre = fibre || !l.Core
	}
	if !fibre {
		return s, errors.New("a laminate needs a layer of fibre")
	}
	s.sum(layers)
	lower, ok := joined(s.A, s.B, s.D).cholesky()
	if !ok {
		return s, errors.New("these layers make no sound laminate: their figures lie too far apart")
	}
	s.inverse = lower.inverse()
	return s, nil
}

// GPa·mm to N/mm, and the 1e-6 of expansion.
const (
	perGPa = 1e3
	perK   = 1e-6
)

// sum adds the layers up from the tool: each by its thickness, its height and
// the square of its height.
func (s *Stiffness) sum(layers []Layer) {
	low := -s.ThicknessMM / 2
	for _, l := range layers {
		high := low + l.ThicknessMM
		t := high - low
		mid := (low + high) / 2
		low = high
		if l.Core {
			continue
		}
		q, heat := l.stiffness()
		s.A = s.A.plus(q, t*perGPa)
		s.B = s.B.plus(q, t*mid*perGPa)
		s.D = s.D.plus(q, (float64(t*mid*mid)+float64(t*t*t/12))*perGPa)
		s.HeatN = s.HeatN.plus(heat, t*perGPa*perK)
		s.HeatM = s.HeatM.plus(heat, t*mid*perGPa*perK)
	}
}

// Coupling tells in one number how much the laminate bends when it is stretched:
// ‖B‖ / √(‖A‖·‖D‖), 0 where it does not; it depends neither on the thickness
// nor on the frame. ‖ ‖ is the root of the sum of squares. Two equal halves, one
// far stiffer than the other, come near √3/2, the most there is for two.
func (s Stiffness) Coupling() float64 {
	return s.B.norm() / math.Sqrt(s.A.norm()*s.D.norm())
}

// Couples says whether the laminate bends when it is stretched or heated, beyond
// what rounding leaves.
func (s Stiffness) Couples() bool { return s.Coupling() > 1e-9 }

// Strain gives middle strains and curvatures (1/mm) of a free panel under loads
// and moments.
func (s Stiffness) Strain(n, m Vec) (middle, curve Vec) {
	load := [6]float64{n[0], n[1], n[2], m[0], m[1], m[2]}
	for i := range 3 {
		for j := range load {
			middle[i] += float64(s.inverse[i][j] * load[j])
			curve[i] += float64(s.inverse[i+3][j] * load[j])
		}
	}
	return middle, curve
}
