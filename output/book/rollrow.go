package book

import (
	"html/template"
	"math"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/cutmap"
	"stripwright/output/sheet"
)

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
	r.text(`<path class="edge" d="`)
	r.lines([]orb.Point{{left, 0}, {right, 0}}, false)
	r.lines([]orb.Point{{left, high}, {right, high}}, false)
	r.text(`"/>`)
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
		r.centred(orb.Point{left - 26, high / 2}, math.Min(20, high/7), "", 90, "goes on")
		r.goesOnAt(left, high)
	}
	if r.last {
		r.text(`<path class="lastcut" d="`)
		r.lines([]orb.Point{{right, -14}, {right, high + 14}}, false)
		r.text(`"/>`)
	} else {
		r.goesOnAt(right, high)
	}
}

// goesOnAt marks where a row ends and the cloth does not: dots, no cut.
func (r *rollRow) goesOnAt(x, high float64) {
	r.text(`<path class="goeson" d="`)
	r.lines([]orb.Point{{x, 0}, {x, high}}, false)
	r.text(`"/>`)
}
