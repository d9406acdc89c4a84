package sheet

import (
	"math"
	"sort"

	"github.com/paulmach/orb"

	"stripwright/geometry"
)

// Spot finds room for a block of lettering inside a region: a box of height h
// and width ratio × h, h at most most and not less than least. It gives the
// middle of the box and h, or 0 where there is no room.
func Spot(r geometry.Region, ratio, most, least float64) (at orb.Point, h float64) {
	if r.Empty() {
		return at, 0
	}
	b := r.Bounds()
	high := b.Max[1] - b.Min[1]
	chords := func(y float64) [][2]float64 { return Chords(r, y) }
	for h = math.Min(most, 0.9*high); h >= least && h > 0; h *= 0.8 {
		for _, f := range [5]float64{0.5, 0.36, 0.64, 0.22, 0.78} {
			y := b.Min[1] + float64(f*high)
			if from, to := Widest(chords, y-float64(h/2), y+float64(h/2)); to-from >= ratio*h {
				return orb.Point{(from + to) / 2, y}, h
			}
		}
	}
	return at, 0
}

// Widest gives the longest stretch along x that is inside a shape all the way from
// y = low to y = high, looked at on five lines; chords gives its stretches at a y,
// rising.
func Widest(chords func(y float64) [][2]float64, low, high float64) (from, to float64) {
	var common [][2]float64
	for i := 0; i <= 4; i++ {
		inside := chords(low + float64((high-low)*float64(i)/4))
		if i == 0 {
			common = inside
			continue
		}
		common = shared(common, inside)
	}
	for _, c := range common {
		if c[1]-c[0] > to-from {
			from, to = c[0], c[1]
		}
	}
	return from, to
}

// Inside gives a point inside a region: the middle of the longest chord halfway
// up.
func Inside(r geometry.Region) orb.Point {
	if r.Empty() {
		return orb.Point{}
	}
	at := r.Bounds().Center()
	long := 0.0
	for _, c := range Chords(r, at[1]) {
		if c[1]-c[0] > long {
			long, at[0] = c[1]-c[0], (c[0]+c[1])/2
		}
	}
	return at
}

// turning is the sine of the least angle by which an outline turns at a corner.
const turning = 1e-4

// Corners gives the vertices of an outline where it turns.
func Corners(ring orb.Ring) []orb.Point {
	var corners []orb.Point
	for i, p := range ring {
		in, out := Towards(ring[(i+len(ring)-1)%len(ring)], p), Towards(p, ring[(i+1)%len(ring)])
		if math.Abs(float64(in[0]*out[1])-float64(in[1]*out[0])) > turning {
			corners = append(corners, p)
		}
	}
	return corners
}

// Chords gives the stretches of a line of constant y that lie inside a region,
// from left to right. A vertex on the line counts as lying above it.
func Chords(r geometry.Region, y float64) [][2]float64 {
	var xs []float64
	for _, ring := range r.Rings() {
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			if (p[1] >= y) != (q[1] >= y) {
				xs = append(xs, p[0]+float64((y-p[1])/(q[1]-p[1])*(q[0]-p[0])))
			}
		}
	}
	sort.Float64s(xs)
	chords := make([][2]float64, 0, len(xs)/2)
	for i := 0; i+1 < len(xs); i += 2 {
		chords = append(chords, [2]float64{xs[i], xs[i+1]})
	}
	return chords
}

// shared gives what two lists of stretches have in common.
func shared(a, b [][2]float64) [][2]float64 {
	var out [][2]float64
	for i, j := 0, 0; i < len(a) && j < len(b); {
		from, to := math.Max(a[i][0], b[j][0]), math.Min(a[i][1], b[j][1])
		if to > from {
			out = append(out, [2]float64{from, to})
		}
		if a[i][1] < b[j][1] {
			i++
		} else {
			j++
		}
	}
	return out
}
