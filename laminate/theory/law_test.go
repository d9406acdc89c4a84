package theory

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"stripwright/laminate"
)

var layerDrawn = rapid.Custom(func(t *rapid.T) Layer {
	e := laminate.Elastic{
		E1: rapid.Float64Range(10, 300).Draw(t, "E1"), E2: rapid.Float64Range(3, 20).Draw(t, "E2"),
		G12: rapid.Float64Range(1, 10).Draw(t, "G12"), Nu12: rapid.Float64Range(0, 0.45).Draw(t, "nu12"),
		Alpha1: rapid.Float64Range(-2, 10).Draw(t, "alpha1"), Alpha2: rapid.Float64Range(10, 60).Draw(t, "alpha2"),
	}
	l := Layer{AngleDeg: rapid.Float64Range(-180, 180).Draw(t, "angle"), ThicknessMM: rapid.Float64Range(0.1, 3).Draw(t, "thickness"), Elastic: e}
	switch rapid.IntRange(0, 5).Draw(t, "kind") {
	case 0:
		part := rapid.Float64Range(0, 1).Draw(t, "part")
		l.Crossed = []Direction{{l.AngleDeg, part}, {rapid.Float64Range(-180, 180).Draw(t, "other"), 1 - part}}
	case 1:
		l.Random = true
	}
	return l
})

// changed gives the layer with its angles changed.
func (l Layer) changed(angle func(float64) float64) Layer {
	l.AngleDeg = angle(l.AngleDeg)
	l.Crossed = slices.Clone(l.Crossed)
	for i := range l.Crossed {
		l.Crossed[i].AngleDeg = angle(l.Crossed[i].AngleDeg)
	}
	return l
}

// small compares with what the laminate could couple at most.
func small(s Stiffness, m Mat) bool { return m.norm() <= 1e-9*math.Sqrt(s.A.norm()*s.D.norm()) }

// A mirror does not couple; heated, it stays flat.
func TestMirrorsDoNotCouple(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		half := rapid.SliceOfN(layerDrawn, 1, 12).Draw(t, "half")
		upper := slices.Clone(half)
		slices.Reverse(upper)
		s, err := Of(append(slices.Clone(half), upper...))
		if err != nil {
			t.Fatal(err)
		}
		_, k := s.Warp(-100)
		if s.Couples() || math.Abs(k[0])+math.Abs(k[1])+math.Abs(k[2]) > 1e-12 {
			t.Fatalf("coupling %v, curvature %v", s.Coupling(), k)
		}
	})
}

// Turned over, the tool side up, B changes its sign; with the angles' signs
// changed, what ties to shear does too.
func TestTurnedOver(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		layers := rapid.SliceOfN(layerDrawn, 1, 12).Draw(t, "layers")
		over := slices.Clone(layers)
		slices.Reverse(over)
		for i := range over {
			over[i] = over[i].changed(func(deg float64) float64 { return -deg })
		}
		s, err := Of(layers)
		o, err2 := Of(over)
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		sign := Mat{{-1, -1, 1}, {-1, -1, 1}, {1, 1, -1}}
		want := s.B
		for i := range want {
			for j := range want[i] {
				want[i][j] *= sign[i][j]
			}
		}
		if !small(s, o.B.plus(want, -1)) {
			t.Fatalf("B %v, turned over %v", s.B, o.B)
		}
	})
}

// Turned in the plane, all matrices turn with the laminate, and the number for
// coupling stays. A stiffness is turned here by turning strains and loads.
func TestTurnedInThePlane(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		layers := rapid.SliceOfN(layerDrawn, 1, 10).Draw(t, "layers")
		by := rapid.Float64Range(-90, 90).Draw(t, "by")
		turned := slices.Clone(layers)
		for i := range turned {
			turned[i] = turned[i].changed(func(deg float64) float64 { return deg + by })
		}
		s, err := Of(layers)
		o, err2 := Of(turned)
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		for _, m := range [][2]Mat{{s.A, o.A}, {s.B, o.B}, {s.D, o.D}} {
			want := byStrain(m[0], by)
			if off := want.plus(m[1], -1).norm(); off > 1e-9*(m[0].norm()+math.Sqrt(s.A.norm()*s.D.norm())) {
				t.Fatalf("turned by %v: %v, want %v", by, m[1], want)
			}
		}
		if math.Abs(s.Coupling()-o.Coupling()) > 1e-9 {
			t.Fatalf("coupling %v, turned %v", s.Coupling(), o.Coupling())
		}
		near := func(a, b float64) bool { return math.Abs(a-b) <= 1e-12+1e-7*math.Abs(a) }
		_, k := s.Warp(-100)
		_, kt := o.Warp(-100)
		m1, l1, _ := Principal(k)
		m2, l2, _ := Principal(kt)
		if !near(m1, m2) || !near(l1, l2) {
			t.Fatalf("warp %v %v, turned %v %v", m1, l1, m2, l2)
		}
	})
}

// byStrain turns a stiffness by what it does to strains: Tᵀ·M·T, where T gives
// the strain in the frame that is turned back.
func byStrain(m Mat, deg float64) Mat {
	s, c := math.Sincos(deg * math.Pi / 180)
	turn := Mat{{c * c, s * s, s * c}, {s * s, c * c, -s * c}, {-2 * s * c, 2 * s * c, c*c - s*s}}
	var out Mat
	for i := range 3 {
		for j := range 3 {
			for k := range 3 {
				for l := range 3 {
					out[i][j] += turn[k][i] * m[k][l] * turn[l][j]
				}
			}
		}
	}
	return out
}

// Bending or stretching always takes work, and the compliances undo the
// stiffness.
func TestEnergyIsPositive(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, err := Of(rapid.SliceOfN(layerDrawn, 1, 12).Draw(t, "layers"))
		if err != nil {
			t.Fatal(err)
		}
		h := s.ThicknessMM
		draw := func(name string) Vec {
			x := rapid.Float64Range(-1, 1)
			return Vec{x.Draw(t, name+"x"), x.Draw(t, name+"y"), x.Draw(t, name+"xy")}
		}
		e, k := draw("strain"), draw("curvature")
		for i := range k {
			k[i] /= h
		}
		n := s.A.Times(e).plus(s.B.Times(k), 1)
		m := s.B.Times(e).plus(s.D.Times(k), 1)
		work := 0.0
		size := 0.0
		for i := range e {
			work += n[i]*e[i] + m[i]*k[i]
			size += e[i]*e[i] + k[i]*k[i]*h*h
		}
		if size > 1e-6 && work <= 0 {
			t.Fatalf("work %v", work)
		}
		back, curve := s.Strain(n, m)
		for i := range e {
			if math.Abs(back[i]-e[i]) > 1e-7 || math.Abs(curve[i]-k[i])*h > 1e-7 {
				t.Fatalf("strain %v %v, back %v %v", e, k, back, curve)
			}
		}
	})
}

// Thickness alone: A goes with it, B with its square, D with its cube; the
// constants stay, and the warp goes with one over it.
func TestThicker(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		layers := rapid.SliceOfN(layerDrawn, 1, 8).Draw(t, "layers")
		f := rapid.Float64Range(0.1, 10).Draw(t, "factor")
		thicker := slices.Clone(layers)
		for i := range thicker {
			thicker[i].ThicknessMM *= f
		}
		s, err := Of(layers)
		o, err2 := Of(thicker)
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		if math.Abs(o.A.norm()-f*s.A.norm()) > 1e-9*o.A.norm() || math.Abs(o.D.norm()-f*f*f*s.D.norm()) > 1e-9*o.D.norm() {
			t.Fatalf("A %v of %v, D %v of %v", o.A.norm(), s.A.norm(), o.D.norm(), s.D.norm())
		}
		if a, b := s.Membrane(), o.Membrane(); math.Abs(a.Ex-b.Ex) > 1e-7*a.Ex || math.Abs(a.Gxy-b.Gxy) > 1e-7*a.Gxy {
			t.Fatalf("constants %v, thicker %v", a, b)
		}
		_, k := s.Warp(-50)
		_, kt := o.Warp(-50)
		if math.Abs(k[0]-f*kt[0]) > 1e-12+1e-7*math.Abs(k[0]) {
			t.Fatalf("curvature %v, thicker %v", k[0], kt[0])
		}
	})
}
