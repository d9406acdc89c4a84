package book

import (
	"math"

	"github.com/paulmach/orb"

	"stripwright/output/sheet"
)

// room keeps which parts of a drawing are lettered already.
type room struct {
	taken []orb.Bound
	edge  orb.Bound // lettering stays within
}

func (r *room) free(b orb.Bound) bool {
	if b.Min[0] < r.edge.Min[0] || b.Max[0] > r.edge.Max[0] || b.Min[1] < r.edge.Min[1] || b.Max[1] > r.edge.Max[1] {
		return false
	}
	for _, t := range r.taken {
		if b.Min[0] < t.Max[0] && t.Min[0] < b.Max[0] && b.Min[1] < t.Max[1] && t.Min[1] < b.Max[1] {
			return false
		}
	}
	return true
}

func (r *room) take(b orb.Bound) { r.taken = append(r.taken, b) }

func (r *room) try(b orb.Bound) bool {
	if !r.free(b) {
		return false
	}
	r.take(b)
	return true
}

// capShare is the height of capitals of a font of size 1, for screen fonts.
const capShare = 0.72

// fontShare is how much wider than the lettering of the sheets a wide screen font
// runs.
const fontShare = 1.13

// wide gives how long words are at a font size, in the widest of screen fonts.
func wide(words string, size float64, bold bool) float64 {
	return float64(fontShare * sheet.Text{Height: capShare * size, Bold: bold, Words: words}.Width())
}

// boxAbout gives the box about lettering of a length and height turned by deg,
// with its middle at a place.
func boxAbout(c orb.Point, long, high, deg float64) orb.Bound {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	sin, cos = math.Abs(sin), math.Abs(cos)
	w := float64((float64(long*cos) + float64(high*sin)) / 2)
	h := float64((float64(long*sin) + float64(high*cos)) / 2)
	return orb.Bound{Min: orb.Point{c[0] - w, c[1] - h}, Max: orb.Point{c[0] + w, c[1] + h}}
}

// boxesAlong gives small boxes along turned lettering, which together cover it
// closer than one box does.
func boxesAlong(c orb.Point, long, high, deg float64) []orb.Bound {
	if math.Abs(deg) < 1 || math.Abs(deg) > 89 {
		return []orb.Bound{boxAbout(c, long, high, deg)}
	}
	sin, cos := math.Sincos(deg * math.Pi / 180)
	n := int(math.Ceil(long / high))
	out := make([]orb.Bound, n)
	for i := range out {
		t := float64((float64(i)+0.5)*long/float64(n)) - float64(long/2)
		out[i] = boxAbout(orb.Point{c[0] + float64(t*cos), c[1] - float64(t*sin)}, high, high, 0)
	}
	return out
}

func (r *room) tryAll(boxes []orb.Bound) bool {
	for _, b := range boxes {
		if !r.free(b) {
			return false
		}
	}
	r.taken = append(r.taken, boxes...)
	return true
}
