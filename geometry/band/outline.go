package band

import (
	"slices"

	"github.com/paulmach/orb"

	"stripwright/geometry"
)

// Point is a point of a ply's frame in whole micrometres.
type Point struct{ X, Y int64 }

// MM gives the point in millimetres.
func (p Point) MM() orb.Point {
	return orb.Point{geometry.Micrometre(p.X).MM(), geometry.Micrometre(p.Y).MM()}
}

// Ring is a closed line; the first vertex is not repeated.
type Ring []Point

// Outline is a region in the frame of a ply, ready to be cut: outer ring
// counter-clockwise, holes clockwise. It is not altered after New.
type Outline struct {
	Rings []Ring
	MinX  int64
	MaxX  int64
	MinY  int64
	MaxY  int64
	Area2 int64 // twice the area, µm²

	Pinched bool // a vertex occurs twice: the outline touches itself

	rungs *rungs // edges by height, nil where there are few
}

// alignUM is how close two vertex heights must be, in µm, to count as one:
// turning and snapping move an edge that runs along the roll by up to a
// micrometre at each end, and a joint on it must not leave a sliver.
const alignUM = 2

// New turns a region of the part frame into the frame of a ply at angle a.
func New(r geometry.Region, a geometry.Angle) *Outline {
	return FromRegion(r.Oriented(), geometry.PlyFrame(a))
}

// FromRegion turns an oriented region by any frame.
func FromRegion(r geometry.Region, f geometry.Frame) *Outline {
	o := &Outline{}
	for _, ring := range r.Rings() {
		if t := turnRing(ring, f); len(t) >= 3 {
			o.Rings = append(o.Rings, t)
		}
	}
	alignHeights(o.Rings)
	o.measure()
	o.Pinched = pinched(o.Rings)
	return o
}

func turnRing(ring orb.Ring, f geometry.Frame) Ring {
	out := make(Ring, 0, len(ring))
	for _, p := range ring {
		q := f.Apply(p)
		out = append(out, Point{int64(geometry.Micrometres(q[0])), int64(geometry.Micrometres(q[1]))})
	}
	return tidy(out)
}

// tidy drops vertices that repeat their predecessor.
func tidy(r Ring) Ring {
	out := r[:0]
	for _, p := range r {
		if len(out) == 0 || out[len(out)-1] != p {
			out = append(out, p)
		}
	}
	for len(out) > 1 && out[0] == out[len(out)-1] {
		out = out[:len(out)-1]
	}
	return out
}

// alignHeights gives vertices whose heights differ by alignUM or less the
// lowest of those heights. A run of close heights is split where it would move
// a vertex further than alignUM.
func alignHeights(rings []Ring) {
	var ys []int64
	for _, r := range rings {
		for _, p := range r {
			ys = append(ys, p.Y)
		}
	}
	slices.Sort(ys)
	ys = slices.Compact(ys)
	to := make(map[int64]int64)
	for i := 0; i < len(ys); {
		j := i + 1
		for ; j < len(ys) && ys[j]-ys[i] <= alignUM; j++ {
			to[ys[j]] = ys[i]
		}
		i = j
	}
	if len(to) == 0 {
		return
	}
	for i, r := range rings {
		for k := range r {
			if y, moved := to[r[k].Y]; moved {
				r[k].Y = y
			}
		}
		rings[i] = tidy(r)
	}
}

func (o *Outline) measure() {
	first := true
	for _, r := range o.Rings {
		o.Area2 += area2(r)
		for _, p := range r {
			if first {
				o.MinX, o.MaxX, o.MinY, o.MaxY, first = p.X, p.X, p.Y, p.Y, false
			}
			o.MinX, o.MaxX = min(o.MinX, p.X), max(o.MaxX, p.X)
			o.MinY, o.MaxY = min(o.MinY, p.Y), max(o.MaxY, p.Y)
		}
	}
	o.rungs = o.climb()
}

// Across gives the extent across the roll direction in µm.
func (o *Outline) Across() int64 { return o.MaxY - o.MinY }

// area2 gives twice the signed area of a ring in µm², taken about its first
// vertex: exact for rings up to about 2 km.
func area2(r Ring) int64 {
	if len(r) < 3 {
		return 0
	}
	var sum int64
	o := r[0]
	for i := 1; i+1 < len(r); i++ {
		sum += (r[i].X-o.X)*(r[i+1].Y-o.Y) - (r[i+1].X-o.X)*(r[i].Y-o.Y)
	}
	return sum
}
