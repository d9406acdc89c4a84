package pdf

import (
	"math"
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/output/sheet"
)

// page writes the content of one page: first the scale, then millimetres from
// the lower left corner.
type page struct {
	b            []byte
	left, bottom float64
	far          bool // a coordinate could not be drawn
	fonts        *fonts
	ink          [2]string // in force: of lines, of areas
}

func (p *page) text(s string) { p.b = append(p.b, s...) }

func (p *page) num(v float64) {
	p.far = p.far || !sheet.Drawable(v)
	p.b = append(sheet.AppendMM(p.b, v), ' ')
}

func (p *page) point(q orb.Point) {
	p.num(q[0] - p.left)
	p.num(q[1] - p.bottom)
}

func (p *page) scene(s sheet.Scene) {
	scale := strconv.FormatFloat(pointsPerMM, 'f', 10, 64)
	p.text(scale + " 0 0 " + scale + " 0 0 cm 1 j\n")
	p.ink = [2]string{sheet.Black, sheet.Black}
	for _, l := range s.Layers {
		p.layer(l)
	}
}

func (p *page) layer(l *sheet.Layer) {
	kept := p.ink
	if l.Clipped() {
		p.text("q ")
		p.box(l.Clip)
		p.text("W n\n")
	}
	for _, s := range l.Shapes {
		p.shape(s)
	}
	for _, t := range l.Texts {
		p.lettering(t)
	}
	if l.Clipped() {
		p.text("Q\n")
		p.ink = kept
	}
}

func (p *page) box(b orb.Bound) {
	p.point(b.Min)
	p.num(b.Max[0] - b.Min[0])
	p.num(b.Max[1] - b.Min[1])
	p.text("re ")
}

// shape paints an area, its hatching and its line.
func (p *page) shape(s sheet.Shape) {
	stroked := s.Pen.Ink != "" && s.Pen.Width > 0
	filled := s.Fill.Ink != "" && s.Fill.Spacing <= 0
	if s.Fill.Ink != "" && s.Fill.Spacing > 0 {
		p.hatch(s)
	}
	if filled {
		p.setInk(1, s.Fill.Ink)
	}
	if stroked {
		p.setPen(s.Pen)
	}
	if !filled && !stroked {
		return
	}
	p.path(s)
	switch {
	case filled && stroked:
		p.text("B*\n")
	case filled:
		p.text("f*\n")
	default:
		p.text("S\n")
	}
}

func (p *page) setPen(pen sheet.Pen) {
	p.setInk(0, pen.Ink)
	p.num(pen.Width)
	p.text("w [")
	for _, d := range pen.Dash {
		if d <= 0 {
			break
		}
		p.num(d)
	}
	p.text("] 0 d ")
}

// setInk changes the ink of lines (0) or areas (1): a share of grey where it is
// grey, so that black prints black alone.
func (p *page) setInk(which int, ink string) {
	if p.ink[which] == ink {
		return
	}
	p.ink[which] = ink
	var c [3]string
	for i := range c {
		v, err := strconv.ParseUint(ink[1+2*i:3+2*i], 16, 8)
		if err != nil {
			panic("ink " + ink + ": " + err.Error()) // inks are constants of the program
		}
		c[i] = strconv.FormatFloat(math.Round(float64(v)/255*1000)/1000, 'f', -1, 64)
	}
	if c[0] == c[1] && c[1] == c[2] {
		p.text(c[0] + [2]string{" G ", " g "}[which])
		return
	}
	p.text(c[0] + " " + c[1] + " " + c[2] + [2]string{" RG ", " rg "}[which])
}

// arc is how far the guiding points of a quarter circle lie along its tangents,
// in radii: 4/3 (√2 - 1).
const arc = 0.5522847498307936

func (p *page) path(s sheet.Shape) {
	if s.Radius > 0 {
		p.circle(s.Centre, s.Radius)
		return
	}
	for _, l := range s.Lines {
		if upright(l) {
			p.box(orb.Bound{Min: l.Points[0], Max: l.Points[2]})
			continue
		}
		for i, q := range l.Points {
			p.point(q)
			p.text([2]string{"m ", "l "}[min(i, 1)])
		}
		if l.Closed {
			p.text("h ")
		}
	}
}

// upright says whether a line is a box with its sides along x and y, from its
// lower left corner anticlockwise.
func upright(l sheet.Line) bool {
	q := l.Points
	return l.Closed && len(q) == 4 && q[0][1] == q[1][1] && q[1][0] == q[2][0] && q[2][1] == q[3][1] && q[3][0] == q[0][0] &&
		q[2][0] > q[0][0] && q[2][1] > q[0][1]
}

func (p *page) circle(c orb.Point, r float64) {
	at := func(x, y float64) { p.point(sheet.Along(c, orb.Point{x, y}, r)) }
	at(1, 0)
	p.text("m ")
	for _, q := range [4][6]float64{{1, arc, arc, 1, 0, 1}, {-arc, 1, -1, arc, -1, 0}, {-1, -arc, -arc, -1, 0, -1}, {arc, -1, 1, -arc, 1, 0}} {
		at(q[0], q[1])
		at(q[2], q[3])
		at(q[4], q[5])
		p.text("c ")
	}
	p.text("h ")
}

// mostHatch keeps the hatching of a huge area from filling the file: beyond so
// many lines they stand farther apart.
const mostHatch = 2000.0

// hatch draws lines at 45° over the box of a shape, clipped to its outline.
func (p *page) hatch(s sheet.Shape) {
	b := bounds(s)
	if b.IsEmpty() || !sheet.Drawable(b.Min[0]) || !sheet.Drawable(b.Max[0]) || !sheet.Drawable(b.Min[1]) || !sheet.Drawable(b.Max[1]) {
		return
	}
	wide, high := b.Max[0]-b.Min[0], b.Max[1]-b.Min[1]
	step := math.Max(s.Fill.Spacing*math.Sqrt2, (wide+high)/mostHatch)
	p.text("q ")
	kept := p.ink
	p.path(s)
	p.text("W* n ")
	p.setPen(sheet.Solid(s.Fill.Ink, s.Fill.Width))
	for x := float64(math.Floor((b.Min[0]-high-b.Min[1])/step)*step) + b.Min[1]; x < b.Max[0]; x += step {
		p.rule(orb.Point{x, b.Min[1]}, orb.Point{x + high, b.Max[1]})
		if s.Fill.Crossed {
			p.rule(orb.Point{x, b.Max[1]}, orb.Point{x + high, b.Min[1]})
		}
	}
	p.text("S Q\n")
	p.ink = kept
}

func (p *page) rule(from, to orb.Point) {
	p.point(from)
	p.text("m ")
	p.point(to)
	p.text("l ")
}

// bounds gives the box about a shape, empty for one without points.
func bounds(s sheet.Shape) orb.Bound {
	if s.Radius > 0 {
		return s.Centre.Bound().Pad(s.Radius)
	}
	b := orb.Bound{Min: orb.Point{1, 1}, Max: orb.Point{-1, -1}}
	first := true
	for _, l := range s.Lines {
		for _, q := range l.Points {
			if first {
				b, first = q.Bound(), false
			}
			b = b.Extend(q)
		}
	}
	return b
}
