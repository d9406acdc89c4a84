package book

import (
	"math"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/sheet"
)

// Measures of a part's drawing in units: 1000 across with room for lettering on
// all sides.
const (
	across   = 1000.0
	sideRoom = 126.0
	topRoom  = 92.0
	mostHigh = 1050.0
)

// A part longer than longShare times its other side is drawn in several views: a
// long one in mostViews at most, a tall one, whose views are high, in mostUp.
const (
	longShare = 3.2
	mostViews = 6
	mostUp    = 3
)

// ground is how the part lies on the page: k mm a unit, its upper left corner at
// zero, and the views that it is shown in.
type ground struct {
	k         float64
	low, high orb.Point // corners of everything that lies in the part frame, mm
	views     []view
}

// view is one drawing of the ground: a box of the page.
type view struct {
	box   orb.Bound
	words string // what it shows, "" where it is all
}

func newGround(p laminate.Plan) ground {
	b := extent(p)
	g := ground{low: b.Min, high: b.Max}
	w, h := math.Max(b.Max[0]-b.Min[0], 1), math.Max(b.Max[1]-b.Min[1], 1)
	switch {
	case w > longShare*h:
		g.layAcross(w, h, min(mostViews, viewsOf(w/h)), p.Units)
	case h > longShare*w:
		g.layUp(w, h, min(mostUp, viewsOf(h/w)), p.Units)
	default:
		g.k = math.Max(w/(across-2*sideRoom), h/mostHigh)
		g.views = []view{{box: g.box(0, h, w)}}
	}
	return g
}

// viewsOf gives how many views a part needs that is so many times as long as
// wide.
func viewsOf(share float64) int { return int(math.Ceil(share / longShare)) }

// extent is the box about everything that lies in the part frame.
func extent(p laminate.Plan) orb.Bound {
	b := p.Part.Net.Bounds()
	if !p.Part.Blank.Empty() {
		b = b.Union(p.Part.Blank.Bounds())
	}
	for _, ply := range p.Plies {
		if ply.Outline != "" && !ply.Blank.Empty() {
			b = b.Union(ply.Blank.Bounds())
		}
	}
	return b
}

// box is the view of the part between two heights from the top, in mm, w wide.
func (g *ground) box(top, bottom, w float64) orb.Bound {
	left := float64((w/g.k - across) / 2)
	return orb.Bound{Min: orb.Point{left, top/g.k - topRoom}, Max: orb.Point{left + across, bottom/g.k + topRoom}}
}

// layAcross breaks a long part into n views from left to right.
func (g *ground) layAcross(w, h float64, n int, units string) {
	step := w / float64(n)
	g.k = step / (across - 2*sideRoom)
	for i := range n {
		from := float64(float64(i) * step)
		left := from/g.k - sideRoom
		g.views = append(g.views, view{
			box:   orb.Bound{Min: orb.Point{left, -topRoom}, Max: orb.Point{left + across, h/g.k + topRoom}},
			words: "from " + sheet.MetreMark(from, units) + " to " + sheet.MetreMark(from+step, units) + " from the left",
		})
	}
}

// layUp breaks a tall part into n views from top to bottom.
func (g *ground) layUp(w, h float64, n int, units string) {
	step := h / float64(n)
	g.k = math.Max(step/mostHigh, w/(across-2*sideRoom))
	for i := range n {
		from := float64(float64(i) * step)
		g.views = append(g.views, view{
			box:   g.box(from, from+step, w),
			words: "from " + sheet.MetreMark(math.Max(0, h-from-step), units) + " to " + sheet.MetreMark(h-from, units) + " from below",
		})
	}
}

// at takes a point of the part onto the page.
func (g ground) at(p orb.Point) orb.Point {
	return orb.Point{(p[0] - g.low[0]) / g.k, (g.high[1] - p[1]) / g.k}
}

// part takes a box of the page back to the part, in mm.
func (g ground) part(b orb.Bound) orb.Bound {
	return orb.Bound{
		Min: orb.Point{g.low[0] + float64(b.Min[0]*g.k), g.high[1] - float64(b.Max[1]*g.k)},
		Max: orb.Point{g.low[0] + float64(b.Max[0]*g.k), g.high[1] - float64(b.Min[1]*g.k)},
	}
}

// shown is the box of a view that lettering of the part belongs in: without the
// margins, which show again what the next view shows.
func (v view) shown() orb.Bound {
	return orb.Bound{
		Min: orb.Point{v.box.Min[0] + 6, v.box.Min[1] + 6}, Max: orb.Point{v.box.Max[0] - 6, v.box.Max[1] - 6},
	}
}

// openWide is how many pixels a drawing takes where there is room.
const openWide = 1250.0

// open writes the start of a view as a drawing with a name for those that cannot
// see it.
func (w *ink) open(v orb.Bound, class, label string) {
	w.text(`<svg class="`, class, `" role="img" aria-label="`)
	w.words(label)
	w.text(`" viewBox="`)
	w.pair(v.Min)
	w.text(" ")
	wide, high := v.Max[0]-v.Min[0], v.Max[1]-v.Min[1]
	w.pair(orb.Point{wide, high})
	w.text(`"`)
	w.attr("width", math.Round(openWide))
	w.attr("height", math.Round(openWide*high/wide))
	w.text(">")
}
