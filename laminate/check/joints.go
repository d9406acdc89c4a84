package check

import (
	"math"
	"sort"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

type point = orb.Point

// joints holds that the plan lists every butt between two strips, and nothing
// else: the right two strips, from one end to the other, along the roll
// direction (side joint) or square to it (end joint).
func joints(l *laid) *finding {
	f := &finding{rule: RuleJoints, opening: doNotCut, note: "every joint between two strips is listed"}
	for i := range l.plies {
		y := &l.plies[i]
		f.counted += len(y.Joints)
		y.compareJoints(f)
		y.oddSeams(f)
	}
	return f
}

// seamFrame gives the frame in which seams of a kind run along x.
func (y *laidPly) seamFrame(kind string) geometry.Frame {
	if kind == laminate.EndJoint {
		return geometry.PlyFrame(geometry.Angle(y.angle.Degrees() + 90))
	}
	return y.frame
}

// strand is all that lies between the same two strips on the same level: from
// the seams, or as listed.
type strand struct {
	seam
	told bool // a listed joint that has been found fault with
}

// compareJoints sets the list beside the seams.
func (y *laidPly) compareJoints(f *finding) {
	byID := map[string]int{}
	for k, s := range y.Strips {
		byID[s.ID] = k
	}
	var listed []strand
	for k, j := range y.Joints {
		if s, ok := y.readJoint(f, byID, k, j); ok {
			listed = append(listed, s)
		}
	}
	var made []strand
	for _, s := range y.seams {
		made = append(made, strand{seam: s})
	}
	y.match(f, made, listed)
}

// readJoint turns a listed joint into the frame of its kind and holds that it
// names two strips and runs the way it must.
func (y *laidPly) readJoint(f *finding, byID map[string]int, k int, j laminate.Joint) (strand, bool) {
	w := laminate.Worst{Plies: []int{y.Ply}, At: j.From}
	below, ok0 := byID[j.Between[0]]
	above, ok1 := byID[j.Between[1]]
	switch {
	case j.Kind != laminate.SideJoint && j.Kind != laminate.EndJoint:
		f.add(1e6, w, "ply %d: joint %d is neither a side nor an end joint", y.Ply, k+1)
		return strand{}, false
	case !ok0 || !ok1 || below == above:
		f.add(1e6, w, "ply %d: joint %d lies between %q and %q, which are not two strips of the ply", y.Ply, k+1, j.Between[0], j.Between[1])
		return strand{}, false
	}
	fr := y.seamFrame(j.Kind)
	a, b := fr.Apply(j.From), fr.Apply(j.To)
	s := strand{seam: seam{j.Kind, math.Min(a[0], b[0]), math.Max(a[0], b[0]), (a[1] + b[1]) / 2, below, above}}
	if off := math.Abs(a[1] - b[1]); off > tolerance {
		w.ValueMM, w.Piece, s.told = off, j.Between[0], true
		f.add(off, w, "ply %d: the joint between %s and %s runs %s out of the %s direction over its length, %s",
			y.Ply, j.Between[0], j.Between[1], mm(off), direction(j.Kind), where(j.From))
	} else if j.Kind == laminate.SideJoint && a[0] > b[0] {
		f.add(0.001, w, "ply %d: the joint between %s and %s is listed from its far end", y.Ply, j.Between[0], j.Between[1])
	}
	return s, true
}

func direction(kind string) string {
	if kind == laminate.EndJoint {
		return "cross"
	}
	return "roll"
}

// match pairs listed joints with seams: both sorted the same way, a pair must
// agree in strips, level and both ends. Listed pieces of one seam that touch
// are taken as one.
func (y *laidPly) match(f *finding, made, listed []strand) {
	for _, s := range [][]strand{made, listed} {
		for k := range s {
			if s[k].kind == laminate.EndJoint {
				s[k].below, s[k].above = min(s[k].below, s[k].above), max(s[k].below, s[k].above)
			}
		}
		sort.SliceStable(s, func(i, j int) bool { return s[i].ahead(s[j]) })
	}
	made, listed = merged(made), merged(listed)
	i, k := 0, 0
	for i < len(made) || k < len(listed) {
		switch {
		case k == len(listed) || i < len(made) && made[i].clearlyAhead(listed[k]):
			y.unlisted(f, made[i])
			i++
		case i == len(made) || listed[k].clearlyAhead(made[i]):
			y.unmade(f, listed[k])
			k++
		default:
			y.agree(f, made[i], listed[k])
			i, k = i+1, k+1
		}
	}
}

// ahead is the order of both lists: kind, strips, place.
func (s strand) ahead(t strand) bool {
	if c := s.names(t); c != 0 {
		return c < 0
	}
	return s.x0 < t.x0
}

func (s strand) names(t strand) int {
	switch {
	case s.kind != t.kind:
		if s.kind < t.kind {
			return -1
		}
		return 1
	case s.below != t.below:
		return s.below - t.below
	}
	return s.above - t.above
}

// clearlyAhead: s has no partner like t, for it is of other strips or ends
// before t starts.
func (s strand) clearlyAhead(t strand) bool {
	if c := s.names(t); c != 0 {
		return c < 0
	}
	return s.x1 <= t.x0
}

func merged(s []strand) []strand {
	out := s[:0]
	for _, e := range s {
		if n := len(out) - 1; n >= 0 && out[n].names(e) == 0 &&
			math.Abs(out[n].y-e.y) <= 2*tolerance && math.Abs(e.x0-out[n].x1) <= scrap {
			out[n].x1 = math.Max(out[n].x1, e.x1)
			continue
		}
		out = append(out, e)
	}
	return out
}

func (y *laidPly) ids(s strand) (string, string) { return y.Strips[s.below].ID, y.Strips[s.above].ID }

// seamAt takes a place on a seam to the part.
func (y *laidPly) seamAt(s seam, x float64) [2]float64 {
	return tidy(y.seamFrame(s.kind).Inverse().Apply(point{x, s.y}))
}

// notch is the length in mm up to which a strip may lie against itself: a notch
// or hole that a joint all but misses leaves two edges within rounding of each
// other.
const notch = 1.0

func (y *laidPly) unlisted(f *finding, s strand) {
	if s.below == s.above && s.x1-s.x0 <= notch {
		return
	}
	a, b := y.ids(s)
	at := y.seamAt(s.seam, (s.x0+s.x1)/2)
	w := laminate.Worst{ValueMM: s.x1 - s.x0, Plies: []int{y.Ply}, At: at, Piece: a}
	f.add(s.x1-s.x0, w, "ply %d: %s and %s butt for %s %s, and no joint is listed there", y.Ply, a, b, mm(s.x1-s.x0), where(at))
}

func (y *laidPly) unmade(f *finding, s strand) {
	if s.x1-s.x0 <= 2*scrap {
		return
	}
	a, b := y.ids(s)
	at := y.seamAt(s.seam, (s.x0+s.x1)/2)
	w := laminate.Worst{ValueMM: s.x1 - s.x0, Plies: []int{y.Ply}, At: at, Piece: a}
	f.add(s.x1-s.x0, w, "ply %d: a joint of %s is listed between %s and %s %s, where they do not butt", y.Ply, mm(s.x1-s.x0), a, b, where(at))
}

func (y *laidPly) agree(f *finding, s, t strand) {
	off := math.Max(math.Abs(s.y-t.y), math.Max(math.Abs(s.x0-t.x0), math.Abs(s.x1-t.x1)))
	if off <= 2*tolerance || t.told {
		return
	}
	a, b := y.ids(s)
	at := y.seamAt(t.seam, t.x0)
	w := laminate.Worst{ValueMM: off, Plies: []int{y.Ply}, At: at, Piece: a}
	f.add(off, w, "ply %d: the joint between %s and %s is listed %s from where they butt, %s", y.Ply, a, b, mm(off), where(at))
}

// oddSeams finds butts that run neither along nor across the roll by length:
// going round all strips is going round the blank once and along every seam
// twice.
func (y *laidPly) oddSeams(f *finding) {
	rest := -y.blank.around()
	for _, s := range y.shapes {
		rest += s.around()
	}
	for _, s := range y.seams {
		rest -= 2 * (s.x1 - s.x0)
	}
	odd := rest / 2
	if allowed := 1 + float64(4*scrap*float64(len(y.shapes))); math.Abs(odd) <= allowed {
		return
	}
	w := laminate.Worst{ValueMM: math.Abs(odd), Plies: []int{y.Ply}, At: y.back(y.blank.corner())}
	f.add(math.Abs(odd)/1e3, w, "ply %d: edges of strips are %s out beside the blank and the joints: strips butt at an odd angle, or not at all", y.Ply, mm(math.Abs(odd)))
}

func (s shape) corner() (x, y float64) {
	if len(s) == 0 || len(s[0]) == 0 {
		return 0, 0
	}
	return s[0][0][0], s[0][0][1]
}
