package panel

import "stripwright/laminate/theory"

// Change of temperature, length and least bow of the warning.
const (
	WarpK   = 100.0  // K
	WarpMM  = 1000.0 // length of the panel
	leastMM = 0.05   // below which nobody sees it
)

// Warp is how a free panel bends when it cools by WarpK: how far a length of
// WarpMM stands off a straight edge in the direction in which it bends most, and
// square to it. Cure shrinkage and moisture are not in it.
type Warp struct {
	MostMM   float64
	AlongDeg float64 // direction of MostMM
	SquareMM float64 // square to it
	Opposite bool    // the two bend to opposite sides: a saddle, or one of two cylinders
}

// WarpOf gives the warp of a laminate.
func WarpOf(s theory.Stiffness) Warp {
	_, curve := s.Warp(-WarpK)
	most, least, deg := theory.Principal(curve)
	w := Warp{Opposite: most > 0 && least < 0, AlongDeg: deg}
	a, b := theory.Bow(most, WarpMM), theory.Bow(least, WarpMM)
	if b > a {
		a, b = b, a
		w.AlongDeg += 90
		if w.AlongDeg > 90 {
			w.AlongDeg -= 180
		}
	}
	w.MostMM, w.SquareMM = a, b
	return w
}

// Some says whether the panel warps so that somebody would see it.
func (w Warp) Some() bool { return w.MostMM >= leastMM }
