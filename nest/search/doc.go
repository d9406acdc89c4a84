// Package search looks for phases of all plies that need little cloth.
//
// The state is one phase for each ply. Its estimate is, for each group of plies
// that share rolls, the sum of the mean lengths of the full-width pieces, what
// their ends lose where they meet (ends matched by slant, on jobs of usual size),
// plus a quick side-by-side packing of the narrow ones, taken as rectangles.
// The search is annealing with moves that the trade knows: let the off-cut of
// one ply start another (exact fit), put a joint on an edge of the blank, stand
// a stagger away from a neighbour, exchange two plies, move all plies of one
// phase together. A state that breaks a rule is never entered.
//
// The estimate only ranks. Climb goes on from good states by laying each on a table
// for its true cost, and varies both the phases and the order of the pieces.
//
// The effort fixes the steps of a run and the work of a climb, counted in cells held
// against each other and the like, never by the clock; the same seed gives the same
// states.
package search
