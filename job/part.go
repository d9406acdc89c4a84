package job

import (
	"math"

	"gopkg.in/yaml.v3"

	"stripwright/geometry"
	"stripwright/geometry/grow"
	"stripwright/geometry/length"
	"stripwright/laminate"

	"github.com/paulmach/orb"
)

// Sizes of a part that are taken for one: outside of these the unit is wrong.
const (
	leastPart = 20.0
	mostPart  = 20000.0
)

// part reads the part: its outline, brought into the part frame, and the blank.
func (r *reading) part(top block) {
	r.place = geometry.Region.Snapped
	n := top.need("part", "say what is built: part: {outline: hatch.dxf, trim: 25}")
	if n == nil {
		return
	}
	r.partNode = top.keys["part"]
	b, ok := r.block(n, r.partNode, "part", partKeys)
	if !ok {
		return
	}
	p := &r.job.Part
	p.Name = r.job.Title
	if n := b.value("name"); n != nil {
		p.Name, _ = r.name(n, "name", mostTitle)
	}
	r.frame(b)
	r.partTrim(b)
	net, ok := r.partOutline(b)
	if ok && r.partSize(b.keys["outline"], net) {
		r.inDrawing = net
		r.comeNear(b.keys["outline"], net)
		p.Net = r.place(net)
		r.blank(b)
	}
}

// frame reads from which side the part is drawn, where 0° lies and where the
// load runs.
func (r *reading) frame(b block) {
	p := &r.job.Part
	p.DrawnFrom = laminate.LayingSide
	r.drawnFrom = b.keys["drawn_from"]
	if n := b.value("drawn_from"); n != nil {
		if side, ok := r.choice(n, "drawn_from", laminate.LayingSide, laminate.ToolSide); ok {
			p.DrawnFrom = side
		}
	}
	if n := b.value("zero"); n != nil {
		p.ZeroDeg, _ = r.angle(n, "zero")
	}
	if n := b.value("load"); n != nil {
		if deg, ok := r.angle(n, "load"); ok {
			p.LoadDeg = &deg
		}
	}
	mirrored := p.DrawnFrom == laminate.ToolSide
	r.place = placing(mirrored, p.ZeroDeg)
	if !mirrored {
		return
	}
	r.note(r.drawnFrom, "drawn_from", "drawn from the tool side: mirrored on reading, x to -x, with its holes and keep_clear")
	if p.ZeroDeg != 0 {
		r.note(b.keys["zero"], "zero", "zero %v° is counted counter-clockwise as seen from the laying side, after the mirror", p.ZeroDeg)
	}
}

// placing gives the move from the drawing to the part frame: mirrored x to -x
// when it is drawn from the tool side, then turned by -zero, and snapped once.
func placing(mirrored bool, zeroDeg float64) func(geometry.Region) geometry.Region {
	mirror, turn := geometry.MirrorX(), geometry.Turned(-zeroDeg)
	return func(g geometry.Region) geometry.Region {
		return g.Map(func(p orb.Point) orb.Point {
			if mirrored {
				p = mirror.Apply(p)
			}
			if zeroDeg != 0 {
				p = turn.Apply(p)
			}
			return p
		})
	}
}

// farOff is how far a part may lie from the origin of its drawing, in mm: beyond
// it, coordinates say nothing to a reader, and sums of them lose digits.
const farOff = 100_000.0

// comeNear moves a part that is drawn far off to the origin, whole millimetres,
// and whatever is written in its coordinates with it.
func (r *reading) comeNear(at *yaml.Node, net geometry.Region) {
	b := net.Bounds()
	if max(math.Abs(b.Min[0]), math.Abs(b.Min[1]), math.Abs(b.Max[0]), math.Abs(b.Max[1])) <= farOff {
		return
	}
	by := point{-math.Floor(b.Min[0]), -math.Floor(b.Min[1])}
	place := r.place
	r.place = func(g geometry.Region) geometry.Region {
		return place(g.Map(func(p orb.Point) orb.Point { return orb.Point{p[0] + by[0], p[1] + by[1]} }))
	}
	r.note(at, "outline", "the part is drawn more than 100 m from the origin: moved by (%.0f, %.0f) mm, and with it outlines and keep_clear, which are in the drawing's coordinates", by[0], by[1])
}

// partTrim reads the trim allowance.
func (r *reading) partTrim(b block) {
	if n := b.need("trim", "write trim: 25, the allowance all round, or trim: 0; it is never assumed"); n != nil {
		r.job.Part.TrimMM, _ = r.lengthIn(n, "trim", limits{0, 500})
	}
}

// partOutline reads the net edge in the coordinates of the drawing.
func (r *reading) partOutline(b block) (geometry.Region, bool) {
	n := b.need("outline", "name a drawing beside this file, or write a shape: {rectangle: [1370, 620]}")
	switch {
	case n == nil:
		return geometry.Region{}, false
	case n.Kind == yaml.ScalarNode:
		return r.drawnPart(b, n)
	}
	for _, key := range []string{"layer", "drawing_units", "join", "which"} {
		if at := b.keys[key]; at != nil {
			r.refuse(at, key, "take it out", "%s is for a drawing, and this outline is written in the job", key)
		}
	}
	return r.shape(n, b.keys["outline"], "outline", shapeKeys, partChord)
}

// partSize stops at a part whose size shows that its unit is wrong.
func (r *reading) partSize(at *yaml.Node, net geometry.Region) bool {
	w, h := net.Size()
	if min(w, h) >= leastPart && max(w, h) <= mostPart {
		return true
	}
	cure := "write units: with the unit of the numbers (" + string(r.units) + " now), or the unit with each number"
	if r.partDrawing != nil {
		cure = "say drawing_units: mm, cm, m, in or ft if the drawing is in another unit"
	}
	r.refuse(at, ruleSize, cure, "the part measures %s by %s (%s by %s): parts from %s to %s in a side are taken",
		length.MM(w), length.MM(h), length.Inches(w), length.Inches(h), spelt(leastPart), spelt(mostPart))
	return false
}

// blank grows the net edge by the trim allowance.
func (r *reading) blank(b block) {
	p := &r.job.Part
	corner := grow.Mitred
	if n := b.value("corners"); n != nil {
		if word, ok := r.choice(n, "corners", "mitred", "round"); ok && word == "round" {
			corner = grow.Round
		}
	} else if !b.has("corners") && p.TrimMM > 0 {
		r.assume(b.keys["trim"], "corners", "mitred corners of the trim allowance")
	}
	p.Blank = p.Net
	if p.TrimMM == 0 {
		return
	}
	blank, err := grow.Blank(p.Net, p.TrimMM, corner)
	if err != nil {
		r.refuse(b.keys["trim"], "trim", "check the outline and the allowance", "the blank cannot be made: %s", err)
		return
	}
	p.Blank = blank
	if closed := len(p.Net.Holes) - len(blank.Holes); closed > 0 {
		r.note(b.keys["trim"], "trim", "%d of %d holes are closed by the trim allowance: the cloth runs over them", closed, len(p.Net.Holes))
	}
}
