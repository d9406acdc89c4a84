package curve

import (
	"math"

	"github.com/paulmach/orb"
)

// DefaultChord is the chord error in mm that drawings are read with when
// nothing else is stated: well below what can be cut by hand.
const DefaultChord = 0.05

// maxSteps bounds the points of one curve, so that a hostile file cannot ask
// for more memory than there is; reached only by an arc of 360° whose radius is
// over two thousand million times the chord error.
const maxSteps = 100000

// turnSteps gives the number of equal steps that keep an arc of the given
// radius and sweep (radians) within the chord error, and no step longer than
// 30°, so that a small circle still looks like one. The sagitta of a step of
// angle d is r(1 - cos(d/2)).
func turnSteps(radius, sweep, chord float64) int {
	step := math.Pi / 6
	if x := chord / radius; x < 1 {
		step = math.Min(step, 4*math.Asin(math.Sqrt(x/2)))
	}
	return bounded(math.Abs(sweep) / step)
}

// bendSteps gives the number of equal steps in the parameter that keep a curve
// whose second derivative is nowhere longer than bend within the chord error:
// a step h strays by at most bend·h²/8 (the error of linear interpolation).
func bendSteps(bend, chord float64) int {
	return bounded(math.Sqrt(bend / (8 * chord)))
}

func bounded(n float64) int {
	if !(n > 1) {
		return 1
	}
	return int(math.Min(math.Ceil(n-1e-9), maxSteps))
}

func positive(chord float64) float64 {
	if chord > 0 && !math.IsInf(chord, 1) {
		return chord
	}
	return DefaultChord
}

// finite says whether every number is one, and so small that sums and squares
// of them are finite too.
func finite(vs ...float64) bool {
	for _, v := range vs {
		if !(math.Abs(v) < 1e150) {
			return false
		}
	}
	return true
}

func finitePoints(ps ...orb.Point) bool {
	for _, p := range ps {
		if !finite(p[0], p[1]) {
			return false
		}
	}
	return true
}

func distance(a, b orb.Point) float64 { return math.Hypot(a[0]-b[0], a[1]-b[1]) }
