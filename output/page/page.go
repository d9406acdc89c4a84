package page

import (
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/sheet"
)

// New begins a page with its title block; of a plan at fault with the stamp over
// it. Fabrics are those whose joint rule the title block names; none: all. What is
// free on it ends at the top given.
func New(p laminate.Plan, sha string, size Size, title string, fabrics ...string) (s *sheet.Scene, top float64) {
	s = &sheet.Scene{
		Title: title, About: title + ". " + sheet.Verdict(p),
		Box: orb.Bound{Max: orb.Point{size.Wide, size.High}},
	}
	foot := orb.Bound{Min: orb.Point{Margin, Margin}, Max: orb.Point{size.Wide - Margin, Margin + FootHigh}}
	sheet.Block(s.Layer("PAGE"), foot, 1.35, sheet.Rows(p, sha, fabrics...))
	top = size.High - Margin
	if len(sheet.Faults(p.Checks)) > 0 {
		band := orb.Bound{Min: orb.Point{Margin, top - StampHigh}, Max: orb.Point{size.Wide - Margin, top}}
		sheet.Stamp(s, p.Checks, band, 1.9)
		top -= StampHigh + 3
	}
	return s, top
}

// Number writes "page 3 of 20" on all pages, and what they are.
func Number(pages []*sheet.Scene, book string) {
	for i, s := range pages {
		l := s.Layer("PAGE")
		l.Write(sheet.Text{
			At: orb.Point{s.Box.Max[0] - Margin, Margin - 4}, Height: BodyHigh, Bold: true, Align: sheet.Right,
			Words: "page " + strconv.Itoa(i+1) + " of " + strconv.Itoa(len(pages)),
		})
		l.Write(sheet.Text{At: orb.Point{Margin, Margin - 4}, Height: SmallHigh, Ink: sheet.Grey, Words: book})
	}
}

// Bars draws two bars to be measured on the print, one of 100 mm and under it one
// of 4 in, from a place to the right; they take 104 by 12 mm.
func Bars(l *sheet.Layer, left, top float64) {
	for i, bar := range []struct {
		long  float64
		words string
	}{{100, "100 mm"}, {101.6, "4 in"}} {
		y := top - 3 - float64(6*float64(i))
		l.Stroke(sheet.Solid(sheet.Black, 0.3), orb.Point{left, y}, orb.Point{left + bar.long, y})
		for _, x := range [2]float64{left, left + bar.long} {
			l.Stroke(sheet.Solid(sheet.Black, 0.3), orb.Point{x, y - 2}, orb.Point{x, y + 2})
		}
		words := sheet.Text{Height: SmallHigh, Bold: true, Words: bar.words}.Centred(orb.Point{left + 50, y})
		l.Box(sheet.Pen{}, sheet.Fill{Ink: sheet.White}, words.Bounds().Pad(0.5))
		l.Write(words)
	}
}

// Scenes gives the pages as values.
func Scenes(pages []*sheet.Scene) []sheet.Scene {
	out := make([]sheet.Scene, len(pages))
	for i, s := range pages {
		out[i] = *s
	}
	return out
}
