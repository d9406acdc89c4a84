package grow

import (
	"math"
	"math/rand/v2"

	"github.com/paulmach/orb"

	"stripwright/geometry"
)

// star draws a random outline round a centre: concave, simple, with one radius
// per direction.
func star(rnd *rand.Rand, cx, cy, low, high float64, n int) orb.Ring {
	r := make(orb.Ring, n)
	for i := range r {
		s, c := math.Sincos(2 * math.Pi * (float64(i) + 0.8*rnd.Float64()) / float64(n))
		d := low + (high-low)*rnd.Float64()
		r[i] = orb.Point{cx + d*c, cy + d*s}
	}
	return r
}

// holed is a random outline with up to four holes in its middle, one to each
// quarter.
func holed(rnd *rand.Rand, far float64) geometry.Region {
	n := 4 + rnd.IntN(40)
	holes := 4
	if n < 14 {
		holes = 0 // edges may pass by the middle
	}
	r := geometry.Region{Outer: star(rnd, far, far, 300+100*rnd.Float64(), 420+300*rnd.Float64(), n)}
	for k := 0; k < holes; k++ {
		if rnd.IntN(3) == 0 {
			continue
		}
		x, y := 90*float64(k%2*2-1), 90*float64(k/2*2-1)
		size := 5 + 75*rnd.Float64()
		r.Holes = append(r.Holes, star(rnd, far+x, far+y, size*(0.1+0.9*rnd.Float64()), size, 3+rnd.IntN(12)))
	}
	return r.Snapped()
}

// comb is a plate with slots of the width given, n of them.
func comb(n int, slot float64) geometry.Region {
	var r orb.Ring
	r = append(r, orb.Point{0, 0}, orb.Point{float64(n)*(slot+40) + 40, 0})
	for k := n; k > 0; k-- {
		x := float64(k) * (slot + 40)
		r = append(r, orb.Point{x + 40, 300}, orb.Point{x, 300}, orb.Point{x, 60}, orb.Point{x - slot, 60})
	}
	r = append(r, orb.Point{40, 300}, orb.Point{0, 300})
	return geometry.Region{Outer: r}.Oriented()
}

// wavy is a closed curve of n vertices, smooth, with bays.
func wavy(n int, rough float64, rnd *rand.Rand) geometry.Region {
	r := make(orb.Ring, n)
	for i := range r {
		a := 2 * math.Pi * float64(i) / float64(n)
		d := 600 + 60*math.Sin(5*a) + 8*math.Sin(31*a) + rough*(rnd.Float64()-0.5)
		r[i] = orb.Point{d * math.Cos(a), 0.7 * d * math.Sin(a)}
	}
	return geometry.Region{Outer: r}.Snapped()
}

// distanceTo is how far a point lies from a region, worked out edge by edge; 0
// inside.
func distanceTo(r geometry.Region, p orb.Point) float64 {
	inside, least := false, math.Inf(1)
	for _, q := range r.Rings() {
		for i, a := range q {
			b := q[(i+1)%len(q)]
			dx, dy := b[0]-a[0], b[1]-a[1]
			t := math.Max(0, math.Min(1, ((p[0]-a[0])*dx+(p[1]-a[1])*dy)/(dx*dx+dy*dy)))
			least = math.Min(least, math.Hypot(a[0]+t*dx-p[0], a[1]+t*dy-p[1]))
			if (a[1] > p[1]) != (b[1] > p[1]) && p[0] < a[0]+(p[1]-a[1])/dy*dx {
				inside = !inside
			}
		}
	}
	if inside {
		return 0
	}
	return least
}
