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
// A piece that leaves so little of the width that none of the others fits beside it
// is chained too, where there are too many pieces to try any order. All positions
// are whole micrometres. A piece is a few columns, each from its leftmost to its
// rightmost material at every height: what lies between columns, an opening or a
// notch across the roll, may hold narrow pieces.
//
// A Memory keeps what was worked out about pairs of columns, and counts the work: the
// same on every run, whatever the clock says.
//
// The package knows neither plies nor joints.
package roll
