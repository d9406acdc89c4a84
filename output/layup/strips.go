package layup

import (
	"math"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/output/sheet"
)

// stripFills alternate, so that neighbours differ.
var stripFills = [2]sheet.Fill{{Ink: "#FFFFFF"}, {Ink: "#E6EAEE"}}

// strips draws the strips in laying order with their ids.
func (s *plySheet) strips() {
	l := s.s.Layer("STRIPS")
	for i, strip := range s.ply.Strips {
		if s.view != nil && !strip.Shape.Bounds().Intersects(*s.view) {
			continue
		}
		l.Region(sheet.Pen{}, stripFills[i%2], strip.Shape, s.place)
	}
	l.Region(sheet.Solid(sheet.Black, 0.3*s.k), sheet.Fill{}, s.ply.Blank, s.place)
	for i, strip := range s.ply.Strips {
		if s.view != nil && !strip.Shape.Bounds().Intersects(*s.view) {
			continue
		}
		s.stripID(strip, stripFills[i%2])
	}
}

// stripID writes id and width along the strip where there is room.
func (s *plySheet) stripID(strip laminate.Strip, fill sheet.Fill) {
	if strip.Shape.Empty() {
		return
	}
	frame := geometry.PlyFrame(geometry.NewAngle(s.ply.AngleDeg))
	id := sheet.Text{Height: 1, Bold: true, Words: s.idWords(strip.ID), Turn: sheet.Upright(s.ply.AngleDeg)}
	width := sheet.Text{Height: 0.6, Words: sheet.Mark(strip.WidthMM, s.plan.Units) + " wide", Turn: id.Turn}
	wide := math.Max(id.Width(), width.Width())
	turned := turnedRegion(s.seen(strip.Shape), frame)
	if len(turned.Outer) < 3 {
		return // of another view
	}
	layer := s.s.Layer("TEXT")
	if at, h := sheet.Spot(turned, (wide+1)/2.9, 5.2*2.9*s.k/s.scale, 3.4*2.9*s.k/s.scale); h > 0 {
		size := h * s.scale / 2.9
		id.Height, width.Height = size, 0.6*size
		sin, cos := math.Sincos(id.Turn * math.Pi / 180)
		c := s.place(frame.Inverse().Apply(at))
		id = id.Centred(sheet.Beside(c, orb.Point{cos, sin}, 0, 0.5*size))
		width = width.Centred(sheet.Beside(c, orb.Point{cos, sin}, 0, -0.75*size))
		if s.room.try(id, width) {
			s.ground(fill, id, width)
			layer.Write(id)
			layer.Write(width)
			return
		}
	}
	s.smallID(turned, frame, id, fill)
}

// smallID writes the id alone, in a strip that has little room.
func (s *plySheet) smallID(turned geometry.Region, frame geometry.Frame, id sheet.Text, fill sheet.Fill) {
	id.Height = 1
	if at, h := sheet.Spot(turned, id.Width()/1.4, 4.5*1.4*s.k/s.scale, s.leastID()*1.4*s.k/s.scale); h > 0 {
		id.Height = h * s.scale / 1.4
		id = id.Centred(s.place(frame.Inverse().Apply(at)))
		if s.room.try(id) {
			s.ground(fill, id)
			s.s.Layer("TEXT").Write(id)
			return
		}
	}
	s.callOut(turned, frame, id)
}

// leastID gives the height of the smallest id in units: where strips are too many
// to be called out beside the part, small ones are better than none.
func (s *plySheet) leastID() float64 {
	if len(s.ply.Strips) > 24 {
		return 1
	}
	return 2.6
}

// ground clears the lines of the part under lettering.
func (s *plySheet) ground(fill sheet.Fill, texts ...sheet.Text) {
	for _, t := range texts {
		sin, cos := math.Sincos(t.Turn * math.Pi / 180)
		from, wide := t.Start(), t.Width()
		corner := func(x, y float64) orb.Point {
			return sheet.Beside(from, orb.Point{cos, sin}, x, y)
		}
		pad := float64(0.15 * t.Height)
		s.s.Layer("TEXT").Area(sheet.Pen{}, fill,
			corner(-pad, -2*pad), corner(wide+pad, -2*pad), corner(wide+pad, t.Height+pad), corner(-pad, t.Height+pad))
	}
}

// callOut writes an id beside the part with a line to its strip: for a strip too
// small to write on.
func (s *plySheet) callOut(turned geometry.Region, frame geometry.Frame, id sheet.Text) {
	c := s.place(frame.Inverse().Apply(sheet.Inside(turned)))
	id.Height, id.Turn = 3*s.k, 0
	id = id.Centred(orb.Point{})
	room := id.Bounds()
	for _, far := range []float64{8, 13, 18, 24, 30, 38, 48} {
		for step := 0; step < 16; step++ {
			sin, cos := math.Sincos(float64(step) * math.Pi / 8)
			at := sheet.Along(c, orb.Point{cos, sin}, far*s.k)
			b := orb.Bound{Min: plus(room.Min, at), Max: plus(room.Max, at)}
			if !s.room.free(b) || s.overPartBox(b) {
				continue
			}
			s.room.take(b)
			s.s.Layer("LEADERS").Stroke(sheet.Solid(sheet.Black, 0.25*s.k), c, at)
			s.s.Layer("TEXT").Box(sheet.Pen{}, sheet.Fill{Ink: sheet.White}, b)
			id.At = plus(id.At, at)
			s.s.Layer("TEXT").Write(id)
			return
		}
	}
	id.Height = 2 * s.k
	s.s.Layer("TEXT").Write(id.Centred(c)) // no room anywhere: small, in its place
}

// overPart says whether lettering would lie over the blank or leave the
// drawing.
func (s *plySheet) overPart(t sheet.Text) bool { return s.overPartBox(t.Bounds()) }

func (s *plySheet) overPartBox(b orb.Bound) bool {
	if b.Min[0] < s.limit.Min[0] || b.Max[0] > s.limit.Max[0] || b.Min[1] < s.limit.Min[1] || b.Max[1] > s.limit.Max[1] {
		return true
	}
	for _, p := range []orb.Point{b.Min, b.Max, {b.Min[0], b.Max[1]}, {b.Max[0], b.Min[1]}, b.Center()} {
		if s.within.contains(s.back(p)) {
			return true
		}
	}
	return false
}

// turnedRegion turns a region without rounding it.
func turnedRegion(r geometry.Region, f geometry.Frame) geometry.Region {
	turn := func(ring orb.Ring) orb.Ring {
		out := make(orb.Ring, len(ring))
		for i, p := range ring {
			out[i] = f.Apply(p)
		}
		return out
	}
	out := geometry.Region{Outer: turn(r.Outer)}
	for _, h := range r.Holes {
		out.Holes = append(out.Holes, turn(h))
	}
	return out
}
