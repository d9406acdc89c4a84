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
		for _, t := range m.Ends {
			if !m.InTrim {
				at, r := s.place(t.At), 1.1*s.k
				s.room.take(orb.Bound{Min: at, Max: at}.Pad(r))
			}
		}
	}
	for _, m := range s.measured.Joints {
		s.measures(m)
	}
}

// narrowest gives the width of the ply's narrowest strip on the sheet in mm.
func (s *plySheet) narrowest() float64 {
	least := math.Inf(1)
	for _, strip := range s.ply.Strips {
		least = math.Min(least, strip.WidthMM)
	}
	return least * s.scale
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
		if !s.room.inside(s.place(t.At).Bound()) {
			continue // of another view
		}
		s.s.Layer("MEASURES").Disc(sheet.Pen{}, sheet.Fill{Ink: sheet.Black}, s.place(t.At), 1.1*s.k)
		away := line
		if i == 0 {
			away = orb.Point{-line[0], -line[1]}
		}
		s.measure(m.Name, t, away)
	}
}

// measure writes one distance outside the blank: in two big lines as near to its
// mark as there is room, else in one line along the joint, else nowhere: it is in
// the table.
func (s *plySheet) measure(name string, t Tick, away orb.Point) {
	layer, k := s.s.Layer("MEASURES"), s.k
	at := s.place(t.At)
	words, _ := sheet.MarkFigure(t.AlongMM, s.plan.Units)
	upper := sheet.Text{Height: 4 * k, Bold: true, Words: words}.Fitted(24 * k).Centred(orb.Point{0, 1.7 * k})
	lower := sheet.Text{Height: 2.8 * k, Words: name + ", from " + t.From}.Fitted(24 * k).Centred(orb.Point{0, -3 * k})
	box := upper.Bounds().Union(lower.Bounds()).Pad(0.5 * k)
	wide, high := box.Max[0]-box.Min[0], box.Max[1]-box.Min[1]
	x, y := math.Abs(t.Outward[0]), math.Abs(t.Outward[1])
	far := float64(s.trim()*1.1) + float64(2*k) + float64((float64(x*wide)+float64(y*high))/2)
	along := 0.55 * (float64(y*wide) + float64(x*high))
	for _, step := range steps {
		c := sheet.Beside(at, t.Outward, far+float64(step[0]*5*k), float64(step[1]*along))
		room := orb.Bound{Min: plus(box.Min, c), Max: plus(box.Max, c)}
		if !s.room.free(room) || s.overPartBox(room) {
			continue
		}
		s.room.take(room)
		if step != steps[0] {
			s.s.Layer("LEADERS").Stroke(sheet.Solid(sheet.Grey, 0.25*k), at, nearestOf(room, at))
		}
		layer.Box(sheet.Pen{}, sheet.Fill{Ink: sheet.White}, room)
		upper.At, lower.At = plus(upper.At, c), plus(lower.At, c)
		layer.Write(upper)
		layer.Write(lower)
		return
	}
	s.measureAlong(name, t, away)
}

// steps are places to try for a distance, away from the edge and along it, from
// the nearest on.
var steps = nearestSteps(4, 2)

func nearestSteps(away, along int) [][2]float64 {
	var out [][2]float64
	for sum := 0; sum < away+along; sum++ {
		for a := max(0, sum-along); a <= min(sum, away-1); a++ {
			out = append(out, [2]float64{float64(a), float64(sum - a)})
			if a < sum {
				out = append(out, [2]float64{float64(a), float64(a - sum)})
			}
		}
	}
	return out
}

func plus(a, b orb.Point) orb.Point { return orb.Point{a[0] + b[0], a[1] + b[1]} }

// nearestOf gives the point of a box that is nearest to a place.
func nearestOf(b orb.Bound, at orb.Point) orb.Point {
	return orb.Point{math.Max(b.Min[0], math.Min(at[0], b.Max[0])), math.Max(b.Min[1], math.Min(at[1], b.Max[1]))}
}

// measureAlong writes the distance in one line that carries the joint on beyond
// the edge.
func (s *plySheet) measureAlong(name string, t Tick, away orb.Point) {
	turn := math.Atan2(away[1], away[0]) * 180 / math.Pi
	text := sheet.Text{Bold: true, Turn: sheet.Upright(turn), Words: name + ": " + sheet.Mark(t.AlongMM, s.plan.Units)}
	at := s.place(t.At)
	for _, height := range []float64{3.2, 2.6, 2} {
		text.Height = height * s.k
		far := float64(s.trim()*1.5) + float64(1.5*s.k) + float64(text.Width()/2)
		for _, more := range []float64{0, 5, 11} {
			c := sheet.Along(at, away, far+float64(more*s.k))
			if written := text.Centred(c); !s.overPart(written) && s.room.try(written) {
				s.s.Layer("MEASURES").Write(written)
				return
			}
		}
	}
}

// jointName writes J1, J2, … on the joint where there is room; beyond its end
// where the name would hide a short joint.
func (s *plySheet) jointName(m Measured) {
	from, to := s.place(orb.Point(m.Joint.From)), s.place(orb.Point(m.Joint.To))
	name := sheet.Text{Height: 3.6 * s.k, Bold: true, Words: m.Name}
	along := []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9}
	if long := distance(from, to); long > 0 && long < 3.5*name.Width() {
		out := (float64(0.6*name.Width()) + float64(2.4*s.k)) / long
		along = []float64{1 + out, -out, 1 + float64(2*out), -2 * out}
	}
	for _, f := range along {
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
