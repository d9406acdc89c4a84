// Package roll lays the pieces of one fabric and one roll width on its rolls so
// that the last cut comes early.
//
// Pieces that take the whole usable width form a chain: where two meet, the
// second follows at the least distance at which their ends interlock. Pieces
// that are narrower go side by side, into the gaps of the chain and behind it.
// A piece may be turned end for end where the cloth allows it; it never crosses
// a roll's end.
//
//	v
//	w +-----------+  +------------------+--------+
//	  |            \  \                 |  e1    |
//	  |   strip     \  \    strip       +--------+--+
//	  |              \  \               |   e2      |
//	0 +---------------+  +--------------+-----------+--> u
//
// All positions are whole micrometres; a piece counts as its level-wise hull,
// from the leftmost to the rightmost material at each height, so openings and
// notches that face across the roll hold no other piece.
//
// The package knows neither plies nor joints.
package roll
