package material

import (
	"slices"
	"strings"

	"stripwright/laminate"
)

// Library holds kinds of fibre and of resin, and what share of a laminate is
// usually fibre. It is a value: With gives another one.
type Library struct {
	fibres   []laminate.FibreKind
	resins   []laminate.ResinKind
	contents []content
}

// content is the usual share of fibre of cloth of one fibre, or of mat.
type content struct {
	name   string
	figure laminate.Figure
	low    float64
	high   float64
}

// Fibre finds a kind of fibre by its name, in capitals or not.
func (l Library) Fibre(name string) (laminate.FibreKind, bool) {
	i := slices.IndexFunc(l.fibres, func(f laminate.FibreKind) bool { return strings.EqualFold(f.Name, name) })
	if i < 0 {
		return laminate.FibreKind{}, false
	}
	return l.fibres[i], true
}

// Resin finds a kind of resin by its name, in capitals or not.
func (l Library) Resin(name string) (laminate.ResinKind, bool) {
	i := slices.IndexFunc(l.resins, func(r laminate.ResinKind) bool { return strings.EqualFold(r.Name, name) })
	if i < 0 {
		return laminate.ResinKind{}, false
	}
	return l.resins[i], true
}

// FibreNames lists the kinds of fibre, the library's first.
func (l Library) FibreNames() []string {
	var names []string
	for _, f := range l.fibres {
		names = append(names, f.Name)
	}
	return names
}

// ResinNames lists the kinds of resin, the library's first.
func (l Library) ResinNames() []string {
	var names []string
	for _, r := range l.resins {
		names = append(names, r.Name)
	}
	return names
}

// FibreVolume gives the usual share of fibre by volume (0…1) of a laminate of
// cloth of that form and fibre, the middle of the span from low to high;
// unknown for a fibre that the library does not know. Mat counts as mat whatever
// its fibre.
func (l Library) FibreVolume(form, fibre string) (f laminate.Figure, low, high float64) {
	name := fibre
	if form == laminate.Mat {
		name = laminate.Mat
	}
	for _, c := range l.contents {
		if strings.EqualFold(c.name, name) {
			return c.figure, c.low, c.high
		}
	}
	return laminate.Figure{}, 0, 0
}

// With gives the library with a job's own kinds: one of a new name joins it, of
// a known name each stated figure takes the place of the library's.
func (l Library) With(fibres []laminate.FibreKind, resins []laminate.ResinKind) Library {
	l.fibres, l.resins = slices.Clone(l.fibres), slices.Clone(l.resins)
	for _, own := range fibres {
		i := slices.IndexFunc(l.fibres, func(f laminate.FibreKind) bool { return strings.EqualFold(f.Name, own.Name) })
		if i < 0 {
			l.fibres = append(l.fibres, own)
			continue
		}
		replace(fibreFigures(&l.fibres[i]), fibreFigures(&own))
	}
	for _, own := range resins {
		i := slices.IndexFunc(l.resins, func(r laminate.ResinKind) bool { return strings.EqualFold(r.Name, own.Name) })
		if i < 0 {
			l.resins = append(l.resins, own)
			continue
		}
		replace(resinFigures(&l.resins[i]), resinFigures(&own))
	}
	return l
}

// named is a figure of a kind with what library.csv calls it.
type named struct {
	name   string
	figure *laminate.Figure
}

func fibreFigures(f *laminate.FibreKind) []named {
	return []named{
		{"density", &f.DensityGCM3},
		{"e1", &f.E1},
		{"e2", &f.E2},
		{"g12", &f.G12},
		{"nu12", &f.Nu12},
		{"alpha1", &f.Alpha1},
		{"alpha2", &f.Alpha2},
	}
}

func resinFigures(r *laminate.ResinKind) []named {
	return []named{{"density", &r.DensityGCM3}, {"e", &r.E}, {"nu", &r.Nu}, {"alpha", &r.Alpha}}
}

// replace puts the known figures of own over those of kind.
func replace(kind, own []named) {
	for i := range kind {
		if own[i].figure.Known() {
			*kind[i].figure = *own[i].figure
		}
	}
}

// MissingOfFibre names the figures of a fibre that its plies' stiffness needs
// and nobody stated.
func MissingOfFibre(f laminate.FibreKind) []string { return unknown(fibreFigures(&f)[1:]) }

// MissingOfResin does the same for a resin.
func MissingOfResin(r laminate.ResinKind) []string { return unknown(resinFigures(&r)[1:]) }

func unknown(figures []named) []string {
	var names []string
	for _, n := range figures {
		if !n.figure.Known() {
			names = append(names, n.name)
		}
	}
	return names
}
