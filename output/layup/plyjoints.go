package layup

import (
	"math"

	"github.com/paulmach/orb"

	"stripwright/output/sheet"
)

// joints draws the joints below that count and this ply's joints over them, with
// their names.
func (s *plySheet) joints() {
	earlier := sheet.Shape{Pen: earlierPen(s.k)}
	for _, u := range s.measured.Under {
		earlier.Lines = append(earlier.Lines, s.jointLine(orb.Point(u.Joint.From), orb.Point(u.Joint.To)))
	}
	if len(earlier.Lines) > 0 {
		l := s.s.Layer("EARLIER")
		l.Shapes = append(l.Shapes, earlier)
	}
	own := sheet.Shape{Pen: jointPen(s.k, s.narrowest())}
	for _, m := range s.measured.Joints {
		own.Lines = append(own.Lines, s.jointLine(orb.Point(m.Joint.From), orb.Point(m.Joint.To)))
	}
	if len(own.Lines) > 0 {
		l := s.s.Layer("JOINTS")
		l.Shapes = append(l.Shapes, own)
	}
	for _, m := range s.measured.Joints {
		s.jointName(m)
	}
}

// measureEnds writes both measures of each joint where it meets the net edge;
// first of all lettering but the corners, as it matters most.
func (s *plySheet) measureEnds() {
	for _, m := range s.measured.Joints {
		s.measures(m)
	}
}

// narrowest gives the width of the ply's narrowest strip in mm.
func (s *plySheet) narrowest() float64 {
	least := math.Inf(1)
	for _, strip := range s.ply.Strips {
		least = math.Min(least, strip.WidthMM)
	}
	return least
}

func (s *plySheet) jointLine(from, to orb.Point) sheet.Line {
	return sheet.Line{Points: []orb.Point{s.place(from), s.place(to)}}
}

// measures writes the distance at both marks of a joint.
func (s *plySheet) measures(m Measured) {
	if m.InTrim {
		return
	}
	line := sheet.Towards(orb.Point(m.Joint.From), orb.Point(m.Joint.To))
	for i, t := range m.Ends {
		s.s.Layer("MEASURES").Disc(sheet.Pen{}, sheet.Fill{Ink: sheet.Black}, s.place(t.At), 1.1*s.k)
		away := line
		if i == 0 {
			away = orb.Point{-line[0], -line[1]}
		}
		s.measure(m.Name, t, away)
	}
}

// measure writes one distance outside the blank: in two big lines square to the
// edge, else in one line along the joint, else nowhere: it is in the table.
func (s *plySheet) measure(name string, t Tick, away orb.Point) {
	layer, k := s.s.Layer("MEASURES"), s.k
	at := s.place(t.At)
	words, beside := sheet.TapeFigure(t.AlongMM, s.plan.Units)
	figure := sheet.Text{Height: 4 * k, Bold: true, Words: words}.Fitted(25 * k)
	from := sheet.Text{Height: 2.5 * k, Words: beside + name + ", from " + t.From}.Fitted(25 * k)
	w := math.Max(figure.Width(), from.Width())
	for step := 0; step < 12; step++ {
		far := float64(s.plan.Part.TrimMM*1.1) + float64(2*k) + float64(math.Abs(t.Outward[0])*w/2) + float64(math.Abs(t.Outward[1])*4.4*k) + float64(float64(step%4)*5*k)
		aside := [3]float64{0, -0.6 * w, 0.6 * w}[step/4]
		c := sheet.Beside(at, t.Outward, far, aside)
		upper, lower := figure.Centred(sheet.Along(c, orb.Point{0, 1}, 1.7*k)), from.Centred(sheet.Along(c, orb.Point{0, 1}, -3*k))
		if s.overPart(upper) || s.overPart(lower) || !s.room.try(upper, lower) {
			continue
		}
		edge := sheet.Along(c, t.Outward, -4.5*k)
		if step > 0 {
			layer.Stroke(sheet.Solid(sheet.Grey, 0.2*k), at, edge)
		}
		layer.Write(upper)
		layer.Write(lower)
		return
	}
	s.measureAlong(name, t, away)
}

// measureAlong writes the distance in one line that carries the joint on beyond
// the edge.
func (s *plySheet) measureAlong(name string, t Tick, away orb.Point) {
	turn := math.Atan2(away[1], away[0]) * 180 / math.Pi
	text := sheet.Text{Bold: true, Turn: sheet.Upright(turn), Words: name + ": " + sheet.Tape(t.AlongMM, s.plan.Units)}
	at := s.place(t.At)
	for _, height := range []float64{3.2, 2.4, 1.8, 1.3} {
		text.Height = height * s.k
		far := float64(s.plan.Part.TrimMM*1.5) + float64(1.5*s.k) + float64(text.Width()/2)
		for _, more := range []float64{0, 5, 11} {
			c := sheet.Along(at, away, far+float64(more*s.k))
			if written := text.Centred(c); !s.overPart(written) && s.room.try(written) {
				s.s.Layer("MEASURES").Write(written)
				return
			}
		}
	}
}

// jointName writes J1, J2, … on the joint where there is room.
func (s *plySheet) jointName(m Measured) {
	from, to := s.place(orb.Point(m.Joint.From)), s.place(orb.Point(m.Joint.To))
	name := sheet.Text{Height: 3.6 * s.k, Bold: true, Words: m.Name}
	for _, f := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9} {
		t := name.Centred(sheet.Between(from, to, f))
		b := t.Bounds()
		b.Min, b.Max = sheet.Along(b.Min, orb.Point{-1.2, 0.2}, s.k), sheet.Along(b.Max, orb.Point{1.2, 0.6}, s.k)
		if !s.room.tryBox(b) {
			continue
		}
		s.s.Layer("TEXT").Box(sheet.Solid(sheet.Black, 0.3*s.k), sheet.Fill{Ink: sheet.White}, b)
		s.s.Layer("TEXT").Write(t)
		return
	}
}
