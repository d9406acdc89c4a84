package panel

import (
	"strconv"
	"strings"

	"stripwright/laminate"
	"stripwright/laminate/content"
	"stripwright/laminate/material"
	"stripwright/laminate/theory"
)

// Constants are those of the layers of one fabric, and what they stand on.
type Constants struct {
	Fabric  string
	Elastic laminate.Elastic
	Basis   string // laminate.Given or laminate.Assumed, "": not known
	From    string // "generic e-glass in epoxy, 51.5 % fibre"
	Missing string // what is to be written, "" where they are known
}

// Known says whether the constants are known.
func (c Constants) Known() bool { return c.Basis != "" }

const without = "stiffness cannot be worked out: "

// ConstantsOf finds the constants of a fabric's layers. c is the same fabric as
// package content sees it.
func ConstantsOf(p laminate.Plan, f laminate.PlanFabric, c content.Cloth) Constants {
	out := Constants{Fabric: f.Name}
	switch f.Form {
	case laminate.Biaxial, laminate.Triaxial, laminate.Quadraxial:
		if len(f.Layers) == 0 {
			out.Missing = without + "write layers: for fabric " + f.Name + ", which is " + f.Form
			return out
		}
	}
	if f.Elastic != nil {
		out.Elastic, out.Basis = *f.Elastic, laminate.Given
		if why := theory.Fault(*f.Elastic); why != "" {
			out.Basis, out.Missing = "", without+"elastic: of fabric "+f.Name+": "+why
		}
		return out
	}
	library := content.Library(p)
	fibre, resin, missing := kinds(p, f, library)
	if missing != "" || !c.FibreVolume.Known() {
		out.Missing = missing
		return out
	}
	e, err := theory.Generic(fibre, resin, c.FibreVolume.Value)
	if err != nil {
		out.Missing = without + err.Error()
		return out
	}
	out.Elastic, out.Basis = e, laminate.Assumed
	out.From = "generic " + fibre.Name + " in " + resin.Name + ", " + strconv.FormatFloat(100*c.FibreVolume.Value, 'f', 1, 64) + " % fibre"
	return out
}

// kinds finds the fibre and the resin, or says what is to be written.
func kinds(p laminate.Plan, f laminate.PlanFabric, library material.Library) (fibre laminate.FibreKind, resin laminate.ResinKind, missing string) {
	fibre, ok := library.Fibre(f.Fibre)
	switch lacks := material.MissingOfFibre(fibre); {
	case !ok:
		return fibre, resin, without + "write fibre: for fabric " + f.Name + " (" + strings.Join(library.FibreNames(), ", ") + "), or elastic:"
	case len(lacks) > 0:
		return fibre, resin, without + "write " + strings.Join(lacks, ", ") + " for " + fibre.Name + " under fibres:"
	}
	name := ""
	if p.Resin != nil {
		name = p.Resin.Name
	}
	resin, ok = library.Resin(name)
	switch lacks := material.MissingOfResin(resin); {
	case !ok:
		return fibre, resin, without + "write name: under resin: (" + strings.Join(library.ResinNames(), ", ") + "), or that of a kind under resins:"
	case len(lacks) > 0:
		return fibre, resin, without + "write " + strings.Join(lacks, ", ") + " for " + resin.Name + " under resins:"
	}
	return fibre, resin, ""
}
