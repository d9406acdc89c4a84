// Package band cuts an outline into the strips of one ply.
//
// An Outline is a blank (or a net part, or a keep-clear region) turned into the
// frame of a ply and snapped to whole micrometres: strips run along x, side
// joints are lines of constant y. All cutting is done on integers, so that a
// joint on an edge of the outline is on it exactly and leaves no sliver.
//
//	      y
//	      |      +--------------+
//	joint |----- |-- strip 2 ---|----
//	      |    +-+              |
//	joint |--- |---- strip 1 ---|----
//	      |    +----------------+
//	      +------------------------- x
//
// Cut gives the pieces of every band between neighbouring joints: several in a
// band where the outline is concave, with holes where a hole lies wholly inside
// one band. Chords gives where a joint would have material on both sides, Slabs
// the trapezoids of a piece, from which end profiles are read.
//
// The package does not choose joints and knows no rolls.
package band
