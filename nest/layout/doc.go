// Package layout divides one blank at one angle into strips of one usable
// width: a Class. Its side joints are a comb of lines one width apart; where
// the comb stands is its phase. A Division is what a phase gives: the pieces,
// the joints that count, and whether the phase is allowed at all.
//
//	         width
//	   phase |<--->|
//	|  edge  |     |     | edge |
//	+--------+-----+-----+------+   across the roll
//
// The package does not choose phases and knows nothing of other plies.
package layout
