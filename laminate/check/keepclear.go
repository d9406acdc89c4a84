package check

import (
	"fmt"
	"math"

	"stripwright/geometry"
	"stripwright/laminate"
)

// keepClear holds that no joint of a ply at the angles named runs through a
// region to be kept clear, or nearer to it than the laying tolerance. A joint
// along the region's edge is no breach when the laying tolerance is nothing.
func keepClear(l *laid) *finding {
	f := &finding{rule: RuleKeepClear, opening: doNotCut, note: "no region is to be kept clear"}
	c := &clearing{laid: l, fences: fences{}, shapes: map[fenceKey]shape{}, f: f, least: math.Inf(1)}
	for z := range l.plan.Rules.KeepClear {
		f.counted++
		for i := range l.plies {
			if forPly(l.plan.Rules.KeepClear[z].Angles, l.plies[i].angle) {
				c.zone(z, &l.plies[i])
			}
		}
	}
	if f.counted > 0 {
		f.note = "no joint runs near a region to be kept clear"
	}
	if f.worst != nil {
		f.note = fmt.Sprintf("nearest joint %s from a region to be kept clear, ply %d, %s", mm(c.least), f.worst.Plies[0], where(f.worst.At))
	}
	return f
}

// forPly says whether a region with these angles concerns a ply at angle a.
func forPly(angles []float64, a geometry.Angle) bool {
	for _, b := range angles {
		if a.Between(geometry.NewAngle(b)) < 0.001 {
			return true
		}
	}
	return len(angles) == 0
}

// clearing holds the state of the rule.
type clearing struct {
	*laid
	fences fences
	shapes map[fenceKey]shape
	f      *finding
	least  float64
}

func (c *clearing) zone(z int, y *laidPly) {
	r := c.plan.Rules.KeepClear[z].Region
	for _, kind := range []string{laminate.SideJoint, laminate.EndJoint} {
		fr := y.seamFrame(kind)
		a := y.angle
		if kind == laminate.EndJoint {
			a += 90 // of its own, for seams keep this frame
		}
		key := fenceKey{z, a}
		if _, ok := c.shapes[key]; !ok {
			c.shapes[key] = shapeIn(r, fr)
			c.fences[key] = newFence(r, fr)
		}
		for _, s := range y.seams {
			if s.kind == kind {
				c.seam(c.shapes[key], c.fences[key], y, s)
			}
		}
	}
}

// seam holds one seam against a region, both in the seam's frame.
func (c *clearing) seam(zone shape, in *fence, y *laidPly, s seam) {
	needed := c.plan.Rules.LayingToleranceMM
	lo, hi := zone.bounds()
	apart := math.Hypot(away(s.x0, s.x1, lo[0], hi[0]), away(s.y, s.y, lo[1], hi[1]))
	if apart >= math.Max(needed, c.least) {
		return
	}
	for _, p := range common([]span{{s.x0, s.x1}}, in.within(s.y)) {
		if p.x1-p.x0 > tolerance {
			depth := math.Min(hi[1]-s.y, s.y-lo[1])
			c.breach(y, s, (p.x0+p.x1)/2, -depth, fmt.Sprintf("runs %s inside", mm(depth)))
			return
		}
	}
	d, x := distanceTo(zone, s)
	at := y.seamAt(s, x)
	if d < c.least {
		c.least = d
		c.f.worst = &laminate.Worst{ValueMM: d, Plies: []int{y.Ply}, At: at, Piece: y.Strips[s.below].ID}
	}
	if d < needed-tolerance {
		c.breach(y, s, x, d, fmt.Sprintf("runs %s from", mm(d)))
	}
}

func (c *clearing) breach(y *laidPly, s seam, x, value float64, how string) {
	at := y.seamAt(s, x)
	needed := ""
	if t := c.plan.Rules.LayingToleranceMM; t > 0 {
		needed = fmt.Sprintf(" (%s clear needed to lay by)", mm(t))
	}
	w := laminate.Worst{ValueMM: value, Plies: []int{y.Ply}, At: at, Piece: y.Strips[s.below].ID}
	c.f.add(c.plan.Rules.LayingToleranceMM-value, w, "ply %d: the joint between %s and %s %s a region to be kept clear%s, %s",
		y.Ply, y.Strips[s.below].ID, y.Strips[s.above].ID, how, needed, where(at))
}

// away gives the distance between two intervals, 0 where they overlap.
func away(a0, a1, b0, b1 float64) float64 {
	return math.Max(0, math.Max(b0-a1, a0-b1))
}

// distanceTo gives the least distance from a seam to the edge of a region, and
// x of the nearest place on the seam.
func distanceTo(zone shape, s seam) (d, x float64) {
	d = math.Inf(1)
	p, q := point{s.x0, s.y}, point{s.x1, s.y}
	for _, r := range zone {
		for i, a := range r {
			b := r[(i+1)%len(r)]
			if e, at := apartSegments(p, q, a, b); e < d {
				d, x = e, at[0]
			}
		}
	}
	return d, x
}
