// Package pdf writes scenes of package sheet as the pages of one PDF 1.7 file:
// the box of a scene is the page, one millimetre of it is one millimetre of
// paper, and the file asks the viewer to print without scaling.
//
// Lettering is live text, which can be searched and read back, in the two faces
// of package sheet; only the letters used are embedded (subset), so that the
// words are as wide as the sheet was laid out for. There is no clock and no
// random mark in a file: the same pages give the same bytes.
//
// The writer is the project's own. A general drawing library was weighed: it
// stamps the time into its fonts and adds some 9 MB to the program, while the
// little that a sheet needs (lines, areas, circles, hatching, lettering) is told
// in a few hundred lines.
//
// It lays out nothing: pages are composed by packages paper, rim, template and
// label.
package pdf
