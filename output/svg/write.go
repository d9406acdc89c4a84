package svg

import (
	"fmt"
	"math"
	"strings"

	"github.com/paulmach/orb"

	"stripwright/output/sheet"
)

// writer flips y: a scene has y up, SVG has y down. Its zero is the upper left
// corner of the scene's box.
type writer struct {
	b       []byte
	left    float64
	top     float64
	far     bool // a coordinate could not be drawn
	hatches map[sheet.Fill]string
	lines   map[line]int // words that are kept once, by number
}

// Write gives the scene as the bytes of an SVG file. The only error is
// sheet.ErrNumber.
func Write(s sheet.Scene) ([]byte, error) {
	w := &writer{
		left: s.Box.Min[0], top: s.Box.Max[1],
		hatches: map[sheet.Fill]string{}, lines: map[line]int{},
		b: make([]byte, 0, size(s)),
	}
	w.open(s)
	w.defs(s)
	for _, l := range s.Layers {
		w.layer(l)
	}
	w.text("</svg>\n")
	if w.far {
		return nil, fmt.Errorf("%s: %w", s.Title, sheet.ErrNumber)
	}
	return w.b, nil
}

// size estimates the length of the file, so that it is not copied while it
// grows.
func size(s sheet.Scene) int {
	n := 30_000
	for _, l := range s.Layers {
		for _, shape := range l.Shapes {
			n += 120
			for _, line := range shape.Lines {
				n += 20 * len(line.Points)
			}
		}
		for _, t := range l.Texts {
			n += 130 + 30*len(t.Words)
		}
	}
	return n
}

func (w *writer) open(s sheet.Scene) {
	width, height := s.Box.Max[0]-s.Box.Min[0], s.Box.Max[1]-s.Box.Min[1]
	w.text(`<?xml version="1.0" encoding="UTF-8"?>` + "\n" +
		`<svg xmlns="http://www.w3.org/2000/svg" version="1.1" role="img" width="`)
	w.num(width)
	w.text(`mm" height="`)
	w.num(height)
	w.text(`mm" viewBox="0 0 `)
	w.num(width)
	w.text(" ")
	w.num(height)
	w.text(`">` + "\n<title>" + escaped(sheet.Spelt(s.Title)) + "</title>\n<desc>" + escaped(sheet.Spelt(s.About)) + "</desc>\n")
}

func (w *writer) text(s string) { w.b = append(w.b, s...) }

func (w *writer) num(v float64) {
	w.far = w.far || !sheet.Drawable(v)
	w.b = sheet.AppendMM(w.b, v)
}

func (w *writer) point(p orb.Point) {
	w.num(p[0] - w.left)
	w.b = append(w.b, ' ')
	w.num(w.top - p[1])
}

func (w *writer) layer(l *sheet.Layer) {
	w.text(`<g id="` + escaped(l.Name) + `">` + "\n")
	for i := 0; i < len(l.Shapes); {
		i = w.run(l.Shapes, i)
	}
	for _, t := range l.Texts {
		w.lettering(t)
	}
	w.text("</g>\n")
}

// run writes shapes of one pen and fill, one after the other, as one group.
func (w *writer) run(shapes []sheet.Shape, from int) int {
	first := shapes[from]
	w.text("<g")
	w.fill(first.Fill)
	w.pen(first.Pen)
	w.text(">\n")
	i := from
	for ; i < len(shapes) && shapes[i].Pen == first.Pen && shapes[i].Fill == first.Fill; i++ {
		w.shape(shapes[i])
	}
	w.text("</g>\n")
	return i
}

func (w *writer) fill(f sheet.Fill) {
	switch {
	case f.Ink == "":
		w.text(` fill="none"`)
	case f.Spacing > 0:
		w.text(` fill="url(#` + w.hatches[f] + `)"`)
	default:
		w.text(` fill="` + f.Ink + `" fill-rule="evenodd"`)
	}
}

func (w *writer) pen(p sheet.Pen) {
	if p.Ink == "" || p.Width <= 0 {
		return
	}
	w.text(` stroke="` + p.Ink + `" stroke-linejoin="round" stroke-width="`)
	w.num(p.Width)
	w.text(`"`)
	if p.Dash[0] <= 0 {
		return
	}
	w.text(` stroke-dasharray="`)
	for i, d := range p.Dash {
		if d <= 0 {
			break
		}
		if i > 0 {
			w.text(" ")
		}
		w.num(d)
	}
	w.text(`"`)
}

func (w *writer) shape(s sheet.Shape) {
	if s.Radius > 0 {
		w.text(`<circle cx="`)
		w.num(s.Centre[0] - w.left)
		w.text(`" cy="`)
		w.num(w.top - s.Centre[1])
		w.text(`" r="`)
		w.num(s.Radius)
		w.text(`"/>` + "\n")
		return
	}
	w.text(`<path d="`)
	w.path(s.Lines)
	w.text(`"/>` + "\n")
}

// placement writes the transform that puts lettering of the given scale at a
// point, turned.
func (w *writer) placement(at orb.Point, scale, turn float64) {
	sin, cos := math.Sincos(turn * math.Pi / 180)
	w.text(`transform="matrix(`)
	for _, v := range [4]float64{scale * cos, -scale * sin, scale * sin, scale * cos} {
		w.factor(v)
		w.text(" ")
	}
	w.point(at)
	w.text(`)"`)
}

var escape = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;", "'", "&#39;")

func escaped(s string) string { return escape.Replace(s) }
