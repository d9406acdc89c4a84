// Package stack tells what a laminate is, layer by layer: whether it is a mirror
// about its middle, whether it is balanced, how much fibre lies in which
// direction, how much it bends when it is pulled, what its joints cut, and what
// would mend a stack that is not symmetric.
//
// # Words
//
//	layer      fibre of one direction; a stitched ply is several, laid at once
//	stack      the layers from the tool up
//	mirror     layer by layer the same from the middle up and from the middle down
//	balanced   as much fibre at +θ as at -θ, for every θ other than 0 and 90
//	crossed    a layer of woven cloth: its two directions lie at one height
//	to couple  to bend or twist when pulled, and to warp when cooled
//	hand       the same layers with the angles of the other sign
//
// # Which layer the tool sees
//
// A fabric lists its layers from the face to the back. Face up, the face looks
// away from the tool: the tool sees the last listed layer, at θ+α. Face down,
// the cloth is turned over about its roll direction: the tool sees the first
// listed layer, at θ-α.
//
//	listed   face up at θ     face down at θ
//	   0     θ      (bag)     θ+45  (bag)
//	  45     θ+45             θ-45
//	 -45     θ-45   (tool)    θ     (tool)
//
// Woven cloth is taken as two directions at one height, half the weight each
// unless its layers say otherwise, the same from both faces. Mat has no
// direction. Cloth whose form is not stated, without layers, is unidirectional.
//
// # How much it couples
//
// Lamination parameters (Tsai and Pagano 1968; the four of Miki 1985) sum cos 2θ,
// sin 2θ, cos 4θ and sin 4θ over the thickness: plainly (A), times the height
// (B), times its square (D). Four zeros in A: quasi-isotropic in the plane. See
// Parameters and Judgement.Coupling.
//
// # What it does not do
//
// It knows no stiffness of fibre and resin (package theory does): all fibre of a
// stack counts as equally stiff. It judges the schedule, not the joints. A
// weave's crimp, and which yarns float on which face of a satin, are left out.
package stack
