// Package stagger keeps joints of different plies apart.
//
// Two plies conflict when their joints are near-parallel (5° or less) and
// fewer plies lie between them, at the place, than asked. A conflict is clear
// when nowhere inside the net part more than a millimetre of one joint lies
// within the stagger of a joint of the other ply.
//
//	ply 4   ------------------------+---------------
//	ply 3   ---------------+------------------------
//	ply 2   ------+---------------------------------
//	              |<------>|  stagger, square to the joints
//
// The package finds a first set of phases that is clear everywhere, or says
// that there is none and how large the stagger could be at most. It does not
// look for less cloth.
package stagger
