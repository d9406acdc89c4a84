// Package drawing reads the outline of a part from a drawing: which regions it
// encloses, in millimetres, x to the right and y up as the drawing is seen.
//
//	bytes -> tokens -> entities     dxf/, svg/     and csv.go for plain points
//	entities -> lines               dxf/, svg/     trace.Line: curves turned into points
//	lines -> contours -> regions    contour/       joined, checked, nested
//	                                read.go        the steps in their order, units, layers, notes
//
// A silent error costs most: a wrong unit, a mirrored part, a lost arc, a hidden
// layer taken for the part, a gap closed by a straight line. So a drawing is
// read strictly. What the reader did that could be wrong is a Note, what it
// cannot take is a Problem with its place and a cure, and a drawing with a
// problem gives no regions. A file never makes it panic, loop or fill the
// memory.
//
// The package does not know plies, trim or cloth, and does not choose between
// several outlines unless told which.
package drawing
