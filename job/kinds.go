package job

import (
	"stripwright/laminate"
	"stripwright/laminate/material"
)

// kinds reads the fibres and resins that the job adds to the library, or puts
// in the place of its figures.
func (r *reading) kinds(top block) {
	r.library = material.Generic()
	if n := top.value("fibres"); n != nil {
		for _, named := range r.named(n, "fibres", "fibre") {
			if b, ok := r.block(named.value, named.key, "fibre "+named.key.Value, fibreKeys); ok {
				r.job.Fibres = append(r.job.Fibres, r.fibreKind(b, named.key.Value))
			}
		}
	}
	if n := top.value("resins"); n != nil {
		for _, named := range r.named(n, "resins", "resin") {
			if b, ok := r.block(named.value, named.key, "resin "+named.key.Value, resinKindKeys); ok {
				r.job.Resins = append(r.job.Resins, r.resinKind(b, named.key.Value))
			}
		}
	}
	r.library = r.library.With(r.job.Fibres, r.job.Resins)
}

func (r *reading) fibreKind(b block, name string) laminate.FibreKind {
	return laminate.FibreKind{
		Name:        name,
		DensityGCM3: r.figure(b, "density", fibreDensities),
		E1:          r.figure(b, "e1", moduli), E2: r.figure(b, "e2", moduli), G12: r.figure(b, "g12", moduli),
		Nu12:   r.figure(b, "nu12", poissonRatios),
		Alpha1: r.figure(b, "alpha1", expansions), Alpha2: r.figure(b, "alpha2", expansions),
	}
}

func (r *reading) resinKind(b block, name string) laminate.ResinKind {
	return laminate.ResinKind{
		Name:        name,
		DensityGCM3: r.figure(b, "density", resinDensities),
		E:           r.figure(b, "e", moduli),
		Nu:          r.figure(b, "nu", poissonRatios),
		Alpha:       r.figure(b, "alpha", expansions),
	}
}
