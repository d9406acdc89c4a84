package svg

import (
	"math"
	"strconv"

	"stripwright/output/sheet"
)

// letter is a letter of one weight.
type letter struct {
	r    rune
	bold bool
}

func (w *writer) letterID(r rune, bold bool) {
	weight := byte('r')
	if bold {
		weight = 'b'
	}
	w.b = append(w.b, weight)
	w.b = strconv.AppendInt(w.b, int64(r), 16)
}

// line is a text of one weight: the same words come again and again on a sheet,
// so those are kept once, like the letters.
type line struct {
	words string
	bold  bool
}

// defs writes each outline, each hatch and each line of words that comes more
// than once, in the order of first use.
func (w *writer) defs(s sheet.Scene) {
	w.text("<defs>\n")
	seen, times := map[letter]bool{}, map[line]int{}
	for _, l := range s.Layers {
		for _, shape := range l.Shapes {
			w.hatch(shape.Fill)
		}
		for _, t := range l.Texts {
			if !t.Pen {
				times[line{t.Words, t.Bold}]++
				w.outlines(t, seen)
			}
		}
	}
	for _, l := range s.Layers {
		for _, t := range l.Texts {
			if key := (line{t.Words, t.Bold}); !t.Pen && times[key] > 1 && w.lines[key] == 0 {
				w.lines[key] = len(w.lines) + 1
				w.text(`<g id="t` + strconv.Itoa(w.lines[key]) + `">`)
				w.letters(t)
				w.text("</g>\n")
			}
		}
	}
	w.text("</defs>\n")
}

func (w *writer) outlines(t sheet.Text, seen map[letter]bool) {
	for _, r := range sheet.Spelt(t.Words) {
		l := letter{r, t.Bold}
		if seen[l] {
			continue
		}
		seen[l] = true
		g := sheet.LetterGlyph(r, t.Bold)
		if g == nil || len(g.Segments) == 0 {
			continue
		}
		w.text(`<path id="`)
		w.letterID(r, t.Bold)
		w.text(`" d="`)
		w.glyph(g)
		w.text(`"/>` + "\n")
	}
}

func (w *writer) glyph(g *sheet.Glyph) {
	for i, s := range g.Segments {
		if s.Op == 'M' && i > 0 {
			w.b = append(w.b, 'Z')
		}
		w.b = append(w.b, s.Op)
		w.unit(s.Args[0])
		if s.Op == 'Q' {
			w.b = append(w.b, ' ')
			w.unit(s.Args[1])
		}
	}
	w.b = append(w.b, 'Z')
}

func (w *writer) unit(p [2]int) {
	w.b = strconv.AppendInt(w.b, int64(p[0]), 10)
	w.b = append(w.b, ' ')
	w.b = strconv.AppendInt(w.b, int64(-p[1]), 10)
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
	again := w.lines[line{t.Words, t.Bold}]
	if again > 0 {
		w.text(`<use href="#t`)
		w.b = strconv.AppendInt(w.b, int64(again), 10)
		w.text(`" aria-label="`)
	} else {
		w.text(`<g aria-label="`)
	}
	w.text(escaped(sheet.Spelt(t.Words)))
	w.text(`" fill="`)
	w.text(t.Ink)
	w.text(`" `)
	w.placement(t.Start(), sheet.LetterScale(t.Height, t.Bold), t.Turn)
	if again > 0 {
		w.text("/>\n")
		return
	}
	w.text(">")
	w.letters(t)
	w.text("</g>\n")
}

// letters writes the letters of a text one after the other, in units of the
// face.
func (w *writer) letters(t sheet.Text) {
	x := 0
	for _, r := range sheet.Spelt(t.Words) {
		g := sheet.LetterGlyph(r, t.Bold)
		if g == nil {
			continue
		}
		if len(g.Segments) > 0 {
			w.text(`<use`)
			if x > 0 {
				w.text(` x="`)
				w.b = strconv.AppendInt(w.b, int64(x), 10)
				w.text(`"`)
			}
			w.text(` href="#`)
			w.letterID(r, t.Bold)
			w.text(`"/>`)
		}
		x += g.Advance
	}
}

// penned writes single strokes as one path, a tenth of the capitals thick.
func (w *writer) penned(t sheet.Text) {
	words := sheet.PenSpelt(t.Words)
	w.text(`<path aria-label="` + escaped(words) + `" fill="none" stroke="` + t.Ink + `" stroke-width="0.6" `)
	w.placement(t.Start(), t.Height/sheet.PenGrid, t.Turn)
	w.text(` d="`)
	x := 0.0
	for _, r := range words {
		lines, _ := sheet.PenGlyph(r)
		for _, l := range lines {
			for i, p := range l.Points {
				op := byte('L')
				if i == 0 {
					op = 'M'
				}
				w.b = append(w.b, op)
				w.num(p[0] + x)
				w.b = append(w.b, ' ')
				w.num(-p[1])
			}
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
