// Package practice works out the roll length that simple shop practice takes:
// the figure a plan is compared with. It is a reference, not a plan.
//
// Parallel plies start one equal step after another from the lowest edge of
// the blank; every band is cut square over its whole extent, openings
// included, from the full roll width, one piece after another; a piece that
// does not fit on what is left of a roll starts the next one; of several roll
// widths the first listed is taken. It ignores keep clear and the narrowest
// strip.
package practice

import (
	"stripwright/geometry"
	"stripwright/geometry/band"
)

// Ply is a ply of one fabric: its blank, its angle, and its number in the job.
// Turns says whether the cloth may be turned end for end: its angle then counts
// from 0° up to 180°, else as it is.
type Ply struct {
	Number int
	Angle  geometry.Angle
	Turns  bool
	Blank  geometry.Region
}

// frame is the frame whose lowest edge the ply starts from.
func (p Ply) frame() geometry.Frame {
	deg := p.Angle.Degrees()
	if p.Turns && deg < 0 {
		deg += 180
	}
	return geometry.Turned(-deg)
}

// Pieces lists the lengths in µm of the square-cut pieces of all plies, in
// ply order and from the lowest band up. step is the number of even starts,
// see Step.
func Pieces(plies []Ply, width int64, step int) []int64 {
	var out []int64
	earlier := make(map[geometry.Angle]int)
	for _, p := range plies {
		k := earlier[p.Angle]
		earlier[p.Angle]++
		start := int64(k%step) * width / int64(step)
		out = append(out, bands(band.FromRegion(p.Blank.Oriented(), p.frame()), start, width)...)
	}
	return out
}

// Step gives the largest number of parallel plies among any between+1
// consecutive ones.
func Step(plies []Ply, between int) int {
	most := 1
	for i, p := range plies {
		n := 0
		for _, q := range plies[i:] {
			if q.Number > p.Number+between {
				break
			}
			if q.Angle == p.Angle {
				n++
			}
		}
		most = max(most, n)
	}
	return most
}

// bands gives the extent along the roll of every band of a comb that starts
// above the lowest edge.
func bands(o *band.Outline, start, width int64) []int64 {
	var joints []int64
	for y := o.MinY + start; y < o.MaxY; y += width {
		if y > o.MinY {
			joints = append(joints, y)
		}
	}
	from := make([]int64, len(joints)+1)
	to := make([]int64, len(joints)+1)
	used := make([]bool, len(joints)+1)
	pieces := o.Cut(joints)
	for i := range pieces {
		p := &pieces[i]
		b := p.Band
		if !used[b] {
			from[b], to[b], used[b] = p.MinX, p.MaxX, true
		}
		from[b], to[b] = min(from[b], p.MinX), max(to[b], p.MaxX)
	}
	var out []int64
	for b := range used {
		if used[b] {
			out = append(out, to[b]-from[b])
		}
	}
	return out
}

// Roll is one roll: its length in µm, 0 for as long as needed.
type Roll struct{ Length int64 }

// Used lays pieces one after another on rolls, next fit, and gives the length
// used of each roll begun; ok is false when the rolls do not hold them.
func Used(pieces []int64, rolls []Roll) (used []int64, ok bool) {
	at := -1
	for _, p := range pieces {
		for at < 0 || rolls[at].Length > 0 && used[at]+p > rolls[at].Length {
			if at++; at == len(rolls) {
				return used, false
			}
			used = append(used, 0)
		}
		used[at] += p
	}
	return used, true
}
