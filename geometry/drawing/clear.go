package drawing

import (
	"math"

	"stripwright/geometry"
)

// HolesUpTo gives the holes of a region whose width and height are at most so
// many mm, each filled: bolt holes, round which no joint may run. Smallest is
// the greater side of the smallest hole of all, infinite when there is none.
func HolesUpTo(r geometry.Region, most float64) (found []geometry.Region, smallest float64) {
	smallest = math.Inf(1)
	for _, h := range r.Holes {
		g := geometry.Region{Outer: h}.Oriented()
		w, height := g.Size()
		side := max(w, height)
		smallest = min(smallest, side)
		if geometry.Micrometres(side) <= geometry.Micrometres(most) {
			found = append(found, g)
		}
	}
	return found, smallest
}

// Filled gives regions without their holes: what lies in a ring is kept clear as
// well.
func Filled(regions []geometry.Region) []geometry.Region {
	var out []geometry.Region
	for _, g := range regions {
		out = append(out, geometry.Region{Outer: g.Outer}.Snapped())
	}
	return out
}

// aboutParts are notes of the reader that mean an outline of a part.
var aboutParts = map[string]bool{"several": true, "size": true, "island": true, "layers": true}

// OnLayers reads what lies on layers of a drawing, to be kept clear: filled, in
// the drawing's coordinates, without the notes that mean a part.
func OnLayers(name string, data []byte, o Options, layers []string) Drawing {
	o.Layers, o.Which = layers, 0
	d := Read(name, data, o)
	d.Regions = Filled(d.Regions)
	var notes []Note
	for _, n := range d.Notes {
		if !aboutParts[n.Rule] {
			notes = append(notes, n)
		}
	}
	d.Notes = notes
	return d
}
