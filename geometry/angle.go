package geometry

import "math"

// Angle is the undirected direction of a roll in a part, in degrees in
// (-90, 90], counter-clockwise positive from the part's x axis. 90 and -90, or
// 45 and 225, are the same angle. Make one with NewAngle.
type Angle float64

// NewAngle brings any direction in degrees into (-90, 90].
func NewAngle(deg float64) Angle {
	a := math.Mod(deg, 180)
	switch {
	case a > 90:
		a -= 180
	case a <= -90:
		a += 180
	}
	if a == 0 {
		a = 0 // no minus zero in print
	}
	return Angle(a)
}

// Degrees gives the angle in degrees in (-90, 90].
func (a Angle) Degrees() float64 { return float64(a) }

// Between gives the smaller angle between two directions, in [0, 90] degrees.
func (a Angle) Between(b Angle) float64 {
	d := math.Abs(float64(a) - float64(b))
	return math.Min(d, 180-d)
}

// Oblique says whether the angle is neither 0° nor 90°.
func (a Angle) Oblique() bool { return a != 0 && a != 90 }

// SinCos gives sine and cosine, exact at 0° and 90° and equal at ±45°.
func (a Angle) SinCos() (sin, cos float64) { return sinCosDegrees(float64(a)) }

// sinCosDegrees is exact at multiples of 90° and of equal size at 45°.
func sinCosDegrees(deg float64) (sin, cos float64) {
	deg = math.Mod(deg, 360)
	if deg < 0 {
		deg += 360
	}
	switch deg {
	case 0:
		return 0, 1
	case 90:
		return 1, 0
	case 180:
		return 0, -1
	case 270:
		return -1, 0
	}
	if math.Mod(deg, 90) == 45 {
		h := math.Sqrt2 / 2
		s, c := h, h
		if deg > 180 {
			s = -h
		}
		if deg > 90 && deg < 270 {
			c = -h
		}
		return s, c
	}
	return math.Sincos(deg * math.Pi / 180)
}
