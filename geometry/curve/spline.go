package curve

import (
	"errors"
	"math"

	"github.com/paulmach/orb"
)

// Spline is a B-spline curve, rational when it has weights: the curve of
// Degree over Knots with Control points, as in Piegl and Tiller, The NURBS
// Book, 2nd ed. 1997, chapters 3 and 4 (from memory). It runs from
// Knots[Degree] to Knots[len(Control)].
type Spline struct {
	Degree  int
	Knots   []float64 // len(Control) + Degree + 1, none less than the one before
	Control []orb.Point
	Weights []float64 // as many as Control and positive, or none
}

// maxDegree bounds the degree; drawings have 2, 3 or 5.
const maxDegree = 24

// Valid says what is wrong with the spline, nil if nothing is.
func (s Spline) Valid() error {
	n, p := len(s.Control), s.Degree
	switch {
	case p < 1 || p > maxDegree:
		return errors.New("its degree is not 1 to 24")
	case n < p+1:
		return errors.New("it has too few control points")
	case len(s.Knots) != n+p+1:
		return errors.New("the numbers of knots and control points do not fit")
	case len(s.Weights) != 0 && len(s.Weights) != n:
		return errors.New("the numbers of weights and control points do not fit")
	case !finitePoints(s.Control...) || !finite(s.Knots...) || !finite(s.Weights...):
		return errors.New("a number is not finite")
	}
	for _, w := range s.Weights {
		if !(w > 1e-9 && w < 1e9) {
			return errors.New("a weight is not positive")
		}
	}
	for i := range s.Knots[1:] {
		if s.Knots[i+1] < s.Knots[i] {
			return errors.New("its knots run backwards")
		}
	}
	if !(s.Knots[p] < s.Knots[n]) {
		return errors.New("its knots leave no curve")
	}
	return nil
}

// Points gives points on the spline; nil if it is not Valid. Each piece between
// two knots is brought into Bézier form, and that is halved until its control
// points, between which the curve lies, are within the chord error.
func (s Spline) Points(chord float64) []orb.Point {
	if s.Valid() != nil {
		return nil
	}
	chord = positive(chord)
	n, p := len(s.Control), s.Degree
	var out []orb.Point
	for k := p; k < n; k++ {
		if s.Knots[k] == s.Knots[k+1] {
			continue
		}
		bezier := s.bezier(k)
		if len(out) == 0 {
			out = append(out, bezier[0].flat())
		}
		out = halve(bezier, chord, 16, out)
	}
	return out
}

// weighted is a control point times its weight, with the weight.
type weighted [3]float64

func (w weighted) flat() orb.Point { return orb.Point{w[0] / w[2], w[1] / w[2]} }

func mix(t float64, a, b weighted) (m weighted) {
	for i := range m {
		m[i] = float64((1-t)*a[i]) + float64(t*b[i])
	}
	return m
}

func (s Spline) weighted(i int) weighted {
	w := 1.0
	if len(s.Weights) > 0 {
		w = s.Weights[i]
	}
	return weighted{s.Control[i][0] * w, s.Control[i][1] * w, w}
}

// bezier gives the Bézier control points of the piece between knots k and k+1:
// the j-th is the blossom of the piece with j arguments at its end and the
// others at its beginning.
func (s Spline) bezier(k int) []weighted {
	p := s.Degree
	out := make([]weighted, p+1)
	args := make([]float64, p)
	for j := range out {
		for i := range args {
			args[i] = s.Knots[k]
			if i < j {
				args[i] = s.Knots[k+1]
			}
		}
		out[j] = s.blossom(k, args)
	}
	return out
}

// blossom runs de Boor's triangle for the piece after knot k with one argument
// a row.
func (s Spline) blossom(k int, args []float64) weighted {
	p := s.Degree
	d := make([]weighted, p+1)
	for j := range d {
		d[j] = s.weighted(k - p + j)
	}
	for r := 1; r <= p; r++ {
		for j := p; j >= r; j-- {
			from, to := s.Knots[k-p+j], s.Knots[k+1+j-r]
			d[j] = mix((args[r-1]-from)/(to-from), d[j-1], d[j])
		}
	}
	return d[p]
}

// halve appends the points after the first of a Bézier piece.
func halve(b []weighted, chord float64, depth int, out []orb.Point) []orb.Point {
	last := len(b) - 1
	if depth == 0 || len(out) >= maxSteps || tight(b, chord) {
		return append(out, b[last].flat())
	}
	left, right := make([]weighted, last+1), make([]weighted, last+1)
	row := append([]weighted{}, b...)
	for i := range b {
		left[i], right[last-i] = row[0], row[last-i]
		for j := 0; j < last-i; j++ {
			row[j] = mix(0.5, row[j], row[j+1])
		}
	}
	return halve(right, chord, depth-1, halve(left, chord, depth-1, out))
}

// tight says whether all control points lie within the chord error of the line
// between the ends; as weights are positive the curve lies between them.
func tight(b []weighted, chord float64) bool {
	from, to := b[0].flat(), b[len(b)-1].flat()
	for _, w := range b[1 : len(b)-1] {
		if offLine(w.flat(), from, to) > chord {
			return false
		}
	}
	return true
}

// offLine gives the distance of p from the piece from a to b.
func offLine(p, a, b orb.Point) float64 {
	dx, dy := b[0]-a[0], b[1]-a[1]
	t := 0.0
	if l := float64(dx*dx) + float64(dy*dy); l > 0 {
		t = (float64((p[0]-a[0])*dx) + float64((p[1]-a[1])*dy)) / l
		t = math.Max(0, math.Min(1, t))
	}
	return math.Hypot(a[0]+float64(t*dx)-p[0], a[1]+float64(t*dy)-p[1])
}
