package material

import (
	"math"
	"strings"
	"testing"

	"stripwright/laminate"
)

// Every kind has all its figures, every figure a span that holds it and a
// source, every unit is the one that the model reckons in, and no kind lies
// outside what is possible.
func TestLibraryIsWhole(t *testing.T) {
	es, err := entries(libraryFile)
	if err != nil {
		t.Fatal(err)
	}
	units := map[string]string{
		"density": "g/cm3", "e1": "GPa", "e2": "GPa", "g12": "GPa", "e": "GPa",
		"nu12": "1", "nu": "1", "alpha1": "1e-6/K", "alpha2": "1e-6/K", "alpha": "1e-6/K", "fibre volume": "1",
	}
	for _, e := range es {
		if units[e.quantity] != e.unit {
			t.Errorf("%s %s: unit %q, want %q", e.name, e.quantity, e.unit, units[e.quantity])
		}
	}
	l := Generic()
	for _, f := range l.fibres {
		if m := unknown(fibreFigures(&f)); len(m) > 0 {
			t.Errorf("%s lacks %v", f.Name, m)
		}
		if f.DensityGCM3.Basis != laminate.Assumed || f.DensityGCM3.From != "generic "+f.Name {
			t.Errorf("%s: density %+v is not marked", f.Name, f.DensityGCM3)
		}
		if nu := f.Nu12.Value; nu*nu >= f.E1.Value/f.E2.Value || f.E2.Value > f.E1.Value {
			t.Errorf("%s: no such material: nu12 %v, E1 %v, E2 %v", f.Name, nu, f.E1.Value, f.E2.Value)
		}
		if v, low, high := l.FibreVolume(laminate.Biaxial, f.Name); !v.Known() || math.Abs(v.Value-(low+high)/2) > 1e-9 {
			t.Errorf("%s: usual share of fibre %v is not the middle of %v to %v", f.Name, v, low, high)
		}
	}
	for _, r := range l.resins {
		if m := unknown(resinFigures(&r)); len(m) > 0 {
			t.Errorf("%s lacks %v", r.Name, m)
		}
	}
	if len(l.FibreNames()) != 7 || len(l.ResinNames()) != 3 {
		t.Errorf("kinds: %v, %v", l.FibreNames(), l.ResinNames())
	}
}

// A fibre that is alike in all directions obeys G = E / (2 (1 + nu)).
func TestIsotropicFibres(t *testing.T) {
	n := 0
	for _, f := range Generic().fibres {
		if f.E1.Value != f.E2.Value {
			continue
		}
		n++
		want := f.E1.Value / (2 * (1 + f.Nu12.Value))
		if math.Abs(f.G12.Value-want) > 0.01*want || f.Alpha1 != f.Alpha2 {
			t.Errorf("%s: G12 %v, want %.2f; expansion %v and %v", f.Name, f.G12.Value, want, f.Alpha1.Value, f.Alpha2.Value)
		}
	}
	if n != 3 {
		t.Errorf("%d fibres are alike in all directions, want the two glasses and basalt", n)
	}
}

// Densities as printed in Jang, Advanced Polymer Composites, 1994, table of
// fibres (read): E-glass 2.54, carbon 1.76 to 1.80, aramid 1.44 to 1.45.
func TestDensities(t *testing.T) {
	for _, c := range []struct {
		fibre     string
		low, high float64
	}{{"E-Glass", 2.54, 2.54}, {"carbon", 1.76, 1.80}, {"ARAMID", 1.44, 1.45}, {"flax", 1.4, 1.5}} {
		f, ok := Generic().Fibre(c.fibre)
		if d := f.DensityGCM3.Value; !ok || d < c.low || d > c.high {
			t.Errorf("%s: %v, want %v to %v", c.fibre, d, c.low, c.high)
		}
	}
	if _, ok := Generic().Fibre("cotton"); ok {
		t.Error("cotton is known")
	}
}

// Usual shares of fibre by form of cloth (from memory).
func TestFibreVolume(t *testing.T) {
	for _, c := range []struct {
		form, fibre string
		low, high   float64
	}{
		{laminate.Mat, "e-glass", 0.20, 0.30}, {laminate.Mat, "", 0.20, 0.30},
		{laminate.Woven, "e-glass", 0.48, 0.55}, {"", "Carbon", 0.55, 0.60}, {laminate.Unidirectional, "flax", 0.35, 0.45},
		{laminate.Woven, "cotton", 0, 0}, {"", "", 0, 0},
	} {
		f, low, high := Generic().FibreVolume(c.form, c.fibre)
		if low != c.low || high != c.high || f.Known() != (c.high > 0) {
			t.Errorf("%s %s: %v, %v to %v", c.form, c.fibre, f, low, high)
		}
	}
	f, _, _ := Generic().FibreVolume(laminate.Biaxial, "e-glass")
	if want := "infused glass cloth, usually 0.48 to 0.55"; f.From != want {
		t.Errorf("basis %q, want %q", f.From, want)
	}
}

// A job's own kinds join the library or replace single figures; the library
// itself stays as it is.
func TestWith(t *testing.T) {
	given := func(v float64) laminate.Figure { return laminate.Figure{Value: v, Basis: laminate.Given} }
	l := Generic().With(
		[]laminate.FibreKind{{Name: "hemp", DensityGCM3: given(1.48)}, {Name: "Carbon", E1: given(245)}},
		[]laminate.ResinKind{{Name: "epoxy", DensityGCM3: given(1.17)}, {Name: "acrylic", DensityGCM3: given(1.19), E: given(3)}},
	)
	hemp, ok := l.Fibre("hemp")
	if missing := strings.Join(MissingOfFibre(hemp), " "); !ok || hemp.DensityGCM3.Value != 1.48 || missing != "e1 e2 g12 nu12 alpha1 alpha2" {
		t.Errorf("hemp: %v, missing %q", hemp, missing)
	}
	carbon, _ := l.Fibre("carbon")
	if carbon.E1 != given(245) || carbon.E2.Value != 15 || len(MissingOfFibre(carbon)) > 0 {
		t.Errorf("carbon: %+v", carbon)
	}
	epoxy, _ := l.Resin("Epoxy")
	if epoxy.DensityGCM3 != given(1.17) || epoxy.E.Value != 3.35 {
		t.Errorf("epoxy: %+v", epoxy)
	}
	acrylic, ok := l.Resin("acrylic")
	if missing := strings.Join(MissingOfResin(acrylic), " "); !ok || missing != "nu alpha" {
		t.Errorf("acrylic: missing %q", missing)
	}
	if c, _ := Generic().Fibre("carbon"); c.E1.Value != 230 {
		t.Error("the library was altered")
	}
}

// What would spoil the file is found and named by its line.
func TestSpoiledLibrary(t *testing.T) {
	first := strings.Join(head, ",") + "\n"
	for _, c := range []struct{ text, want string }{
		{"a,b\n", "first line"},
		{first + "fibre,x,density,NaN,1,2,g/cm3,s\n", `line 2: value is no number: "NaN"`},
		{first + "fibre,x,density,3,1,2,g/cm3,s\n", "line 2: 3 is not between 1 and 2"},
		{first + "fibre,x,density,1,1,2,g/cm3,\n", "line 2: the source is missing"},
		{first + "fibre,x,colour,1,1,2,g/cm3,s\n", `line 2: quantity "colour" is not known`},
		{first + "cloth,x,density,1,1,2,g/cm3,s\n", "line 2: kind"},
		{first + "fibre,x,e1,1,1,2,GPa,s\nfibre,x,e1,1,1,2,GPa,s\n", "line 3: e1 of x stands twice"},
		{first + "fibre,x,density\n", "wrong number of fields"},
	} {
		if _, err := read(c.text); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: %v, want %q", c.text, err, c.want)
		}
	}
}
