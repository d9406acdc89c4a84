package content

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func near(t *testing.T, what string, got, want, digits float64) {
	t.Helper()
	if !(math.Abs(got-want) <= digits) {
		t.Errorf("%s: %.6g, want %.6g", what, got, want)
	}
}

// The formulas of a class society's rules for yachts, part B ch. 12 sec. 3 (read),
// worked for fibre and resin of the table of densities (worked again).
func TestThicknessAndContent(t *testing.T) {
	for _, c := range []struct{ weight, fibre, resin, vf, mf, thick, density, held float64 }{
		{600, 2.54, 1.15, .50, .6883, .4724, 1.8450, 271.7},
		{600, 2.60, 1.15, .55, .7343, .4196, 1.9475, 217.1},
		{300, 1.80, 1.15, .55, .6567, .3030, 1.5075, 156.8},
		{200, 1.76, 1.15, .50, .6048, .2273, 1.4550, 130.7},
		{400, 1.78, 1.15, .55, .6542, .4086, 1.4965, 211.4},
		{300, 1.44, 1.15, .50, .5560, .4167, 1.2950, 239.6},
		{300, 1.50, 1.15, .35, .4126, .5714, 1.2725, 427.1},
	} {
		near(t, "fibre mass", MassOfVolume(c.vf, c.fibre, c.resin), c.mf, 5e-5)
		near(t, "thickness", Thickness(c.weight, c.fibre, c.vf), c.thick, 5e-5)
		near(t, "density", Density(c.vf, c.fibre, c.resin), c.density, 5e-5)
		near(t, "resin", ResinHeld(c.weight, c.fibre, c.resin, c.vf), c.held, 0.05)
	}
}

// ISO 12215-5 and class rules (from memory): t = W/3072·(2.56/ψ - 1.36), which is
// the formula for fibre of 2.56 and resin of 1.20 g/cm³ (worked again).
func TestThicknessByFibreMass(t *testing.T) {
	for _, c := range []struct{ weight, mass, thick float64 }{
		{300, .30, .7005}, {450, .30, 1.0508}, {600, .30, 1.4010}, {600, .50, .7344}, {800, .50, .9792},
		{600, .65, .5036}, {600, .70, .4487}, {1000, 1.0, .3906},
	} {
		vf := VolumeOfMass(c.mass, 2.56, 1.20)
		near(t, "thickness", Thickness(c.weight, 2.56, vf), c.thick, 5e-5)
		near(t, "by the rule", c.weight/3072*(2.56/c.mass-1.36), c.thick, 5e-5)
	}
	for _, c := range [][2]float64{{.30, .1673}, {.50, .3191}, {.65, .4654}, {.70, .5224}} {
		near(t, "fibre volume", VolumeOfMass(c[0], 2.56, 1.20), c[1], 5e-5)
	}
}

// Nine plies, two woven of 200 g/m² and seven triaxial of 800 g/m², make 6.0 mm by
// the workshop rule, and one more of 800 makes 6.8 mm (common practice, no
// source).
func TestWorkshopRule(t *testing.T) {
	near(t, "nine plies", Workshop(2*200+7*800), 6.0, 1e-12)
	near(t, "ten plies", Workshop(2*200+8*800), 6.8, 1e-12)
}

// Mass and volume turn into each other, and a millimetre of laminate weighs what
// its fibre and resin weigh.
func TestFormulasAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fibre := rapid.Float64Range(0.8, 3).Draw(t, "fibre")
		resin := rapid.Float64Range(0.8, 1.6).Draw(t, "resin")
		vf := rapid.Float64Range(0.05, 0.8).Draw(t, "vf")
		weight := rapid.Float64Range(20, 3000).Draw(t, "weight")
		mf := MassOfVolume(vf, fibre, resin)
		if math.Abs(VolumeOfMass(mf, fibre, resin)-vf) > 1e-12 {
			t.Fatalf("fibre volume %v of %v", VolumeOfMass(mf, fibre, resin), vf)
		}
		all := weight + ResinHeld(weight, fibre, resin, vf)
		if d := all / (1000 * Thickness(weight, fibre, vf)); math.Abs(d-Density(vf, fibre, resin)) > 1e-12*d {
			t.Fatalf("density %v, want %v", d, Density(vf, fibre, resin))
		}
		if math.Abs(weight/all-mf) > 1e-12 {
			t.Fatalf("fibre mass %v, want %v", weight/all, mf)
		}
	})
}
