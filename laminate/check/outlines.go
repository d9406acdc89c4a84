package check

import (
	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

// patches holds that plies with an outline of one name have one blank, and that
// it lies on the part's.
func patches(f *finding, l *laid) {
	first := map[string]*laidPly{}
	part := shapeIn(l.plan.Part.Blank, geometry.Turned(0))
	for i := range l.plies {
		y := &l.plies[i]
		if y.Outline == "" {
			continue
		}
		f.counted++
		w := laminate.Worst{Plies: []int{y.Ply}}
		if len(y.Blank.Outer) > 0 {
			w.At = y.Blank.Outer[0]
		}
		if like, ok := first[y.Outline]; !ok {
			first[y.Outline] = y
		} else if !sameRegion(like.Blank, y.Blank) {
			f.add(8, w, "plies %d and %d are both of outline %q, and their blanks differ", like.Ply, y.Ply, y.Outline)
			continue
		} else {
			continue
		}
		if at, off := sticksOut(y.Blank, part); off > patchSlack {
			w.At, w.ValueMM = tidy(at), off
			f.add(off, w, "ply %d: the outline %q sticks %s out of the part's blank, %s", y.Ply, y.Outline, mm(off), where(w.At))
		}
	}
}

// patchSlack is how far a patch may stick out, in mm: an edge that was drawn
// twice, and rounding.
const patchSlack = 0.02

// sticksOut gives the vertex or middle of an edge that lies furthest outside,
// and by how much.
func sticksOut(r geometry.Region, part shape) (at point, off float64) {
	sides := flanksOf(part)
	for _, ring := range r.Rings() {
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			for _, c := range []point{p, {(p[0] + q[0]) / 2, (p[1] + q[1]) / 2}} {
				if part.holds(c) {
					continue
				}
				if d := apartSides(c, sides); d > off {
					at, off = c, d
				}
			}
		}
	}
	return at, off
}

func apartSides(c point, sides []flank) float64 {
	least := -1.0
	for _, s := range sides {
		if d, _ := apartPoint(c, s.p, s.q); least < 0 || d < least {
			least = d
		}
	}
	return least
}

// marks holds that the named corners, from which the shop measures, are on the
// net edge and have names of their own.
func marks(f *finding, p laminate.PlanPart) {
	net := flanksOf(shapeIn(p.Net, geometry.Turned(0)))
	seen := map[string]bool{}
	for _, c := range p.Corners {
		f.counted++
		w := laminate.Worst{At: c.At}
		if seen[c.Name] {
			f.add(7, w, "two corners of the part are named %s", c.Name)
		}
		seen[c.Name] = true
		if off := apartSides(orb.Point(c.At), net); off > 2*tolerance {
			w.ValueMM = off
			f.add(off, w, "corner %s, from which joints are measured, lies %s off the net edge, %s", c.Name, mm(off), where(c.At))
		}
	}
}
