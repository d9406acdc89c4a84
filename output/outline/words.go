package outline

import (
	"cmp"
	"fmt"
	"strings"

	"stripwright/geometry/length"
	"stripwright/output/sheet"
)

// mostLines is how many outlines, layers, notes or problems are written out.
const mostLines = 16

// line is a line of the words under the drawing.
type line struct {
	caption, words string
	fault          bool
}

// sizeWords gives the size in both units, or that nothing was read.
func sizeWords(r Reading) string {
	if len(r.Drawing.Regions) == 0 {
		return "NOT READ: " + sheet.Counted(len(r.Drawing.Problems), "problem", "problems")
	}
	w, h := r.Drawing.SizeMM[0], r.Drawing.SizeMM[1]
	return pair(length.MM, w, h) + "  (" + pair(length.Inches, w, h) + ")"
}

// areaWords gives the area in m², of small parts in mm², and the unit that the
// drawing is in.
func areaWords(r Reading) string {
	area := fmt.Sprintf("%.4f m²", r.Drawing.AreaMM2/1e6)
	if r.Drawing.AreaMM2 < 1e5 {
		area = fmt.Sprintf("%.1f mm²", r.Drawing.AreaMM2)
	}
	holes := 0
	for _, g := range r.Drawing.Regions {
		holes += len(g.Holes)
	}
	parts := []string{"area " + area, sheet.Counted(len(r.Drawing.Regions), "outline", "outlines"), sheet.Counted(holes, "hole", "holes")}
	if len(r.Drawing.Regions) == 0 {
		parts = nil
	}
	if r.Drawing.UnitFrom != "" {
		parts = append(parts, "unit: "+r.Drawing.UnitFrom)
	}
	return strings.Join(parts, ", ")
}

// facts lists what stands under the drawing: problems first.
func facts(r Reading) []line {
	d := r.Drawing
	var problems, outlines, clears, layers, notes []line
	for _, c := range r.Clear {
		clears = append(clears, line{caption: "KEEP CLEAR", words: c.Words() + "; hatched above"})
	}
	for _, p := range d.Problems {
		words := strings.TrimPrefix(p.Where+": ", ": ") + p.Text
		if p.Cure != "" {
			words += ": " + p.Cure
		}
		problems = append(problems, line{"PROBLEM", words, true})
	}
	if len(d.Regions) > 1 {
		for i, g := range d.Regions {
			w, h := g.Size()
			words := fmt.Sprintf("%d: %s (%s)", i+1, pair(length.MM, w, h), pair(length.Inches, w, h))
			if len(g.Holes) > 0 {
				words += ", " + sheet.Counted(len(g.Holes), "hole", "holes")
			}
			outlines = append(outlines, line{caption: "OUTLINE", words: words})
		}
	}
	for _, l := range d.Layers {
		layers = append(layers, line{caption: "LAYER", words: cmp.Or(l.Name, "(none)") + ": " + sheet.Counted(l.Contours, "closed contour", "closed contours")})
	}
	for _, n := range d.Notes {
		notes = append(notes, line{caption: "NOTE", words: strings.TrimPrefix(n.Where+": ", ": ") + n.Text})
	}
	var out []line
	for _, list := range [][]line{problems, outlines, clears, layers, notes} {
		out = append(out, shortened(list)...)
	}
	return out
}

// shortened cuts a list of one kind off and says how many more there are.
func shortened(list []line) []line {
	if len(list) <= mostLines {
		return list
	}
	more := list[mostLines-1]
	more.words = fmt.Sprintf("and %d more: the command line lists them all", len(list)-mostLines+1)
	return append(list[:mostLines-1:mostLines-1], more)
}

// Lines under the drawing: where their words begin and how high they are, in
// units; a long one is broken into so many.
const (
	captionWide = 26.0
	wordsHigh   = 3.6
	mostBroken  = 5
)

// wrapped breaks long lines; what goes on has no caption.
func wrapped(lines []line) []line {
	var out []line
	for _, one := range lines {
		t := sheet.Text{Height: wordsHigh, Bold: one.fault, Words: one.words}
		for i, part := range sheet.Wrapped(t, sheetWide-2*edgeMargin-captionWide, mostBroken) {
			next := line{words: part.Words, fault: one.fault}
			if i == 0 {
				next.caption = one.caption
			}
			out = append(out, next)
		}
	}
	return out
}

// words writes the head, of which top is the lower edge, the lines under the
// drawing and the caution, in units.
func (b *board) words(lines []line, top float64) {
	l := b.s.Layer("TITLE")
	room := float64((sheetWide - 2*edgeMargin) * b.k)
	size := b.text(edgeMargin, top+17, 8, true, sizeWords(b.Reading))
	if len(b.Drawing.Regions) == 0 {
		size.Ink = sheet.Fault
	}
	l.Write(b.text(edgeMargin, top+31, 5, false, b.heading()).Fitted(room))
	l.Write(size.Fitted(room))
	l.Write(b.text(edgeMargin, top+7, 4.4, false, areaWords(b.Reading)).Fitted(room))
	l.Stroke(sheet.Solid(sheet.Black, 0.4*b.k), b.at(edgeMargin, top), b.at(sheetWide-edgeMargin, top))

	y := edgeMargin + footHigh + float64(float64(len(lines))*lineHigh)
	for _, one := range lines {
		y -= lineHigh
		caption := b.text(edgeMargin, y, 2.6, false, one.caption)
		words := b.text(edgeMargin+captionWide, y, wordsHigh, one.fault, one.words)
		caption.Ink = sheet.Grey
		if one.fault {
			caption.Ink, words.Ink = sheet.Fault, sheet.Fault
		}
		l.Write(caption)
		l.Write(words.Fitted(room - float64(captionWide*b.k)))
	}
	l.Write(b.text(edgeMargin, edgeMargin+4.5, 3, false,
		"True to scale, seen as it is drawn: x to the right, y up. A job turns it into the part by its keys drawn_from and zero.").Fitted(room))
	l.Write(b.text(edgeMargin, edgeMargin-2, 3, false, sheet.Caution).Fitted(room))
}

// heading names the file and the choice among its layers and outlines.
func (b *board) heading() string {
	words := "READ FROM " + b.File
	switch len(b.Layers) {
	case 0:
	case 1:
		words += ", layer " + b.Layers[0] + " alone"
	default:
		words += ", layers " + strings.Join(b.Layers, ", ") + " alone"
	}
	if b.Which > 0 {
		words += fmt.Sprintf(", outline %d alone", b.Which)
	}
	return words
}
