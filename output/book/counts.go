package book

import (
	"html/template"
	"math"
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/output/layup"
	"stripwright/output/sheet"
)

// counts draws how many plies have a joint in each square of the part.
func (b *book) counts() ([]figure, string) {
	g := layup.CountJoints(b.plan)
	var out []figure
	for _, v := range b.ground.views {
		out = append(out, figure{SVG: template.HTML(b.drawCounts(g, v)), Words: v.words})
	}
	return out, "How many plies have a joint in each square of " + sheet.Tape(g.SizeMM, b.plan.Units) + ". Most: " + strconv.Itoa(g.Most) + "."
}

func (b *book) drawCounts(g *layup.Grid, v view) []byte {
	m := &plyMap{plan: b.plan, g: b.ground, v: v}
	m.edge = v.shown()
	m.open(v.box, "map", "Number of plies with a joint in each square of the part")
	m.squares(g)
	m.use("net", "net")
	for i, n := range g.N {
		m.count(g, i, n)
	}
	m.corners(b.plan)
	m.zero()
	m.fault(b.plan)
	m.text("</svg>")
	return m.b
}

// square gives the upper left corner of a square on the page, and its size.
func (m *plyMap) square(g *layup.Grid, i int) (at orb.Point, size float64) {
	size = g.SizeMM / m.g.k
	at = m.g.at(g.Corner(i%g.Cols, i/g.Cols))
	return orb.Point{at[0], at[1] - size}, size
}

// squares draws those of one shade as one shape.
func (m *plyMap) squares(g *layup.Grid) {
	var shades [5][]int
	for i, n := range g.N {
		if g.OnPart[i] {
			s := g.Shade(n)
			shades[s] = append(shades[s], i)
		}
	}
	for s, cells := range shades {
		if len(cells) == 0 {
			continue
		}
		m.text(`<path class="c`, strconv.Itoa(s), `" d="`)
		for _, i := range cells {
			p, size := m.square(g, i)
			m.lines([]orb.Point{p, {p[0] + size, p[1]}, {p[0] + size, p[1] + size}, {p[0], p[1] + size}}, true)
		}
		m.text(`"/>`)
	}
}

// count writes the number of a square, the most in bold.
func (m *plyMap) count(g *layup.Grid, i, n int) {
	p, size := m.square(g, i)
	c := orb.Point{p[0] + float64(size/2), p[1] + float64(size/2)}
	if n == 0 || !m.edge.Contains(c) {
		return
	}
	class := ""
	if n == g.Most {
		class = "b"
	}
	m.centred(c, math.Min(26, 0.7*size), class, 0, strconv.Itoa(n))
}
