// Package waste tells where the cloth of a plan goes: how much of each fabric
// and roll width lies in the plies, and where the rest is lost. From the same
// view it lists what is left over and large enough to be kept.
//
// # Words
//
// A roll is looked at along its length: between two neighbours at one height
// lies either cloth of a piece or a free stretch, and a free stretch belongs to
// what it lies between.
//
//	v
//	w +------+   +-------------+           |
//	  |  A  /     \     B      |           |
//	  |    /   1   \           +-----------+   1 between ends of strips
//	  |   /         \          |     C     |   2 beside edge strips
//	0 +--+           +---------+----+  2   |   3 at the first and last cut
//	                            ...   3    u = last cut
//
//	Ends      between two strips that take the whole width
//	Beside    where one of both neighbours is narrower than that
//	Openings  in a notch or an opening of one piece
//	Cuts      between a piece and the roll's first or last cut
//	Gaps      of the above, the cutting gap along the roll
//	BadEdges  the edges of the roll that cannot be used
//	Earlier   what is left on rolls before the last, where the last cut counts
//
// Everything is worked out from the pieces of the plan alone, level by level
// between the heights at which an outline bends, where the edges are straight:
// the sums are exact but for rounding.
//
// The package judges nothing: a plan whose pieces overlap gives figures that do
// not add up. Areas are mm², lengths mm.
package waste
