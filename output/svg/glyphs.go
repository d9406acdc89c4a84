package svg

import (
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

// outlines writes the letters of a text that have not been written.
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

// glyph writes an outline, each point from the one before.
func (w *writer) glyph(g *sheet.Glyph) {
	var at [2]int
	for i, s := range g.Segments {
		switch s.Op {
		case 'M':
			if i > 0 {
				w.b = append(w.b, 'z')
			}
			w.b = append(w.b, 'M')
			w.unit([2]int{}, s.Args[0])
			at = s.Args[0]
		case 'L':
			w.b = append(w.b, 'l')
			w.unit(at, s.Args[0])
			at = s.Args[0]
		case 'Q':
			w.b = append(w.b, 'q')
			w.unit(at, s.Args[0])
			w.b = append(w.b, ' ')
			w.unit(at, s.Args[1])
			at = s.Args[1]
		}
	}
	w.b = append(w.b, 'z')
}

func (w *writer) unit(from, to [2]int) {
	w.b = strconv.AppendInt(w.b, int64(to[0]-from[0]), 10)
	w.b = append(w.b, ' ')
	w.b = strconv.AppendInt(w.b, int64(from[1]-to[1]), 10)
}

// letters writes letters one after the other from x, in units of the face, and
// gives where the next one goes.
func (w *writer) letters(l line, x int) int {
	for _, r := range l.words {
		g := sheet.LetterGlyph(r, l.bold)
		if g == nil {
			continue
		}
		if len(g.Segments) > 0 {
			w.use(x)
			w.letterID(r, l.bold)
			w.text(`"/>`)
		}
		x += g.Advance
	}
	return x
}

// use opens a use of something kept, x units along the line.
func (w *writer) use(x int) {
	w.text(`<use`)
	if x > 0 {
		w.text(` x="`)
		w.b = strconv.AppendInt(w.b, int64(x), 10)
		w.text(`"`)
	}
	w.text(` href="#`)
}
