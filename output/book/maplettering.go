package book

import (
	"math"
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/output/sheet"
)

// ends marks where the joints meet the net edge.
func (m *plyMap) ends() {
	for _, j := range m.measured.Joints {
		if j.InTrim {
			continue
		}
		for _, t := range j.Ends {
			at := m.g.at(t.At)
			m.text(`<circle class="end"`)
			m.attr("cx", at[0])
			m.attr("cy", at[1])
			m.text(` r="6"/>`)
			m.take(boxAbout(at, 13, 13, 0))
		}
	}
}

// numbered writes the numbers of the marks of the ply's own outline.
func (m *plyMap) numbered() {
	c := m.g.at(m.ply.Blank.Bounds().Center())
	for _, mark := range m.marks {
		at := m.g.at(mark.At)
		out := sheet.Towards(c, at)
		for _, far := range []float64{26, -26, 44, -44} {
			place := sheet.Along(at, out, far)
			if !m.try(boxAbout(place, 36, 36, 0)) {
				continue
			}
			m.text(`<g class="mark"><circle class="dot"`)
			m.attr("cx", at[0])
			m.attr("cy", at[1])
			m.text(` r="5"/><circle`)
			m.attr("cx", place[0])
			m.attr("cy", place[1])
			m.text(` r="17"/>`)
			m.centred(place, 22, "b", 0, mark.Name)
			m.text("</g>")
			break
		}
	}
}

// names writes J1, J2, … on the joints where there is room.
func (m *plyMap) names() {
	for _, j := range m.measured.Joints {
		from, to, ok := within(m.g.at(orb.Point(j.Joint.From)), m.g.at(orb.Point(j.Joint.To)), m.edge)
		if !ok {
			continue
		}
		long := wide(j.Name, nameSize, true) + 12
		along := []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88}
		if d := apart(from, to); d < 2.5*long {
			out := (float64(0.6*long) + 14) / math.Max(d, 1)
			along = []float64{1 + out, -out, 0.5}
		}
		for _, f := range along {
			c := sheet.Between(from, to, f)
			if !m.try(boxAbout(c, long, 34, 0)) {
				continue
			}
			m.text(`<g class="name"><rect`)
			m.attr("x", c[0]-float64(long/2))
			m.attr("y", c[1]-15)
			m.attr("width", long)
			m.text(` height="30"/>`)
			m.centred(c, nameSize, "b", 0, j.Name)
			m.text("</g>")
			break
		}
	}
}

// within gives the part of a stretch that lies in a box.
func within(a, b orb.Point, box orb.Bound) (from, to orb.Point, ok bool) {
	low, high := 0.0, 1.0
	for axis := range 2 {
		d := b[axis] - a[axis]
		if d == 0 {
			if a[axis] < box.Min[axis] || a[axis] > box.Max[axis] {
				return a, b, false
			}
			continue
		}
		t0, t1 := (box.Min[axis]-a[axis])/d, (box.Max[axis]-a[axis])/d
		low, high = math.Max(low, math.Min(t0, t1)), math.Min(high, math.Max(t0, t1))
	}
	if high <= low {
		return a, b, false
	}
	return sheet.Between(a, b, low), sheet.Between(a, b, high), true
}

// smallStrip is a strip without room for its id, and a place in it.
type smallStrip struct {
	id string
	at orb.Point
}

// ids writes the id of each strip along it, as large as there is room for; it
// gives the strips that have none.
func (m *plyMap) ids() (small []smallStrip) {
	frame := geometry.PlyFrame(geometry.NewAngle(m.ply.AngleDeg))
	turn := sheet.Upright(m.ply.AngleDeg)
	seen := m.g.part(m.edge)
	for _, s := range m.ply.Strips {
		shape := s.Shape
		if len(m.g.views) > 1 {
			shape = clipped(shape, seen)
		}
		if !shape.Empty() {
			shape = turned(shape, frame)
			if !m.id(s, shape, frame, turn) {
				small = append(small, smallStrip{s.ID, m.g.at(frame.Inverse().Apply(sheet.Inside(shape)))})
			}
		}
	}
	return small
}

func (m *plyMap) id(s laminate.Strip, shape geometry.Region, frame geometry.Frame, turn float64) bool {
	ratio := wide(s.ID, 1, true)
	at, h := sheet.Spot(shape, ratio/1.1, idSizes[0]*1.1*m.g.k, idSizes[len(idSizes)-1]*1.1*m.g.k)
	if h > 0 {
		c := m.g.at(frame.Inverse().Apply(at))
		for _, size := range idSizes {
			if size > h/1.1/m.g.k+0.01 {
				continue
			}
			if m.tryAll(boxesAlong(c, size*ratio, size*0.9, turn)) {
				m.centred(c, math.Min(size, idSize), idClass(size), turn, s.ID)
				return true
			}
		}
	}
	return false
}

// idClass names the size that an id has room for; on a phone it is written so
// large.
func idClass(size float64) string {
	if size <= idSize {
		return "b back"
	}
	return "b back i" + strconv.Itoa(int(size))
}

// callOut writes an id beside its strip with a line to it.
func (m *plyMap) callOut(id string, from orb.Point) {
	long := wide(id, fromSize, true)
	for far := 40.0; far < 330; far *= 1.3 {
		for step := range 16 {
			sin, cos := math.Sincos(float64(step) * math.Pi / 8)
			c := orb.Point{from[0] + float64(far*cos), from[1] + float64(far*sin)}
			box := boxAbout(c, long+6, fromSize, 0)
			if !m.try(box) {
				continue
			}
			m.text(`<path class="lead" d="`)
			m.lines([]orb.Point{from, nearestOf(box, from)}, false)
			m.text(`"/>`)
			m.centred(c, fromSize, "b back", 0, id)
			return
		}
	}
	m.centred(from, 11, "b back", 0, id) // no room anywhere: small, in its place
}

// turned turns a region without rounding it.
func turned(r geometry.Region, f geometry.Frame) geometry.Region {
	ring := func(ring orb.Ring) orb.Ring {
		out := make(orb.Ring, len(ring))
		for i, p := range ring {
			out[i] = f.Apply(p)
		}
		return out
	}
	out := geometry.Region{Outer: ring(r.Outer)}
	for _, h := range r.Holes {
		out.Holes = append(out.Holes, ring(h))
	}
	return out
}
