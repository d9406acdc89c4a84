package cutmap

import (
	"math"

	"github.com/paulmach/orb"

	"stripwright/output/sheet"
)

// Ticks along both edges: one each 100 mm, a longer one with its figure each
// 500 mm, and every 5 m what roll this is. On a roll longer than any that a
// person unrolls, ten times as far apart, and again on one ten times as long.
const (
	tickMM   = 100.0
	figureMM = 500.0
	againMM  = 5000.0
	longMM   = 500_000.0
)

// running draws the running lengths from the free end on both edges.
func (b *board) running() {
	layer := b.s.Layer("RUNNING")
	var short, long sheet.Shape
	short.Pen, long.Pen = sheet.Solid(sheet.Black, 0.05*b.k), sheet.Solid(sheet.Black, 0.12*b.k)
	apart := 1.0
	for b.l.Long() > longMM*apart {
		apart *= 10
	}
	for i := 0; float64(i)*apart*tickMM <= b.l.Long(); i++ {
		u := float64(i) * apart * tickMM
		shape, out := &short, 0.5*b.k
		if math.Mod(u, apart*figureMM) == 0 {
			shape, out = &long, 0.9*b.k
			b.figure(layer, u)
		}
		for _, edge := range [2][2]float64{{b.high, out}, {b.low, -out}} {
			shape.Lines = append(shape.Lines, sheet.Line{Points: []orb.Point{{u, edge[0]}, {u, edge[0] + edge[1]}}})
		}
	}
	layer.Shapes = append(layer.Shapes, short, long)
	for u := againMM * apart; u+figureMM < b.l.Long(); u += float64(againMM * apart) {
		words := "roll " + b.l.Roll.Roll + ", FACE UP"
		layer.Write(sheet.Text{At: orb.Point{u, b.high + float64(2.7*b.k)}, Height: 0.8 * b.k, Ink: sheet.Grey, Words: words})
	}
}

func (b *board) figure(layer *sheet.Layer, u float64) {
	t := sheet.Text{Height: 0.8 * b.k, Bold: true, Align: sheet.Middle, Words: sheet.MetreMark(u, b.plan.Units)}
	t = t.Fitted(0.9 * figureMM)
	t.At = orb.Point{u, b.high + float64(1.2*b.k)}
	layer.Write(t)
	t.At = orb.Point{u, b.low - float64(1.2*b.k) - t.Height}
	layer.Write(t)
}

// freeEnd marks where lengths are measured from, and the width across it.
func (b *board) freeEnd() {
	layer, k := b.s.Layer("ROLL"), b.k
	middle := (b.low + b.high) / 2
	layer.Box(sheet.Pen{}, sheet.Fill{Ink: sheet.Black}, orb.Bound{Min: orb.Point{-0.5 * k, b.low}, Max: orb.Point{0, b.high}})
	end := sheet.Text{Height: 1.2 * k, Bold: true, Turn: 90, Words: "FREE END"}.Fitted(0.9 * b.l.Roll.WidthMM)
	layer.Write(end.Centred(orb.Point{-1.6 * k, middle}))
	x := -3.6 * k
	layer.Arrow(sheet.Black, 0.08*k, 0.8*k, orb.Point{x, middle}, orb.Point{x, b.low})
	layer.Arrow(sheet.Black, 0.08*k, 0.8*k, orb.Point{x, middle}, orb.Point{x, b.high})
	width := sheet.Text{Height: 1.2 * k, Bold: true, Turn: 90, Words: sheet.Tape(b.l.Roll.WidthMM, b.plan.Units)}
	width = width.Fitted(0.9 * b.l.Roll.WidthMM).Centred(orb.Point{-5.2 * k, middle})
	layer.Write(width)
	grain := b.s.Layer("GRAIN")
	y := b.low - b.below - float64(4.4*k)
	grain.Arrow(sheet.Black, 0.12*k, k, orb.Point{5 * k, y}, orb.Point{0, y})
	grain.Arrow(sheet.Black, 0.12*k, k, orb.Point{5 * k, y}, orb.Point{10 * k, y})
	grain.Write(sheet.Text{At: orb.Point{11 * k, y - float64(0.5*k)}, Height: k, Words: "grain: along the roll"})
	b.legend(orb.Point{24 * k, y - float64(0.4*k)})
}

// remainder draws the start of what is left behind the last cut of this length.
func (b *board) remainder() {
	layer, k, u := b.s.Layer("ROLL"), b.k, b.l.Long()
	words := b.l.RemainderWords(b.plan.Units)
	cut := sheet.Solid(sheet.Black, 0.25*k)
	cut.Dash = [6]float64{k, 0.5 * k}
	if words == "none" {
		return
	}
	behind := u + float64(7*k)
	wave := []orb.Point{{u, b.low}, {behind, b.low}}
	for i := 1; i < 8; i++ {
		wave = append(wave, orb.Point{behind + float64(0.6*k*float64(i%2)), b.low + float64(b.l.Roll.WidthMM*float64(i)/8)})
	}
	wave = append(wave, orb.Point{behind, b.high}, orb.Point{u, b.high})
	layer.Shapes = append(layer.Shapes, sheet.Shape{Pen: sheet.Solid(sheet.Grey, 0.08*k), Lines: []sheet.Line{{Points: wave}}})
	b.s.Layer("TEXT").Stroke(cut, orb.Point{u, b.low - float64(0.9*k)}, orb.Point{u, b.high + float64(0.9*k)})
	off := sheet.Text{Height: 0.9 * k, Bold: true, Turn: 90, Words: "CUT OFF AT " + sheet.Mark(u, b.plan.Units)}.Fitted(0.9 * b.l.Roll.WidthMM)
	layer.Write(off.Centred(orb.Point{u + float64(1.6*k), (b.low + b.high) / 2}))
	for i, line := range sheet.Wrapped(sheet.Text{Height: 0.8 * k, Turn: 90, Words: words}, 0.9*b.l.Roll.WidthMM, 3) {
		layer.Write(line.Centred(orb.Point{u + float64((3.2+float64(1.3*float64(i)))*k), (b.low + b.high) / 2}))
	}
}

// RemainderWords says what is left of the roll behind this length.
func (l Length) RemainderWords(units string) string {
	switch stock := l.Roll.StockLengthMM; {
	case !l.Last():
		return "next table length"
	case stock == nil:
		return "the roll goes on"
	case *stock-l.Roll.UsedLengthMM < 0.0005:
		return "none"
	default:
		return "remainder " + sheet.Tape(*stock-l.Roll.UsedLengthMM, units)
	}
}
