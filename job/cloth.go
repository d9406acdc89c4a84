package job

import (
	"strings"

	"stripwright/laminate"
)

// Layers of stitched cloth by its form.
var layersOf = map[string]int{laminate.Biaxial: 2, laminate.Triaxial: 3, laminate.Quadraxial: 4}

// cloth reads how the fibre of a fabric lies and how much of its plies is fibre.
func (r *reading) cloth(b block, f *laminate.Fabric) {
	r.form(b, f)
	r.fibreShare(b, f)
	if n := b.value("elastic"); n != nil {
		f.Elastic = r.elastic(b)
	}
}

// form reads the form of a fabric, or takes it from its layers.
func (r *reading) form(b block, f *laminate.Fabric) {
	n := b.value("form")
	if n == nil {
		if !b.has("form") {
			r.formOf(b, f)
		}
		return
	}
	form, ok := r.choice(n, "form", laminate.Unidirectional, laminate.Woven, laminate.Biaxial, laminate.Triaxial, laminate.Quadraxial, laminate.Mat)
	if !ok {
		return
	}
	f.Form = form
	layers := len(f.Layers)
	if want := layersOf[form]; layers > 0 && (want > 0 && layers != want || want == 0 && form != laminate.Woven && layers > 1) {
		r.refuse(n, "form", "correct one of them", "%s is %s, and its list of layers has %d", f.Name, form, layers)
	}
}

// formOf takes the form from the number of layers.
func (r *reading) formOf(b block, f *laminate.Fabric) {
	switch len(f.Layers) {
	case 0:
		return
	case 1:
		f.Form = laminate.Unidirectional
	case 2:
		f.Form = laminate.Biaxial
	case 3:
		f.Form = laminate.Triaxial
	case 4:
		f.Form = laminate.Quadraxial
	default:
		return
	}
	words := "layers"
	if len(f.Layers) == 1 {
		words = "layer"
	}
	r.note(b.keys["layers"], "form", "%s is taken as %s, by its %d %s", f.Name, f.Form, len(f.Layers), words)
}

// fibreShare reads the fibre fraction of a fabric's plies by volume; by mass it
// is worked out from the densities.
func (r *reading) fibreShare(b block, f *laminate.Fabric) {
	switch r.atMostOne(b, "fibre_volume", "fibre_mass") {
	case "fibre_volume":
		f.FibreVolume = r.figure(b, "fibre_volume", fibreVolumes)
	case "fibre_mass":
		f.FibreVolume = r.byMass(b, f)
	default:
		r.usualShare(b, f)
	}
}

// byMass turns a fibre fraction by mass into one by volume, for which both
// densities are needed.
func (r *reading) byMass(b block, f *laminate.Fabric) laminate.Figure {
	n := b.value("fibre_mass")
	if n == nil {
		return laminate.Figure{}
	}
	mass, ok := r.measured(n, "fibre_mass", fibreMasses)
	switch {
	case !ok:
		return laminate.Figure{}
	case r.job.Resin == nil:
		r.refuse(n, "fibre_mass", "write resin: {density: 1.15 g/cm3}, or give the fibre by volume", "the fibre mass of %s says nothing without the density of the resin", f.Name)
		return laminate.Figure{}
	case !f.DensityGCM3.Known():
		r.refuse(n, "fibre_mass", "write density: with the fabric, or give the fibre by volume", "the fibre mass of %s says nothing without the density of its fibre", f.Name)
		return laminate.Figure{}
	case !r.job.Resin.DensityGCM3.Known():
		return laminate.Figure{} // refused already
	}
	fibre, resin := mass/f.DensityGCM3.Value, (1-mass)/r.job.Resin.DensityGCM3.Value
	return laminate.Figure{Value: toNano(fibre / (fibre + resin)), Basis: laminate.Computed, From: "fibre by mass " + strings.TrimSpace(n.Value)}
}

// usualShare notes that the usual fibre fraction is taken where neither the
// fabric nor the resin has one: what works thickness out takes it, with its span.
func (r *reading) usualShare(b block, f *laminate.Fabric) {
	if s := r.job.Resin; s != nil && (s.FibreVolume.Known() || s.FibreMass.Known()) {
		return
	}
	usual, low, high := r.library.FibreVolume(f.Form, f.Fibre)
	if !usual.Known() {
		return
	}
	r.assume(b.at, "fibre_volume", "%.3g %% of fibre by volume in %s (%.3g to %.3g %% is usual)", 100*usual.Value, f.Name, 100*low, 100*high)
}

// elastic reads the constants of one layer; all of them are needed.
func (r *reading) elastic(fabric block) *laminate.Elastic {
	b, ok := r.block(fabric.value("elastic"), fabric.keys["elastic"], "elastic", elasticKeys)
	if !ok {
		return nil
	}
	var e laminate.Elastic
	for _, c := range []struct {
		key  string
		m    measure
		to   *float64
		cure string
	}{
		{"e1", moduli, &e.E1, "write the modulus along the fibre in GPa"},
		{"e2", moduli, &e.E2, "write the modulus across the fibre in GPa"},
		{"g12", moduli, &e.G12, "write the shear modulus in GPa"},
		{"nu12", poissonRatios, &e.Nu12, "write Poisson's ratio of a pull along the fibre, like 0.28"},
		{"alpha1", expansions, &e.Alpha1, "write the expansion along the fibre in millionths per kelvin"},
		{"alpha2", expansions, &e.Alpha2, "write the expansion across the fibre in millionths per kelvin"},
	} {
		if n := b.need(c.key, c.cure); n != nil {
			*c.to, _ = r.measured(n, c.key, c.m)
		}
	}
	if e.E1 > 0 && e.E2 > 0 && float64(e.Nu12*e.Nu12) >= e.E1/e.E2 {
		r.refuse(b.keys["nu12"], "nu12", "check e1, e2 and nu12", "no material has nu12 %v with e1 %v and e2 %v: its energy would be below zero", e.Nu12, e.E1, e.E2)
	}
	return &e
}
