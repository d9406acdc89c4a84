package waste

import (
	"math/rand/v2"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

// A roll of 14,000 strips with ends of ten corners, as of a very large part.
func BenchmarkLargeRoll(b *testing.B) {
	rng := rand.New(rand.NewPCG(1, 2))
	r := laminate.PlanRoll{WidthMM: 100, UsableWidthMM: 100, UsedLengthMM: 14000 * 4600}
	for i := range 14000 {
		u := float64(i) * 4600
		var ring orb.Ring
		for k := range 10 {
			ring = append(ring, orb.Point{geometry.Snap(u + 4500 + 90*rng.Float64()), geometry.Snap(float64(k) * 100 / 9)})
		}
		for k := range 10 {
			ring = append(ring, orb.Point{geometry.Snap(u + 90*rng.Float64()), geometry.Snap(float64(9-k) * 100 / 9)})
		}
		r.Pieces = append(r.Pieces, laminate.Piece{Shape: geometry.Region{Outer: ring}})
	}
	p := laminate.Plan{Rolls: []laminate.PlanRoll{r}}
	b.Run("waste", func(b *testing.B) {
		for b.Loop() {
			Of(p)
		}
	})
	b.Run("left over", func(b *testing.B) {
		for b.Loop() {
			LeftOver(p)
		}
	})
}
