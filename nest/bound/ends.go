package bound

import "stripwright/geometry/band"

// side is one boundary of a convex blank from its lowest to its highest point:
// x over height, bulging to positive x, with its integral.
type side struct {
	y    []int64
	x    []float64
	area []float64 // from the lowest point to y[i]
}

// sidesOf gives the right boundary of a convex blank and its left one mirrored.
func sidesOf(slabs []band.Slab) (right, left *side) {
	right, left = &side{}, &side{}
	for i, s := range slabs {
		if i == 0 || s.R0 != right.x[len(right.x)-1] || s.L0 != -left.x[len(left.x)-1] {
			right.add(s.Y0, s.R0)
			left.add(s.Y0, -s.L0)
		}
		right.add(s.Y1, s.R1)
		left.add(s.Y1, -s.L1)
	}
	return right, left
}

func (s *side) add(y int64, x float64) {
	area := 0.0
	if n := len(s.y); n > 0 {
		area = s.area[n-1] + float64(float64(y-s.y[n-1])*(x+s.x[n-1])/2)
	}
	s.y, s.x, s.area = append(s.y, y), append(s.x, x), append(s.area, area)
}

// find gives the stretch that holds a height.
func (s *side) find(y float64) int {
	lo, hi := 0, len(s.y)-1
	for hi-lo > 1 {
		if mid := (lo + hi) / 2; float64(s.y[mid]) <= y {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// at gives a side at a height of stretch i, and its integral from the lowest point.
func (s *side) at(i int, y float64) (x, below float64) {
	x = s.x[i]
	if s.y[i+1] != s.y[i] {
		x = mix(s.x[i], s.x[i+1], (y-float64(s.y[i]))/float64(s.y[i+1]-s.y[i]))
	}
	return x, s.area[i] + float64(float64((y-float64(s.y[i]))*(s.x[i]+x))/2)
}

// grain is into how many parts a side is divided to find its best tangents.
const grain = 16

// mostTangents is the number of tangents up to which a side is worked out; more
// of them are taken to waste nothing.
const mostTangents = 4

// wastes gives, for 1, 2 … tangents, an area that no such polygon about the side
// between two heights leaves less of. One tangent wastes least where it touches
// at mid height, because the side bulges. Where several meet is not known: each
// part counts only what lies between the marks next to its ends, so that the
// sum stays below the best.
func (s *side) wastes(lo, hi int64) [mostTangents]float64 {
	one := s.single(lo, hi)
	var upTo [grain + 1]float64 // with one tangent fewer, from lo to mark j
	for j := range upTo {
		upTo[j] = one[j][0]
	}
	out := [mostTangents]float64{upTo[grain]}
	for p := 1; p < mostTangents; p++ {
		for j := grain; j > 0; j-- {
			for i, last := range one[j][1 : j+1] { // they meet between marks i and i+1
				if w := upTo[i] + last; w < upTo[j] {
					upTo[j] = w
				}
			}
			if p == mostTangents-1 {
				break // the last tangent ends at the last mark
			}
		}
		out[p] = upTo[grain]
	}
	return out
}

// single gives what one tangent of a side between two heights wastes, by the mark
// where it ends and the mark where it begins.
func (s *side) single(lo, hi int64) (out [grain + 1][grain + 1]float64) {
	var x, below [2*grain + 1]float64
	step := float64(hi-lo) / (2 * grain)
	at := s.find(float64(lo))
	for i := range x {
		y := float64(lo) + float64(step*float64(i))
		for at+2 < len(s.y) && float64(s.y[at+1]) <= y {
			at++
		}
		x[i], below[i] = s.at(at, y)
	}
	for j := range out {
		for i := range j {
			wide := float64(step * float64(2*(j-i)))
			under := float64(wide * x[i+j]) // the tangent at mid height
			within := below[2*j] - below[2*i]
			out[j][i] = max(0, under-within)
		}
	}
	return out
}

// ended is a range of phases of a convex blank: what the sides of its pieces
// waste at least by the number of tangents, two for each piece, from the lowest.
// Those from first on and before last are of pieces of full width.
type ended struct {
	cell
	sides       [][mostTangents]float64
	first, last int
}

// endsOf works out ranges of phase of a convex blank, small enough that a band
// hardly moves within one: only what all its places share is counted.
func (s *shape) endsOf(width int64) []ended {
	right, left := sidesOf(s.slabs)
	var out []ended
	for _, whole := range s.cells([]int64{s.outline.MinY, s.outline.MaxY}, width) {
		for _, c := range narrowed(whole, width) {
			bands := s.bands(c.from, width)
			e := ended{cell: c, sides: make([][mostTangents]float64, 0, 2*len(bands))}
			for _, y := range bands {
				e.add(s, right, left, y, width)
			}
			out = append(out, e)
		}
	}
	return out
}

// add works out the sides of the band of a height.
func (e *ended) add(s *shape, right, left *side, y, width int64) {
	low, high, move := s.outline.MinY, s.outline.MaxY, e.to-e.from
	if y >= low && y+move+width <= high {
		if e.last == 0 {
			e.first = len(e.sides)
		}
		e.last = len(e.sides) + 2
	}
	from, to := max(y+move, low), min(y+width, high)
	if y < low {
		from = low
	}
	for _, b := range []*side{right, left} {
		w := [mostTangents]float64{}
		if to > from {
			w = b.wastes(from, to)
		}
		e.sides = append(e.sides, w)
	}
}
