package job

import (
	"fmt"
	"math"
	"strings"

	"github.com/paulmach/orb"
	"gopkg.in/yaml.v3"

	"stripwright/geometry"
	"stripwright/geometry/curve"
	"stripwright/geometry/length"
)

// Chord errors in mm of curves written in the job. Points lie on the curve, so
// a round outline is smaller by no more than this. Keep-clear circles are
// closer, so that no joint is let in by more than the check can see.
const (
	partChord  = 0.05
	clearChord = 0.005
)

// shape reads an outline that is written in the job: exactly one of points,
// rectangle, circle and ellipse. It comes back in the job's coordinates,
// snapped and sound.
func (r *reading) shape(n, at *yaml.Node, what string, set keySet, chord float64) (geometry.Region, bool) {
	b, ok := r.block(n, at, what, set)
	if !ok {
		return geometry.Region{}, false
	}
	return r.shapeOf(b, chord)
}

func (r *reading) shapeOf(b block, chord float64) (geometry.Region, bool) {
	kind := r.oneOf(b, "points", "rectangle", "circle", "ellipse")
	if kind == "" || b.value(kind) == nil {
		return geometry.Region{}, false
	}
	for _, extra := range []struct {
		key, with string
		not       bool
	}{{"corner", "rectangle", false}, {"at", "points", true}} {
		if k := b.keys[extra.key]; k != nil && (kind == extra.with) == extra.not {
			r.refuse(k, extra.key, "take it out", "%s does not go with %s", extra.key, kind)
			return geometry.Region{}, false
		}
	}
	outer, ok := r.outer(b, kind, chord)
	holes, ok2 := r.holes(b)
	if !ok || !ok2 {
		return geometry.Region{}, false
	}
	g := geometry.Region{Outer: outer, Holes: holes}.Snapped()
	return g, r.sound(b, kind, g, len(holes))
}

// oneOf gives the one key of several that stands in the block.
func (r *reading) oneOf(b block, kinds ...string) string {
	var found []string
	for _, k := range kinds {
		if b.has(k) {
			found = append(found, k)
		}
	}
	switch len(found) {
	case 1:
		return found[0]
	case 0:
		r.refuse(b.at, ruleMissing, "write one of "+strings.Join(kinds, ", "), "%s has no shape", b.what)
	default:
		r.refuse(b.keys[found[1]], ruleTwice, "keep one of them", "%s has two shapes, %s and %s", b.what, found[0], found[1])
	}
	return ""
}

// outer reads the outer ring of a shape.
func (r *reading) outer(b block, kind string, chord float64) (orb.Ring, bool) {
	n := b.value(kind)
	if kind == "points" {
		return r.points(n, "points")
	}
	size, ok := r.size(n, kind)
	at, ok2 := orb.Point{}, true
	if a := b.value("at"); a != nil {
		at, ok2 = r.point(a, "at")
	}
	if !ok || !ok2 || b.has("at") && b.value("at") == nil {
		return nil, false
	}
	half := orb.Point{size[0] / 2, size[1] / 2}
	if kind == "rectangle" {
		return r.rectangle(b, at, size, chord)
	}
	if !b.has("at") {
		at = half
	}
	return rounded(orb.Point{at[0] - half[0], at[1] - half[1]}, size, half, chord), true
}

// rectangle gives a rectangle from its lower left corner, with rounded corners
// where a radius is written.
func (r *reading) rectangle(b block, at, size orb.Point, chord float64) (orb.Ring, bool) {
	radius := 0.0
	if n := b.value("corner"); n != nil {
		v, ok := r.lengthIn(n, "corner", limits{0, mostPart})
		if !ok {
			return nil, false
		}
		if radius = v; radius > min(size[0], size[1])/2 {
			r.refuse(n, "corner", "write a radius of at most "+length.MM(min(size[0], size[1])/2), "corner radius %s is more than half the shorter side", r.both(n, radius))
			return nil, false
		}
	}
	return rounded(at, size, orb.Point{radius, radius}, chord), true
}

// rounded gives a box from its lower left corner, each corner a quarter of an
// ellipse with the half diameters r. With r half the size it is an ellipse or
// a circle; its farthest points right, up, left and down are always vertices.
func rounded(at, size, r orb.Point, chord float64) orb.Ring {
	var ring orb.Ring
	low := orb.Point{at[0] + r[0], at[1] + r[1]}
	high := orb.Point{at[0] + size[0] - r[0], at[1] + size[1] - r[1]}
	for i, c := range []orb.Point{{high[0], low[1]}, high, {low[0], high[1]}, low} {
		if r[0] == 0 || r[1] == 0 {
			ring = append(ring, c)
			continue
		}
		from := float64(i-1) * (math.Pi / 2)
		ring = append(ring, curve.Ellipse(c, orb.Point{r[0], 0}, orb.Point{0, r[1]}, from, math.Pi/2, chord)...)
	}
	return ring
}

// size reads the diameter of a circle, or width and height.
func (r *reading) size(n *yaml.Node, kind string) (orb.Point, bool) {
	if kind == "circle" {
		d, ok := r.lengthIn(n, kind, limits{0.1, 1e6})
		return orb.Point{d, d}, ok
	}
	items, ok := r.list(n, kind, "[width, height]")
	if !ok || !r.pair(n, items, kind, "width and height") {
		return orb.Point{}, false
	}
	w, ok := r.lengthIn(items[0], kind, limits{0.1, 1e6})
	h, ok2 := r.lengthIn(items[1], kind, limits{0.1, 1e6})
	return orb.Point{w, h}, ok && ok2
}

// pair refuses a list that does not hold two values.
func (r *reading) pair(n *yaml.Node, items []*yaml.Node, rule, what string) bool {
	if len(items) == 2 {
		return true
	}
	cure := "write two: [" + strings.ReplaceAll(what, " and ", ", ") + "]"
	if len(items) == 3 || len(items) == 4 {
		cure += "; if a comma is meant as a decimal point, write a point"
	}
	r.refuse(n, rule, cure, "%d values stand here for %s", len(items), what)
	return false
}

// point reads [x, y].
func (r *reading) point(n *yaml.Node, rule string) (orb.Point, bool) {
	items, ok := r.list(n, rule, "[x, y]")
	if !ok || !r.pair(n, items, rule, "x and y") {
		return orb.Point{}, false
	}
	x, ok := r.length(items[0], rule)
	y, ok2 := r.length(items[1], rule)
	return orb.Point{x, y}, ok && ok2
}

// points reads a ring. Only the first few wrong points are named.
func (r *reading) points(n *yaml.Node, rule string) (orb.Ring, bool) {
	items, ok := r.list(n, rule, "[[x, y], [x, y], …]")
	if !ok {
		return nil, false
	}
	ring, wrong := make(orb.Ring, 0, len(items)), 0
	for _, item := range items {
		p, ok := r.point(item, rule)
		if ok {
			ring = append(ring, p)
		} else if wrong++; wrong == 5 {
			return nil, false
		}
	}
	if wrong == 0 && len(ring) < 3 {
		r.refuse(n, rule, "write at least three", "an outline needs three points, here are %d", len(ring))
		return nil, false
	}
	return ring, wrong == 0
}

// holes reads the holes of a shape: lists of points, or shapes.
func (r *reading) holes(b block) (rings []orb.Ring, ok bool) {
	if !b.has("holes") {
		return nil, true
	}
	items, ok := r.list(b.value("holes"), "holes", "[[[x, y], …], {circle: 60, at: [200, 140]}]")
	for _, item := range items {
		if item.Kind == yaml.MappingNode {
			g, sound := r.shape(item, item, "hole", shapeKeys, partChord)
			if ok = ok && sound; sound && len(g.Holes) > 0 {
				r.refuse(item, "holes", "take its holes out", "a hole has holes of its own")
				ok = false
			}
			rings = append(rings, g.Outer)
			continue
		}
		ring, read := r.points(item, "holes")
		rings, ok = append(rings, ring), ok && read
	}
	return rings, ok
}

// atPoint gives a place in millimetres for a message.
func atPoint(p orb.Point) string {
	return fmt.Sprintf("(%s, %s) mm", strings.TrimSuffix(length.MM(p[0]), " mm"), strings.TrimSuffix(length.MM(p[1]), " mm"))
}
