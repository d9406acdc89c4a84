package theory

import "math"

// Expansion gives the expansion of a free panel in 1e-6/K: along x, along y, and
// the shear of the right angle between them.
func (s Stiffness) Expansion() Vec {
	e, _ := s.Strain(s.HeatN, s.HeatM)
	return Vec{}.plus(e, 1/perK)
}

// Warp gives the middle strains and the curvatures in 1/mm that a free panel
// takes on by a change of temperature in K; cooling is below zero. The strain at
// height z is ε + z·κ: with a curvature above zero the upper side is stretched,
// and the middle of the panel stands off the tool.
func (s Stiffness) Warp(dT float64) (middle, curve Vec) {
	return s.Strain(Vec{}.plus(s.HeatN, dT), Vec{}.plus(s.HeatM, dT))
}

// Principal gives the greatest and the least of the curvatures in all
// directions, and the direction of the greatest in degrees from x, in (-90, 90].
// Twist is the curvature xy of the engineering shear strain.
func Principal(curve Vec) (most, least, deg float64) {
	mean, half := float64((curve[0]+curve[1])/2), (curve[0]-curve[1])/2
	r := math.Hypot(half, curve[2]/2)
	deg = math.Atan2(curve[2]/2, half) * 90 / math.Pi
	if deg == -90 {
		deg = 90
	}
	return mean + r, mean - r, deg
}

// Bow gives how far a panel of a length in mm stands off a straight edge laid
// between its ends, in mm, when it is curved by 1/mm; without sign, for slight
// curvature: κ·L²/8.
func Bow(curvature, length float64) float64 {
	return math.Abs(curvature) * length * length / 8
}
