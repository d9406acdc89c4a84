package content

import (
	"math"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

// wavy is a round outline of n points with waves.
func wavy(x, y, radius float64, n int) geometry.Region {
	ring := make(orb.Ring, n)
	for i := range ring {
		a := 2 * math.Pi * float64(i) / float64(n)
		s, c := math.Sincos(a)
		d := radius * (1 + 0.02*math.Sin(40*a))
		ring[i] = orb.Point{x + d*c, y + d*s}
	}
	return geometry.Region{Outer: ring}.Snapped()
}

// A part of 10 000 points with 60 plies, ten of them patches.
func BenchmarkReportOfManyPoints(b *testing.B) {
	p := panel(laminate.PlanFabric{WeightGSM: 300, Fibre: "carbon"}, 50, 20)
	p.Part.Net, p.Part.Blank = wavy(0, 0, 900, 10000), wavy(0, 0, 920, 10000)
	for i := range p.Plies {
		p.Plies[i].Blank = p.Part.Blank
	}
	for i := range 10 {
		p.Plies = append(p.Plies, laminate.PlanPly{Ply: 51 + i, Fabric: "cloth", Blank: wavy(float64(i)*100-500, 0, 150, 400)})
	}
	for b.Loop() {
		Of(p)
	}
}
