package grow

import (
	"errors"
	"fmt"
	"math"

	"github.com/paulmach/orb"

	"stripwright/geometry"
)

// micron is the number of grid steps in a millimetre.
const micron = 1000

// spot is a grid point, in whole micrometres from the local origin.
type spot struct{ x, y int64 }

// ring is an open ring of grid points with the material on its left: an outer
// ring runs counter-clockwise, a hole clockwise.
type ring []spot

// turn is twice the area of the triangle a, b, c: positive when c lies left of
// a to b. Coordinates are small enough for it to be exact.
func turn(a, b, c spot) int64 { return (b.x-a.x)*(c.y-a.y) - (b.y-a.y)*(c.x-a.x) }

func distance(a, b spot) float64 { return math.Hypot(float64(b.x-a.x), float64(b.y-a.y)) }

// area2 is twice the signed area, as a float64 of sufficient size.
func (r ring) area2() float64 {
	sum := 0.0
	for i := 1; i+1 < len(r); i++ {
		sum += float64(turn(r[0], r[i], r[i+1]))
	}
	return sum
}

func (r ring) length() float64 {
	sum := 0.0
	for i, p := range r {
		sum += distance(p, r[(i+1)%len(r)])
	}
	return sum
}

func length(rings []ring) float64 {
	sum := 0.0
	for _, r := range rings {
		sum += r.length()
	}
	return sum
}

// meanWidth is the width of a long strip of the same area and edge length.
func (r ring) meanWidth() float64 {
	l := r.length()
	if l == 0 {
		return 0
	}
	return math.Abs(r.area2()) / l
}

// straightened drops vertices that lie exactly between their neighbours, and
// spikes of no width.
func (r ring) straightened() ring {
	out := make(ring, 0, len(r))
	for _, p := range r {
		out = append(out, p)
		for len(out) >= 3 && turn(out[len(out)-3], out[len(out)-2], out[len(out)-1]) == 0 {
			out = append(out[:len(out)-2], out[len(out)-1])
			if out[len(out)-2] == out[len(out)-1] {
				out = out[:len(out)-1]
			}
		}
	}
	for len(out) >= 3 && turn(out[len(out)-2], out[len(out)-1], out[0]) == 0 {
		out = out[:len(out)-1]
	}
	for len(out) >= 3 && turn(out[len(out)-1], out[0], out[1]) == 0 {
		out = out[1:]
	}
	return out
}

// sound refuses rings that cross themselves: every winding number about a
// simple ring is 0 or 1.
func (r ring) sound(base int) error {
	if r.area2() == 0 {
		return fmt.Errorf("the outline has no area")
	}
	m, err := mapOf(r, base)
	if err != nil {
		return err
	}
	var at *spot
	for i, w := range m.ways {
		if m.left[i] >= 0 && m.left[i] <= 1 {
			continue
		}
		if p := m.spots[w.from]; at == nil || len(m.fan[w.from]) > 2 {
			at = &p
		}
		if len(m.fan[w.from]) > 2 {
			break
		}
	}
	if at != nil {
		return crossedError{*at}
	}
	return nil
}

// crossedError is a ring that crosses itself next to a spot.
type crossedError struct{ at spot }

func (e crossedError) Error() string { return "the outline crosses itself" }

// origin is the grid point near the middle of a region that coordinates are
// counted from, so that outlines far away cost no digits.
type origin struct{ x, y float64 }

func originOf(r geometry.Region) (origin, error) {
	for _, q := range r.Rings() {
		for _, p := range q {
			if math.IsNaN(p[0]-p[0]) || math.IsNaN(p[1]-p[1]) {
				return origin{}, fmt.Errorf("the outline has a coordinate that is not a number")
			}
		}
	}
	b := r.Bounds()
	if w, h := r.Size(); w > LargestMM || h > LargestMM {
		return origin{}, fmt.Errorf("the outline is %.0f × %.0f mm: larger than %.0f mm cannot be grown", w, h, LargestMM)
	}
	return origin{geometry.Snap((b.Min[0] + b.Max[0]) / 2), geometry.Snap((b.Min[1] + b.Max[1]) / 2)}, nil
}

// ring brings an orb ring, open or closed, to the grid, outer or hole.
func (o origin) ring(r orb.Ring, outer bool) ring {
	out := make(ring, 0, len(r))
	for _, p := range r {
		q := spot{int64(math.Round((p[0] - o.x) * micron)), int64(math.Round((p[1] - o.y) * micron))}
		if len(out) == 0 || out[len(out)-1] != q {
			out = append(out, q)
		}
	}
	for len(out) > 1 && out[0] == out[len(out)-1] {
		out = out[:len(out)-1]
	}
	out = out.straightened()
	if (out.area2() > 0) != outer {
		for i, j := 0, len(out)-1; i < j; i, j = i+1, j-1 {
			out[i], out[j] = out[j], out[i]
		}
	}
	return out
}

// point brings a spot back to millimetres.
func (o origin) point(p spot) orb.Point {
	return orb.Point{geometry.Snap(o.x + float64(p.x)/micron), geometry.Snap(o.y + float64(p.y)/micron)}
}

// placed tells a person where a ring crosses itself.
func (o origin) placed(err error) error {
	var c crossedError
	if !errors.As(err, &c) {
		return err
	}
	p := o.point(c.at)
	return fmt.Errorf("%w near (%v, %v)", err, p[0], p[1])
}

// region brings rings back to millimetres.
func (o origin) region(outer ring, holes []ring) geometry.Region {
	back := func(r ring) orb.Ring {
		out := make(orb.Ring, len(r))
		for i, p := range r {
			out[i] = o.point(p)
		}
		return out
	}
	g := geometry.Region{Outer: back(outer)}
	for _, h := range holes {
		g.Holes = append(g.Holes, back(h))
	}
	return g
}
