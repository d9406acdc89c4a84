// Package trace holds what the readers of drawing files hand on: the lines
// that a file draws, and what is to be said about them.
//
// A Line is one run of straight pieces, a curve already turned into points. It
// knows the layer it lies on and where in the file it comes from, but no longer
// what kind of entity or element it was. A Report collects Notes (the reader
// went on, and says what it did) and Problems (it could not, and says what to
// do about it). An Affine places blocks, groups and symbols.
//
// The package reads no file and joins no lines.
package trace
