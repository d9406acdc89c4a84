package grow

import (
	"fmt"
	"math"

	"stripwright/geometry"
)

// Corner says how a corner that sticks out of the part is grown.
type Corner int

// Kinds of corner.
const (
	// Mitred prolongs the two edges until they meet. A tip that would lie
	// farther than MitreLimit times the allowance from the corner is cut off
	// square across at that distance.
	Mitred Corner = iota
	// Round keeps the distance to the corner: an arc, as a polygon that never
	// lies inside the arc and at most ChordMM outside it.
	Round
)

const (
	// MitreLimit is the longest mitre, in allowances: corners of 60° and more
	// keep their tip.
	MitreLimit = 2.0
	// ChordMM is how far the polygon of an arc may lie outside the arc.
	ChordMM = 0.01
	// LargestMM is the largest width or height that is grown, and the largest
	// distance by which it may be.
	LargestMM = 400_000.0
	// thinMM is the mean width under which a gap left over is closed: no knife
	// cuts it.
	thinMM = 0.01
	// slitMM is the edge length that a slit has at least.
	slitMM = 0.2
)

// Blank grows a net outline by the trim allowance in mm. The outer ring moves
// outward, holes shrink and vanish where they are closed. The result lies on
// the micrometre grid; its rings are simple, and may touch in single points.
// Slits under 0.01 mm are closed, and the whole blank is then 0.005 mm larger;
// outlines of more than manyVertices are first thinned by as much, always
// outward. An allowance of zero gives the net unchanged. Refused are an
// allowance that is negative or not a number, sizes above LargestMM, and rings
// that cross themselves.
func Blank(net geometry.Region, trim float64, c Corner) (geometry.Region, error) {
	switch {
	case math.IsNaN(trim) || trim < 0 || trim > LargestMM:
		return geometry.Region{}, fmt.Errorf("allowance %v mm: it must be a length from 0 to %v mm", trim, LargestMM)
	case net.Empty():
		return geometry.Region{}, fmt.Errorf("no outline to grow: it has fewer than three corners")
	case trim == 0:
		return net, nil
	}
	o, err := originOf(net)
	if err != nil {
		return geometry.Region{}, err
	}
	g := grower{by: trim * micron, corner: c}
	covered, holes, err := g.outer(o.ring(net.Outer, true))
	if err != nil {
		return geometry.Region{}, o.placed(err)
	}
	for i, h := range net.Holes {
		left, err := g.hole(o.ring(h, false))
		if err != nil {
			return geometry.Region{}, fmt.Errorf("hole %d: %w", i+1, o.placed(err))
		}
		holes = append(holes, left...)
	}
	return o.region(covered, holes), nil
}

// Region grows a keep-clear region by a distance in mm with round corners; the
// rest is as in Blank.
func Region(r geometry.Region, by float64) (geometry.Region, error) {
	return Blank(r, by, Round)
}

// grower holds one growing: the distance in micrometres and the kind of corner.
type grower struct {
	by     float64
	corner Corner
}

// outer grows the outer ring; gaps are notches that it closed.
func (g grower) outer(r ring) (edge ring, gaps []ring, err error) {
	rings, err := g.grow(r, 0)
	if err != nil {
		return nil, nil, err
	}
	for _, q := range rings {
		switch {
		case q.area2() < 0:
			gaps = append(gaps, q)
		case edge == nil || q.area2() > edge.area2():
			edge = q
		}
	}
	if edge == nil {
		return nil, nil, fmt.Errorf("nothing is left of the outline: it has no area")
	}
	return edge, gaps, nil
}

// hole shrinks a hole; none, one or several are left of it.
func (g grower) hole(r ring) (left []ring, err error) {
	rings, err := g.grow(r, 1)
	if err != nil {
		return nil, err
	}
	for _, q := range rings {
		if q.area2() < 0 {
			left = append(left, q)
		}
	}
	return left, nil
}

// grow moves one ring to its right by the whole distance; base is the winding
// of what lies around the ring: 0 for an outer ring, 1 for a hole.
func (g grower) grow(r ring, base int) ([]ring, error) {
	if err := r.sound(base); err != nil {
		return nil, err
	}
	if thin, moved := thinned(r, base); moved > 0 {
		r, g.by = thin, g.by+moved
	}
	rings, left := []ring{r}, g.by
	for len(rings) > 0 {
		step := firstStep(rings, left)
		if step == left {
			break
		}
		var err error
		if rings, err = g.steps(rings, step); err != nil {
			return nil, err
		}
		left -= step
	}
	return g.lastStep(rings, left)
}

// lastStep also closes slits that are narrower than thinMM, as two edges that
// meet leave them: growing by half as much more makes the edge shorter then, and
// is what is given.
func (g grower) lastStep(rings []ring, by float64) ([]ring, error) {
	out, err := g.steps(rings, by)
	if err != nil {
		return nil, err
	}
	more, err := g.steps(rings, by+thinMM*micron/2)
	if err != nil {
		return nil, err
	}
	if length(out)-length(more) > slitMM*micron {
		return more, nil
	}
	return out, nil
}

// steps moves each ring by one distance.
func (g grower) steps(rings []ring, by float64) ([]ring, error) {
	var out []ring
	for _, q := range rings {
		more, err := g.step(q, by)
		if err != nil {
			return nil, err
		}
		out = append(out, more...)
	}
	return out, nil
}

// step moves one ring by one distance. A hole that fits in a circle of that
// radius is closed.
func (g grower) step(r ring, by float64) ([]ring, error) {
	base := 0
	if r.area2() < 0 {
		base = 1
		if _, radius := smallestCircle(r); radius <= by+2 {
			return nil, nil
		}
	}
	rings, err := positive(rim(r, by, g.corner), base)
	if err != nil {
		return nil, err
	}
	kept := rings[:0]
	for _, q := range rings {
		if q.area2() < 0 && q.meanWidth() < thinMM*micron {
			continue
		}
		kept = append(kept, q)
	}
	return kept, nil
}
