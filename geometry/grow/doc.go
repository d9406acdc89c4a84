// Package grow makes the blank from the net outline: the outer edge moves
// outward by the trim allowance, holes shrink by it. It also grows keep-clear
// regions.
//
// What is right is given by distance: a point belongs to the grown region when
// it is no farther from the region than the allowance. A hole narrower than
// twice the allowance is therefore closed, a dumbbell hole falls in two, and a
// notch with a narrow mouth becomes a hole. Mitred corners reach farther than
// the allowance, as a straight edge cut past a corner does:
//
//	Round              Mitred
//	  ,-----             +-----
//	 / +----             | +----
//	 | |  net            | |  net
//
// # How
//
// Every ring runs with the material on its left. The rim is the ring moved to
// its right, edge by edge, joined by an arc or a mitre at a corner that sticks
// out of the material and by a straight chord at a corner that goes into it.
// The rim may cross itself; a point is covered when the rim's winding number
// about it, with the ring's own inside counted, is above zero.
//
//	corner that sticks out      corner that goes in
//	  a---tip                        b
//	  |    \   b                  ---+--a   chord a-b
//	  V     `.                       |
//
// The winding number is the number of pieces of the ring's material within
// reach of the point (the convolution of two outlines, L. Guibas, L. Ramshaw,
// J. Stolfi, "A kinetic framework for computational geometry", 1983; from
// memory), less one where a whole hole lies within reach: such a hole closes
// and is dropped beforehand. A chord in place of an arc only adds points that
// are within reach anyway.
//
// Crossings are found on whole micrometres and the rim's edges are bent
// through them until none is left (snap rounding, J. Hobby, "Practical segment
// intersection with finite precision output", 1999; from memory), so that
// windings are counted exactly and the rings that come out are simple.
//
// # What it does not do
//
// It does not shrink a part, and does not heal a drawing: a ring that crosses
// itself is refused.
package grow
