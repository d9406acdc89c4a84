package check

import "fmt"

// mostCrossed is the most pairs of joints that are looked at for crossings;
// beyond it they are not counted.
const mostCrossed = 60_000_000

// crossings counts the places where joints of plies with too few plies between
// them cross at more than the angle that counts as parallel. They are no breach:
// a crossing is a point, and is told so that a laminator can look at it.
type crossings struct {
	places, looked int
}

// count adds the crossings of two bundles.
func (c *crossings) count(a, b bundle) {
	if c.looked += len(a.runs) * len(b.runs); c.looked > mostCrossed {
		return
	}
	lines := b.seenFrom(a)
	for _, r := range a.runs {
		for i := range lines {
			if crosses(r, &lines[i]) {
				c.places++
			}
		}
	}
}

// crosses says whether a line passes from one side of a run to the other.
func crosses(r run, s *slanted) bool {
	if (s.y0 < r.y) == (s.y1 < r.y) {
		return false
	}
	x := s.x0 + (r.y-s.y0)*(s.x1-s.x0)/(s.y1-s.y0)
	return r.x0 < x && x < r.x1
}

func (c *crossings) String() string {
	switch {
	case c.looked > mostCrossed:
		return "crossings of joints not counted: too many"
	case c.places == 0:
		return ""
	}
	return fmt.Sprintf("joints of different directions cross at %d places with too few plies between (no fault)", c.places)
}
