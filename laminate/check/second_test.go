package check

import (
	"math"
	"testing"

	"github.com/paulmach/orb"
	"github.com/peterstace/simplefeatures/geom"
	"pgregory.net/rapid"

	"stripwright/geometry"
	"stripwright/laminate"
)

// wrongArea gives, by a general-purpose polygon library, the area of a ply that
// is bare, double or outside; false when the library refuses the shapes.
func wrongArea(y laminate.PlanPly) (float64, bool) {
	blank := polygon(y.Blank)
	var all []geom.Geometry
	sum := 0.0
	for _, s := range y.Strips {
		g := polygon(s.Shape)
		if g.Validate() != nil {
			return 0, false
		}
		all = append(all, g)
		sum += g.Area()
	}
	union, err := geom.UnionMany(all)
	if err != nil {
		return 0, false
	}
	off, err := geom.SymmetricDifference(blank, union)
	if err != nil {
		return 0, false
	}
	return off.Area() + (sum - union.Area()), true
}

// randomPly is a random outline cut at random levels at some angle.
func randomPly(tb testing.TB, t *rapid.T) laminate.PlanPly {
	blank := star(t)
	angle := rapid.SampledFrom([]float64{0, 90, 45, -45, 30, -71.3}).Draw(t, "angle")
	b := blank.In(geometry.PlyFrame(geometry.Angle(angle))).Bounds()
	var cuts []float64
	step := rapid.Float64Range(20, 120).Draw(t, "width")
	for y := b.Min[1] + rapid.Float64Range(5, step).Draw(t, "first"); y < b.Max[1]-5; y += step {
		cuts = append(cuts, geometry.Snap(y))
	}
	y, _ := bandCutter{}.ply(tb, 1, plySpec{cloth: "tape", angle: angle, cuts: cuts}, blank)
	return y
}

func covered(y laminate.PlanPly) *finding {
	l := layPly(y, y.Blank)
	f := &finding{rule: RuleCoverage}
	coverPly(f, &l)
	return f
}

// What a general-purpose library cuts is found whole; a joint is found at every
// butt.
func TestRandomCutsAreSound(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		y := randomPly(t, rt)
		if f := covered(y); len(f.faults) > 0 {
			rt.Fatalf("%s", f.faults[0].text)
		}
		l := &laid{plies: []laidPly{layPly(y, y.Blank)}}
		if f := joints(l); len(f.faults) > 0 {
			rt.Fatalf("%s", f.faults[0].text)
		}
	})
}

// A vertex moved at random: where the check finds nothing, the library finds no
// more than slivers of the tolerance's thickness; where it finds something, the
// library finds area there too.
func TestCoverageAgainstAPolygonLibrary(t *testing.T) {
	caught, passed := 0, 0
	rapid.Check(t, func(rt *rapid.T) {
		y := randomPly(t, rt)
		k := rapid.IntRange(0, len(y.Strips)-1).Draw(rt, "strip")
		ring := append(orb.Ring{}, y.Strips[k].Shape.Outer...)
		v := rapid.IntRange(0, len(ring)-1).Draw(rt, "vertex")
		by := rapid.SampledFrom([]float64{0.001, 0.003, 0.02, 0.5, 7}).Draw(rt, "by")
		s, c := math.Sincos(rapid.Float64Range(0, 6.28).Draw(rt, "towards"))
		ring[v] = orb.Point{ring[v][0] + by*c, ring[v][1] + by*s}
		y.Strips[k].Shape.Outer = ring
		area, ok := wrongArea(y)
		if !ok {
			return
		}
		around := layPly(y, y.Blank).blank.around() + shapeIn(y.Strips[k].Shape, geometry.Turned(0)).around()
		found := len(covered(y).faults) > 0
		switch {
		case found && area < 1e-6:
			rt.Fatalf("found fault with %v mm²", area)
		case !found && area > tolerance*around:
			rt.Fatalf("%v mm² wrong are not found", area)
		case found:
			caught++
		default:
			passed++
		}
	})
	if caught == 0 || passed == 0 {
		t.Errorf("%d caught, %d passed: the test tries one side only", caught, passed)
	}
}

// Overlap of two random outlines on a roll, against the area that the library
// finds common to them.
func TestOverlapAgainstAPolygonLibrary(t *testing.T) {
	caught, passed := 0, 0
	rapid.Check(t, func(rt *rapid.T) {
		a, b := star(rt), star(rt)
		b = shift(b, rapid.Float64Range(0, 600).Draw(rt, "dx"), rapid.Float64Range(-200, 200).Draw(rt, "dy"))
		both, err := geom.Intersection(polygon(a), polygon(b))
		if err != nil {
			return
		}
		l := &laid{plan: laminate.Plan{Rolls: []laminate.PlanRoll{{Pieces: []laminate.Piece{{ID: "A", Shape: a}, {ID: "B", Shape: b}}}}}}
		f := &finding{}
		if judgeOverlap(f, l, 0) != (len(f.faults) == 0) {
			rt.Fatal("its answer is not what it found")
		}
		switch area := both.Area(); {
		case len(f.faults) > 0 && area == 0:
			rt.Fatalf("%s, but nothing is common", f.faults[0].text)
		case len(f.faults) == 0 && area > 1:
			rt.Fatalf("%v mm² common to both are not found", area)
		case area > 0:
			caught++
		default:
			passed++
		}
	})
	if caught == 0 || passed == 0 {
		t.Errorf("%d caught, %d passed: the test tries one side only", caught, passed)
	}
}

// The distance between two pieces, against the library's.
func TestApartAgainstAPolygonLibrary(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		a, b := star(rt), star(rt)
		b = shift(b, rapid.Float64Range(300, 700).Draw(rt, "dx"), rapid.Float64Range(-200, 200).Draw(rt, "dy"))
		want, ok := geom.Distance(polygon(a), polygon(b))
		if !ok || want == 0 {
			return
		}
		const need = 150
		got, _ := box(shapeIn(a, geometry.Turned(0)), 0).apart(box(shapeIn(b, geometry.Turned(0)), 1), need)
		if want < need-1e-6 && math.Abs(got-want) > 1e-6 || want > need+1e-6 && got < need {
			rt.Fatalf("%v apart, the library says %v", got, want)
		}
	})
}

// A piece is known as its strip however it is mirrored and turned, and not when
// a vertex is off.
func TestPiecesAreKnown(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		r := star(rt)
		mirrored, turned := rapid.Bool().Draw(rt, "mirrored"), rapid.SampledFrom([]int{0, 180}).Draw(rt, "turned")
		lay := r
		if mirrored {
			lay = lay.In(geometry.MirrorAcross())
		}
		lay = shift(lay.In(geometry.Turned(float64(turned))), 1234.5, 67.8)
		y := &laidPly{shapes: []shape{shapeIn(r, geometry.Turned(0))}}
		got := shapeIn(lay, geometry.Turned(0))
		if !fits(y, 0, got, mirrored, turned) {
			rt.Fatal("not known")
		}
		v := rapid.IntRange(0, len(lay.Outer)-1).Draw(rt, "vertex")
		s, c := math.Sincos(rapid.Float64Range(0, 6.28).Draw(rt, "towards"))
		lay.Outer[v] = orb.Point{lay.Outer[v][0] + 0.5*c, lay.Outer[v][1] + 0.5*s}
		if off := shapeIn(lay, geometry.Turned(0)); fits(y, 0, off, mirrored, turned) && wrongBy(r, lay, mirrored, turned) > 1 {
			rt.Fatal("known with a vertex half a millimetre off")
		}
	})
}

// wrongBy gives the area between a piece and its strip.
func wrongBy(strip, piece geometry.Region, mirrored bool, turned int) float64 {
	if mirrored {
		strip = strip.In(geometry.MirrorAcross())
	}
	strip = shift(strip.In(geometry.Turned(float64(turned))), 1234.5, 67.8)
	off, err := geom.SymmetricDifference(polygon(strip), polygon(piece))
	if err != nil {
		return 0
	}
	return off.Area()
}
