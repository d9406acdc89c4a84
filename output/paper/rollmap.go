package paper

import (
	"math"
	"sort"
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/output/cutmap"
	"stripwright/output/layup"
	"stripwright/output/page"
	"stripwright/output/sheet"
)

// Measures of a row of a roll's map in mm of paper.
const (
	rowLeft   = 13.0 // room before the cloth: free end, width
	rowRight  = 3.0
	figureOut = 4.5 // room of running figures, over and under the cloth
	callOut   = 4.5 // room of call-outs beyond them
	leastID   = 1.6
	lowMM     = 15.0 // cloth lower than this has no room for upright words beside it
)

// row is a stretch of the cloth on the page: along from, in mm of roll.
type row struct {
	*rollSection
	from, to float64
	left     float64 // where from lies on the page
	low      float64 // the cloth's right-hand edge, v = -edge
	called   []called
}

// called is a piece too small to write on.
type called struct {
	at    orb.Point
	words string
}

// mostMappedMM is the longest cloth that is drawn: longer than any that a person
// unrolls.
const mostMappedMM = 500_000.0

// reach is what of a drawing lies between two running lengths.
type reach[T any] struct {
	of        T
	from, far float64
}

// rows draws the cloth from the free end on, as many rows as it takes.
func (s *rollSection) rows() {
	if s.length.Long() > mostMappedMM {
		s.paragraph(page.Margin, s.size.Inner(), page.HeadHigh, true, "Not drawn: longer than "+sheet.MetreMark(mostMappedMM, s.plan.Units)+". State the length of the table in the job, and the roll is broken at clear cuts.")
		return
	}
	var pieces []reach[laminate.Piece]
	for _, p := range s.length.Pieces {
		b := p.Shape.Bounds()
		pieces = append(pieces, reach[laminate.Piece]{p, b.Min[0], b.Max[0]})
	}
	var cuts []reach[sheet.Line]
	for _, line := range cutmap.Cuts(s.length.Pieces) {
		b := orb.LineString(line.Points).Bound()
		cuts = append(cuts, reach[sheet.Line]{line, b.Min[0], b.Max[0]})
	}
	each := float64(math.Floor((s.size.Inner()-rowLeft-rowRight)*s.reduction/100) * 100)
	high := s.length.Roll.WidthMM/s.reduction + 2*(figureOut+callOut)
	for from := 0.0; from < s.length.Long(); from += each {
		s.need(high)
		r := &row{
			rollSection: s, from: from, to: math.Min(from+each, s.length.Long()),
			left: page.Margin + rowLeft, low: s.y - high + figureOut + callOut,
		}
		r.cloth()
		r.drawPieces(pieces, cuts)
		r.running()
		r.callOuts()
		s.y -= high + 1
	}
	s.y -= 2
}

// at takes a place of the roll onto the page.
func (r *row) at(p orb.Point) orb.Point {
	return orb.Point{r.left + float64((p[0]-r.from)/r.reduction), r.low + float64((p[1]+r.length.Edge())/r.reduction)}
}

// box gives the cloth on the page.
func (r *row) box() orb.Bound {
	return orb.Bound{Min: r.at(orb.Point{r.from, -r.length.Edge()}), Max: r.at(orb.Point{r.to, r.length.Roll.WidthMM - r.length.Edge()})}
}

// cloth draws the roll, all of it offcut for now, with its bad edges and ends.
func (r *row) cloth() {
	b := r.box()
	r.l.Box(sheet.Pen{}, sheet.Fill{Ink: "#8A8A8A", Spacing: 1.4, Width: 0.12}, b)
	if edge := r.length.Edge() / r.reduction; edge > 0 {
		for _, y := range [2]float64{b.Min[1], b.Max[1] - edge} {
			r.l.Box(sheet.Pen{}, sheet.Fill{Ink: "#8A8A8A"}, orb.Bound{Min: orb.Point{b.Min[0], y}, Max: orb.Point{b.Max[0], y + edge}})
		}
	}
	middle := (b.Min[1] + b.Max[1]) / 2
	words := "from " + sheet.MetreMark(r.from, r.plan.Units)
	if r.from == 0 {
		words = "FREE END"
		r.l.Box(sheet.Pen{}, sheet.Fill{Ink: sheet.Black}, orb.Bound{Min: orb.Point{b.Min[0] - 1.2, b.Min[1]}, Max: orb.Point{b.Min[0], b.Max[1]}})
	}
	high := b.Max[1] - b.Min[1]
	if high < lowMM {
		r.l.Write(sheet.Text{Height: 2.4, Bold: true, Words: words}.Fitted(rowLeft - 2).Centred(orb.Point{b.Min[0] - rowLeft/2, middle}))
		return
	}
	r.l.Write(sheet.Text{Height: 2.4, Bold: true, Turn: 90, Words: words}.Fitted(high).Centred(orb.Point{b.Min[0] - 4, middle}))
	r.l.Arrow(sheet.Black, 0.2, 1.4, orb.Point{b.Min[0] - 7.2, middle}, orb.Point{b.Min[0] - 7.2, b.Min[1]})
	r.l.Arrow(sheet.Black, 0.2, 1.4, orb.Point{b.Min[0] - 7.2, middle}, orb.Point{b.Min[0] - 7.2, b.Max[1]})
	r.l.Write(sheet.Text{Height: 2.4, Bold: true, Turn: 90, Words: sheet.Tape(r.length.Roll.WidthMM, r.plan.Units)}.Fitted(high).Centred(orb.Point{b.Min[0] - 9.6, middle}))
}

// drawPieces draws what of each piece lies in the row.
func (r *row) drawPieces(pieces []reach[laminate.Piece], cuts []reach[sheet.Line]) {
	window := orb.Bound{Min: orb.Point{r.from, -1e6}, Max: orb.Point{r.to, 1e6}}
	shapes, lines := &sheet.Layer{Name: "PIECES", Clip: r.box().Pad(0.15)}, &sheet.Layer{Name: "IDS"}
	r.leaf.Layers = append(r.leaf.Layers, shapes, lines)
	for _, one := range pieces {
		if one.far <= r.from || one.from >= r.to {
			continue
		}
		p := one.of
		fill := sheet.Fill{Ink: sheet.White}
		if p.Mirrored {
			fill.Ink = "#C9CED6"
		}
		shapes.Region(sheet.Pen{}, fill, p.Shape, r.at)
		r.describe(lines, p, r.onPage(p.Shape, window))
	}
	for _, one := range cuts {
		if one.far < r.from || one.from > r.to {
			continue
		}
		points := make([]orb.Point, len(one.of.Points))
		for i, q := range one.of.Points {
			points[i] = r.at(q)
		}
		shapes.Shapes = append(shapes.Shapes, sheet.Shape{Lines: []sheet.Line{{Points: points, Closed: one.of.Closed}}, Pen: sheet.Solid(sheet.Black, 0.25)})
	}
	shapes.Box(sheet.Solid(sheet.Black, 0.4), sheet.Fill{}, r.box())
}

// onPage gives what of a shape lies in the row, in mm of paper.
func (r *row) onPage(shape geometry.Region, window orb.Bound) geometry.Region {
	ring := func(in orb.Ring) orb.Ring {
		out := layup.Window(in, window)
		for i, p := range out {
			out[i] = r.at(p)
		}
		return out
	}
	out := geometry.Region{Outer: ring(shape.Outer)}
	for _, h := range shape.Holes {
		if hole := ring(h); len(hole) > 2 {
			out.Holes = append(out.Holes, hole)
		}
	}
	return out
}

// describe writes a piece's id, place in the cutting order and face into it, as
// much as there is room for; else it is called out beside the cloth.
func (r *row) describe(l *sheet.Layer, p laminate.Piece, seen geometry.Region) {
	if len(seen.Outer) < 3 {
		return
	}
	face := "FACE UP"
	if p.Mirrored {
		face = "FACE DOWN"
	}
	id := sheet.Text{Height: 1, Bold: true, Words: p.ID}
	cut := sheet.Text{Height: 0.72, Words: "cut " + strconv.Itoa(p.CutOrder) + ", " + face}
	if at, h := sheet.Spot(seen, (math.Max(id.Width(), cut.Width())+0.6)/2.6, 3*2.6, 2*2.6); h > 0 {
		size := h / 2.6
		id.Height, cut.Height = size, 0.72*size
		l.Write(id.Centred(orb.Point{at[0], at[1] + float64(0.55*size)}))
		l.Write(cut.Centred(orb.Point{at[0], at[1] - float64(0.75*size)}))
		return
	}
	if p.Mirrored {
		id.Words += " DOWN"
	}
	if at, h := sheet.Spot(seen, (id.Width()+0.4)/1.4, 2.6*1.4, leastID*1.4); h > 0 {
		id.Height = h / 1.4
		l.Write(id.Centred(at))
		return
	}
	r.called = append(r.called, called{sheet.Inside(seen), id.Words})
}

// callOuts names the small pieces over or under the cloth, whichever is nearer.
func (r *row) callOuts() {
	b := r.box()
	middle := (b.Min[1] + b.Max[1]) / 2
	sort.SliceStable(r.called, func(i, j int) bool { return r.called[i].at[0] < r.called[j].at[0] })
	free := [2]float64{page.Margin, page.Margin}
	for _, c := range r.called {
		side, y, end := 0, b.Min[1]-figureOut-2.6, b.Min[1]-figureOut-0.4
		if c.at[1] >= middle {
			side, y, end = 1, b.Max[1]+figureOut+0.8, b.Max[1]+figureOut+0.4
		}
		t := sheet.Text{Height: page.SmallHigh, Bold: true, Words: c.words}
		x := math.Max(c.at[0]-float64(t.Width()/2), free[side])
		if x+t.Width() > r.right() || x > c.at[0]+25 {
			continue // in the list of pieces only
		}
		free[side] = x + t.Width() + 2
		t.At = orb.Point{x, y}
		ids := r.leaf.Layers[len(r.leaf.Layers)-1]
		ids.Stroke(sheet.Solid(sheet.Black, 0.15), c.at, orb.Point{x + float64(t.Width()/2), end})
		ids.Disc(sheet.Pen{}, sheet.Fill{Ink: sheet.Black}, c.at, 0.4)
		ids.Write(t)
	}
}

// running draws the running lengths on both edges: a tick each 100 mm, a longer
// one with its figure each 500 mm.
func (r *row) running() {
	b := r.box()
	apart := 1.0
	for 500*apart/r.reduction < 12 {
		apart *= 10
	}
	for i := math.Ceil(r.from / (100 * apart)); float64(i)*apart*100 <= r.to; i++ {
		u := i * apart * 100
		long := math.Mod(i, 5) == 0
		out, width := 0.9, 0.15
		if long {
			out, width = 1.5, 0.35
		}
		x := r.at(orb.Point{u, 0})[0]
		r.l.Stroke(sheet.Solid(sheet.Black, width), orb.Point{x, b.Max[1]}, orb.Point{x, b.Max[1] + out})
		r.l.Stroke(sheet.Solid(sheet.Black, width), orb.Point{x, b.Min[1]}, orb.Point{x, b.Min[1] - out})
		if long {
			t := sheet.Text{Height: page.SmallHigh, Bold: true, Align: sheet.Middle, Words: sheet.MetreMark(u, r.plan.Units)}
			t.At = orb.Point{x, b.Max[1] + 2}
			r.l.Write(t)
			t.At = orb.Point{x, b.Min[1] - 2 - page.SmallHigh}
			r.l.Write(t)
		}
	}
}
