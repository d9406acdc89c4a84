package check

import (
	"math"
	"slices"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

// leastLength works the bound on the length of roll out again where that is
// cheap: by the chords of the plies along the roll. For the others it holds the
// length to the area that is said to be lost.
func (m *costing) leastLength() {
	p := m.c.Proof
	switch p.Bound {
	case "area":
		if p.LengthMM != 0 || p.WasteMM2 != 0 || p.Steps != 0 {
			m.fault(1, "the area bound has a length, a loss or steps, which are of other bounds")
		}
		return
	case "chord":
		m.chords()
	case "roll ends":
		m.rollEnds()
	case "interlock", "openings", "across", "strips", "straight ends":
		if width := m.widest(); width > 0 {
			if most := (p.AreaMM2+p.WasteMM2)/width + cent; p.LengthMM > most {
				m.fault(p.LengthMM-most, "a bound of %s of roll needs more than the %.1f mm² of blanks and %.1f mm² lost", mm(p.LengthMM), p.AreaMM2, p.WasteMM2)
			}
		}
	default:
		m.fault(1, "the bound %q is none of area, chord, roll ends, interlock, openings, across, strips, straight ends", p.Bound)
	}
	each := m.cheapest()
	if want := float64(p.LengthMM * each); math.Abs(want-m.c.Bound) > cent+float64(1e-6*want) {
		m.fault(math.Abs(want-m.c.Bound), "the bound is %s for %s of roll, not %s", num(want), mm(p.LengthMM), num(m.c.Bound))
	}
}

// cheapest gives what a mm of roll costs at least: the widest roll's share of
// what a mm² costs.
func (m *costing) cheapest() float64 {
	if m.c.Measure != laminate.ByPrice {
		return 1
	}
	return float64(m.c.Proof.PerMM2 * m.widest())
}

func (m *costing) widest() float64 {
	widest := 0.0
	for _, r := range m.rolls {
		widest = math.Max(widest, r.UsableWidthMM)
	}
	return widest
}

// chords shows that a hair less than the bound is too short: the chords of all
// plies, each weighed by the dual feasible function of so many steps, would need
// more than the roll's width. A chord is never cut, so at every level of the
// roll the weights add up to one at most. Each chord has the cutting gap behind
// it, which may lie beyond the roll's end; no steps: each weighs what it is long.
func (m *costing) chords() {
	gap := m.gap
	if m.c.Measure == laminate.ByLastCut { // none between two rolls
		gap = 0
	}
	steps, length := m.c.Proof.Steps, m.c.Proof.LengthMM-0.002+gap
	if steps < 0 || steps == 0 && gap == 0 || steps > 1000 || m.c.Proof.LengthMM <= 0 {
		m.fault(1, "the bound by chords has %d steps and a length of %s", steps, mm(m.c.Proof.LengthMM))
		return
	}
	sum := 0.0
	for _, y := range m.plies {
		for _, c := range chordsOf(y.Blank, y.AngleDeg, gap) {
			sum += float64(c.high * meanWeight(c.from, c.to, length, float64(steps)))
		}
	}
	if width := m.widest(); sum < width-cent {
		m.fault(width-sum, "by chords a roll of %s is not too short: they take %s of the %s width", mm(length), mm(sum), mm(width))
	}
}

// chord is what runs along the roll from edge to edge of a blank, with the gap
// behind it, over a height in which it changes evenly, in mm.
type chord struct{ from, to, high float64 }

// chordsOf lists the chords of a blank over its extent across the roll, between the
// heights of its vertices. Where two lie on one level neither counts the gap: they
// may be of one piece.
func chordsOf(blank geometry.Region, angle, gap float64) []chord {
	frame := geometry.PlyFrame(geometry.Angle(angle))
	var edges [][2]orb.Point
	var heights []float64
	for _, r := range blank.Rings() {
		for i := range r {
			p, q := frame.Apply(r[i]), frame.Apply(r[(i+1)%len(r)])
			heights = append(heights, p[1])
			edges = append(edges, [2]orb.Point{p, q})
		}
	}
	slices.Sort(heights)
	var out []chord
	for i := 0; i+1 < len(heights); i++ {
		lo, hi := heights[i], heights[i+1]
		if hi-lo < 1e-9 {
			continue
		}
		from, to := chordsAt(edges, lo, hi, 0), chordsAt(edges, lo, hi, 1)
		behind := gap
		if len(from) > 1 {
			behind = 0
		}
		for k := range min(len(from), len(to)) {
			out = append(out, chord{from[k] + behind, to[k] + behind, hi - lo})
		}
	}
	return out
}

// chordsAt gives the chords between two heights without a vertex between them,
// at the lower (t = 0) or the upper (t = 1), from left to right.
func chordsAt(edges [][2]orb.Point, lo, hi, t float64) []float64 {
	type crossing struct{ order, x float64 }
	var at []crossing
	middle := (lo + hi) / 2
	for _, e := range edges {
		p, q := e[0], e[1]
		if p[1] > q[1] {
			p, q = q, p
		}
		if p[1] > middle || q[1] <= middle {
			continue
		}
		x := func(y float64) float64 {
			share := math.Min(1, math.Max(0, (y-p[1])/(q[1]-p[1])))
			return p[0] + float64((q[0]-p[0])*share)
		}
		at = append(at, crossing{x(middle), x(lo + float64(t*(hi-lo)))})
	}
	slices.SortFunc(at, func(a, b crossing) int {
		if a.order < b.order {
			return -1
		}
		return 1
	})
	var out []float64
	for i := 0; i+1 < len(at); i += 2 {
		out = append(out, at[i+1].x-at[i].x)
	}
	return out
}

// meanWeight is the mean of ⌊(m+1)c/L⌋/m over chords c from a to b; the chords
// are taken 2 µm longer than they are, for what rounding may have taken off. With
// no steps it is the mean of c/L.
func meanWeight(a, b, length, m float64) float64 {
	if m == 0 {
		return (float64((a+b)/2) + 0.002) / length
	}
	n := (m + 1) / length
	a, b = float64(n*(math.Min(a, b)+0.002)), float64(n*(math.Max(a, b)+0.002))
	if b-a < 1e-9 {
		return math.Floor(a) / m
	}
	whole := func(z float64) float64 { // ⌊t⌋ from 0 to z
		f := math.Floor(z)
		return float64(f*(f-1)/2) + float64(f*(z-f))
	}
	return (whole(b) - whole(a)) / (b - a) / m
}
