package check

import (
	"math"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

// scale is a plan of 200 plies, 8 × 5 m, 1,000 vertices, from 100 mm tape: some
// 14,000 pieces.
func scale(tb testing.TB) laminate.Plan {
	tb.Helper()
	outline := func(a, b float64) geometry.Region {
		var ring []orb.Point
		for i := range 1000 {
			s, c := math.Sincos(2 * math.Pi * float64(i) / 1000)
			x := a * math.Copysign(math.Sqrt(math.Abs(c)), c)
			y := b * math.Copysign(math.Sqrt(math.Abs(s)), s)
			ring = append(ring, orb.Point{x, y})
		}
		return region(ring).Snapped()
	}
	blank, net := outline(4000, 2500), outline(3980, 2480)
	angles := []float64{0, 45, 90, -45, 0, -45, 90, 45}
	var plies []plySpec
	for i := range 200 {
		a := angles[i%len(angles)]
		b := blank.In(geometry.PlyFrame(geometry.Angle(a))).Bounds()
		var cuts []float64
		for y := b.Min[1] + 30 + 25*float64((i/4)%3); y < b.Max[1]-1; y += 100 {
			cuts = append(cuts, geometry.Snap(y))
		}
		plies = append(plies, plySpec{cloth: "tape", angle: a, down: i%3 == 0, cuts: cuts})
	}
	return build(tb, net, blank, []clothSpec{{"tape", 200, 100, true, 24, 8}}, plies)
}

func BenchmarkPlan(b *testing.B) {
	p := scale(b)
	n := 0
	for _, y := range p.Plies {
		n += len(y.Strips)
	}
	for _, r := range Plan(p) {
		if !r.Pass {
			b.Fatalf("%s: %s", r.Rule, r.Text)
		}
	}
	b.ReportAllocs()
	b.ReportMetric(float64(n), "strips")
	for b.Loop() {
		Plan(p)
	}
}

func BenchmarkRules(b *testing.B) {
	p := scale(b)
	l := lay(p)
	b.Run("lay", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			lay(p)
		}
	})
	for _, r := range []struct {
		name  string
		judge func(*laid) *finding
	}{
		{RuleCoverage, coverage}, {RuleStrips, strips}, {RuleJoints, joints}, {RuleStagger, stagger},
		{RulePieces, pieces}, {RuleRolls, rolls}, {RuleOrder, order},
	} {
		b.Run(r.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				r.judge(l)
			}
		})
	}
}
