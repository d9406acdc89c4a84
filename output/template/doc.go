// Package template draws a ply or a piece at 1:1 on as many sheets as it takes,
// to be laid together: neighbouring sheets overlap, and crosses that stand on both
// are laid over each other. The first sheet is a map of the others, with bars to
// see whether the print is true to size; sheets that no line runs over are left
// out.
//
// A ply is drawn as it lies in the part, seen from the laying side; a piece as it
// lies on the roll, to be cut.
package template
