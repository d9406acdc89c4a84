package stack

import (
	"math"
	"slices"

	"stripwright/geometry"
)

// Still is the coupling below which a stack does not couple: what rounding
// leaves of 0.
const Still = 1e-9

// Near is the coupling below which a stack that is no mirror is called close to
// symmetric: a tenth of that of two equal layers at right angles, √3/2.
const Near = 0.0866

// Grouped is the most equal layers that should lie on each other (common
// practice, no source).
const Grouped = 4

// Judgement is what a stack is.
type Judgement struct {
	Layers   []Layer
	Mirror   bool
	Odd      []Opposite // pairs of layers that are no mirror of each other
	Balanced bool
	Leaning  []Lean // what is out of balance
	Shares   []Share
	Random   float64 // share of fibre without direction
	Moments  Moments

	// Coupling is ‖B‖/√(‖A‖·‖D‖) where fibre alone carries: 0 for a mirror, at
	// most 1, 0.87 for two equal layers at right angles. It depends neither on
	// the thickness nor on the zero of the angles. With the integrals X0 of 1
	// and X1…X4 of cos 2θ, sin 2θ, cos 4θ, sin 4θ
	//
	//	‖X‖² = 3/8 X0² + (X1² + X2²)/2 + (X3² + X4²)/8
	Coupling float64

	// Alike: all layers are of one fibre in the same amount of resin. Only then
	// does a coupling of 0 in a stack that is no mirror tell that B is 0.
	Alike  bool
	Groups []Group // more than four equal layers on each other
}

// Opposite is a pair of layers at the same distance from the middle, by index,
// counted from both faces.
type Opposite struct{ Low, High int }

// Lean is fibre of one kind at θ and -θ in unequal amounts.
type Lean struct {
	Fibre       string
	Angle       float64 // θ, above 0 and below 90
	Plus, Minus float64 // g/m²
}

// Share is the part of all fibre, by weight, that lies in one direction.
type Share struct {
	Angle geometry.Angle
	GSM   float64
	Part  float64 // 0…1
}

// Group is a run of equal straight layers, by index, both ends included.
type Group struct{ From, To int }

// Judge tells what a stack of plies is.
func Judge(plies []Ply) Judgement {
	j := Judgement{Layers: Layers(plies)}
	ids := make([]string, len(j.Layers))
	for i, l := range j.Layers {
		ids[i] = l.identity()
	}
	for i := 0; i < len(ids)/2; i++ {
		if ids[i] != ids[len(ids)-1-i] {
			j.Odd = append(j.Odd, Opposite{i, len(ids) - 1 - i})
		}
	}
	j.Mirror = len(j.Odd) == 0
	j.Leaning = leaning(j.Layers)
	j.Balanced = len(j.Leaning) == 0
	j.Shares, j.Random = shares(j.Layers)
	j.Moments, j.Coupling = moments(j.Layers)
	if j.Mirror {
		j.Coupling, j.Moments.B = 0, Parameters{}
	}
	j.Alike = alike(j.Layers)
	j.Groups = groups(j.Layers)
	return j
}

// Couples says whether the stack bends when it is pulled, as far as fibre alone
// tells.
func (j Judgement) Couples() bool { return j.Coupling > Still }

// shares adds up the fibre by direction, 0° first, then by rising size of the
// angle, + before -.
func shares(layers []Layer) (out []Share, random float64) {
	all, none := 0.0, 0.0
	for _, l := range layers {
		if l.Kind == Random {
			all, none = all+l.GSM, none+l.GSM
		}
		for _, d := range l.Lies {
			all += d.GSM
			i := slices.IndexFunc(out, func(s Share) bool { return same(s.Angle, d.Angle) })
			if i < 0 {
				out = append(out, Share{Angle: d.Angle})
				i = len(out) - 1
			}
			out[i].GSM += d.GSM
		}
	}
	for i := range out {
		out[i].Part = quotient(out[i].GSM, all)
	}
	slices.SortFunc(out, func(a, b Share) int {
		if d := math.Abs(a.Angle.Degrees()) - math.Abs(b.Angle.Degrees()); d != 0 {
			return int(math.Copysign(1, d))
		}
		return int(math.Copysign(1, b.Angle.Degrees()-a.Angle.Degrees()))
	})
	if all > 0 {
		random = none / all
	}
	return out, random
}

// same compares directions to a millionth of a degree.
func same(a, b geometry.Angle) bool { return a.Between(b) < 1.5e-6 }

// leaning sets fibre at θ against fibre at -θ, kind by kind of fibre.
func leaning(layers []Layer) []Lean {
	var out []Lean
	for _, l := range layers {
		for _, d := range l.Lies {
			a := math.Abs(d.Angle.Degrees())
			if same(geometry.Angle(a), 0) || same(geometry.Angle(a), 90) {
				continue
			}
			i := slices.IndexFunc(out, func(o Lean) bool { return o.Fibre == l.Fibre && same(geometry.Angle(o.Angle), geometry.Angle(a)) })
			if i < 0 {
				out = append(out, Lean{Fibre: l.Fibre, Angle: a})
				i = len(out) - 1
			}
			if d.Angle > 0 {
				out[i].Plus += d.GSM
			} else {
				out[i].Minus += d.GSM
			}
		}
	}
	return slices.DeleteFunc(out, func(o Lean) bool { return math.Abs(o.Plus-o.Minus) <= 1e-6*(o.Plus+o.Minus) })
}

// alike says whether all fibre is of one kind, as thick for its weight.
func alike(layers []Layer) bool {
	first := -1
	for i, l := range layers {
		if l.Kind == CoreKind {
			continue
		}
		if first < 0 {
			first = i
		}
		f := layers[first]
		if l.Fibre != f.Fibre || math.Abs(float64(l.ThicknessMM*f.GSM)-float64(f.ThicknessMM*l.GSM)) > 1e-6*l.ThicknessMM*f.GSM {
			return false
		}
	}
	return true
}

// groups finds more than four equal straight layers on each other.
func groups(layers []Layer) []Group {
	var out []Group
	for i := 0; i < len(layers); {
		k := i + 1
		for k < len(layers) && layers[i].Kind == Straight && layers[k].Kind == Straight && same(layers[i].Angle(), layers[k].Angle()) {
			k++
		}
		if k-i > Grouped {
			out = append(out, Group{i, k - 1})
		}
		i = k
	}
	return out
}
