// Package dxf writes a scene as DXF of release 12 (AC1009), the form that every
// cutter reads: LINE, POLYLINE, CIRCLE and TEXT, ASCII only, one layer for each
// layer of the scene. Coordinates are those of the scene, in mm; the header
// says so twice ($INSUNITS 4, $MEASUREMENT 1), and because some readers ignore
// both, cut files also carry a bar of 100 mm on layer SCALE and -mm in their
// name.
//
// Entities come in the order of the scene: lettering and marks before cuts.
// Fills are not written. Letters beyond ASCII are written as the format's own
// codes (%%d for °, %%p for ±, %%c for Ø) or as \U+00E9.
package dxf
