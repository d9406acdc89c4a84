// Package code reads and writes schedule codes: one line that says at which
// angles the plies of a laminate lie, first ply laid first.
//
// The code is the one of ASTM D6507 as it is described in US Army TM
// 1-1500-204-23-11 §5-7:
//
//	[0/±45/90]s     a slash between plies; s mirrors the list
//	[0_2/90]s       a number after a ply or a group repeats it
//	[(0/90)_2/45]T  ( ) is a group; T says that the list is total
//	[0/90]2s        repeated first, then mirrored
//	[∓30/0]T        the upper sign first
//	[0/90̅]s         the last ply of a mirrored list with a bar over it is the
//	                middle ply, laid once
//	[45f/0f]s       f or w: woven cloth, by the direction of its roll
//
// # Spellings
//
// Any of these says the same: +-45, +/-45 and ±45; -+30, -/+30 and ∓30; the
// minus sign, the hyphen and the en dash; 0_2, 0_{2} and 0₂; ]s, ]S, ]_s and
// ]ₛ; ]2s, ]_2s and ]_{2s}; 90~ and 90 with a combining overline (U+0305) or
// macron (U+0304). The tilde is this program's own ASCII spelling of the bar.
// Blanks do not matter where they part nothing. A degree sign may follow an
// angle. String writes the ASCII form.
//
// # What is refused
//
// Where a code can be read in two ways that give different plies, it is refused
// with both readings: 902 (90° twice, or 902°), 22.52, 02, ±45_2 (the pair
// twice, or each angle twice), ]s2, commas, blanks between two numbers, (±45)f
// (one woven ply, or two), a bar in a list that is repeated before it is
// mirrored.
//
// # What it does not do
//
// It knows no fabrics and no faces: the angle is the direction of the roll. For
// a stitched cloth s mirrors the angles of the plies, not the layers inside
// them; package stack judges those.
package code
