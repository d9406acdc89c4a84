package paper

import (
	"math"
	"sort"
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/layup"
	"stripwright/output/page"
)

// Measures of the drawings in mm of paper.
const (
	unit        = 0.72  // of their lettering
	overlap     = 16.0  // of stretches that are continued
	readable    = 8.0   // least width of a usual strip on paper
	leastOpen   = 15.0  // a part is drawn in stretches only from 1:15 on,
	mostOpen    = 40.0  // and must be from 1:40 on
	firstTables = 155.0 // of a first page that is not drawing
	nextTables  = 75.0  // of a further page
)

// scales are what drawings are reduced to, 1:1, 1:2, …, times powers of ten.
var scales = []float64{1, 1.5, 2, 2.5, 3, 4, 5, 6, 8}

// reduced rounds a reduction up to one of the scales, or down.
func reduced(least float64, up bool) float64 {
	last := 1.0
	for ten := 1.0; ten < 1e7; ten *= 10 {
		for _, s := range scales {
			if n := s * ten; n >= least-1e-9 {
				if up || n <= least+1e-9 {
					return n
				}
				return last
			} else {
				last = n
			}
		}
	}
	return last
}

// stretch is one drawing of a part: a view in mm of paper about a place of the
// part, without its place on the page.
type stretch struct {
	middle     orb.Point
	wide, high float64
	number     int
	beside     [4]int // stretches left, right, under, over: 0 is none
}

// layout is how all plies of a plan are drawn on a size of paper.
type layout struct {
	reduction float64 // 10 is 1:10
	whole     bool    // one drawing shows all
	stretches []stretch
	across    int // stretches in a row
}

// layoutOf chooses the reduction: the whole part on a first page, where its usual
// strips are readable then; else in stretches.
func layoutOf(p laminate.Plan, size page.Size) layout {
	e := layup.Extent(p)
	w, h := e.Max[0]-e.Min[0], e.Max[1]-e.Min[1]
	side, above := layup.Beside()
	room := orb.Point{size.Inner(), size.High - firstTables}
	least := math.Max(w/(room[0]-float64(2*side*unit)), h/(room[1]-float64(2*above*unit)))
	open := math.Max(leastOpen, math.Min(mostOpen, usualWidth(p)/readable))
	n := reduced(math.Max(least, 1), true)
	if n <= open {
		return cutUp(e, n, room, true)
	}
	room[1] = size.High - nextTables
	return cutUp(e, reduced(open, false), room, false)
}

// cutUp divides the drawing, with the room of its lettering, into stretches no
// larger than the room.
func cutUp(e orb.Bound, reduction float64, room orb.Point, whole bool) layout {
	side, above := layup.Beside()
	margin := orb.Point{float64(side * unit), float64(above * unit)}
	var parts [2][][2]float64 // from, to in mm of paper, from the extent's corner
	for axis := range parts {
		parts[axis] = divided((e.Max[axis]-e.Min[axis])/reduction, margin[axis], room[axis])
	}
	out := layout{reduction: reduction, whole: whole, across: len(parts[0])}
	for j, y := range parts[1] {
		for i, x := range parts[0] {
			s := stretch{wide: x[1] - x[0], high: y[1] - y[0], number: len(out.stretches) + 1}
			s.middle = orb.Point{e.Min[0] + float64((x[0]+x[1])/2*reduction), e.Min[1] + float64((y[0]+y[1])/2*reduction)}
			s.beside = neighbours(i, j, len(parts[0]), len(parts[1]))
			out.stretches = append(out.stretches, s)
		}
	}
	return out
}

// neighbours numbers the stretches left, right, under and over one of a grid.
func neighbours(i, j, across, up int) (beside [4]int) {
	own := float64(j*across+i) + 1
	for k, there := range [4]bool{i > 0, i+1 < across, j > 0, j+1 < up} {
		if there {
			beside[k] = int(own) + [4]int{-1, 1, -across, across}[k]
		}
	}
	return beside
}

// divided cuts a length with a margin at both ends into pieces that overlap, all
// of one length, at most room.
func divided(long, margin, room float64) [][2]float64 {
	total := long + 2*margin
	if total <= room {
		return [][2]float64{{-margin, long + margin}}
	}
	n := math.Ceil((total - overlap) / (room - overlap))
	each := (total + float64((n-1)*overlap)) / n
	var out [][2]float64
	for i := 0.0; i < n; i++ {
		from := -margin + float64(i*(each-overlap))
		out = append(out, [2]float64{from, from + each})
	}
	return out
}

// usualWidth gives the middle width of all strips.
func usualWidth(p laminate.Plan) float64 {
	var widths []float64
	for _, ply := range p.Plies {
		for _, s := range ply.Strips {
			widths = append(widths, s.WidthMM)
		}
	}
	if len(widths) == 0 {
		return 0
	}
	sort.Float64s(widths)
	return widths[len(widths)/2]
}

// at gives the view of a stretch with its upper left corner at a place of the
// page.
func (l layout) at(s stretch, left, top float64) layup.View {
	return layup.View{
		Box:    orb.Bound{Min: orb.Point{left, top - s.high}, Max: orb.Point{left + s.wide, top}},
		Middle: s.middle, Scale: 1 / l.reduction, K: unit,
	}
}

// scaleWords names the reduction: "1:10".
func (l layout) scaleWords() string { return "1:" + strconv.FormatFloat(l.reduction, 'f', -1, 64) }
