package layup

import (
	"github.com/paulmach/orb"

	"stripwright/laminate/content"
	"stripwright/output/sheet"
)

// zoneLabels writes name and thickness into each zone; for one that is too small
// beside it, at the end of a line.
func (b *board) zoneLabels(zones []content.Zone) {
	w := &zoneWriter{board: b}
	var small []content.Zone
	for _, z := range zones {
		words := sheet.Text{Height: b.k, Bold: true, Words: b.zoneLabel(z)}
		at, h := zoneSpot(z, 0.75*words.Width()/b.k, 9*b.k, 4*b.k)
		if h == 0 {
			small = append(small, z)
			continue
		}
		words.Height = 0.62 * h
		w.box(words.Centred(b.place(at)))
	}
	for _, z := range small {
		b.room.take(b.zoneExtent(z))
	}
	for _, z := range small {
		w.beside(z)
	}
}

// zoneWriter keeps what was written: no line may cross another, or a label.
type zoneWriter struct {
	*board
	lines [][2]orb.Point
	boxes []orb.Bound
}

// zoneExtent gives the box about a zone on the sheet, about its middle alone where
// the zone fills less than half of it, as a ring does.
func (b *board) zoneExtent(z content.Zone) orb.Bound {
	box := b.place(zoneInside(z)).Bound()
	spot := box.Pad(b.k)
	for _, f := range z.Fields {
		for _, p := range []orb.Point{{f.LeftLow, f.Low}, {f.RightLow, f.Low}, {f.LeftHigh, f.High}, {f.RightHigh, f.High}} {
			box = box.Extend(b.place(p))
		}
	}
	w, h := box.Max[0]-box.Min[0], box.Max[1]-box.Min[1]
	if z.AreaMM2*b.scale*b.scale < w*h/2 {
		return spot
	}
	return box
}

func (b *board) zoneLabel(z content.Zone) string {
	words, _ := b.zoneThickness(z)
	return z.Name + "  " + words
}

// box writes a label in its box and takes the room.
func (w *zoneWriter) box(t sheet.Text) {
	l := w.s.Layer("TEXT")
	box := t.Bounds().Pad(0.9 * w.k)
	l.Box(sheet.Solid(sheet.Black, 0.25*w.k), sheet.Fill{Ink: sheet.White}, box)
	l.Write(t)
	w.room.take(box)
	w.boxes = append(w.boxes, box)
}

// Where a label may stand beside its zone: towards, and how far off.
var (
	besideTowards = []orb.Point{{0, -1}, {0, 1}, {0.5, -1}, {-0.5, -1}, {0.5, 1}, {-0.5, 1}, {1.6, -0.5}, {-1.6, -0.5}, {1.6, 0.5}, {-1.6, 0.5}}
	besideFar     = []float64{9, 14, 20, 27, 35, 44, 54}
)

// beside writes a label where there is room about a zone, with a line to it: the
// name alone where name and thickness would cover something.
func (w *zoneWriter) beside(z content.Zone) {
	inside := w.place(zoneInside(z))
	at := w.spotFor(z, inside)
	line := [2]orb.Point{inside, at.Bounds().Center()}
	w.lines = append(w.lines, line)
	w.s.Layer("OUTLINE").Stroke(sheet.Solid(sheet.Black, 0.3*w.k), line[0], line[1])
	w.s.Layer("TEXT").Disc(sheet.Pen{}, sheet.Fill{Ink: sheet.Black}, inside, 0.8*w.k)
	w.box(at)
}

// spotFor finds room for the label of a zone; the last resort is a line over other
// things.
func (w *zoneWriter) spotFor(z content.Zone, inside orb.Point) sheet.Text {
	name := sheet.Text{Height: 3.4 * w.k, Bold: true, Words: z.Name}
	long := name
	long.Words = w.zoneLabel(z)
	for _, try := range []struct {
		text  sheet.Text
		clear bool
	}{{long, true}, {name, true}, {name, false}} {
		for _, at := range w.besides(try.text, inside) {
			if w.room.free(at.Bounds().Pad(w.k)) && (!try.clear || w.clear([2]orb.Point{inside, at.Bounds().Center()})) {
				return at
			}
		}
	}
	return name.Centred(sheet.Along(inside, orb.Point{0, 1}, 9*w.k))
}

// clear says whether a line crosses nothing that was written.
func (w *zoneWriter) clear(line [2]orb.Point) bool {
	for _, other := range w.lines {
		if meet(line, other) {
			return false
		}
	}
	for _, box := range w.boxes {
		across := [2]orb.Point{{box.Min[0], box.Max[1]}, {box.Max[0], box.Min[1]}}
		if meet(line, across) || meet(line, [2]orb.Point{box.Min, box.Max}) {
			return false
		}
	}
	return true
}

// besides lists the places of a label beside a point, the nearest first.
func (b *board) besides(t sheet.Text, inside orb.Point) []sheet.Text {
	var out []sheet.Text
	for _, far := range besideFar {
		for _, d := range besideTowards {
			out = append(out, t.Centred(sheet.Along(inside, d, far*b.k)))
		}
	}
	return out
}

// meet says whether two lines cross.
func meet(a, b [2]orb.Point) bool {
	side := func(l [2]orb.Point, p orb.Point) bool { return cross(minus(l[1], l[0]), minus(p, l[0])) > 0 }
	return side(a, b[0]) != side(a, b[1]) && side(b, a[0]) != side(b, a[1])
}

// zoneThickness prints the thickness of a zone in the unit of the job, beside it
// in the other.
func (b *board) zoneThickness(z content.Zone) (words, beside string) {
	mm, in := sheet.Number(z.ThicknessMM.Value, 2)+" mm", sheet.Number(z.ThicknessMM.Value/25.4, 3)+" in"
	switch u := b.plan.Units; {
	case !z.Thick:
		return "?", ""
	case u == "in" || u == "ft" || u == "yd":
		return in, " (" + mm + ")"
	}
	return mm, " (" + in + ")"
}
