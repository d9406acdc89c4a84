package svg

import (
	"iter"
	"math"
	"strconv"
	"unicode/utf8"

	"github.com/paulmach/orb"

	"stripwright/output/sheet"
)

// line is a text of one weight, or a part of one: the same words come again and
// again on a sheet, so those are kept once, like the letters.
type line struct {
	words string
	bold  bool
}

func lineOf(t sheet.Text) line { return line{sheet.Spelt(t.Words), t.Bold} }

// parts breaks a line behind blanks, hyphens and points: ids share their ply,
// their strip, and lengths their unit.
func (l line) parts() iter.Seq[line] {
	return func(yield func(line) bool) {
		from := 0
		for i, r := range l.words {
			if r == ' ' || r == '-' || r == '.' || i+utf8.RuneLen(r) == len(l.words) {
				to := i + utf8.RuneLen(r)
				if !yield(line{l.words[from:to], l.bold}) {
					return
				}
				from = to
			}
		}
	}
}

// defs writes each outline, each hatch, and each line and part of a line that
// comes more than once, in the order of first use.
func (w *writer) defs(s sheet.Scene) {
	w.text("<defs>\n")
	seen, times := map[letter]bool{}, map[line]int{}
	var order []line
	for _, l := range s.Layers {
		for _, shape := range l.Shapes {
			w.hatch(shape.Fill)
		}
		for _, t := range l.Texts {
			if t.Pen {
				continue
			}
			key := lineOf(t)
			if times[key]++; times[key] == 1 {
				order = append(order, key)
				w.outlines(t, seen)
			}
		}
	}
	w.parts(order)
	for _, key := range order {
		if times[key] > 1 && w.lines[key] == 0 {
			w.keep(key, func() { w.words(key) })
		}
	}
	w.text("</defs>\n")
}

// parts keeps the parts that different lines have in common.
func (w *writer) parts(lines []line) {
	times := map[line]int{}
	for _, l := range lines {
		for p := range l.parts() {
			times[p]++
		}
	}
	for _, l := range lines {
		for p := range l.parts() {
			if times[p] > 1 && len(p.words) > 2 && w.lines[p] == 0 {
				w.keep(p, func() { w.letters(p, 0) })
			}
		}
	}
}

// keep writes a group to be used again for a line; it has its number only when it
// is whole, so that nothing in it uses itself.
func (w *writer) keep(l line, write func()) {
	number := len(w.lines) + 1
	w.text(`<g id="t`)
	w.b = strconv.AppendInt(w.b, int64(number), 10)
	w.text(`">`)
	write()
	w.text("</g>\n")
	w.lines[l] = number
}

// hatch writes a pattern of lines at 45°; crossed: both diagonals.
func (w *writer) hatch(f sheet.Fill) {
	if f.Spacing <= 0 || w.hatches[f] != "" {
		return
	}
	id := "hatch" + strconv.Itoa(len(w.hatches)+1)
	w.hatches[f] = id
	w.text(`<pattern id="` + id + `" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)" width="`)
	w.num(f.Spacing)
	w.text(`" height="`)
	w.num(f.Spacing)
	w.text(`"><path d="M0 `)
	w.num(f.Spacing / 2)
	w.text("H")
	w.num(f.Spacing)
	if f.Crossed {
		w.text("M")
		w.num(f.Spacing / 2)
		w.text(" 0V")
		w.num(f.Spacing)
	}
	w.text(`" stroke="` + f.Ink + `" stroke-width="`)
	w.num(f.Width)
	w.text(`"/></pattern>` + "\n")
}

// lettering writes one text: outlines used again, or pen strokes.
func (w *writer) lettering(t sheet.Text) {
	if t.Pen {
		w.penned(t)
		return
	}
	l := lineOf(t)
	again := w.lines[l]
	if again > 0 {
		w.text(`<use href="#t`)
		w.b = strconv.AppendInt(w.b, int64(again), 10)
		w.text(`" aria-label="`)
	} else {
		w.text(`<g aria-label="`)
	}
	w.text(escaped(l.words))
	w.text(`" `)
	if t.Ink != sheet.Black { // what is not said is black
		w.text(`fill="` + t.Ink + `" `)
	}
	w.placement(t.Start(), sheet.LetterScale(t.Height, t.Bold), t.Turn)
	if again > 0 {
		w.text("/>\n")
		return
	}
	w.text(">")
	w.words(l)
	w.text("</g>\n")
}

// words writes a line by its parts: those that are kept, else letter by letter.
func (w *writer) words(l line) {
	x := 0
	for p := range l.parts() {
		if n := w.lines[p]; n > 0 {
			w.use(x)
			w.b = append(w.b, 't')
			w.b = strconv.AppendInt(w.b, int64(n), 10)
			w.text(`"/>`)
			x += sheet.Advance(p.words, p.bold)
			continue
		}
		x = w.letters(p, x)
	}
}

// penned writes single strokes as one path, a tenth of the capitals thick.
func (w *writer) penned(t sheet.Text) {
	words := sheet.PenSpelt(t.Words)
	w.text(`<path aria-label="` + escaped(words) + `" fill="none" stroke="` + t.Ink + `" stroke-width="0.6" `)
	w.placement(t.Start(), t.Height/sheet.PenGrid, t.Turn)
	w.text(` d="`)
	p := path{writer: w}
	x := w.left
	for _, r := range words {
		lines, _ := sheet.PenGlyph(r)
		for _, l := range lines {
			moved := sheet.Line{Points: make([]orb.Point, len(l.Points))}
			for i, q := range l.Points {
				moved.Points[i] = orb.Point{q[0] + x, q[1] + w.top}
			}
			p.line(moved)
		}
		x += sheet.PenAdvance
	}
	w.text(`"/>` + "\n")
}

// factor writes a scale to seven decimals: a letter of a long text drifts by
// less than 0.01 mm.
func (w *writer) factor(v float64) {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		w.far = true
		v = 0
	}
	if math.Abs(v) < 5e-8 {
		v = 0
	}
	start := len(w.b)
	w.b = strconv.AppendFloat(w.b, v, 'f', 7, 64)
	for len(w.b) > start+1 && w.b[len(w.b)-1] == '0' {
		w.b = w.b[:len(w.b)-1]
	}
	if w.b[len(w.b)-1] == '.' {
		w.b = w.b[:len(w.b)-1]
	}
}
