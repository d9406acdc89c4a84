// Package sheet is what every drawing is made of: a Scene of layers with lines,
// fills and lettering, and the parts that all sheets share: the title block,
// the stamp on a plan that failed its check, lengths and angles in words.
//
// A scene is in millimetres, y up. Lettering is given by the height of its
// capitals and is drawn from outlines (Glyph) or as single pen strokes
// (PenGlyph), on paper as live text in the same face, so that a sheet looks the
// same everywhere.
//
// The package decides nothing about a plan and knows no file format: packages
// svg, dxf and pdf write scenes; cutmap, layup and the packages of paper compose
// them.
package sheet
