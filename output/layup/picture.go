package layup

import (
	"strings"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/output/sheet"
)

// View is how much of a ply is seen on a page, and where: Middle of the part
// frame lies in the middle of Box, Scale mm of paper for one of the part, and
// nothing is drawn outside Box. K is the unit of the lettering in mm: measures
// are 4 K high, the words under them 2.8 K.
type View struct {
	Box    orb.Bound
	Middle orb.Point
	Scale  float64
	K      float64
}

// Beside gives the room in units of K that lettering needs beside the part, left
// and right of it, and above and below.
func Beside() (wide, high float64) { return besideWide, besideHigh }

// Extent gives the box about everything that lies in the part frame: the part,
// and plies with an outline of their own.
func Extent(p laminate.Plan) orb.Bound { return bounds(p) }

// Seen gives what of the part frame a view shows.
func (v View) Seen() orb.Bound {
	w, h := float64((v.Box.Max[0]-v.Box.Min[0])/v.Scale/2), float64((v.Box.Max[1]-v.Box.Min[1])/v.Scale/2)
	return orb.Bound{
		Min: orb.Point{v.Middle[0] - w, v.Middle[1] - h}, Max: orb.Point{v.Middle[0] + w, v.Middle[1] + h},
	}
}

// Picture draws the ply at an index of the plan as a view shows it: strips, the
// joints below that count, outlines, joints with their measures, corners. Strips
// are named within their ply, S02 for P03-S02: the page names the ply. A plan at
// fault is hatched over.
func Picture(p laminate.Plan, index int, measured PlyMeasures, v View) []*sheet.Layer {
	ply := p.Plies[index]
	c := v.Box.Center()
	b := &board{plan: p, k: v.K, scale: v.Scale, extent: bounds(p), room: newPlacer(v.K), limit: v.Box}
	b.origin = orb.Point{c[0] - float64(v.Scale*v.Middle[0]), c[1] - float64(v.Scale*v.Middle[1])}
	b.room.limit = &v.Box
	seen := v.Seen()
	s := &plySheet{board: b, ply: ply, measured: measured, within: newWithin(ply.Blank), view: &seen}
	for _, layer := range []string{"STRIPS", "EARLIER", "OUTLINE", "JOINTS", "DATUM", "LEADERS", "MEASURES", "TEXT"} {
		s.s.Layer(layer)
	}
	s.outlines(&s.ply)
	s.corners()
	s.measureEnds()
	s.markPatch(Marks(p, ply))
	s.strips()
	s.joints()
	s.over(v.Box)
	for _, l := range s.s.Layers {
		l.Clip = v.Box
	}
	return s.s.Layers
}

// idWords names a strip on a drawing: within its ply where only a view is drawn.
func (s *plySheet) idWords(id string) string {
	if s.view == nil {
		return id
	}
	return ShortID(id)
}

// ShortID names a strip within its ply: S02 for P03-S02.
func ShortID(id string) string { return id[strings.LastIndexByte(id, '-')+1:] }

// seen gives what of a region lies in the view, for finding room in it.
func (s *plySheet) seen(r geometry.Region) geometry.Region {
	if s.view == nil {
		return r
	}
	out := geometry.Region{Outer: Window(r.Outer, *s.view)}
	for _, h := range r.Holes {
		if ring := Window(h, *s.view); len(ring) > 2 {
			out.Holes = append(out.Holes, ring)
		}
	}
	return out
}

// Window gives what of a ring lies in a box, as one ring: parts of it that the
// box cuts from each other stay joined along the box's edge (Sutherland and
// Hodgman, 1974). Empty where nothing lies in it.
func Window(ring orb.Ring, b orb.Bound) orb.Ring {
	for side := 0; side < 4 && len(ring) > 0; side++ {
		axis, limit, keep := side%2, b.Min[side%2], 1.0
		if side > 1 {
			limit, keep = b.Max[axis], -1
		}
		var out orb.Ring
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			in, next := keep*(p[axis]-limit) >= 0, keep*(q[axis]-limit) >= 0
			if in {
				out = append(out, p)
			}
			if in != next {
				cut := sheet.Between(p, q, (limit-p[axis])/(q[axis]-p[axis]))
				cut[axis] = limit
				out = append(out, cut)
			}
		}
		ring = out
	}
	return ring
}
