package paper

import (
	"strconv"
	"strings"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/layup"
	"stripwright/output/page"
	"stripwright/output/sheet"
)

// drawings draws the ply whole, or in stretches after a map of them.
func (s *plySection) drawings(index int) {
	if s.lay.whole {
		s.framed(index, s.lay.stretches[0])
		return
	}
	s.guide()
	for _, stretch := range s.lay.stretches {
		view := s.lay.at(stretch, 0, 0)
		if s.ply.Blank.Bounds().Intersects(view.Seen()) {
			s.framed(index, stretch)
		}
	}
}

// framed draws one stretch with what is said over and under it.
func (s *plySection) framed(index int, stretch stretch) {
	over, high := s.overWords(stretch), s.framedHigh(stretch)
	s.need(high + 2)
	top := s.y
	s.l.Box(sheet.Solid(sheet.Black, 0.3), sheet.Fill{}, orb.Bound{Min: orb.Point{page.Margin, top - high}, Max: orb.Point{s.right(), top}})
	for i, words := range over {
		s.say(page.Margin+2, top-4-float64(5*float64(i)), page.BodyHigh, s.size.Inner()-4, true, words)
	}
	left := page.Margin + float64((s.size.Inner()-stretch.wide)/2)
	view := s.lay.at(stretch, left, top-float64(5*float64(len(over))))
	s.leaf.Layers = append(s.leaf.Layers, layup.Picture(s.plan, index, s.joints, view)...)
	s.continued(stretch, view.Box)
	s.l = s.leaf.Layer("PAGE")
	s.legend(top - high + 3.2)
	s.y -= high + 3
}

// framedHigh gives the height of a stretch with its words.
func (s *plySection) framedHigh(stretch stretch) float64 {
	return float64(5*float64(len(s.overWords(stretch)))) + stretch.high + 6.5
}

// overWords says from where the drawing is seen, which stretch it is, and what
// face down means.
func (s *plySection) overWords(stretch stretch) []string {
	words := []string{"SEEN FROM THE LAYING SIDE, looking down on the tool. Drawn " + s.lay.scaleWords() + ": measure by the figures."}
	if !s.lay.whole {
		e, seen := layup.Extent(s.plan), s.lay.at(stretch, 0, 0).Seen()
		words = append(words, "STRETCH "+strconv.Itoa(stretch.number)+" OF "+strconv.Itoa(len(s.lay.stretches))+": from "+
			lengthAlong(seen.Min[0]-e.Min[0])+" to "+lengthAlong(min(seen.Max[0], e.Max[0])-e.Min[0])+" of the part's length"+besideWords(stretch))
	}
	if s.ply.Face == laminate.FaceDown {
		words = append(words, "FACE DOWN: the pieces are cut mirrored; turn each one over about its length.")
	}
	return words
}

func lengthAlong(mm float64) string { return sheet.Number(max(mm, 0)/1000, 2) + " m" }

// besideWords names the stretches that go on where this one ends.
func besideWords(s stretch) string {
	var words []string
	for i, side := range []string{"left", "right", "below", "above"} {
		if n := s.beside[i]; n > 0 {
			words = append(words, side+" "+strconv.Itoa(n))
		}
	}
	return "; goes on: " + strings.Join(words, ", ")
}

// continued marks the sides at which a stretch is cut off.
func (s *plySection) continued(stretch stretch, box orb.Bound) {
	l := s.leaf.Layer("CONTINUED")
	pen := sheet.Pen{Ink: sheet.Black, Width: 0.5, Dash: [6]float64{1, 1.5}}
	c := box.Center()
	for i, n := range stretch.beside {
		if n == 0 {
			continue
		}
		words := sheet.Text{Height: page.SmallHigh, Bold: true, Words: "goes on: stretch " + strconv.Itoa(n)}
		var from, to, at orb.Point
		switch i {
		case 0, 1:
			x := [2]float64{box.Min[0], box.Max[0]}[i]
			from, to, at = orb.Point{x, box.Min[1]}, orb.Point{x, box.Max[1]}, orb.Point{x + [2]float64{2, -2}[i], c[1]}
			words.Turn = 90
		default:
			y := [2]float64{box.Min[1], box.Max[1]}[i-2]
			from, to, at = orb.Point{box.Min[0], y}, orb.Point{box.Max[0], y}, orb.Point{c[0], y + [2]float64{2, -2}[i-2]}
		}
		l.Stroke(pen, from, to)
		words = words.Centred(at)
		l.Box(sheet.Pen{}, sheet.Fill{Ink: sheet.White}, words.Bounds().Pad(0.4))
		l.Write(words)
	}
}

// legend draws the 0° arrow and names the lines.
func (s *plySection) legend(y float64) {
	s.l.Arrow(sheet.Black, 0.5, 2.6, orb.Point{page.Margin + 2, y}, orb.Point{page.Margin + 24, y})
	s.say(page.Margin+26, y-1.4, 2.8, 10, true, "0°")
	x := page.Margin + 40.0
	for _, k := range layup.Key(unit) {
		s.l.Stroke(k.Pen, orb.Point{x, y}, orb.Point{x + 8, y})
		t := sheet.Text{At: orb.Point{x + 9.5, y - 0.9}, Height: page.SmallHigh, Words: k.Words}
		s.l.Write(t)
		x += 9.5 + t.Width() + 4
	}
}

// guide draws how the stretches lie on the part.
func (s *plySection) guide() {
	e := layup.Extent(s.plan)
	w, h := e.Max[0]-e.Min[0], e.Max[1]-e.Min[1]
	n := max(w/(s.size.Inner()-20), h/32)
	high := h/n + 8
	s.need(high)
	origin := orb.Point{page.Margin + float64((s.size.Inner()-float64(w/n))/2) - float64(e.Min[0]/n), s.y - 4 - float64(h/n) - float64(e.Min[1]/n)}
	place := func(p orb.Point) orb.Point { return sheet.Along(origin, p, 1/n) }
	s.l.Region(sheet.Solid(sheet.Black, 0.3), sheet.Fill{Ink: sheet.White}, s.plan.Part.Net, place)
	for _, j := range s.ply.Joints {
		s.l.Stroke(sheet.Solid(sheet.Black, 0.25), place(orb.Point(j.From)), place(orb.Point(j.To)))
	}
	for _, stretch := range s.lay.stretches {
		seen := s.lay.at(stretch, 0, 0).Seen()
		low := place(orb.Point{max(seen.Min[0], e.Min[0]), max(seen.Min[1], e.Min[1])})
		top := place(orb.Point{min(seen.Max[0], e.Max[0]), min(seen.Max[1], e.Max[1])})
		box := orb.Bound{Min: low, Max: top}.Pad(1)
		s.l.Box(sheet.Pen{Ink: sheet.Grey, Width: 0.2, Dash: [6]float64{1, 1}}, sheet.Fill{}, box)
		t := sheet.Text{Height: 2.6, Bold: true, Words: strconv.Itoa(stretch.number)}.Centred(box.Center())
		s.l.Disc(sheet.Solid(sheet.Black, 0.3), sheet.Fill{Ink: sheet.White}, box.Center(), 2.8)
		s.l.Write(t)
	}
	corner := orb.Point(s.plan.Part.Corners[0].At)
	sheet.Pennant(s.l, place(corner), 0.25)
	s.y -= high
}
