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

func (s *side) at(y float64) float64 {
	i := s.find(y)
	if s.y[i+1] == s.y[i] {
		return s.x[i]
	}
	return mix(s.x[i], s.x[i+1], (y-float64(s.y[i]))/float64(s.y[i+1]-s.y[i]))
}

// below integrates from the lowest point to a height.
func (s *side) below(y float64) float64 {
	i := s.find(y)
	return s.area[i] + float64(float64((y-float64(s.y[i]))*(s.x[i]+s.at(y)))/2)
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
	var x, below [2*grain + 1]float64
	step := float64(hi-lo) / (2 * grain)
	for i := range x {
		y := float64(lo) + float64(step*float64(i))
		x[i], below[i] = s.at(y), s.below(y)
	}
	one := func(i, j int) float64 { // marks
		if j <= i {
			return 0
		}
		wide := float64(step * float64(2*(j-i)))
		under := float64(wide * x[i+j]) // the tangent at mid height
		within := below[2*j] - below[2*i]
		return max(0, under-within)
	}
	var out [mostTangents]float64
	out[0] = one(0, grain)
	var upTo [grain + 1]float64 // with one tangent fewer, from lo to mark j
	for j := range upTo {
		upTo[j] = one(0, j)
	}
	for p := 1; p < mostTangents; p++ {
		var next [grain + 1]float64
		for j := range next {
			next[j] = upTo[j]
			for i := 0; i < j; i++ { // they meet between marks i and i+1
				next[j] = min(next[j], upTo[i]+one(i+1, j))
			}
		}
		upTo = next
		out[p] = upTo[grain]
	}
	return out
}

// ended is a range of phases of a convex blank: what the sides of its pieces
// waste at least by the number of tangents.
type ended struct {
	cell
	full   [][mostTangents]float64
	narrow [][mostTangents]float64 // two for each narrow piece
}

// endsOf works out ranges of phase of a convex blank, small enough that a band
// hardly moves within one: only what all its places share is counted.
func (s *shape) endsOf(width int64) []ended {
	right, left := sidesOf(s.slabs)
	low, high := s.outline.MinY, s.outline.MaxY
	var out []ended
	for _, whole := range s.cells([]int64{low, high}, width) {
		for _, c := range narrowed(whole, width) {
			e := ended{cell: c}
			for _, y := range s.bands(c.from, width) {
				from, to := y+c.to-c.from, y+width
				full := y >= low && y+c.to-c.from+width <= high
				from, to = max(from, low), min(to, high)
				if y < low {
					from = low
				}
				for _, b := range []*side{right, left} {
					w := [mostTangents]float64{}
					if to > from {
						w = b.wastes(from, to)
					}
					if full {
						e.full = append(e.full, w)
					} else {
						e.narrow = append(e.narrow, w)
					}
				}
			}
			out = append(out, e)
		}
	}
	return out
}
