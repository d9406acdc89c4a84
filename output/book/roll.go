package book

import (
	"html/template"
	"math"
	"sort"
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/output/cutmap"
	"stripwright/output/sheet"
)

// Measures of a roll map in units. A long roll is drawn in rows, so that its
// cloth is at least leastCloth high, but in mostRows at most.
const (
	leastCloth = 120.0
	mostCloth  = 330.0
	rollLeft   = 62.0
	rollRight  = 18.0
	rollWide   = across - rollLeft - rollRight
	mostRows   = 500
)

// rollView is the page of one roll, or one table length of it.
type rollView struct {
	ID, Title, Fabric   string
	Width, Usable       string
	Face                string
	Pieces              int
	Long, From, Remains string
	FaceDown            int // pieces laid face down
	Rows                []figure
}

func (b *book) rollViews() []rollView {
	var out []rollView
	for i, l := range cutmap.Lengths(b.plan) {
		v := rollView{
			ID: "roll-" + strconv.Itoa(i+1), Title: lengthName(l), Fabric: l.Fabric.Name,
			Width: sheet.Tape(l.Roll.WidthMM, b.plan.Units), Face: faceUpWords(l.Fabric),
			Pieces: len(l.Pieces), Long: sheet.Tape(l.Long(), b.plan.Units), Remains: l.RemainderWords(b.plan.Units),
		}
		if l.Edge() > 0 {
			v.Usable = sheet.Tape(l.Roll.UsableWidthMM, b.plan.Units)
		}
		if l.From > 0 {
			v.From = sheet.Mark(l.From, b.plan.Units)
		}
		for _, piece := range l.Pieces {
			if piece.Mirrored {
				v.FaceDown++
			}
		}
		v.Rows = b.drawRoll(l)
		out = append(out, v)
	}
	return out
}

// lengthName says which roll, which copy of it and which table length.
func lengthName(l cutmap.Length) string {
	text := "Roll " + l.Roll.Roll
	if l.Roll.Copy > 1 {
		text += ", copy " + strconv.Itoa(l.Roll.Copy)
	}
	if l.Of > 1 {
		text += ", table length " + strconv.Itoa(l.Number) + " of " + strconv.Itoa(l.Of)
	}
	return text
}

func faceUpWords(f laminate.PlanFabric) string {
	if f.FaceIs == "" {
		return "face not named in the job"
	}
	return f.FaceIs + " up"
}

// rollRow is one row of a roll map: from and to are running lengths, k mm a unit.
type rollRow struct {
	ink
	room
	l        cutmap.Length
	units    string
	from, to float64
	k        float64
	first    bool
	last     bool
	above    float64 // room for ids over the cloth
}

func (b *book) drawRoll(l cutmap.Length) []figure {
	long, wide := math.Max(l.Long(), 1), l.Roll.WidthMM
	step := math.Max(wide/leastCloth*rollWide, long/mostRows)
	rows := int(math.Ceil(long/step - 1e-9))
	step = math.Max(long/float64(rows), wide/mostCloth*rollWide)
	var out []figure
	for i := range rows {
		r := &rollRow{
			l: l, units: b.plan.Units, k: step / rollWide, first: i == 0, last: i == rows-1,
			from: float64(float64(i) * step), to: math.Min(float64(float64(i+1)*step), long),
		}
		out = append(out, figure{SVG: template.HTML(r.draw(len(sheet.Faults(b.plan.Checks)) > 0))})
	}
	return out
}

// at takes a point of the roll onto the page; the cloth's left-hand edge, seen
// from the free end, lies at the top.
func (r *rollRow) at(p orb.Point) orb.Point {
	top := r.l.Roll.WidthMM - r.l.Edge()
	return orb.Point{rollLeft + (p[0]-r.from)/r.k, (top - p[1]) / r.k}
}

func (r *rollRow) draw(faulty bool) []byte {
	high := r.l.Roll.WidthMM / r.k
	left, right := rollLeft, rollLeft+(r.to-r.from)/r.k
	r.edge = orb.Bound{Min: orb.Point{2, 2}, Max: orb.Point{across - 2, high - 2}}
	pieces := r.seen()
	body := &rollRow{}
	*body = *r
	body.cloth(left, right, high)
	small := body.pieces(pieces)
	body.callOut(small)
	body.running(high)
	body.ends(left, right, high)
	box := orb.Bound{Min: orb.Point{0, -44 - body.above}, Max: orb.Point{across, high + 44}}
	body.barred(orb.Bound{Min: orb.Point{0, 0}, Max: orb.Point{across, high}}, faulty)
	r.open(box, "roll", "Cut map, running lengths "+sheet.MetreMark(r.from, r.units)+" to "+sheet.MetreMark(r.to, r.units)+"; the cut list says the same in figures")
	r.b = append(r.b, body.b...)
	r.text("</svg>")
	return r.b
}

// seen lists the pieces that lie in this row.
func (r *rollRow) seen() []laminate.Piece {
	var out []laminate.Piece
	for _, piece := range r.l.Pieces {
		b := piece.Shape.Bounds()
		if b.Max[0] > r.from && b.Min[0] < r.to {
			out = append(out, piece)
		}
	}
	return out
}

// cloth draws the roll: what no piece covers is offcut, hatched; bad edges are
// darker.
func (r *rollRow) cloth(left, right, high float64) {
	r.area("offcut", left, 0, right-left, high)
	if e := r.l.Edge() / r.k; e > 0 {
		r.area("badedge", left, 0, right-left, e)
		r.area("badedge", left, high-e, right-left, e)
	}
}

func (w *ink) area(class string, x, y, wide, high float64) {
	w.text(`<rect class="`, class, `"`)
	w.attr("x", x)
	w.attr("y", y)
	w.attr("width", wide)
	w.attr("height", high)
	w.text(`/>`)
}

// pieces draws the pieces with id, ply and side; it gives those that are too
// small to write on. A piece that lies in two rows is lettered where most of it
// lies.
func (r *rollRow) pieces(pieces []laminate.Piece) (small []laminate.Piece) {
	band := orb.Bound{Min: orb.Point{r.from, -1e9}, Max: orb.Point{r.to, 1e9}}
	shapes := make([]geometry.Region, len(pieces))
	for i, piece := range pieces {
		class := "up"
		if piece.Mirrored {
			class = "down"
		}
		shapes[i] = clipped(piece.Shape, band)
		r.text(`<path class="`, class, `" d="`)
		r.region(shapes[i], r.at)
		r.text(`"/>`)
	}
	for i, piece := range pieces {
		b, s := piece.Shape.Bounds(), shapes[i].Bounds()
		here, all := s.Max[0]-s.Min[0], b.Max[0]-b.Min[0]
		if 2*here < all && here < 0.4*(r.to-r.from) {
			r.goesOn(piece, shapes[i])
			continue
		}
		if !r.letter(piece, shapes[i]) {
			small = append(small, piece)
		}
	}
	return small
}

// letter writes id, and ply and side below it, into a piece; the side of one laid
// face down always.
func (r *rollRow) letter(piece laminate.Piece, shape geometry.Region) bool {
	under := plyWords(piece)
	if r.into(shape, piece.ID, under, 30, 13) {
		return true
	}
	return !piece.Mirrored && r.into(shape, piece.ID, "", 24, 13)
}

// goesOn letters the lesser part of a piece that lies in two rows, where there is
// room.
func (r *rollRow) goesOn(piece laminate.Piece, shape geometry.Region) {
	under := ""
	if piece.Mirrored {
		under = plyWords(piece)
	}
	r.into(shape, piece.ID+" …", under, 20, 13)
}

func (r *rollRow) into(shape geometry.Region, id, under string, most, least float64) bool {
	long, lines := wide(id, 1, true), 1.15
	if under != "" {
		long, lines = math.Max(long, wide(under, 0.7, true)), 2.1
	}
	at, h := sheet.Spot(shape, (long+0.3)/lines, most*lines*r.k, least*lines*r.k)
	if h == 0 {
		return false
	}
	size, c := h/lines/r.k, r.at(at)
	if under == "" {
		r.centred(c, size, "b", 0, id)
		return true
	}
	r.centred(orb.Point{c[0], c[1] - float64(0.45*size)}, size, "b", 0, id)
	r.centred(orb.Point{c[0], c[1] + float64(0.55*size)}, 0.7*size, "b", 0, under)
	return true
}

// plyWords says of which ply a piece is and which face is up when it is laid.
func plyWords(piece laminate.Piece) string {
	if piece.Mirrored {
		return "lay FACE DOWN"
	}
	return "lay face up"
}

// callOut names pieces too small to write on over the cloth, each with a line to
// it.
func (r *rollRow) callOut(small []laminate.Piece) {
	sort.SliceStable(small, func(i, j int) bool {
		return small[i].Shape.Bounds().Center()[0] < small[j].Shape.Bounds().Center()[0]
	})
	free := []float64{}
	for _, piece := range small {
		words := piece.ID
		if piece.Mirrored {
			words += " FACE DOWN"
		}
		long := wide(words, fromSize, true)
		at := r.at(sheet.Inside(piece.Shape))
		at[0] = math.Max(rollLeft+2, math.Min(at[0], across-rollRight-2))
		line := 0
		for line < len(free) && free[line] > at[0]-float64(long/2) {
			line++
		}
		if line == len(free) {
			free = append(free, 0)
		}
		x := math.Min(math.Max(at[0]-float64(long/2), free[line]), across-long-4)
		free[line] = x + long + 14
		y := -58 - float64(26*float64(line))
		r.above = math.Max(r.above, float64(26*float64(line+1))+4)
		r.text(`<path class="lead" d="`)
		r.lines([]orb.Point{at, {x + float64(long/2), y + 10}}, false)
		r.text(`"/><circle class="dot"`)
		r.attr("cx", at[0])
		r.attr("cy", at[1])
		r.text(` r="3"/>`)
		r.centred(orb.Point{x + float64(long/2), y}, fromSize, "b back", 0, words)
	}
}

// running draws running lengths from the free end along both edges.
func (r *rollRow) running(high float64) {
	figure := niceStep(110 * r.k)
	tick := figure / 5
	r.text(`<path class="tick" d="`)
	for i := math.Ceil(r.from/tick-1e-9) + 0; float64(i*tick) <= r.to+1e-6; i++ {
		x := r.at(orb.Point{float64(i * tick), 0})[0]
		out := 8.0
		if math.Mod(i, 5) == 0 {
			out = 15
		}
		r.lines([]orb.Point{{x, -out}, {x, 0}}, false)
		r.lines([]orb.Point{{x, high}, {x, high + out}}, false)
	}
	r.text(`"/>`)
	for i := math.Ceil(r.from/figure-1e-9) + 0; float64(i*figure) <= r.to+1e-6; i++ {
		u := float64(i * figure)
		x := math.Min(math.Max(r.at(orb.Point{u, 0})[0], 30), across-34)
		r.centred(orb.Point{x, -27}, 20, "b", 0, sheet.MetreMark(u, r.units))
		r.centred(orb.Point{x, high + 28}, 20, "b", 0, sheet.MetreMark(u, r.units))
	}
}

// niceStep rounds a length up to 1, 2 or 5 times a power of ten.
func niceStep(least float64) float64 {
	for step := 10.0; ; step *= 10 {
		for _, f := range []float64{1, 2, 5} {
			if f*step >= least {
				return f * step
			}
		}
	}
}

// ends marks the free end, the last cut, or that the roll goes on.
func (r *rollRow) ends(left, right, high float64) {
	if r.first {
		r.area("free", left-10, 0, 10, high)
		r.centred(orb.Point{left - 32, high / 2}, math.Min(28, high/7), "b", 90, "FREE END")
	} else {
		r.centred(orb.Point{left - 26, high / 2}, math.Min(20, high/8), "", 90, "goes on")
	}
	if r.last {
		r.text(`<path class="lastcut" d="`)
		r.lines([]orb.Point{{right, -14}, {right, high + 14}}, false)
		r.text(`"/>`)
	}
}
