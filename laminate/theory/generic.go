package theory

import (
	"fmt"

	"stripwright/laminate"
)

// Generic gives the constants of a layer of fibre in resin, all fibre in one
// direction, vf of its volume fibre (0…1, taken as 0.05 to 0.85).
//
//   - E1, nu12: rule of mixtures.
//   - E2, G12: Halpin and Tsai (Halpin and Kardos, Polym. Eng. Sci. 16 (1976)
//     344), with 2 for E2 and 1 for G12.
//   - alpha: Schapery, J. Compos. Mater. 2 (1968) 380; across, with the fibre's own
//     two expansions in it.
//
// All from memory. An unknown figure of fibre or resin, or a share out of reason,
// is an error.
func Generic(f laminate.FibreKind, r laminate.ResinKind, vf float64) (laminate.Elastic, error) {
	if !(vf >= 0.05 && vf <= 0.85) {
		return laminate.Elastic{}, fmt.Errorf("a share of fibre of %v is out of reason: from 0.05 to 0.85 is taken", vf)
	}
	for _, figure := range []laminate.Figure{f.E1, f.E2, f.G12, f.Nu12, f.Alpha1, f.Alpha2, r.E, r.Nu, r.Alpha} {
		if !figure.Known() {
			return laminate.Elastic{}, fmt.Errorf("the constants of %s in %s are not all known", f.Name, r.Name)
		}
	}
	vm := 1 - vf
	em, nm, am := r.E.Value, r.Nu.Value, r.Alpha.Value
	gm := em / (2 * (1 + nm))
	mixed := func(fibre, resin float64) float64 { return float64(fibre*vf) + float64(resin*vm) }
	e := laminate.Elastic{
		E1:   mixed(f.E1.Value, em),
		Nu12: mixed(f.Nu12.Value, nm),
		E2:   halpinTsai(f.E2.Value, em, 2, vf),
		G12:  halpinTsai(f.G12.Value, gm, 1, vf),
	}
	e.Alpha1 = mixed(f.Alpha1.Value*f.E1.Value, am*em) / e.E1
	fibreAcross := f.Alpha2.Value + float64(f.Nu12.Value*f.Alpha1.Value)
	e.Alpha2 = mixed(fibreAcross, am*(1+nm)) - float64(e.Nu12*e.Alpha1)
	if why := Fault(e); why != "" {
		return laminate.Elastic{}, fmt.Errorf("%s in %s: %s", f.Name, r.Name, why)
	}
	return e, nil
}

// halpinTsai mixes a modulus of fibre and resin; xi tells how the fibre is shaped
// and packed.
func halpinTsai(fibre, resin, xi, vf float64) float64 {
	eta := (fibre/resin - 1) / (fibre/resin + xi)
	return resin * (1 + float64(xi*eta*vf)) / (1 - float64(eta*vf))
}
