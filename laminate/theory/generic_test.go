package theory

import (
	"math"
	"strings"
	"testing"

	"stripwright/laminate"
)

// Figures of plies measured beside those of their fibre and resin: Soden, Hinton
// and Kaddour, Compos. Sci. Technol. 58 (1998) 1011, tables 1 to 3 (from memory).
func TestGenericAgainstMeasuredPlies(t *testing.T) {
	fig := func(v float64) laminate.Figure { return laminate.Figure{Value: v, Basis: laminate.Given} }
	fibre := func(e1, e2, g, nu, a1, a2 float64) laminate.FibreKind {
		return laminate.FibreKind{Name: "fibre", E1: fig(e1), E2: fig(e2), G12: fig(g), Nu12: fig(nu), Alpha1: fig(a1), Alpha2: fig(a2)}
	}
	resin := func(e, nu, a float64) laminate.ResinKind {
		return laminate.ResinKind{Name: "resin", E: fig(e), Nu: fig(nu), Alpha: fig(a)}
	}
	for _, c := range []struct {
		name  string
		fibre laminate.FibreKind
		resin laminate.ResinKind
		vf    float64
		want  laminate.Elastic
	}{
		{"glass .60", fibre(74, 74, 30.8, .2, 4.9, 4.9), resin(3.35, .35, 58), .60, laminate.Elastic{E1: 45.6, E2: 16.2, G12: 5.83, Nu12: .278, Alpha1: 8.6, Alpha2: 26.4}},
		{"glass .62", fibre(80, 80, 33.33, .2, 4.9, 4.9), resin(3.35, .35, 58), .62, laminate.Elastic{E1: 53.48, E2: 17.7, G12: 5.83, Nu12: .278, Alpha1: 8.6, Alpha2: 26.4}},
		{"carbon .60", fibre(230, 15, 15, .2, -.7, 12), resin(4, .35, 55), .60, laminate.Elastic{E1: 138, E2: 11, G12: 5.5, Nu12: .28, Alpha1: -1, Alpha2: 26}},
		{"carbon .60 b", fibre(225, 15, 15, .2, -.5, 15), resin(4.2, .34, 45), .60, laminate.Elastic{E1: 126, E2: 11, G12: 6.6, Nu12: .28, Alpha1: -1, Alpha2: 26}},
	} {
		got, err := Generic(c.fibre, c.resin, c.vf)
		if err != nil {
			t.Fatal(err)
		}
		near(t, c.name+" E1", got.E1, c.want.E1, 0.1)
		near(t, c.name+" E2", got.E2, c.want.E2, 0.25)
		near(t, c.name+" G12", got.G12, c.want.G12, 0.35)
		near(t, c.name+" nu12", got.Nu12, c.want.Nu12, 0.1)
		near(t, c.name+" alpha2", got.Alpha2, c.want.Alpha2, 0.45)
		if math.Abs(got.Alpha1-c.want.Alpha1) > 2.5 {
			t.Errorf("%s: alpha1 %v, measured %v", c.name, got.Alpha1, c.want.Alpha1)
		}
	}
}

// Kaw, Mechanics of Composite Materials, 2nd ed. 2006, examples of ch. 3 (from
// memory, worked again): 70 % glass in epoxy.
func TestGenericByHand(t *testing.T) {
	fig := func(v float64) laminate.Figure { return laminate.Figure{Value: v, Basis: laminate.Given} }
	f := laminate.FibreKind{E1: fig(85), E2: fig(85), G12: fig(85 / 2.4), Nu12: fig(0.2), Alpha1: fig(5), Alpha2: fig(5)}
	r := laminate.ResinKind{E: fig(3.4), Nu: fig(0.3), Alpha: fig(63)}
	e, err := Generic(f, r, 0.7)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "E1", e.E1, 60.52, 1e-4)
	near(t, "E2", e.E2, 20.20, 3e-4)
	near(t, "G12", e.G12, 6.169, 3e-4)
	near(t, "nu12", e.Nu12, 0.2300, 1e-4)
	near(t, "alpha1", e.Alpha1, 5.978, 1e-4)
	near(t, "alpha2", e.Alpha2, 27.40, 3e-4)
}

// Fibre of the resin itself is resin: each formula must give it back.
func TestGenericOfOneMaterial(t *testing.T) {
	fig := func(v float64) laminate.Figure { return laminate.Figure{Value: v, Basis: laminate.Given} }
	f := laminate.FibreKind{E1: fig(3), E2: fig(3), G12: fig(3 / 2.6), Nu12: fig(0.3), Alpha1: fig(60), Alpha2: fig(60)}
	r := laminate.ResinKind{E: fig(3), Nu: fig(0.3), Alpha: fig(60)}
	e, err := Generic(f, r, 0.55)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range [][2]float64{{e.E1, 3}, {e.E2, 3}, {e.G12, 3 / 2.6}, {e.Nu12, 0.3}, {e.Alpha1, 60}, {e.Alpha2, 60}} {
		near(t, "figure", c[0], c[1], 1e-12)
	}
}

func TestGenericAsksForWhatIsMissing(t *testing.T) {
	for _, c := range []struct {
		vf   float64
		want string
	}{{0.5, "hemp in epoxy are not all known"}, {math.NaN(), "out of reason"}, {52, "out of reason"}, {0, "out of reason"}} {
		_, err := Generic(laminate.FibreKind{Name: "hemp"}, laminate.ResinKind{Name: "epoxy"}, c.vf)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%v: %v, want %q", c.vf, err, c.want)
		}
	}
}
