package thin

// deepest is how often a stretch is parted at its farthest vertex; from there
// on it is halved. A curve never comes so far; the teeth of a comb would, one
// vertex at a time, and cost the square of their number.
const deepest = 40

// stretch is a run of vertices; depth says how often it was parted.
type stretch struct{ from, to, depth int }

// Run tells keep which vertices between from and to must stay, those two left
// out, so that no vertex lies further than most from the line through the ones
// that stay. off gives the distance of vertex i from the edge between vertices
// a and b; any measure that grows with the distance will do, for most too. The
// method is Douglas and Peucker's (The Canadian Cartographer 10, 1973; from
// memory). Vertices are told in no order.
func Run(from, to int, most float64, off func(a, b, i int) float64, keep func(i int)) {
	stretches := []stretch{{from, to, 0}}
	for len(stretches) > 0 {
		s := stretches[len(stretches)-1]
		stretches = stretches[:len(stretches)-1]
		at := s.farthest(most, off)
		if at < 0 {
			continue
		}
		if s.depth > deepest {
			at = s.from + (s.to-s.from)/2
		}
		keep(at)
		stretches = append(stretches, stretch{s.from, at, s.depth + 1}, stretch{at, s.to, s.depth + 1})
	}
}

// farthest gives the vertex farthest from the edge between the ends, the first
// of equals, and -1 where none is further than most.
func (s stretch) farthest(most float64, off func(a, b, i int) float64) int {
	at := -1
	for i := s.from + 1; i < s.to; i++ {
		if d := off(s.from, s.to, i); d > most {
			most, at = d, i
		}
	}
	return at
}
