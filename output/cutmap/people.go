package cutmap

import (
	"math"
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/output/sheet"
)

// board is a cut map for people while it is drawn: k is the height in mm of the
// lettering that stands for one unit of its layout.
type board struct {
	plan laminate.Plan
	l    Length
	k    float64
	room float64 // width of the heading and the title block
	low  float64 // edges of the cloth
	high float64
	s    sheet.Scene

	calledOut    []laminate.Piece
	above, below float64 // room of the call-outs over and under the cloth
	far          float64 // where the last of them ends
}

// People draws a length for people: shaded pieces with id, ply and face,
// running lengths on both edges, offcuts hatched, what is left of the roll.
func People(p laminate.Plan, l Length, sha string) sheet.Scene {
	b := &board{plan: p, l: l, k: math.Min(math.Max(l.Roll.WidthMM/14, 7), 32)}
	b.low, b.high = -l.Edge(), l.Roll.WidthMM-l.Edge()
	b.room = math.Min(math.Max(l.Long()+float64(10*b.k), 46*b.k), 90*b.k)
	b.s = sheet.Scene{Title: "Cut map " + name(l), About: mapWords(p, l)}
	paper := b.s.Layer("SHEET")
	for _, layer := range []string{"ROLL", "OFFCUT", "PIECES", "TEXT", "RUNNING", "GRAIN", "TITLE"} {
		b.s.Layer(layer)
	}
	b.cloth()
	b.pieces()
	b.callOut()
	b.running()
	b.freeEnd()
	b.remainder()
	top := b.heading()
	bottom := b.title(sha)
	if len(sheet.Faults(p.Checks)) > 0 {
		sheet.Stamp(&b.s, p.Checks, orb.Bound{Min: orb.Point{0, top}, Max: orb.Point{b.room, top + float64(10*b.k)}}, b.k)
		top += float64(11 * b.k)
	}
	right := math.Max(math.Max(l.Long()+float64(10*b.k), b.room), b.far)
	b.s.Box = orb.Bound{Min: orb.Point{-9 * b.k, bottom - b.k}, Max: orb.Point{right + b.k, top + b.k}}
	paper.Box(sheet.Pen{}, sheet.Fill{Ink: sheet.White}, b.s.Box)
	return b.s
}

// cloth draws the roll: everything that is not a piece is offcut, hatched; bad
// edges are darker.
func (b *board) cloth() {
	long := b.l.Long()
	offcut := sheet.Fill{Ink: "#8A8A8A", Spacing: 0.7 * b.k, Width: 0.06 * b.k}
	b.s.Layer("OFFCUT").Box(sheet.Pen{}, offcut, orb.Bound{Min: orb.Point{0, b.low}, Max: orb.Point{long, b.high}})
	if edge := b.l.Edge(); edge > 0 {
		for _, v := range []float64{b.low, b.high - edge} {
			b.s.Layer("OFFCUT").Box(sheet.Pen{}, sheet.Fill{Ink: "#8A8A8A"}, orb.Bound{Min: orb.Point{0, v}, Max: orb.Point{long, v + edge}})
		}
	}
	b.s.Layer("TEXT").Box(sheet.Solid(sheet.Black, 0.14*b.k), sheet.Fill{}, orb.Bound{Min: orb.Point{0, b.low}, Max: orb.Point{long, b.high}})
}

// Fills of pieces: light for face up, grey for pieces that lie face down.
var (
	faceUpFill   = sheet.Fill{Ink: "#FFFDF2"}
	faceDownFill = sheet.Fill{Ink: "#C9CED6"}
)

func (b *board) pieces() {
	layer := b.s.Layer("PIECES")
	for _, piece := range b.l.Pieces {
		fill := faceUpFill
		if piece.Mirrored {
			fill = faceDownFill
		}
		layer.Region(sheet.Pen{}, fill, piece.Shape, func(p orb.Point) orb.Point { return p })
	}
	pen := sheet.Solid(sheet.Black, 0.09*b.k)
	for _, line := range Cuts(b.l.Pieces) {
		layer.Shapes = append(layer.Shapes, sheet.Shape{Lines: []sheet.Line{line}, Pen: pen})
	}
	for _, piece := range b.l.Pieces {
		b.describe(piece)
	}
}

// describe writes id, ply and face, and the running lengths into a piece: as much
// of it as there is room for, but the face always when the piece is laid face
// down; a piece too small for it is called out beside the cloth.
func (b *board) describe(piece laminate.Piece) {
	for _, lines := range b.wordings(piece) {
		if b.inside(piece.Shape, lines) {
			return
		}
	}
	b.calledOut = append(b.calledOut, piece)
}

// wordings gives what may stand in a piece, the fullest first.
func (b *board) wordings(piece laminate.Piece) [][]sheet.Text {
	box := piece.Shape.Bounds()
	id := sheet.Text{Height: 1, Bold: true, Words: piece.ID}
	ply := sheet.Text{Height: 0.62, Words: plyWords(piece) + ", cut " + strconv.Itoa(piece.CutOrder)}
	reach := sheet.Text{Height: 0.62, Words: "from " + sheet.Mark(box.Min[0], b.plan.Units) + " to " + sheet.Mark(box.Max[0], b.plan.Units)}
	all := [][]sheet.Text{{id, ply, reach}, {id, ply}, {id}}
	if piece.Mirrored {
		all[2] = append(all[2], sheet.Text{Height: 0.62, Words: faceDown})
	}
	if b.l.Long() > longMM {
		return all[1:] // running lengths stand in the cut list
	}
	return all
}

// inside writes lines into a shape, if they can be read there.
func (b *board) inside(shape geometry.Region, lines []sheet.Text) bool {
	wide := 0.0
	for _, t := range lines {
		wide = math.Max(wide, t.Width())
	}
	high, least := []float64{0, 1.4, 2.5, 3.6}[len(lines)], 0.55*b.k
	if len(lines) == 1 {
		least = 0.42 * b.k
	}
	at, h := sheet.Spot(shape, (wide+0.6)/high, 1.8*b.k*high, least*high)
	if h == 0 {
		return false
	}
	size := h / high
	y := at[1] + float64(h/2) - float64(0.7*size)
	for i, t := range lines {
		t.Height *= size
		b.s.Layer("TEXT").Write(t.Centred(orb.Point{at[0], y - float64([]float64{0, 1.2, 2.2}[i]*size)}))
	}
	return true
}

// heading writes what to lay on the table; it returns the top of it.
func (b *board) heading() float64 {
	l, k := b.l, b.k
	layer := b.s.Layer("TITLE")
	width := "CHECK THE WIDTH BEFORE CUTTING: " + sheet.Tape(l.Roll.WidthMM, b.plan.Units)
	if l.Edge() > 0 {
		width += ", usable " + sheet.Tape(l.Roll.UsableWidthMM, b.plan.Units)
	}
	lines := []sheet.Text{
		{Height: 1.1 * k, Bold: true, Words: width},
		{Height: 1.4 * k, Bold: true, Words: "LAY THE ROLL FACE UP" + faceWords(l.Fabric)},
		{Height: 2 * k, Bold: true, Words: name(l) + "  " + l.Fabric.Name},
	}
	if l.From > 0 {
		lines = append([]sheet.Text{{Height: k, Words: "Lengths run from this length's own free end, " +
			sheet.Mark(l.From, b.plan.Units) + " down the roll."}}, lines...)
	}
	y := b.high + b.above + float64(4.6*k)
	for _, t := range lines {
		t.At = orb.Point{0, y}
		layer.Write(t.Fitted(b.room))
		y += t.Height + k
	}
	return y
}

// title draws the title block under the cloth; it returns the bottom of it.
func (b *board) title(sha string) float64 {
	rows := sheet.Rows(sheet.OfRoll(b.plan), sha, b.l.Fabric.Name)
	pieces := strconv.Itoa(len(b.l.Pieces)) + " pieces on " + sheet.Tape(b.l.Long(), b.plan.Units)
	rows = append(rows, []sheet.Entry{
		{Caption: "ROLL, COPY", Words: b.l.Roll.Roll + ", " + strconv.Itoa(b.l.Roll.Copy), Share: 2},
		{Caption: "FABRIC", Words: b.l.Fabric.Name + "  " + sheet.Number(b.l.Fabric.WeightGSM, 1) + " g/m²", Share: 3},
		{Caption: "ON THIS MAP", Words: pieces, Share: 3},
		{Caption: "REMAINDER", Words: b.l.RemainderWords(b.plan.Units), Share: 3},
	})
	top := b.low - b.below - float64(7*b.k)
	bottom := top - float64(23*b.k*0.62)
	sheet.Block(b.s.Layer("TITLE"), orb.Bound{Min: orb.Point{0, bottom}, Max: orb.Point{b.room, top}}, 0.5*b.k, rows)
	return bottom
}
