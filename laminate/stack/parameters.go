package stack

import (
	"math"

	"stripwright/geometry"
)

// Parameters are the four lamination parameters of one kind: the means of cos
// 2θ, sin 2θ, cos 4θ and sin 4θ over the thickness, each fibre layer weighted by
// its thickness.
type Parameters [4]float64

// Moments are the lamination parameters of a stack.
//
//	A  plain:                      ∫ f dz / ∫ dz
//	B  times the height:           ∫ f z dz / ∫ |z| dz
//	D  times its square:           ∫ f z² dz / ∫ z² dz
//
// The integrals run over fibre, not over cores; without a core they are the
// usual ones, with 1/h, 4/h² and 12/h³ before them (Tsai and Pagano 1968).
type Moments struct{ A, B, D Parameters }

// sums are the integrals of 1, cos 2θ, sin 2θ, cos 4θ, sin 4θ.
type sums [5]float64

func (s *sums) add(f sums, weight float64) {
	for i := range s {
		s[i] += float64(f[i] * weight)
	}
}

// norm is the length of the sum of fibres' stiffness where fibre alone carries:
// a fibre at θ is the square of (cos²θ, sin²θ, √2 sinθ cosθ), two of them have
// the product cos⁴ of the angle between, and
//
//	cos⁴ φ = 3/8 + cos 2φ / 2 + cos 4φ / 8
func (s sums) norm() float64 {
	two := float64(s[1]*s[1]) + float64(s[2]*s[2])
	four := float64(s[3]*s[3]) + float64(s[4]*s[4])
	return math.Sqrt(float64(0.375*s[0]*s[0]) + float64(two/2) + float64(four/8))
}

// parameters divides by the weight of all fibre.
func (s sums) parameters(weight float64) Parameters {
	if weight == 0 {
		return Parameters{}
	}
	var p Parameters
	for i := range p {
		p[i] = math.Round(s[i+1]/weight*1e12)/1e12 + 0 // no rounding of zeros in print
	}
	return p
}

// turning gives 1 and the four functions of a layer; mat has no direction.
func (l Layer) turning() sums {
	f := sums{1}
	all := 0.0
	for _, d := range l.Lies {
		all += d.GSM
	}
	for _, d := range l.Lies {
		s2, c2 := sinCos(2 * d.Angle.Degrees())
		s4, c4 := sinCos(4 * d.Angle.Degrees())
		f.add(sums{0, c2, s2, c4, s4}, quotient(d.GSM, all))
	}
	return f
}

// sinCos is exact at multiples of 90°.
func sinCos(deg float64) (sin, cos float64) {
	deg = math.Mod(deg, 360)
	flip := 1.0
	if deg < 0 {
		deg += 360
	}
	if deg >= 180 {
		deg, flip = deg-180, -1
	}
	s, c := geometry.NewAngle(deg).SinCos()
	if deg > 90 {
		s, c = -s, -c // NewAngle took 180° off
	}
	return flip * s, flip * c
}

// moments integrates over the thickness and gives ‖B‖/√(‖A‖·‖D‖).
func moments(layers []Layer) (m Moments, coupling float64) {
	var a, b, d sums
	var plain, lever, square float64
	for _, l := range layers {
		if l.Kind == CoreKind {
			continue
		}
		t, mid := l.ThicknessMM, (l.LowMM+l.HighMM)/2
		second := float64(t*mid*mid) + float64(t*t*t)/12
		f := l.turning()
		a.add(f, t)
		b.add(f, float64(t*mid))
		d.add(f, second)
		plain, square = plain+t, square+second
		lever += arm(l.LowMM, l.HighMM)
	}
	m = Moments{a.parameters(plain), b.parameters(lever), d.parameters(square)}
	if plain > 0 && square > 0 {
		coupling = b.norm() / math.Sqrt(a.norm()*d.norm())
	}
	return m, coupling
}

// arm is ∫ |z| dz from low to high.
func arm(low, high float64) float64 {
	if low < 0 && high > 0 {
		return (float64(low*low) + float64(high*high)) / 2
	}
	return math.Abs(float64(high*high)-float64(low*low)) / 2
}

// fromQuasi gives how far parameters are from those of a quasi-isotropic stack:
// 0 for one, 1 where all fibre lies in one direction, 0.71 for [0/90].
func (p Parameters) fromQuasi() float64 {
	sum := 0.0
	for _, v := range p {
		sum += float64(v * v)
	}
	return math.Sqrt(sum / 2)
}
