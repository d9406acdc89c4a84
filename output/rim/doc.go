// Package rim draws rim strips: paper strips at 1:1 that are laid along the edge
// of the part and carry a tick for every joint, so that nothing is measured at the
// tool. Each is a piece of a stretch of the line from one named corner to the
// next, up to 250 mm long; pieces are spliced at their marks.
//
// The thick line on top of a strip is the line that is measured along; the strip
// lies outside it and is read from outside, so that the stretch runs from left to
// right. Where the line is curved the strip runs along the curve: a grey band says
// where to nick it.
//
// The line is any closed line about the part (package layup); the net edge is the
// one that the sheets measure along.
package rim
