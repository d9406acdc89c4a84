package book

import (
	"html/template"
	"math"
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/layup"
	"stripwright/output/sheet"
)

// Sizes of lettering in units. The style sheet draws ids and names larger on a
// phone, up to the size that their class names.
const (
	idSize     = 30.0
	nameSize   = 24.0
	figureSize = 26.0
	fromSize   = 18.0
)

// idSizes are the sizes that an id may have, the largest first.
var idSizes = []float64{44, 36, 30, 25, 21, 17, 14, 11}

// plyMap draws the map of one ply in one view.
type plyMap struct {
	ink
	room
	plan     laminate.Plan
	g        ground
	v        view
	index    int
	ply      laminate.PlanPly
	measured layup.PlyMeasures
	marks    []layup.Mark
}

// drawPly gives the map of the ply at an index, a drawing for each view.
func (b *book) drawPly(index int, marks []layup.Mark) []figure {
	var out []figure
	for _, v := range b.ground.views {
		m := &plyMap{
			plan: b.plan, g: b.ground, v: v, index: index,
			ply: b.plan.Plies[index], measured: b.measured[index], marks: marks,
		}
		m.edge = v.shown()
		out = append(out, figure{SVG: template.HTML(m.draw()), Words: v.words})
	}
	return out
}

func (m *plyMap) draw() []byte {
	n := strconv.Itoa(m.index + 1)
	m.open(m.v.box, "map", "Map of ply "+strconv.Itoa(m.ply.Ply)+", seen from the laying side; the table of joints says the same in words")
	m.use("s"+n, "shade")
	m.use("blank", "blank")
	if m.ply.Outline != "" {
		m.use("o"+n, "own")
	}
	m.use("net", "net")
	m.earlier()
	if len(m.ply.Joints) > 0 {
		m.use("j"+n, "joint")
	}
	m.corners(m.plan)
	m.zero()
	m.ends()
	m.numbered()
	small := m.ids()
	m.names()
	for _, c := range small {
		m.callOut(c.id, c.at)
	}
	m.distances()
	m.fault(m.plan)
	m.text("</svg>")
	return m.b
}

// earlier draws the joints below that count as thin dots.
func (m *plyMap) earlier() {
	if len(m.measured.Under) == 0 {
		return
	}
	m.text(`<path class="below" d="`)
	for _, u := range m.measured.Under {
		m.joint(m.g, u.Joint)
	}
	m.text(`"/>`)
}

// corners letters the named corners outside the blank, the datum white on black
// with a pennant at the corner itself.
func (m *plyMap) corners(p laminate.Plan) {
	ring := p.Part.Net.Oriented().Outer
	for i, c := range p.Part.Corners {
		at := m.g.at(orb.Point(c.At))
		out := sheet.Outward(ring, orb.Point(c.At))
		far := float64(p.Part.TrimMM/m.g.k*1.3) + 34
		c0 := orb.Point{at[0] + float64(far*out[0]), at[1] - float64(far*out[1])}
		box := boxAbout(c0, 44, 44, 0)
		if !m.free(box) {
			continue
		}
		m.take(box)
		class := "corner"
		if i == 0 {
			class = "corner datum"
			m.text(`<use href="#pennant" class="pennant" x="`)
			m.num(at[0])
			m.text(`" y="`)
			m.num(at[1])
			m.text(`"/>`)
			m.take(orb.Bound{Min: orb.Point{at[0] - 2, at[1] - 47}, Max: orb.Point{at[0] + 30, at[1]}})
		}
		m.text(`<g class="`, class, `"><path class="lead" d="`)
		m.lines([]orb.Point{at, c0}, false)
		m.text(`"/><circle`)
		m.attr("cx", c0[0])
		m.attr("cy", c0[1])
		m.text(` r="21"/>`)
		m.centred(c0, 28, "b", 0, c.Name)
		m.text("</g>")
	}
}

// centred writes words with their middle at a place, turned counter-clockwise.
func (w *ink) centred(at orb.Point, size float64, class string, deg float64, words string) {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	down := capShare * size / 2
	x, y := at[0]+float64(down*sin), at[1]+float64(down*cos)
	w.text(`<text`)
	if class != "" {
		w.text(` class="`, class, `"`)
	}
	if deg == 0 {
		w.attr("x", x)
		w.attr("y", y)
	} else {
		w.text(` transform="translate(`)
		w.pair(orb.Point{x, y})
		w.text(`)rotate(`)
		w.num(-deg)
		w.text(`)"`)
	}
	w.attr("font-size", size)
	w.text(">")
	w.words(words)
	w.text("</text>")
}

// zero draws the 0° arrow in the lower left corner of the view.
func (m *plyMap) zero() {
	x, y := m.v.box.Min[0]+70, m.v.box.Max[1]-24
	m.take(orb.Bound{Min: orb.Point{x - 60, y - 18}, Max: orb.Point{x + 100, y + 18}})
	m.text(`<use href="#arrow" class="zero"`)
	m.attr("x", x)
	m.attr("y", y)
	m.text(`/>`)
	m.centred(orb.Point{x + 76, y}, 26, "b", 0, "0°")
}

// fault hatches the drawing of a plan that may not be cut.
func (m *plyMap) fault(p laminate.Plan) { m.barred(m.v.box, len(sheet.Faults(p.Checks)) > 0) }

// barred hatches a drawing and writes the stamp across it.
func (w *ink) barred(box orb.Bound, faulty bool) {
	if !faulty {
		return
	}
	c := box.Center()
	size := math.Min(90, 0.5*(box.Max[1]-box.Min[1]))
	w.text(`<rect class="bar" fill="url(#fault)"`)
	w.attr("x", box.Min[0])
	w.attr("y", box.Min[1])
	w.attr("width", box.Max[0]-box.Min[0])
	w.attr("height", box.Max[1]-box.Min[1])
	w.text(`/><rect class="stampbox"`)
	long := wide(sheet.DoNotCut, size, true) + size
	w.attr("x", c[0]-float64(long/2))
	w.attr("y", c[1]-float64(0.7*size))
	w.attr("width", long)
	w.attr("height", 1.4*size)
	w.text(`/>`)
	w.centred(c, size, "stampwords b", 0, sheet.DoNotCut)
}
