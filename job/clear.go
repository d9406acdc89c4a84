package job

import (
	"fmt"
	"math"

	"gopkg.in/yaml.v3"

	"stripwright/geometry"
	"stripwright/geometry/drawing"
	"stripwright/geometry/grow"
	"stripwright/geometry/length"
)

// clearRegions reads one entry of keep_clear: a shape, a layer of the drawing,
// or all holes up to a size, grown where it says so. The regions come back in
// the part frame.
func (r *reading) clearRegions(b block) []geometry.Region {
	by := 0.0
	if n := b.value("grow"); n != nil {
		by, _ = r.lengthIn(n, "grow", limits{0, 1000})
	}
	kind := r.oneOf(b, "points", "rectangle", "circle", "ellipse", "layer", "holes_up_to")
	if kind == "" || b.value(kind) == nil {
		return nil
	}
	var found []geometry.Region
	switch kind {
	case "layer":
		found = r.layerRegions(b.value("layer"))
	case "holes_up_to":
		found = r.smallHoles(b.value("holes_up_to"))
	default:
		if g, ok := r.shapeOf(b, clearChord); ok {
			found = []geometry.Region{g}
			if kind != "points" && !b.has("at") {
				r.assume(b.at, "keep_clear", "that the keep_clear %s begins at 0, 0", kind)
			}
		}
	}
	var out []geometry.Region
	for _, g := range found {
		if placed, ok := r.clearRegion(b, g, by); ok {
			out = append(out, placed)
		}
	}
	return out
}

// clearRegion grows and places one region, and notes one that keeps nothing
// clear.
func (r *reading) clearRegion(b block, g geometry.Region, by float64) (geometry.Region, bool) {
	g = r.place(g)
	if by > 0 {
		grown, err := grow.Region(g, by)
		if err != nil {
			r.refuse(b.keys["grow"], "grow", "check the region", "it cannot be grown: %s", err)
			return g, false
		}
		g = grown
	}
	if c := g.Bounds().Center(); max(math.Abs(c[0]), math.Abs(c[1])) > 10*farOff {
		r.refuse(b.at, "keep_clear", "write it in the coordinates of the part's drawing, or move the drawing to its origin", "the keep_clear region lies more than 1 km from the part")
		return g, false
	}
	if blank := r.job.Part.Blank; !blank.Empty() && apart(g, blank) {
		r.note(b.at, "keep_clear", "the keep_clear region round %s lies outside the part: it keeps nothing clear", atPoint(g.Bounds().Center()))
	}
	return g, true
}

// smallHoles gives the holes of the part whose width and height are at most a
// size, filled.
func (r *reading) smallHoles(n *yaml.Node) []geometry.Region {
	most, ok := r.lengthIn(n, "holes_up_to", limits{0.1, mostPart})
	if !ok || r.inDrawing.Empty() {
		return nil
	}
	out, least := drawing.HolesUpTo(r.inDrawing, most)
	if len(out) == 0 {
		says := "the part has no holes"
		if len(r.inDrawing.Holes) > 0 {
			says = fmt.Sprintf("the smallest hole of the part measures %s", length.MM(least))
		}
		r.refuse(n, "holes_up_to", "correct the size, or take this entry out", "%s: nothing is kept clear by this", says)
	}
	return out
}

// clearAngles reads the angles of the plies that a region counts for; nil: all.
func (r *reading) clearAngles(b block) []geometry.Angle {
	n := b.value("angles")
	if n == nil {
		return nil
	}
	items := []*yaml.Node{n}
	if n.Kind != yaml.ScalarNode {
		var ok bool
		if items, ok = r.list(n, "angles", "[0, 90]"); !ok {
			return nil
		}
	}
	var out []geometry.Angle
	for _, item := range items {
		deg, ok := r.angle(item, "angles")
		if !ok {
			continue
		}
		a := geometry.NewAngle(deg)
		if !r.plyAt(a) {
			r.note(item, "keep_clear", "no ply lies at %v°: the region counts for none there", a.Degrees())
		}
		out = append(out, a)
	}
	return out
}

func (r *reading) plyAt(a geometry.Angle) bool {
	for _, p := range r.job.Plies {
		if p.Angle() == a {
			return true
		}
	}
	return false
}
